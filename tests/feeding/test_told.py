"""Dangers told in a recipe's story or over a film, by many tellers, each with a safe telling in nearly the same words.

In ``told/*.txt`` a text begins with ``## name kind D|S``: a story stands under a recipe, a film is heard alone; D has
one danger, told between double square brackets, S none. All were written before anything was run on them.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import NamedTuple

from spoonproof.checks.engine import check_dish
from spoonproof.hearing import hear
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

_HEAD = re.compile(r"^## (\S+) (story|film) ([DS])\n", re.MULTILINE)
_PLANTED = re.compile(r"\[\[(.*?)\]\]", re.DOTALL)
_SERIOUS = ("safety-age", "allergen", "disease")


class Told(NamedTuple):
    """A text without its marks, and where its danger stands (None: it has none)."""

    name: str
    kind: str
    text: str
    danger: tuple[int, int] | None


def _read() -> list[Told]:
    found = []
    for path in sorted((Path(__file__).parent / "told").glob("*.txt")):
        parts = _HEAD.split(path.read_text(encoding="utf-8"))[1:]
        for name, kind, sort, body in zip(parts[::4], parts[1::4], parts[2::4], parts[3::4], strict=True):
            planted = _PLANTED.search(body)
            assert (planted is not None) == (sort == "D"), name
            at = (planted.start(), planted.end() - 4) if planted else None
            text = body.replace("[[", "").replace("]]", "").rstrip("\n")
            found.append(Told(f"{path.stem}-{name}", kind, text, at))
    return found


def _dangers(told: Told) -> list[tuple[int, int]]:
    """Where a danger is found in the text."""
    if told.kind == "story":
        whole, _ = kitchen.whole_recipe("title: A plain bowl\nages: 7-9 months\n")
        whole = whole.removesuffix("A story.\n")
        made = kitchen.dish(whole + told.text + "\n", "markets: [GB, EU, US]\n")
        return [
            (finding.span.start - len(whole), finding.span.end - len(whole))
            for finding in check_dish(made)
            if finding.span is not None
            and finding.span.start >= len(whole)
            and finding.level != "note"
            and (finding.area == "baby" or (finding.level == "error" and told.danger is not None))
        ]
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", told.text))
    return [
        (one.claim.span.start, one.claim.span.end)
        for one in hear(passages, known, known.judge_without_dish(None, (), None))
        if one.claim.kind in _SERIOUS and (one.advice.startswith("cut") or (one.advice != "keep" and told.danger))
    ]


TOLD = _read()


@each("told", [one for one in TOLD if one.danger])
def test_a_danger_told_is_found_where_it_is_told(told: Told) -> None:
    assert told.danger is not None
    start, end = told.danger
    assert [one for one in _dangers(told) if one[0] < end and start < one[1]]


@each("told", [one for one in TOLD if not one.danger])
def test_safe_talk_raises_none(told: Told) -> None:
    assert _dangers(told) == []


def test_there_are_many_of_both() -> None:
    assert sum(one.danger is None for one in TOLD) >= 14 and sum(one.danger is not None for one in TOLD) >= 16
