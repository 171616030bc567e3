"""A statement that says more than was shown.

There is something in it, and the words go further: high where it is a source, boosts where it contributes, a whole
food where a nutrient was studied. The remedy is the wording that stands.

Fails::

    title: Pear mash
    summary: This purée boosts immunity.

Passes::

    title: Pear mash
    summary: Vitamin C contributes to the normal function of the immune system.
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
    """A fault for each statement to be softened that has something in it."""
    yield from of_claims(dish, lambda judged: judged.advice == "soften" and judged.truth != "unproven")
