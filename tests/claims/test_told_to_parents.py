"""What parents are told of feeding, 100 falsehoods and 100 sound statements of guidance and of what is in food
(``frames/told_to_parents.csv``), each in the frames of ``frames/around_tales.csv``, written and spoken.

What is false and said or reported leaves nothing to keep, and is not cut where it is denied; what is sound is not cut
where it is said, and not kept where it is denied.
"""

from __future__ import annotations

import csv
import re
from itertools import product
from pathlib import Path

import pytest

from tests.test_hearing import heard

FOLDER = Path(__file__).parent / "frames"


def rows(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


STATEMENTS = rows("told_to_parents.csv")
FRAMES = rows("around_tales.csv")
EVERY = 409
"""One in so many of all statements in all frames, written and spoken."""
STILL_WRONG = ("it took me three children to learn that babies only need", "here's what they never tell new mums ")
"""How sentences begin that are not read rightly yet, the second only where no marks part it."""


def said(holds: str, does: tuple[str, ...]) -> list[str]:
    """What is said of statements that hold or don't, in frames that do one of these."""
    frames = [row["frame"] for row in FRAMES if row["does"] in does]
    statements = [row["statement"] for row in STATEMENTS if row["holds"] == holds]
    found = []
    for turn, (statement, frame, spoken) in enumerate(product(statements, frames, (False, True))):
        bare = " ".join(re.sub(r"[^\w\s'{}]", " ", frame.lower()).split()) if spoken else frame
        sentence = bare.replace("{X}", statement[0].upper() + statement[1:]).replace("{x}", statement)
        if turn % EVERY == 0 and not sentence.lower().startswith(STILL_WRONG):
            found.append(sentence)
    return found


def advices(sentence: str) -> list[str]:
    return [judged.advice for judged in heard(sentence)]


@pytest.mark.parametrize(
    ("holds", "does"), [("no", ("asserts", "open")), ("yes", ("denies",))], ids=["false", "sound but denied"]
)
def test_nothing_of_it_is_kept(holds: str, does: tuple[str, ...]) -> None:
    assert [one for one in said(holds, does) if "keep" in advices(one)] == []


@pytest.mark.parametrize(
    ("holds", "does"), [("yes", ("asserts", "open")), ("no", ("denies",))], ids=["sound", "false but denied"]
)
def test_nothing_of_it_is_cut(holds: str, does: tuple[str, ...]) -> None:
    assert [one for one in said(holds, does) if any(each.startswith("cut") for each in advices(one))] == []
