"""Comparing words plainly: lower case, one space, no punctuation. Linear in the text."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

_NOT_WORD = re.compile(r"[^a-z0-9%']+")
_SIMPLE = re.compile(r"(?!n't)[a-z0-9%']+(?: [a-z0-9%']+)*")  # spelled as it is written
_QUOTES = str.maketrans({"’": "'", "‘": "'", "“": " ", "”": " ", "é": "e", "è": "e", "ï": "i"})


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """``text`` in lower case with single spaces for all that is no letter, digit, % or apostrophe;
    one space at both ends, so that " word " finds whole words."""
    low = text.lower()
    if low.isascii() and low.replace(" ", "").isalnum() and "  " not in low:
        return f" {low.strip()} "  # most words: there is nothing to take out
    return f" {_NOT_WORD.sub(' ', low.translate(_QUOTES)).strip()} "


def has_word(words: str, phrase: str) -> bool:
    """Whether a phrase stands as whole words in what ``plain`` gave; a trailing * matches any ending, a leading
    "n't" the end of any word."""
    return _spelled(phrase) in words


@lru_cache(maxsize=4096)
def _spelled(phrase: str) -> str:
    """What stands for a phrase in what ``plain`` gave."""
    wanted = plain(phrase.rstrip("*"))
    return wanted[phrase.startswith("n't") : -1 if phrase.endswith("*") else None]


def has_any(words: str, phrases: Sequence[str]) -> bool:
    """Whether any of the phrases stands in what ``plain`` gave (see ``has_word``)."""
    if not phrases:
        return False
    begins, open_ended = _wanted(tuple(phrases))
    for wanted in open_ended:  # in plain loops: half a million times in a hundred recipes
        if wanted in words:
            return True
    for first in begins.keys() & _words_of(words):
        for phrase in begins[first]:
            if _spelled(phrase) in words:
                return True
    return False


@lru_cache(maxsize=4096)
def _wanted(phrases: tuple[str, ...]) -> tuple[dict[str, list[str]], tuple[str, ...]]:
    """What to look for: lists of phrases are few and asked for again and again. Those that hold a whole word, as a rule
    most of a hundred, by the first one, and spelled out only where that stands; the others as they are spelled."""
    begins: dict[str, list[str]] = {}
    open_ended: list[str] = []
    for phrase in phrases:
        if _SIMPLE.fullmatch(phrase):
            begins.setdefault(phrase.partition(" ")[0], []).append(phrase)
        elif (found := _spelled(phrase)).count(" ") > 1:
            begins.setdefault(found.split(" ")[1], []).append(phrase)
        else:
            open_ended.append(found)
    return begins, tuple(open_ended)


def first_words(phrases: Sequence[str]) -> frozenset[str]:
    """The words that ``phrases`` begin with, one of which a text holds in which any of them stands; none where there
    is a phrase that may begin with another ("immun*")."""
    begins, open_ended = _wanted(tuple(phrases))
    return frozenset() if open_ended else frozenset(begins)


@lru_cache(maxsize=256)  # those of a few claims: what is asked again is asked soon
def _words_of(words: str) -> frozenset[str]:
    return frozenset(words.split(" "))


def plains(phrases: Sequence[str]) -> Sequence[str]:
    """``plain`` of each of these."""
    return _plains(tuple(phrases))


@lru_cache(maxsize=1024)
def _plains(phrases: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(plain(phrase) for phrase in phrases)


def slug(text: str) -> str:
    """Words as an id: "chia seeds" gives "chia-seeds"."""
    return plain(text).strip().replace("'", "").replace("%", "").replace(" ", "-")


def is_many(name: str) -> bool:
    """Whether a name ends as a plural does: "lentils", not "cress" or "couscous"."""
    return name.endswith("s") and not name.endswith(("ss", "us"))
