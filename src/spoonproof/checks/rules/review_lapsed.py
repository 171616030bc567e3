"""A page still names a review, but what was reviewed has changed since.

A review is of one version: its foods, steps, ages, texture and statements. When any of these changes, the page may
not go on as if somebody had read over what stands there now; it says that it has changed.

Fails::

    review: {who: Marit, on: 2026-11-01, version: 00000000}

Passes::

    summary: Nobody has read this over yet, and nothing says so.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy
from spoonproof.model.version import reviewed_version

AREA = "page"
LEVEL = "note"
SOURCES = ()


def check(dish: Dish) -> Iterator[Fault]:
    """One fault when the version reviewed is not the one that stands there."""
    review = dish.recipe.review
    if review is None:
        return
    now = reviewed_version(dish.recipe)
    if review.version != now:
        yield Fault(
            review.span,
            f"The review is of version {review.version or 'unknown'}; what stands here now is version {now}.",
            remedy=Remedy(f"Have it read over again and write version: {now}, or take the review out."),
        )
