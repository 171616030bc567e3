"""English inflection of kitchen verbs, made once when the verb table is built."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal

Kind = Literal["base", "s", "ing", "past", "phrase"]

_VOWELS = "aeiou"
_IRREGULAR = ("cut", "put", "set", "spread", "let", "sit", "stand", "freeze", "grind", "tear", "beat", "break", "take")

_PARTICLES = frozenset(
    (
        *(
            "in",
            "out",
            "up",
            "on",
            "off",
            "down",
            "over",
            "into",
            "through",
            "away",
            "together",
            "well",
            "aside",
            "the",
        ),
        *("roughly", "apart", "with", "slightly", "and", "back", "under", "between", "finely", "to"),
    )
)


def inflections(base: str) -> Iterator[tuple[str, Kind]]:
    """All forms of ``base``; of a phrase ("stir in") its first word is inflected, of a compound verb that
    ends on the verb ("slow cook") its last. Irregular participles are not made: the table lists them.
    """
    head, _, tail = base.partition(" ")
    if tail and tail.split()[0] not in _PARTICLES:
        head, tail = base.rpartition(" ")[2], ""
        prefix, suffix = base[: len(base) - len(head)], ""
    else:
        prefix, suffix = "", f" {tail}" if tail else ""
    yield base, "base"
    yield f"{prefix}{_s(head)}{suffix}", "s"
    yield f"{prefix}{_ing(head)}{suffix}", "ing"
    if head not in _IRREGULAR:
        yield f"{prefix}{_ed(head)}{suffix}", "past"


def _s(word: str) -> str:
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return word + "es"
    if word.endswith("y") and word[-2] not in _VOWELS:
        return word[:-1] + "ies"
    return word + "s"


def _ing(word: str) -> str:
    if word.endswith("e") and not word.endswith(("ee", "ée", "oe")):
        return word[:-1] + "ing"
    return _doubled(word) + "ing"


def _ed(word: str) -> str:
    if word.endswith("e"):
        return word + "d"
    if word.endswith("y") and word[-2] not in _VOWELS:
        return word[:-1] + "ied"
    return _doubled(word) + "ed"


def _doubled(word: str) -> str:
    """The last consonant doubled where spelling asks for it: chop, chopped; steam, steamed."""
    if len(word) < 3 or word[-1] in _VOWELS + "wxyéh" or len(re.findall("[aeiouyé]+", word)) > 1:
        return word  # verbs of two syllables are stressed on the first here: season, simmer, quarter
    short = word[-2] in _VOWELS and word[-3] not in _VOWELS
    return word + word[-1] if short else word
