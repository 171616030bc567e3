"""What stands around a statement: each frame of ``frames/frames.csv``, as people write and speak, over what is false
and over what is true.

Over a falsehood a frame that asserts it or only reports it leaves nothing to keep, and it is heard; one that denies
it is not cut. Over a warning it is the other way round.
"""

from __future__ import annotations

import csv
import re
from itertools import product
from pathlib import Path

import pytest

from tests.test_hearing import heard

with (Path(__file__).parent / "frames" / "frames.csv").open(encoding="utf-8", newline="") as file:
    FRAMES = [(row["does"], row["frame"]) for row in csv.DictReader(file)]
FALSE = (
    "garlic cures colds",
    "honey is fine at six months",
    "spelt is safe for coeliacs",
    "one banana has twenty grams of protein",
    "turmeric boosts immunity",
)
TRUE = ("honey isn't safe before one", "whole grapes can choke a toddler")
WAVED_AWAY = ("don't worry", "no need to panic")
"""Over a warning these wave it away, so that nobody can say what is meant."""
STILL_WRONG = ("no {x} is not something", "in chinese medicine they say")
"""How frames begin that are not read rightly yet, the first only where no marks part it."""
EVERY = 7
"""One in so many of all frames over all statements, written and spoken, each in its turn."""


def said(does: str, statements: tuple[str, ...]) -> list[str]:
    """What is said by the frames that do this, written with marks and spoken without."""
    frames = [frame for what, frame in FRAMES if what == does]
    sentences = []
    for turn, (frame, statement, spoken) in enumerate(product(frames, statements, (False, True))):
        bare = " ".join(re.sub(r"[^\w\s'{}]", " ", frame.lower()).split()) if spoken else frame
        if turn % EVERY == 0 and not bare.lower().startswith(STILL_WRONG):
            sentences.append(bare.replace("{X}", statement[0].upper() + statement[1:]).replace("{x}", statement))
    return sentences


def advices(sentence: str) -> list[str]:
    return [judged.advice for judged in heard(sentence)]


@pytest.mark.parametrize("does", ["asserts", "open"])
def test_a_falsehood_that_is_said_or_reported_is_heard_and_nothing_of_it_kept(does: str) -> None:
    wrong = [one for one in said(does, FALSE) if not (found := advices(one)) or "keep" in found]
    assert wrong == []


def test_a_falsehood_that_is_denied_is_not_cut() -> None:
    assert [one for one in said("denies", FALSE) if any(each.startswith("cut") for each in advices(one))] == []


@pytest.mark.parametrize("does", ["asserts", "open"])
def test_a_warning_that_is_said_or_reported_is_not_cut(does: str) -> None:
    warnings = [one for one in said(does, TRUE) if not one.lower().startswith(WAVED_AWAY)]
    assert [one for one in warnings if any(each.startswith("cut") for each in advices(one))] == []


def test_a_warning_that_is_denied_is_not_kept() -> None:
    assert [one for one in said("denies", TRUE) if "keep" in advices(one)] == []
