"""A true statement that needs a caution beside it.

Early peanut lowers the risk of allergy, and a baby with severe eczema sees a doctor first; a figure needs its basis.
Said without that it misleads.

Fails::

    title: Pear mash
    summary: Introduce peanut butter early to prevent peanut allergy.

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
SOURCES = ("espghan-2017", "leap-2015")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each statement to which something must be added."""
    yield from of_claims(dish, lambda judged: judged.advice == "add")
