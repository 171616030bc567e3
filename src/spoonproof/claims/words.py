"""Comparing words plainly: lower case, one space, no punctuation. Linear in the text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

_NOT_WORD = re.compile(r"[^a-z0-9%']+")
_QUOTES = str.maketrans({"’": "'", "‘": "'", "“": " ", "”": " ", "é": "e", "è": "e", "ï": "i"})


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """``text`` in lower case with single spaces for all that is no letter, digit, % or apostrophe;
    one space at both ends, so that " word " finds whole words."""
    return f" {_NOT_WORD.sub(' ', text.lower().translate(_QUOTES)).strip()} "


def has_word(words: str, phrase: str) -> bool:
    """Whether a phrase stands as whole words in what ``plain`` gave; a trailing * matches any ending."""
    wanted = plain(phrase.rstrip("*"))
    if phrase.endswith("*"):
        return wanted[:-1] in words
    return wanted in words


def has_any(words: str, phrases: Sequence[str]) -> bool:
    """Whether any of the phrases stands in what ``plain`` gave (see ``has_word``)."""
    for wanted in _wanted(tuple(phrases)):  # noqa: SIM110 - half a million times in a hundred recipes
        if wanted in words:
            return True
    return False


@lru_cache(maxsize=4096)
def _wanted(phrases: tuple[str, ...]) -> tuple[str, ...]:
    """What to look for: lists of phrases are few and asked for again and again."""
    return tuple(plain(p.rstrip("*"))[: -1 if p.endswith("*") else None] for p in phrases)


def slug(text: str) -> str:
    """Words as an id: "chia seeds" gives "chia-seeds"."""
    return plain(text).strip().replace("'", "").replace("%", "").replace(" ", "-")


def singular(word: str) -> str:
    """A plain guess at the singular of an id's last word, for matching subjects."""
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("oes", "shes", "ches", "xes")):
        return word[:-2]
    if word.endswith("s") and not word.endswith(("ss", "us")):
        return word[:-1]
    return word
