"""Typed talk without marks: its lines are breaths of their own, unless the text is wrapped or cut into captions."""

from __future__ import annotations

import textwrap

import pytest

from spoonproof.claims.find import find_claims
from spoonproof.claims.sentences import lines_apart
from spoonproof.model.text import Document, Passage
from spoonproof.reading.speech import read_statements
from tests.kitchen import knowledge

TALK = [
    "so this is our porridge with stewed apricots and she is eleven months today",
    "soak the apricots overnight and simmer them until they fall apart",
    "I use whole milk because she likes it creamy",
    "her brother had his with a knob of butter and he ate two bowls",
    "buckwheat holds magnesium",
    "stir it now and then or it will catch on the bottom",
    "let it cool down and taste it before she does",
    "we eat it on the balcony when the sun is out",
]


def heard(lines: list[str]) -> Passage:
    (passage,), _ = read_statements(Document("talk.txt", "\n".join(lines)))
    return passage


def words_in_lines(count: int) -> list[str]:
    words = " ".join(TALK).split()
    return [" ".join(words[at : at + count]) for at in range(0, len(words), count)]


def test_lines_of_talk_are_apart() -> None:
    passage = heard(TALK)
    starts = lines_apart(passage, knowledge().lexicon.breaths)
    begun = [piece.at for piece in passage.pieces][1:]
    assert set(starts) <= set(begun)
    assert len(starts) >= len(begun) - 1, "one may run on, where its words alone don't end a sentence"


@pytest.mark.parametrize("lines", [textwrap.wrap(" ".join(TALK), 42), *map(words_in_lines, (5, 7, 9, 12))])
def test_lines_that_break_anywhere_run_on(lines: list[str]) -> None:
    assert lines_apart(heard(lines), knowledge().lexicon.breaths) == []


def test_a_claim_keeps_to_its_line() -> None:
    (claim,) = find_claims([heard(TALK)], knowledge().lexicon)
    assert claim.subjects == ("buckwheat",)
    assert claim.passage.text[claim.start : claim.end] == "buckwheat holds magnesium"


def test_a_line_that_breaks_after_a_small_word_runs_on() -> None:
    broken = [*TALK[:4], "buckwheat is rich in", "magnesium", *TALK[5:]]
    (claim,) = find_claims([heard(broken)], knowledge().lexicon)
    assert claim.subjects == ("buckwheat",) and "magnesium" in (claim.relates_to or "")
