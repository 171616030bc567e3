"""Dangers told in words, by grids: each way of telling over many deeds or foods, and cells whose parts are combined.

``told/grids/*.txt``: frames (D or S: a danger, or safe), an empty line, and what they are said of: a deed in its forms
(do, doing, did) or a food. ``cells.txt``: D or S, and parts that are read one after another, each of several wordings.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from pathlib import Path

from spoonproof.hearing import hear
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

_GRIDS = Path(__file__).parent / "told" / "grids"
_FRAMED = ("at-eight-months", "deeds", "foods", "tales")
STILL_WRONG = frozenset((_GRIDS / "still-wrong.txt").read_text(encoding="utf-8").splitlines())
"""Lines that are not read rightly yet."""
EVERY = 47
"""One in so many of all lines, each in its turn."""


def _framed(path: Path) -> Iterator[tuple[str, str]]:
    frames, said_of = path.read_text(encoding="utf-8").strip().split("\n\n")
    for one, frame in product(said_of.split("\n"), frames.split("\n")):
        sort, words = frame.split("\t")
        names = ("do", "doing", "did") if "\t" in one else ("food",)
        forms = dict(zip(names, one.split("\t"), strict=True))
        yield sort, words.format(**forms, **{key.title(): _begun(form) for key, form in forms.items()})


def _cells(path: Path) -> Iterator[tuple[str, str]]:
    for line in path.read_text(encoding="utf-8").splitlines():
        sort, *parts = line.split("\t")
        for said in product(*[part.split(" / ") for part in parts]):
            yield sort, _begun(" ".join(one for one in said if one) + ".")


def _begun(words: str) -> str:
    return words[:1].upper() + words[1:]


def _lines(sort: str) -> list[str]:
    found = [*(one for name in _FRAMED for one in _framed(_GRIDS / f"{name}.txt")), *_cells(_GRIDS / "cells.txt")]
    return [said for which, said in found[::EVERY] if which == sort and said not in STILL_WRONG]


def _cut(said: str) -> list[str]:
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", said))
    judged = hear(passages, known, known.judge_without_dish(None, (), None), apart=True, for_babies=True)
    return [one.claim.quote for one in judged if one.advice.startswith("cut")]


@each("said", _lines("D"))
def test_a_danger_is_heard_however_it_is_told(said: str) -> None:
    assert _cut(said)


@each("said", _lines("S"))
def test_what_warns_refuses_or_is_somebody_elses_is_left_alone(said: str) -> None:
    assert _cut(said) == []
