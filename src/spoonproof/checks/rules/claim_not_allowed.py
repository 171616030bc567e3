"""A statement that may not be made in paid speech.

True or not, the food law of the markets does not let commercial speech say it: illness, children's health without an
authorised claim, nutrients of food for under-twos in the US. Editorial speech is shown the answer and not scolded.

Fails::

    title: Pear mash
    paid: sponsored
    summary: Vitamin C contributes to the normal function of the immune system.

Passes::

    title: Pear mash
    paid: editorial
    summary: Vitamin C contributes to the normal function of the immune system.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_claims import of_claims
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "words"
LEVEL = "error"
SOURCES = ("eu-1924-2006", "eu-1169-2011", "us-21cfr101-13")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each statement that a market which binds this speech refuses."""
    yield from of_claims(dish, lambda judged: judged.advice == "cut-not-allowed")
