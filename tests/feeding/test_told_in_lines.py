"""Dangers told in one line, each beside a safe line in nearly the same words, and several in one story or film.

``told/lines-*.tsv``: D or S (a danger, or safe), the class of danger, the line; each line is a film of its own.
``told/several-*.txt``: under ``## name story`` or ``## name film`` a text whose dangers stand between double square
brackets; a film is heard, a story is heard and also checked as a recipe's. All were written before anything was run
on them; the rest of each text is sound advice, of which none is to be cut.
"""

from __future__ import annotations

import csv
import re
from pathlib import Path
from typing import NamedTuple

from spoonproof.checks.engine import check_dish
from spoonproof.hearing import hear
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

_FOLDER = Path(__file__).parent / "told"
_HEAD = re.compile(r"^## (\S+) (story|film)\n", re.MULTILINE)
_SERIOUS = ("safety-age", "allergen")


class Line(NamedTuple):
    """One line, and whether it has a danger."""

    danger: bool
    about: str
    text: str


class Several(NamedTuple):
    """A text without its marks, and where its dangers stand."""

    name: str
    kind: str
    text: str
    dangers: tuple[tuple[int, int], ...]


def _lines() -> list[Line]:
    found = []
    for path in sorted(_FOLDER.glob("lines-*.tsv")):
        with path.open(encoding="utf-8") as file:
            rows = csv.reader(file, delimiter="\t", quoting=csv.QUOTE_NONE)
            found += [Line(sort == "D", about, text) for sort, about, text in rows]
    return found


def _several() -> list[Several]:
    found = []
    for path in sorted(_FOLDER.glob("several-*.txt")):
        parts = _HEAD.split(path.read_text(encoding="utf-8"))[1:]
        for name, kind, body in zip(parts[::3], parts[1::3], parts[2::3], strict=True):
            text, places = "", []
            for at, piece in enumerate(re.split(r"\[\[|\]\]", body.strip())):
                if at % 2:
                    places.append((len(text), len(text) + len(piece)))
                text += piece
            found.append(Several(f"{path.stem}-{name}", kind, text, tuple(places)))
    return found


def _heard(text: str) -> list[tuple[int, int]]:
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text))
    return [
        (one.claim.span.start, one.claim.span.end)
        for one in hear(passages, known, known.judge_without_dish(None, (), None))
        if one.claim.kind in _SERIOUS and one.advice.startswith("cut")
    ]


def _checked(text: str) -> list[tuple[int, int]]:
    whole, _ = kitchen.whole_recipe("title: A plain bowl\nages: 7-9 months\n")
    whole = whole.removesuffix("A story.\n")
    return [
        (finding.span.start - len(whole), finding.span.end - len(whole))
        for finding in check_dish(kitchen.dish(whole + text + "\n", "markets: [GB, EU, US]\n"))
        if finding.span is not None and finding.span.start >= len(whole)
        if finding.area == "baby" and finding.level != "note"
    ]


LINES, SEVERAL = _lines(), _several()


@each("line", [one for one in LINES if one.danger])
def test_a_danger_in_one_line_is_heard(line: Line) -> None:
    assert _heard(line.text)


@each("line", [one for one in LINES if not one.danger])
def test_its_safe_twin_is_left_alone(line: Line) -> None:
    assert _heard(line.text) == []


@each("told", SEVERAL)
def test_each_of_several_dangers_is_heard_and_nothing_else(told: Several) -> None:
    for found in (_heard(told.text), *([_checked(told.text)] if told.kind == "story" else [])):
        missed = [
            told.text[start:end]
            for start, end in told.dangers
            if not any(one[0] < end and start < one[1] for one in found)
        ]
        beside = [
            told.text[slice(*one)]
            for one in found
            if not any(one[0] < end and start < one[1] for start, end in told.dangers)
        ]
        assert (missed, beside) == ([], [])
