"""Markers: independent parsers read every file back."""

import io
from itertools import pairwise
from pathlib import Path

import opentimelineio as otio
import pytest

from spoonproof.film.captions import captions, webvtt
from spoonproof.film.fountain import fountain
from spoonproof.film.markers import edit_list, frames, timeline
from spoonproof.film.script import Script
from spoonproof.film.text import script_text
from spoonproof.film.timecode import NTSC_DROP, PAL, Rate
from spoonproof.film.writing import write_script
from tests.film.test_script import material, segment


def script() -> Script:
    return write_script(material(segment("Hook", "Crème [[brûlée]] it is not.\n\nBut it is good.")))


@pytest.mark.parametrize("rate", [PAL, NTSC_DROP])
def test_the_timeline_is_read_back_with_every_take(rate: Rate, tmp_path: Path) -> None:
    made = script()
    path = tmp_path / "markers.otio"
    path.write_text(timeline(made, rate), encoding="utf-8")
    read = otio.adapters.read_from_file(str(path))
    marks = read.tracks[0].markers
    assert [mark.name for mark in marks] == [take.name for take in made.takes]
    assert [mark.marked_range.start_time.value for mark in marks] == [start for _, start, _ in frames(made, rate)]
    assert read.duration().value == frames(made, rate)[-1][2]


@pytest.mark.parametrize(("rate", "exact"), [(PAL, 25.0), (NTSC_DROP, 30000 / 1001)])
def test_the_edit_list_is_read_back_frame_for_frame(rate: Rate, exact: float, tmp_path: Path) -> None:
    made = script()
    path = tmp_path / "markers.edl"
    path.write_text(edit_list(made, rate), encoding="ascii")
    read = otio.adapters.read_from_file(str(path), adapter_name="cmx_3600", rate=exact)
    clips = list(read.find_clips())
    assert len(clips) == len(made.takes)
    assert [round(clip.duration().value) for clip in clips] == [end - start for _, start, end in frames(made, rate)]


def test_takes_follow_without_gap() -> None:
    found = frames(script(), NTSC_DROP)
    assert all(a[2] == b[1] for a, b in pairwise(found))


def test_fountain_keeps_speech_in_one_block_and_no_note_swallows_it() -> None:
    text = fountain(script())
    assert text.startswith("Title: Leek and potato spoonful\n")
    assert "@PRESENTER\nCrème [ [brûlée] ] it is not. But it is good.\n" in text
    assert text.count("\n.") == len(script().takes)


def test_another_reader_of_fountain_sees_the_same_script() -> None:
    parse = pytest.importorskip("screenplain.parsers.fountain", reason="screenplain is a development extra").parse
    made = script()
    read = list(parse(io.StringIO(fountain(made))))
    kinds = [type(part).__name__ for part in read]
    scenes = [part for part in read if type(part).__name__ == "Slug"]
    assert [str(scene.scene_number) for scene in scenes] == [str(n) for n in range(1, len(made.takes) + 1)]
    assert [str(scene.line) for scene in scenes] == [take.name.upper() for take in made.takes]
    speeches = [" ".join(str(text) for _, text in part.blocks) for part in read if type(part).__name__ == "Dialog"]
    assert [_plain(speech) for speech in speeches] == [_plain(take.say) for take in made.takes if take.say]
    shown = [
        str(part.lines[0]).removeprefix("SUPER: ")
        for part in read
        if str(getattr(part, "lines", [""])[0])[:6] == "SUPER:"
    ]
    assert shown == [each.text for each in made.supers]
    assert set(kinds) == {"Slug", "Action", "Dialog"}


def _plain(text: str) -> str:
    return "".join(letter for letter in text if letter.isalnum())


def test_marks_of_emphasis_are_letters_in_speech() -> None:
    made = write_script(material(segment("Hook", "Two *stars* and an under_score_ in it.")))
    assert "Two \\*stars\\* and an under\\_score\\_ in it." in fountain(made)


def test_presenters_speak_under_their_names() -> None:
    made = write_script(material(segment("Hook", "Hello from the harbour, where the leeks are.", presenter="Dev")))
    assert "@DEV\nHello" in fountain(made)
    assert "<v Dev>Hello" in webvtt(captions(made))
    assert "DEV: Hello" in script_text(made)
