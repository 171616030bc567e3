"""A first food brings several common allergens in one bowl.

New allergens come one at a time and a little at first, so that a reaction can be told. A dish for a baby of six or
seven months with two or more of them is fine once each is known; the page says so. A note, never a ban: allergens
are not to be delayed either.

Fails::

    ages: 6-8 months
    foods:
      - 1 egg
      - 1 tsp smooth peanut butter
      - 2 tbsp whole milk
    steps:
      - Beat the egg with the milk and peanut butter.
      - Cook in a dry pan for 5 minutes until set firm.

Passes::

    ages: 6-8 months
    foods:
      - 1 egg
      - 1 ripe banana
    steps:
      - Mash the banana and beat in the egg.
      - Cook in a dry pan for 5 minutes until set firm.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.allergens import named_in
from spoonproof.feeding.wording import listed
from spoonproof.model.finding import Remedy, SourceRef

AREA = "baby"
LEVEL = "note"
SOURCES = ("nhs-allergies", "ascia-update")

_BEGINNER = 8  # months


def check(dish: Dish) -> Iterator[Fault]:
    """A note where a beginner's bowl holds two or more allergens of the channel's market."""
    if dish.recipe.youngest >= _BEGINNER:
        return
    mine = [one for one in dish.allergens if one.baby and one.how in ("present", "hidden") and one.allergen != "wheat"]
    words = [label.word for label in named_in(mine, dish.knowledge.feeding, dish.markets)]
    if len(words) > 1:
        yield Fault(
            dish.recipe.ages.span,
            f"For a beginner this bowl brings {listed(words)} at once.",
            bowl="baby",
            remedy=Remedy("Say that each is given on its own first; the calendar plans it."),
            sources=(
                SourceRef("nhs-allergies", "one at a time, in small amounts"),
                SourceRef("ascia-update", "one new common allergen in a meal"),
            ),
        )
