"""Files in and out: encodings, sizes, links, odd files, and writing whole files or nothing."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from spoonproof.reading import limits
from spoonproof.reading.files import read_document, write_atomically
from tests.each import each


def read(folder: Path, data: bytes) -> list[str]:
    (folder / "a.md").write_bytes(data)
    _, findings = read_document(folder / "a.md", "a.md")
    return [f"{f.document.position(f.span.start)}:{f.rule}" for f in findings]


@each(
    "data, faults",
    [
        (b"", ["(1, 1):empty-file"]),
        (b"\n", ["(1, 1):empty-file"]),
        (b"   \n", ["(1, 1):empty-file"]),
        (b"\xef\xbb\xbftitle", ["(1, 1):byte-order-mark"]),
        ("title".encode("utf-16"), ["(1, 1):not-utf-8"]),
        ("one two".encode("utf-16-be"), ["(1, 1):not-utf-8"]),  # valid UTF-8, but its NULs tell
        ("one two".encode("utf-16-le"), ["(1, 2):not-utf-8"]),
        (b"one\ntwo cr\xe8me", ["(2, 7):not-utf-8"]),
        ("😀 é".encode() + b"\xed\xa0\x80", ["(1, 4):not-utf-8"]),
        (b"a\xc0\xafb", ["(1, 2):not-utf-8"]),
        (b"\x1f\x8b\x08\x00binary", ["(1, 2):not-utf-8"]),
        (b"\x89PNG\r\n\x1a\n", ["(1, 1):not-utf-8"]),
        (b"one\r\ntwo\r\n", []),
        (b"one\rtwo\r", []),
        (b"one\r\ntwo\n", ["(2, 4):mixed-line-endings"]),
        (b"one\ntwo", []),
        (b"one\x00", ["(1, 4):control-character"]),
        (b"\x1b[2J", ["(1, 1):control-character"]),
        ("salt\u200b".encode(), ["(1, 5):hidden-character"]),
        ("a \u202etxt".encode(), ["(1, 3):hidden-character"]),
        ("👩‍🍳 cooks".encode(), []),
        ("one\u2028two".encode(), ["(1, 4):hidden-character"]),
        ("s\u0430lt".encode(), ["(1, 2):confusable-character"]),
        ("3 μg, β-carotene, crème, jalapeño, œuf, Müsli".encode(), []),
        ("борщ is soup".encode(), []),
    ],
)
def test_what_is_wrong_with_the_bytes(tmp_path: Path, data: bytes, faults: list[str]) -> None:
    assert read(tmp_path, data) == faults


def test_a_dropped_mark_does_not_shift_columns(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_bytes(b"\xef\xbb\xbfab\x00")
    document, findings = read_document(tmp_path / "a.md", "a.md")
    assert document is not None
    assert document.text == "ab\x00"
    assert [document.position(f.span.start) for f in findings if f.rule == "control-character"] == [(1, 3)]


def test_a_flood_of_bad_characters_is_told_and_counted(tmp_path: Path) -> None:
    found = read(tmp_path, b"\x01" * 5000)
    assert len(found) == limits.SAME_FAULT + 1


def test_a_file_beyond_the_limit_is_not_read(tmp_path: Path) -> None:
    assert read(tmp_path, b"x" * (limits.FILE_BYTES + 1)) == ["(1, 1):file-too-large"]
    with (tmp_path / "b.md").open("wb") as file:
        file.truncate(50 << 20)
    started = time.process_time()
    assert read_document(tmp_path / "b.md", "b.md")[1][0].rule == "file-too-large"
    assert time.process_time() - started < 0.1


def test_an_endless_line_is_said(tmp_path: Path) -> None:
    assert read(tmp_path, b"a\n" + b"x" * 20_000) == ["(2, 1):line-too-long"]


def test_pipes_devices_and_folders_are_refused_at_once(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.md")
    (tmp_path / "folder.md").mkdir()
    for name in ("pipe.md", "folder.md"):
        document, (finding,) = read_document(tmp_path / name, name)
        assert document is None
        assert finding.rule in ("not-a-file", "file-unreadable")
    assert read_document(Path("/dev/zero"), "/dev/zero")[1][0].rule == "not-a-file"


def test_links_out_of_the_channel_are_not_followed(tmp_path: Path) -> None:
    channel = tmp_path / "channel"
    (channel / "recipes").mkdir(parents=True)
    (tmp_path / "secret.md").write_text("secret")
    (channel / "recipes" / "out.md").symlink_to(tmp_path / "secret.md")
    (channel / "recipes" / "loop.md").symlink_to(channel / "recipes" / "loop.md")
    (channel / "recipes" / "gone.md").symlink_to(channel / "recipes" / "nowhere.md")
    (channel / "soup.md").write_text("soup")
    (channel / "recipes" / "inside.md").symlink_to(channel / "soup.md")
    (channel / "elsewhere").symlink_to(tmp_path)

    def rules(shown: str) -> list[str]:
        return [finding.rule for finding in read_document(channel / shown, shown)[1]]

    assert rules("recipes/out.md") == ["link-out-of-channel"]
    assert rules("elsewhere/secret.md") == ["link-out-of-channel"]
    assert rules("recipes/loop.md") == ["file-unreadable"]
    assert rules("recipes/gone.md") == ["file-unreadable"]
    assert rules("recipes/inside.md") == []


def test_a_missing_or_unreadable_file_is_a_finding(tmp_path: Path) -> None:
    assert read_document(tmp_path / "no.md", "no.md")[1][0].rule == "file-unreadable"
    assert read_document(tmp_path / "a\x00b.md", "a\x00b.md")[1][0].rule == "file-unreadable"


def test_writing_keeps_the_mode_and_leaves_nothing_behind(tmp_path: Path) -> None:
    path = tmp_path / "a.md"
    path.write_bytes(b"old")
    path.chmod(0o640)
    write_atomically(path, b"new")
    assert path.read_bytes() == b"new"
    assert path.stat().st_mode & 0o777 == 0o640
    assert [p.name for p in tmp_path.iterdir()] == ["a.md"]


def test_a_write_that_fails_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.md"
    path.write_bytes(b"old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        write_atomically(path, b"new")
    assert path.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.md"]
