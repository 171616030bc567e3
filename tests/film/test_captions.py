"""Captions: what an independent parser reads back, and the limits they keep."""

import io
from itertools import pairwise

import webvtt
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.film.captions import (
    LINE_CHARACTERS,
    LINES,
    MOST_SECONDS,
    captions,
    sentences,
    subrip,
)
from spoonproof.film.captions import (
    webvtt as to_webvtt,
)
from spoonproof.film.script import Heard, Material, Script, write_script


def _script(*steps: str, rate: float = 145) -> Script:
    return write_script(
        Material(
            title="Leek and potato spoonful",
            channel="Lantern Row Kitchen",
            ages="7-9 months",
            texture="mashed",
            foods=("200 g potatoes", "1 leek"),
            steps=steps,
            words_a_minute=rate,
            heard=(Heard("Stay with your baby while they eat.", "tasting"),),
        )
    )


LONG = (
    "Steam the potatoes and the leek for sixteen minutes, until a cube squashes between finger and thumb, "
    "and then let the steam off before you mash them with a little butter & milk <from the fridge>."
)


def test_an_independent_parser_reads_the_words_back() -> None:
    made = captions(_script(LONG))
    read = webvtt.from_buffer(io.StringIO(to_webvtt(made)))
    assert len(read) == len(made)
    spoken = " ".join(cue.text.replace("\n", " ") for cue in read)
    assert "squashes between finger and thumb" in spoken
    assert "&amp; milk &lt;from" in spoken or "& milk <from" in spoken
    assert [round(cue.start_in_seconds) for cue in read] == sorted(round(cue.start_in_seconds) for cue in read)


def test_subrip_is_read_back() -> None:
    made = captions(_script(LONG))
    read = webvtt.from_srt(_file(subrip(made)))
    assert len(read) == len(made)


def _file(text: str) -> str:
    import tempfile
    from pathlib import Path

    path = Path(tempfile.mkdtemp()) / "captions.srt"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_lines_and_times_stay_within_the_limits() -> None:
    for cue in captions(_script(LONG, "Mash.", "Serve warm, with a spoon, and let the baby hold a second spoon.")):
        assert len(cue.lines) <= LINES
        assert all(len(line) <= LINE_CHARACTERS for line in cue.lines)
        assert 0 < cue.end - cue.start <= MOST_SECONDS


def test_no_caption_begins_before_the_one_before_it_ends() -> None:
    made = captions(_script(LONG, LONG))
    assert all(a.end <= b.start + 1e-6 for a, b in pairwise(made))


def test_a_number_with_a_point_is_one_sentence() -> None:
    assert sentences("Cut it to 1.5 cm. Then steam.") == ["Cut it to 1.5 cm.", "Then steam."]


@given(st.text(alphabet="ab ,.!?é&<>-\n", max_size=300))
def test_no_word_is_lost(text: str) -> None:
    made = captions(_script(text))
    said = "".join("".join(cue.lines) for cue in made)
    wanted = "".join(text.split())
    assert wanted in "".join(said.split())
