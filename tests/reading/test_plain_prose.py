"""Plain paragraphs are told as the Markdown parser tells them."""

from __future__ import annotations

import random

import pytest

from spoonproof.model.text import Document, Span
from spoonproof.reading import markdown
from spoonproof.reading.plain_prose import plain_passages

PIECES = (
    'word|Soft|it is|http://a.uk/c|www.a.uk|a@b.uk|"q"|don\'t|“x”|(c)|...|--|1.|2)|- |+ |# |= |===|---|:|!|?|é|½|\u00ad'
    "|\u200b|  | |{x}|$a$|^|%|/|@|\u2003|\u3000|🍐|«|Ünder|*|_|`|[a](b)|<b>|&amp;|\\|~|\t"
).split("|")
WORDS = ("word", "Soft", "it is") * 14
ENDS = (" ", "", "\n", "\n", "\n\n", "\r\n", "\r", " \n")


def texts() -> list[str]:
    """Strings of pieces that meet in every way; the same ones at each run."""
    chance = random.Random(5)
    return [
        "".join(chance.choice((*WORDS, *PIECES)) + chance.choice(ENDS) for _ in range(chance.randint(1, 8)))
        for _ in range(1500)
    ]


def test_they_are_the_parsers_own(monkeypatch: pytest.MonkeyPatch) -> None:
    told = 0
    monkeypatch.setattr(markdown, "plain_passages", lambda *_: None)
    for text in texts():
        document = Document("recipes/a.md", text)
        mine = plain_passages(document, ((line.text, line.start) for line in markdown._lines(text)[0]))
        if mine is not None:
            assert markdown.read_prose(document, Span(0, len(text))) == (mine, []), repr(text)
            told += bool(mine)
    assert told > 100


def test_comments_and_marks_are_left_to_the_parser() -> None:
    for text in (
        "Soft.\n<!-- leave: mine -->\nHard.\n",
        "Soft.\n\n*Hard.*\n",
        "Soft.\n\n- hard\n",
        "Soft &amp; hard\n",
    ):
        document = Document("recipes/a.md", text)
        passages, _ = markdown.read_prose(document, Span(0, len(text)))
        assert "".join(passage.text for passage in passages).isascii()
        assert not any(mark in passage.text for passage in passages for mark in ("*", "<", "&amp;", "- "))
