"""A recipe is for children older than any that the channel cooks for.

Most often a slip of the pen: "99 months" where nine were meant. What a baby must not have is asked of the age that
stands there, so an age too high lets everything pass.

Fails::

    ages: 99 months

Passes::

    ages: from 9 months
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "baby"
LEVEL = "warning"
SOURCES = ("common-practice",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault where the ages begin after the channel's have ended."""
    ages, oldest = dish.recipe.ages, dish.channel.ages[1]
    if oldest is not None and ages.low > oldest:
        yield Fault(
            ages.span,
            f"These ages begin at {ages.low} months, and this channel cooks for children up to {oldest} months. What a "
            "baby must not have is judged by this age.",
            bowl="baby",
            remedy=Remedy("Write the age that is meant, or widen ages in channel.yaml."),
            sources=(SourceRef("common-practice", basis="common-practice"),),
        )
