"""The report a person reads at a terminal."""

from __future__ import annotations

import io
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.text import Document, Span
from spoonproof.report.terminal import MOST_SHOWN, printable, report, summary, wants_colour
from tests.report.findings import SOURCES, honey

EXPECTED = """\

THE BABY

recipes/a b.md:3:12  error  food-not-yet  · baby's bowl
      - 1 tbsp honey, 100 % raw
               ▔▔▔▔▔
    honey, 100 %: not yet not even cooked
    To put it right: Leave it out.
    also recipes/a b.md:1:1  said here too
    Source: NHS, Food and drinks to avoid; honey"""


def test_the_line_is_shown_and_the_span_marked() -> None:
    assert "\n".join(report([honey()], SOURCES)) == EXPECTED.replace("not yet not even", "not yet\\x0anot even")


def test_content_never_steers_the_terminal() -> None:
    nasty = Document("recipes/x.md", "title: \x1b[2J\x1b]8;;http://evil\x07bowl\u202e\n")
    lines = "\n".join(report([replace(honey(), document=nasty, span=Span(7, 10), related=(), remedy=None)], SOURCES))
    assert "\x1b" not in lines and "\u202e" not in lines and "\x07" not in lines
    assert "\\x1b[2J" in lines


def test_a_flood_is_capped_with_a_count() -> None:
    lines = list(report([honey()] * (MOST_SHOWN + 7), SOURCES))
    assert lines[-1] == f"… and 7 more; --format jsonl gives all {MOST_SHOWN + 7}."


def test_plain_text_where_there_is_no_terminal() -> None:
    assert wants_colour(io.StringIO()) is False
    assert not any("\x1b" in line for line in report([honey()], SOURCES))


def test_the_summary_counts() -> None:
    assert summary([honey(), replace(honey(), level="note")], 2) == "2 recipes checked: 1 error, 1 note."
    assert summary([], 1) == "1 recipe checked: nothing found at this level."


@given(st.text())
def test_printable_text_has_no_control_characters(text: str) -> None:
    assert all(character.isprintable() for character in printable(text))
