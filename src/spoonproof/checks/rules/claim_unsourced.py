"""A statement that nothing here knows.

It may be right: then a source says so. On safety or an illness, silence is not an option.

Fails::

    title: Pear mash
    summary: Rice strengthens the lungs.

Passes::

    title: Pear mash
    summary: Pears taste of autumn.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_claims import of_claims
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "words"
LEVEL = "warning"
SOURCES = ("eu-1924-2006",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each statement that is on no list."""
    yield from of_claims(
        dish,
        lambda judged: (
            (judged.advice == "source-it" and judged.truth != "unproven")
            or (judged.advice == "cut-untrue" and judged.truth == "unlisted")
        ),
    )
