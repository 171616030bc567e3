"""A recipe is a food of itself, or a chain of recipes is too long to follow.

What is in it, and its allergens with it, can't be worked out: the soup needs the stock that needs the soup.

Fails::

    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - {recipe: bowl-1, amount: 100 g}
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes.

Passes::

    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.foods.facts import DEEPEST
from spoonproof.model.finding import Remedy

AREA = "cooking"
LEVEL = "error"
SOURCES = ("common-practice",)


def check(dish: Dish) -> Iterator[Fault]:
    """One fault, at the line where the circle or the chain begins."""
    chain = dish.facts.chain
    if not chain:
        return
    line = next((line for line in dish.recipe.foods if line.recipe and line.recipe in chain), None)
    span = line.span if line is not None else dish.recipe.document.whole
    if len(set(chain)) < len(chain):
        text = f"These recipes go round in a circle: {' needs '.join(chain)}."
    else:
        text = f"More than {DEEPEST} recipes stand one inside another, from {chain[0]} to {chain[-1]}."
    yield Fault(span, text, remedy=Remedy("Write the foods of one of them out here instead."))
