"""Saving: what was there is kept as it was written, and what is typed is kept until it is saved."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from spoonproof.desk import saving


def test_line_ends_mark_and_mode_of_a_file_stay(tmp_path: Path) -> None:
    path = tmp_path / "bowl.md"
    path.write_bytes("\ufefftitle: é\r\nold\r\n".encode())
    path.chmod(0o640)
    disk = saving.on_disk(path)
    assert disk.text == "title: é\nold\n"
    done = saving.save(path, "title: é\r\nnew\r\n", disk.digest, disk.text)
    assert done.how == "saved"
    assert path.read_bytes() == "\ufefftitle: é\r\nnew\r\n".encode()
    assert path.stat().st_mode & 0o777 == 0o640


def test_an_edit_made_elsewhere_is_never_written_over(tmp_path: Path) -> None:
    path = tmp_path / "bowl.md"
    path.write_text("one\ntwo\nthree\n", encoding="utf-8")
    base = saving.on_disk(path)
    path.write_text("one\nTWO\nthree\n", encoding="utf-8")
    done = saving.save(path, "one\nmine\nthree\n", base.digest, base.text)
    assert done.how == "clash" and done.text == "one\nmine\nthree\n"
    assert path.read_text(encoding="utf-8") == "one\nTWO\nthree\n"
    assert ("new", "TWO") in done.shown and ("gone", "two") in done.shown
    again = saving.save(path, done.text, done.base, done.base_text)
    assert again.how == "saved", "once she has seen it, her own decision stands"


def test_edits_that_do_not_touch_are_merged_and_shown(tmp_path: Path) -> None:
    path = tmp_path / "bowl.md"
    path.write_text("one\ntwo\nthree\n", encoding="utf-8")
    base = saving.on_disk(path)
    path.write_text("one\ntwo\nTHREE\n", encoding="utf-8")
    done = saving.save(path, "ONE\ntwo\nthree\n", base.digest, base.text)
    assert done.how == "merged" and ("new", "THREE") in done.shown
    assert path.read_text(encoding="utf-8") == "ONE\ntwo\nTHREE\n"
    assert done.base == saving.on_disk(path).digest


def test_a_base_that_never_was_in_the_file_is_no_licence(tmp_path: Path) -> None:
    path = tmp_path / "bowl.md"
    path.write_text("theirs\n", encoding="utf-8")
    done = saving.save(path, "mine\n", "0" * 32, "something else\n")
    assert done.how == "clash" and path.read_text(encoding="utf-8") == "theirs\n"


ONE_OF_TWO = """
import sys
from pathlib import Path
from spoonproof.desk import saving
path, mine = Path(sys.argv[1]), int(sys.argv[2])
for number in range(40):
    disk = saving.on_disk(path)
    lines = disk.text.split("\\n")
    lines[mine] = f"desk {mine} wrote {number}"
    assert saving.save(path, "\\n".join(lines), disk.digest, disk.text).how != "clash"
"""


def test_two_desks_over_one_folder_lose_no_save(tmp_path: Path) -> None:
    path = tmp_path / "bowl.md"
    path.write_text("".join(f"line {number}\n" for number in range(20)), encoding="utf-8")
    desks = [subprocess.Popen([sys.executable, "-c", ONE_OF_TWO, str(path), mine]) for mine in ("3", "15")]
    assert [desk.wait(60) for desk in desks] == [0, 0]
    lines = path.read_text(encoding="utf-8").split("\n")
    assert lines[3] == "desk 3 wrote 39" and lines[15] == "desk 15 wrote 39"
    assert [each.name for each in tmp_path.iterdir()] == ["bowl.md"]


def test_a_disk_that_says_no_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "bowl.md"
    path.write_text("old\n", encoding="utf-8")
    disk = saving.on_disk(path)

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        saving.save(path, "new\n", disk.digest, disk.text)
    assert path.read_text(encoding="utf-8") == "old\n" and [each.name for each in tmp_path.iterdir()] == ["bowl.md"]


def test_what_is_typed_is_kept_until_it_is_saved(tmp_path: Path) -> None:
    typed = saving.Unsaved("abc123", "new\n", "d1", "old\n")
    saving.keep_unsaved(tmp_path, "bowl", typed)
    assert saving.unsaved_of(tmp_path, "bowl") == [typed]
    assert (tmp_path / ".spoonproof" / ".gitignore").read_text(encoding="utf-8") == "*\n"
    saving.forget_unsaved(tmp_path, "bowl", "abc123")
    assert saving.unsaved_of(tmp_path, "bowl") == []


def test_a_window_is_no_path(tmp_path: Path) -> None:
    saving.keep_unsaved(tmp_path, "bowl", saving.Unsaved("../../x", "new\n", "d1", "old\n"))
    assert not list(tmp_path.rglob("*.json"))
    saving.keep_unsaved(tmp_path, "../../x", saving.Unsaved("abc", "new\n", "d1", "old\n"))
    (kept,) = tmp_path.rglob("*.json")
    assert kept.parent.parent == tmp_path / ".spoonproof" / "unsaved"
