"""A food that the steps divide: "mash half of the grapes", then "top with the rest of the grapes".

What is done to a part of a food is not done to its rest: the rest is judged by what is done to it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from spoonproof.feeding.step_words import CLAUSE
from spoonproof.feeding.words import keys, words

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

# "keeping a few whole", "keep back some of the grapes", "set a handful aside"
_KEPT = re.compile(
    r"\b(?:keep|kept|leav|left|sav|hold|reserv|set|put)\w*\b(?: back| aside| out)?"
    r" (?:a (?:few|couple|handful)|some|half|one or two|two or three)\b",
    re.I,
)
# "keep back a few to drop on top", "leave some whole": of what, the sentence before says
_UNNAMED = re.compile(r" ?(?:[,;.]|$|(?:back|aside|whole|out|over|to|for)\b(?! (?:of )?the\b))", re.I)
_BACK = re.compile(r"\b(?:back|aside|reserv\w*|sav\w*|whole|for the top|to top|on top|to decorate)\b", re.I)
_SERVED = re.compile(
    r"\bwhole\b|\b(?:for|on|to) (?:the )?(?:top|decorat\w+)\b|\b(?:those|ones|kept|reserved|saved)\b", re.I
)
_FOR_OTHERS = re.compile(r"\b(?:you|your|yours|yourself|us|ours|grown[- ]?ups?|adults?|family|cook)\b", re.I)
_CUT = re.compile(
    r"\b(?:quarter|halv|slic|chop|cut|squash|flatten|mash|blend|crush|grat|minc)(?:e|es|ed|ing|s)?\b", re.I
)
_THOSE = re.compile(r"\b(?:kept|reserved|saved|set aside|those|them all|everything|it all)\b", re.I)


def kept_back(texts: Iterable[str], names: frozenset[str]) -> tuple[bool, bool]:
    """Whether steps keep a few of the food of these ``names`` from what is done to it and serve them, nothing done to
    those kept; and whether they are kept before the food is cut."""
    whole = " ".join(texts)
    for match in _KEPT.finditer(whole):
        end = re.search(r"[.;]|$", whole[match.end() :])
        assert end is not None  # the end of the text will do
        clause = whole[match.start() : match.end() + end.start()]
        start = max(whole.rfind(".", 0, match.start()), whole.rfind(";", 0, match.start())) + 1
        said = whole[start : match.start()] + clause
        if _UNNAMED.match(whole, match.end()) and _plural(whole[:start].rstrip(" .;"), names):
            said = " ".join((said, *names))
        if not names & keys(said) or not _BACK.search(clause) or _FOR_OTHERS.search(clause):
            continue
        after = whole[match.end() :]
        clauses = [one.group() for one in CLAUSE.finditer(after)]
        if not _SERVED.search(clause + after) or any(_CUT.search(one) and _THOSE.search(one) for one in clauses):
            continue
        return True, _CUT.search(whole[: match.start()]) is None
    return False, False


def _plural(before: str, names: frozenset[str]) -> bool:
    """Whether the sentence that ``before`` ends with speaks of several of the food: "squash the blueberries"."""
    last = before[max(before.rfind("."), before.rfind(";")) + 1 :]
    return any(word.key in names and word.plain.endswith("s") for word in words(last))


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
