"""Solid food is offered before a baby is ready for it.

Never before four months; UK and WHO advice is around six. A page for four or five months sends the reader to a health
professional first.

Fails::

    ages: 3-5 months

Passes::

    ages: 6-8 months
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "baby"
LEVEL = "error"
SOURCES = ("espghan-2017", "nhs-safe-weaning")

_NEVER = 4
_USUAL = 6


def check(dish: Dish) -> Iterator[Fault]:
    """A fault where the ages begin before six months: an error before four."""
    ages = dish.recipe.ages
    if ages.low < _NEVER:
        yield Fault(
            ages.span,
            f"These ages begin at {ages.low} months: no solid food before four months.",
            bowl="baby",
            remedy=Remedy("Begin at around six months."),
            sources=(SourceRef("espghan-2017", "not before four months"),),
        )
    elif ages.low < _USUAL:
        yield Fault(
            ages.span,
            f"These ages begin at {ages.low} months: UK and WHO advice is around six months, with a health "
            "professional's advice before that.",
            "warning",
            bowl="baby",
            remedy=Remedy("Begin at six months, or say that a health professional is asked first."),
            sources=(
                SourceRef("espghan-2017", "between four and six months"),
                SourceRef("nhs-safe-weaning", "solid foods from around 6 months"),
            ),
        )
