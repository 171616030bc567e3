"""Captions, transcripts and texts: running passages with places and seconds."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.finding import Finding
from spoonproof.model.text import Document, Passage
from spoonproof.reading.speech import read_statements
from tests.growth import grown

CAPTIONS = """WEBVTT - a film

STYLE
::cue { color: red }

NOTE carrots cure all

intro
00:01.000 --> 00:03.000 align:left position:10%
<v Ann>Carrots are <i>rich</i>
in &amp; with iron

00:03.000 --> 00:05.000
in &amp; with iron
and more.

00:01:20.000 --> 00:01:22.500
- After a pause.
"""


def read(text: str, name: str = "a.vtt", lines: bool = False) -> tuple[Document, list[Passage], list[Finding]]:
    document = Document(name, text)
    return (document, *read_statements(document, lines))


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_cues_run_on_and_rolled_lines_count_once(end: str) -> None:
    document, passages, findings = read(CAPTIONS.replace("\n", end))
    assert findings == []
    assert [p.text for p in passages] == ["Carrots are rich in & with iron and more.", "After a pause."]
    first = passages[0]
    start = first.text.index("with iron and")
    assert first.seconds(start, start + 4) == (1.0, 3.0)
    assert first.seconds(start, start + len("with iron and")) == (1.0, 5.0)
    assert document.at(first.span(0, 16)) == "Carrots are <i>rich"
    assert passages[1].seconds(0, 5) == (80.0, 82.5)
    assert passages[1].where == "at 1:20"


def test_subrip_with_and_without_blank_lines() -> None:
    text = "1\n00:00:01,000 --> 00:00:02,000\nOne pear.\n2\n00:00:02,000 --> 00:00:03,000\nTwo pears.\n\n3\n"
    _, passages, findings = read(text, "a.srt")
    assert findings == []
    assert [p.text for p in passages] == ["One pear. Two pears."]


def test_captions_that_grow_word_by_word_count_once() -> None:
    cues = ["We steam", "We steam the pear", "We steam the pear soft"]
    text = "WEBVTT\n\n" + "".join(f"00:0{n}.000 --> 00:0{n + 1}.000\n{cue}\n\n" for n, cue in enumerate(cues))
    _, (passage,), _ = read(text)
    assert passage.text == "We steam the pear soft"


def test_words_said_twice_stay_twice() -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:02.000\nNo honey.\n\n00:09.000 --> 00:10.000\nNo honey.\n"
    _, passages, _ = read(text)
    assert [p.text for p in passages] == ["No honey.", "No honey."]


def test_lines_gives_each_cue_or_line_its_own_passage() -> None:
    _, passages, _ = read(CAPTIONS, lines=True)
    assert [p.text for p in passages] == ["Carrots are rich in & with iron", "and more.", "After a pause."]
    document, passages, _ = read("one\n\n  two 😀\nthree", "a.txt", lines=True)
    assert [p.text for p in passages] == ["one", "two 😀", "three"]
    assert document.at(passages[2].span(0, 5)) == "three"


def test_texts_are_read_by_paragraph_and_markdown_as_prose() -> None:
    document, passages, _ = read("one\n two\n\nthree", "a.txt")
    assert [p.text for p in passages] == ["one two", "three"]
    assert document.at(passages[0].span(4, 7)) == "two"
    _, passages, _ = read("---\ntitle: x\n---\n**one**\ntwo", "a.md")
    assert [p.text for p in passages] == ["one two"]
    _, passages, _ = read("**one**", "a.md")
    assert [p.text for p in passages] == ["one"]


def test_a_time_line_that_cannot_be_read_is_said() -> None:
    document, _, findings = read("WEBVTT\n\n1:2 --> 3\nwords\n")
    assert [(f.rule, document.position(f.span.start)) for f in findings] == [("cue-not-read", (3, 1))]


@pytest.mark.parametrize(
    ("text", "heard"),
    [
        ("WEBVTT\nKind: captions\n\n99999:00:00.000 --> 99999:00:01.000\nlost words\n", ["lost words"]),
        ("1\n00:01,000 --> 00:02,000\none\n\nand two\n\n2\n00:02,000 --> 00:03,000\nthree\n", ["one and two three"]),
        ("no times at all,\nonly words\n", ["no times at all, only words"]),
        ("1\n00:00:01,000 --> soon\none\n2\n00:00:02,000 --> 00:00:03,000\ntwo\n", ["one two"]),
    ],
)  # fmt: skip
def test_no_words_are_lost_for_want_of_a_time(text: str, heard: list[str]) -> None:
    document, passages, findings = read(text, "a.srt")
    assert [passage.text for passage in passages] == heard
    assert [finding.rule for finding in findings] == ["cue-not-read"]
    assert document.at(passages[0].span(0, 3)) == heard[0][:3]


def test_captions_are_told_by_their_start_where_the_name_says_nothing() -> None:
    _, passages, _ = read(CAPTIONS, "(standard input)")
    assert len(passages) == 2


@pytest.mark.parametrize("unit", ["<", "&", "00:00:01.000 --> ", "-->", "{\\", "a\n", "<v a>x "])
def test_hostile_captions_are_linear(unit: str) -> None:
    texts = {size: "WEBVTT\n\n00:01.000 --> 00:02.000\n" + unit * size for size in (10_000, 40_000)}
    # Four times the text: linear is 4, quadratic 16.
    assert grown(lambda size: read(texts[size]), 10_000, 40_000, times=9, spare=0.1) == ""


CUES = st.lists(st.tuples(st.integers(0, 50), st.text(alphabet="ab <>&;-{}\\1:,.é😀", max_size=20)), max_size=8)


@given(CUES, st.sampled_from(["\n", "\r\n"]), st.sampled_from([".vtt", ".srt", ".txt", ".md"]))
def test_any_captions_are_read_and_their_places_lie_inside(cues: list[tuple[int, str]], end: str, suffix: str) -> None:
    text = end.join(f"00:{at:02d}.000 --> 00:{at + 2:02d}.000{end}{words}{end}" for at, words in cues)
    document, passages, _ = read(text, f"a{suffix}")
    for passage in passages:
        assert passage.text.strip()
        for at, char in enumerate(passage.text):
            span = passage.span(at, at + 1)
            assert 0 <= span.start < span.end <= len(text)
            if char.isalpha() and "&" not in text and "\\" not in text:
                assert document.at(span) == char
