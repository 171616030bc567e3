"""The film on the page: its own file, captions and chapters; what lies about itself or leads out is left out."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.model.recipe import Recipe
from spoonproof.site import reel
from spoonproof.site.pages import Pages, Theme
from spoonproof.site.reel import Reel, chapter_track, kind_of
from spoonproof.site.view import Chapter
from tests.kitchen import read
from tests.site import sample

MP4 = b"\x00\x00\x00\x18ftypmp42" + bytes(40)
WEBM = b"\x1a\x45\xdf\xa3" + bytes(40)
CAPTIONS = b"WEBVTT\n\n00:00.000 --> 00:02.000\nSwede, twice.\n"
HEAD = """\
video: {file: bowl.mp4, uploaded: 2026-11-02, runs: 40 s, captions: bowl.vtt}
film:
  segments:
    - {name: "Hook & <look>", say: "Swede, twice.", runs: 12 s}
    - {name: Into the pan, runs: 28 s}
"""


def recipe(head: str = HEAD) -> Recipe:
    made, faults = read(head, "recipes/swede-bowl.md")
    assert made is not None and not faults, faults
    return made


@pytest.fixture
def root(tmp_path: Path) -> Path:
    (tmp_path / "videos").mkdir()
    (tmp_path / "videos" / "bowl.mp4").write_bytes(MP4)
    (tmp_path / "videos" / "bowl.vtt").write_bytes(CAPTIONS)
    return tmp_path


def test_a_film_of_the_channels_folder_is_shown_with_captions_and_chapters(root: Path) -> None:
    kept = Reel(root)
    film = kept.film(recipe())
    assert film is not None and film.local and film.kind == "video/mp4" and not kept.notes
    assert kept.files["videos/swede-bowl.mp4"] == MP4 and kept.files[film.captions] == CAPTIONS
    track = kept.files[film.track].decode()
    assert "00:00:12.000 --> 00:00:40.000\nInto the pan" in track and "Hook &amp; &lt;look>" in track
    page = sample.pear_mash()
    html = Pages(sample.site(), Theme([sample.THEME])).recipe(
        type(page)(**{**{f: getattr(page, f) for f in page.__slots__}, "film": film})
    )
    assert '<source src="../videos/swede-bowl.mp4" type="video/mp4">' in html
    assert '<track kind="captions" src="../videos/swede-bowl.vtt"' in html and 'kind="chapters"' in html
    assert 'href="../videos/swede-bowl.mp4#t=12" data-at="12"' in html


def test_without_its_file_the_link_stays_and_it_is_said(root: Path) -> None:
    kept = Reel(root)
    film = kept.film(recipe('video: {file: other.mp4, url: "https://video.example/1", uploaded: 2026-11-02}'))
    assert film is not None and not film.local and film.url == "https://video.example/1"
    assert kept.notes == ["recipes/swede-bowl.md: 'other.mp4' is not among the channel's files"] and not kept.files
    assert Reel(root).film(recipe("video: {file: other.mp4}")) is None


@pytest.mark.parametrize("what", ["a page named mp4", "a link outside", "too large", "captions that are none"])
def test_what_can_not_be_shown_is_noted_and_left_out(root: Path, what: str, monkeypatch: pytest.MonkeyPatch) -> None:
    path = root / "videos" / "bowl.mp4"
    if what == "a page named mp4":
        path.write_bytes(b"<html><script>alert(1)</script>")
    elif what == "a link outside":
        (root.parent / "secret.mp4").write_bytes(MP4)
        path.unlink()
        path.symlink_to(root.parent / "secret.mp4")
    elif what == "too large":
        monkeypatch.setattr(reel, "LARGEST", 10)
    else:
        (root / "videos" / "bowl.vtt").write_bytes(b"1\n00:00:00,000 --> 00:00:02,000\nSwede.\n")
    kept = Reel(root)
    film = kept.film(recipe())
    assert len(kept.notes) == 1
    if what == "captions that are none":
        assert film is not None and film.local and film.captions == ""
    else:
        assert film is None and not any(name.endswith(".mp4") for name in kept.files)


def test_kinds_and_tracks() -> None:
    assert [kind_of(body) for body in (MP4, WEBM, b"", b"GIF89a")] == ["mp4", "webm", "", ""]
    assert chapter_track([Chapter(0, 3700.5, "a\n\nb --> c")]).endswith("00:00:00.000 --> 01:01:40.500\na b --&gt; c\n")


def test_a_video_needs_an_address_or_a_file() -> None:
    _, faults = read("video: {uploaded: 2026-11-02}")
    assert [(fault.rule, fault.message) for fault in faults] == [("missing-key", "The video needs 'url' or 'file'.")]
