"""A statement that holds, and that a food business could not make.

Editorial speech is free to say what is true. A page that is later sponsored, or sold beside a product, is not:
this note says what the food law of the channel's markets would answer then.

Fails::

    title: Pear mash
    paid: editorial
    summary: Vitamin C contributes to the normal function of the immune system.

Passes::

    title: Pear mash
    paid: editorial
    summary: Never give honey before twelve months.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_claims import once, quoted
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "words"
LEVEL = "note"
SOURCES = ("eu-1924-2006", "us-21cfr101-13")


def check(dish: Dish) -> Iterator[Fault]:
    """A note for each statement kept in unbound speech that some market would refuse a business."""
    for judged in once(dish.claims):
        refused = [answer for answer in judged.allowed if answer.answer == "no" and not answer.bound]
        if not judged.stays or judged.claim.polarity in ("asks", "denies", "refutes") or not refused:
            continue
        why = next((answer.why for answer in refused if answer.why), "")
        markets = ", ".join(answer.market for answer in refused)
        yield Fault(
            judged.claim.span,
            f"{quoted(judged)} holds, but a food business could not say it ({markets}). {why}".rstrip(),
            sources=tuple(dict.fromkeys(answer.source for answer in refused if answer.source is not None)),
            claim=judged,
        )
