"""Foods that are salted in their making bring most of a day's salt to one portion.

Cheese, bread, ham and their kind count, though no salt is added: UK advice is less than 1 g a day in all up to 12
months and 2 g from one to three years. From half of it in one portion it is a note, from three quarters a warning,
and all of it is an error (common practice), for foods that are not called salty by themselves; what no table measures
is left out, so it is at least so much.

Fails::

    ages: 9-12 months
    makes: 2 x 120 g
    foods:
      - 200 g courgette, peeled, 1 cm dice
      - 60 g parmesan, finely grated
    steps:
      - Steam the courgette for 12 minutes, until it squashes.
      - Mash with the parmesan.

Passes::

    ages: 9-12 months
    makes: 2 x 120 g
    foods:
      - 200 g courgette, peeled, 1 cm dice
      - 10 g parmesan, finely grated
    steps:
      - Steam the courgette for 12 minutes, until it squashes.
      - Mash with the parmesan.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import salt_in_portion, salt_level, told_as_salty
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "baby"
LEVEL = "error"
SOURCES = ("fsa-salt",)

_NOTED = 0.5  # of the day's most in one portion (common practice)


def check(dish: Dish) -> Iterator[Fault]:
    """One fault, on the line that brings most."""
    told = told_as_salty(dish)
    brought: dict[int, float] = {}
    most = None
    for index, line in enumerate(dish.recipe.foods):
        record = dish.knowledge.foods.get(line.food) if line.food else None
        if record is None or index in told or "added-salt" not in record.traits:
            continue
        found = salt_in_portion(dish, record.id)
        if found is not None:
            brought[index], most = found
    salt = sum(brought.values())
    if most is None or salt < _NOTED * most:
        return
    line = dish.recipe.foods[max(brought, key=lambda index: brought[index])]
    names = ", ".join(dish.recipe.foods[index].name for index in brought)
    yield Fault(
        line.name_span,
        f"A portion holds at least {salt:.2g} g of salt from {names}: {100 * salt / most:.0f} % of the {most:g} g "
        "that is the most for a whole day.",
        salt_level(salt / most),
        bowl="baby",
        remedy=Remedy("Use less of it, or one with less salt, and keep the day's other meals free of salty foods."),
        sources=(SourceRef("fsa-salt", "less than 1 g a day up to 12 months, 2 g from one to three years"),),
    )
