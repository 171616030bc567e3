"""The weight of a food can't be worked out from its line.

Every figure of the dish is then "at least", and what a portion holds is anyone's guess. A food that is added to
taste is left alone: its amount is the cook's.

Fails::

    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 1 jar garam masala
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes with the garam masala.

Passes::

    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - 1 pinch garam masala
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes with the garam masala.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each line that names a food of the table and has an amount nothing weighs."""
    for part in dish.facts.ingredients:
        line = dish.recipe.foods[part.line]
        if not part.why or part.food is None or line.amount is None or line.amount.to_taste:
            continue
        text = f"{part.why[0].upper()}{part.why[1:]}."
        yield Fault(line.amount.span, text, remedy=Remedy("Weigh it once, and write the grams."))
