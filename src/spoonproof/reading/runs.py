"""Words of a text: their places, the runs of neighbouring words that closed lists are asked for, and names as a method
is compared with them (small letters, singular, spellings made one)."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from typing import TypeVar

from spoonproof.model.plural import singular

Token = tuple[int, int, str]
"""Start, end, and the word as it is compared."""

Tokens = Sequence[Token]
T = TypeVar("T")
_WORD = re.compile(r"[^\W\d_]+(?:[-‑'’][^\W\d_]+)*|(?<!\d)\d{1,6}%")


def tokens_of(text: str) -> list[Token]:
    """The words of ``text`` with their offsets, in small letters; what a hyphen joins is one word."""
    return [(m.start(), m.end(), m[0].lower().replace("’", "'").replace("‑", "-")) for m in _WORD.finditer(text)]


def side_by_side(places: Sequence[int]) -> Iterator[tuple[int, int]]:
    """The stretches of places of which each is one further than the place before: from where, to where."""
    begin = 0
    for index in range(1, len(places) + 1):
        if index == len(places) or places[index] != places[index - 1] + 1:
            yield begin, index
            begin = index


def begins_of(phrases: Iterable[str]) -> frozenset[str]:
    """The words that these phrases begin with: where a token is none of them, no run from it need be looked at."""
    return frozenset([phrase.partition(" ")[0] for phrase in phrases])


def runs_at(text: str, tokens: Tokens, at: int, longest: int, between: str) -> Iterator[Tokens]:
    """The runs that begin with token ``at``, longest first; only characters of ``between`` part the words."""
    end = at + 1
    while end < len(tokens) and end - at < longest and not text[tokens[end - 1][1] : tokens[end][0]].strip(between):
        end += 1
    for stop in range(end, at, -1):
        yield tokens[at:stop]


def listed(
    text: str, longest: int, begins: frozenset[str], meaning: Callable[[str], T | None], between: str = " \t"
) -> Iterator[tuple[int, int, T]]:
    """Where ``text`` has phrases of a closed list, and their ``meaning``: longest first, none over another."""
    tokens = tokens_of(text)
    at = 0
    while at < len(tokens):
        for run in runs_at(text, tokens, at, longest, between) if tokens[at][2] in begins else ():
            if (means := meaning(" ".join(token[2] for token in run))) is not None:
                yield run[0][0], run[-1][1], means
                at += len(run)
                break
        else:
            at += 1


WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?")
_SPELT = {"yogurt": "yoghurt", "yogurts": "yoghurt"}


@lru_cache(maxsize=4096)  # two hundred times a recipe, of a few names
def key_of(name: str) -> tuple[str, ...]:
    """The words of a name, each as compared."""
    return tuple(compared(m[0]) for m in WORD.finditer(name))


@lru_cache(maxsize=4096)  # a hundred times a recipe, of a few words
def compared(word: str) -> str:
    """One word in small letters, in the singular, without a possessive, spelt one way."""
    text = word.lower().replace("’", "'").removesuffix("'s")
    return _SPELT.get(text) or singular(text)
