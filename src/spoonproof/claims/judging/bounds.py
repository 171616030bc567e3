"""What stands before a number and makes a limit of it: "more than two", "at most five", "under a gram"."""

from __future__ import annotations

import re
from typing import Literal

from spoonproof.model.claim import Claim, Truth
from spoonproof.model.numbers import Estimate

Bound = Literal["least", "most", ""]

_REACH = 28  # characters before the claim: its own words may begin with the number
_NUMBER = r"(?:\d|an? |one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|half)"
_LEAST = re.compile(
    rf"\b(?:(?:more|greater) than|over|above|at least|no less than|not less than|upwards of) (?:the )?{_NUMBER}"
)
_MOST = re.compile(
    rf"\b(?:(?:less|fewer) than|under|below|at most|no more than|not more than|up to|a maximum of) (?:the )?{_NUMBER}"
)


def bound_of(claim: Claim) -> Bound:
    """Whether its number is said to be the least or the most there is; "" where it is said to be just that much."""
    text = claim.passage.text
    words = " ".join(f"{text[max(0, claim.start - _REACH) : claim.start]}{claim.quote}".lower().split())
    if _LEAST.search(words):
        return "least"
    return "most" if _MOST.search(words) else ""


def within(bound: Bound, limit: float, found: Estimate) -> tuple[Truth, str]:
    """The truth of a stated limit (in the unit of ``found``): true or false where the whole range lies on one side,
    unproven where the range straddles it."""
    above, below = found.low >= limit, found.high <= limit
    kept, broken = (above, below) if bound == "least" else (below, above)
    if kept:
        return "true", f"the computed range lies {'above' if above else 'below'} it"
    if broken:
        return "false", f"the computed range lies {'below' if below else 'above'} it"
    return "unproven", "the computed range straddles it"
