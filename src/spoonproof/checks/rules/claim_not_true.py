"""A statement that is not true.

Whoever believes it feeds a baby by it. What can be computed is computed on the dish as eaten; the rest is held against
the register's evidence. Denying a true danger is untrue too.

Fails::

    title: Pear mash
    summary: Honey is perfectly fine from eight months.

Passes::

    title: Pear mash
    summary: Never give honey before twelve months.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_claims import of_claims
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "words"
LEVEL = "error"
SOURCES = ("eu-1169-2011", "nhs-avoid")
OPEN = ("unproven", "unlisted")  # cut because nothing shows it: the rules of that name tell


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each statement that is false."""
    yield from of_claims(dish, lambda judged: judged.advice == "cut-untrue" and judged.truth not in OPEN)
