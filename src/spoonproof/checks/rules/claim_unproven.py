"""A statement that neither the evidence nor the numbers settle.

An input that is missing, a range that straddles the threshold, a percentage of nobody knows what, an effect that trials
did not find: none of it may pass as fine.

Fails::

    title: Pear mash
    summary: A real superfood.

Passes::

    title: Pear mash
    summary: Soft pear on a spoon.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_claims import of_claims
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "words"
LEVEL = "warning"
SOURCES = ("eu-1924-2006", "efsa-2010-1489")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each statement that is not settled."""
    told = ("soften", "source-it", "cut-untrue")
    yield from of_claims(dish, lambda judged: judged.truth == "unproven" and judged.advice in told)
