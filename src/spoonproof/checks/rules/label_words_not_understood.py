"""A "may contain" word is not understood.

What an author copies from a label goes to the page as a warning for allergic families. A word that stands for no
allergen here would be dropped in silence, and the warning with it.

Fails::

    foods:
      - {food: 300 g potatoes, may_contain: [sesamy]}
    steps:
      - Boil the potatoes for 25 minutes.

Passes::

    foods:
      - {food: 300 g potatoes, may_contain: [sesame, nuts]}
    steps:
      - Boil the potatoes for 25 minutes.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.allergens import of_text
from spoonproof.feeding.kinds import parts
from spoonproof.model.finding import Remedy

AREA = "baby"
LEVEL = "warning"
SOURCES = ("eu-1169-2011",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each label word that stands for no allergen."""
    for part in parts(dish.recipe.foods):
        for word in part.line.label:
            if not of_text(word, dish.knowledge.feeding):
                yield Fault(
                    part.line.span,
                    f"“{word}” under may_contain stands for no allergen that is known here.",
                    remedy=Remedy("Write the allergen itself: milk, egg, gluten, nuts, peanut, sesame, soya, fish ..."),
                )
