"""A food that the steps divide: "mash half of the grapes", then "top with the rest of the grapes".

What is done to a part of a food is not done to its rest: the rest is judged by what is done to it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from spoonproof.feeding.step_words import CLAUSE
from spoonproof.feeding.words import keys

_PART = re.compile(
    r"\b(?:half|most|some|part|a (?:few|third|quarter|handful|couple)|two[- ]thirds|three[- ]quarters)\b"
    r"(?: of)?(?: the| your| those)? (?P<what>[\w-]+(?: [\w-]+)?)",
    re.I,
)
_REST = re.compile(
    r"\b(?:rest|remainder|remaining|others?|last few|left[- ]?overs?)\b"
    r"(?: of)?(?: the| your)? (?P<what>[\w-]+(?: [\w-]+)?)",
    re.I,
)


def divided(texts: Iterable[str], names: frozenset[str]) -> bool:
    """Whether steps treat a part of the food of these ``names`` and name its rest."""
    texts = tuple(texts)
    return any(_of(_REST, text, names) for text in texts) and any(_of(_PART, text, names) for text in texts)


def of_a_part(clause: str, names: frozenset[str]) -> bool:
    """Whether a clause speaks of a part of the food and not of its rest."""
    return _of(_PART, clause, names) and not _of(_REST, clause, names)


@lru_cache(maxsize=4_000)
def without_parts(text: str, names: frozenset[str]) -> str:
    """A step's words without its clauses on a part of the food, and without what goes on about that part."""
    found = [match.group() for match in CLAUSE.finditer(text)]
    kept: list[str] = []
    part = False
    for clause in found:
        part = of_a_part(clause, names) or (part and not names & keys(clause))
        if not part:
            kept.append(clause)
    return ". ".join(kept)


def _of(pattern: re.Pattern[str], text: str, names: frozenset[str]) -> bool:
    return any(names & keys(match["what"]) for match in pattern.finditer(text))
