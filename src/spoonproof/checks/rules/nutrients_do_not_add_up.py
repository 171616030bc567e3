"""The figures a channel gave for a food of its own can't be right.

Protein, fat, carbohydrate and water that weigh more than the food, sugars that outweigh the carbohydrate they are
part of, or an energy that its parts don't have: a slip in the table makes every dish with that food wrong.
The bundled table is checked in the same way when it is tested.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.foods.sense import odd_figures
from spoonproof.knowledge import Knowledge
from spoonproof.model.finding import Remedy
from spoonproof.model.text import NOWHERE

SCOPE = "register"
AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)


def check(knowledge: Knowledge) -> Iterator[Fault]:
    """A fault for each thing that does not add up in a food whose row or values are the channel's own."""
    from spoonproof.reading.bundle import OWN, own_file

    own = {
        row.text(column): f"{row.file.removeprefix(OWN)}, line {row.line}"
        for table, column in (("foods", "id"), ("food_values", "food"))
        if own_file(knowledge.channel_dir, "shared", f"{table}.csv")  # else thousands of rows are read for nothing
        for row in knowledge.rows(table)
        if row.file.startswith(OWN)
    }
    for food_id in sorted(own):
        food = knowledge.foods.get(food_id)
        for said in odd_figures(food) if food is not None else ():
            yield Fault(
                NOWHERE,
                f"{food_id} ({own[food_id]}): {said}.",
                remedy=Remedy("Compare the row with the pack or the record it was taken from."),
            )
