"""When the machine fails: killed at any instant, a full disk, files nobody may read, two runs at once, odd clocks.

Whatever happens, what was there is whole or what is new is; nothing a person wrote is lost; nobody sees a traceback.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.bad_inputs import killing
from tests.bad_inputs.plain import RECIPE

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="needs fork and signals")

CHANNEL = "title: Row\nmeasures: UK\nmarkets: [GB]\n"
FIXABLE = "\n" + RECIPE
"""A blank line before the head, which ``check --fix`` takes out."""
SAID = "WEBVTT\n\n00:00.000 --> 00:04.000\nThis bowl prevents colds.\n"


@pytest.fixture
def channel(monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A channel with one recipe, in a place that anybody may enter."""
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-30")
    place = Path(tempfile.mkdtemp(prefix="machine-"))
    place.chmod(0o755)
    (place / "recipes").mkdir()
    (place / "channel.yaml").write_text(CHANNEL)
    (place / "recipes" / "leek-bowl.md").write_text(RECIPE)
    yield place
    shutil.rmtree(place)


def tree(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, but for locks and what is on its way."""
    if not folder.exists():
        return {}
    return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def two_sites(channel: Path) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """The site as it is, made in ``pages``, and as the next build will make it."""
    assert killing.run_in(channel, ["publish", "--out", "pages"]) == 0
    old = tree(channel / "pages")
    (channel / "channel.yaml").write_text(CHANNEL.replace("Row", "Another row"))
    assert killing.run_in(channel, ["publish", "--out", "whole"]) == 0
    new = tree(channel / "whole")
    assert old != new
    return old, new


def standing(channel: Path) -> dict[str, bytes]:
    """The site that stands; where the system can't exchange two folders, the one that the next build puts back."""
    from spoonproof import swap

    if not (channel / "pages").exists():
        swap.recover(channel / "pages")
    return tree(channel / "pages")


def test_88_a_publish_killed_before_any_change_leaves_one_whole_site(channel: Path) -> None:
    old, new = two_sites(channel)
    publish = ["publish", "--out", "pages"]
    shutil.copytree(channel / "pages", channel / "kept")
    count = killing.changes(channel, publish)
    assert count > 20
    seen = set()
    for instant in killing.instants(count, 9):
        shutil.rmtree(channel / "pages")
        shutil.copytree(channel / "kept", channel / "pages")
        assert killing.killed_at(channel, publish, instant)
        now = standing(channel)
        assert now in (old, new), f"at change {instant} of {count}"
        seen.add(now == new)
    assert seen == {True, False}, "some kills came before the exchange and some after it"
    assert killing.run_in(channel, publish) == 0
    assert tree(channel / "pages") == new
    assert not [path.name for path in channel.iterdir() if path.name.startswith(".pages")]


def test_88_a_publish_killed_in_a_write_leaves_the_old_site(channel: Path) -> None:
    old, _ = two_sites(channel)
    killed = []
    for size in (0, 700, 9_000):
        shutil.rmtree(channel / ".spoonproof", ignore_errors=True)  # what was made before is not made again
        # A write cut short in the midst of a page is seen, and told as a full disk; any other ends the process.
        killed.append(killing.killed_in_a_write(channel, ["publish", "--out", "pages"], size))
        assert standing(channel) == old
    assert any(killed)


@pytest.mark.parametrize(
    ("name", "arguments"),
    [
        ("recipes/leek-bowl.md", ["check", "--fix"]),
        ("recipes/new-bowl.md", ["new", "recipe", "new-bowl"]),
        ("corrections.csv", ["listen", "--mend", "said.vtt"]),
    ],
)
def test_88_a_file_is_the_whole_old_or_the_whole_new_one(channel: Path, name: str, arguments: list[str]) -> None:
    (channel / "said.vtt").write_text(SAID)
    if "--fix" in arguments:
        (channel / name).write_text(FIXABLE)
    elif name == "corrections.csv":
        assert killing.run_in(channel, arguments) in (0, 1)
        (channel / "said.vtt").write_text(SAID + "\n00:05.000 --> 00:09.000\nThis bowl prevents reflux.\n")
    path = channel / name
    before = path.read_bytes() if path.exists() else None
    shutil.copytree(channel, channel.with_suffix(".after"))
    try:
        assert killing.run_in(channel.with_suffix(".after"), arguments) in (0, 1)
        after = (channel.with_suffix(".after") / name).read_bytes()
        count = killing.changes(channel.with_suffix(".after"), arguments)
    finally:
        shutil.rmtree(channel.with_suffix(".after"))
    assert after != before
    for instant in killing.instants(count + 3, 7):
        killing.killed_at(channel, arguments, instant)
        now = path.read_bytes() if path.exists() else None
        assert now in (before, after), f"at change {instant}"
    for size in (0, 20):
        killing.killed_in_a_write(channel, arguments, size)
        assert (path.read_bytes() if path.exists() else None) in (before, after)


def test_88_a_film_is_the_whole_old_or_the_whole_new_one(channel: Path) -> None:
    shoot = ["shoot", "leek-bowl", "--out", "film"]
    film = channel / "film" / "leek-bowl"
    assert killing.run_in(channel, shoot) == 0
    (film / "my notes").mkdir()
    (film / "my notes" / "light.txt").write_text("north window")
    (film / ".script.txt.k2j9.part").write_text("half")  # as a killed run of an earlier version left it
    old = tree(film)
    recipe = channel / "recipes" / "leek-bowl.md"
    recipe.write_text(recipe.read_text().replace("Leek bowl", "A bowl of leeks"))
    assert killing.run_in(channel, ["shoot", "leek-bowl", "--out", "whole"]) == 0
    new = {**tree(channel / "whole" / "leek-bowl"), "my notes/light.txt": b"north window"}
    count = killing.changes(channel, ["shoot", "leek-bowl", "--out", "counted"])
    for instant in killing.instants(count, 5):
        killing.killed_at(channel, shoot, instant)
        assert tree(film) in (old, new), f"at change {instant} of {count}"
    assert killing.run_in(channel, shoot) == 0
    assert tree(film) == new
    assert not killing.killed_in_a_write(channel, shoot, 700), "what stands as it should is not written again"
    assert sorted(path.name for path in (channel / "film").iterdir()) == ["leek-bowl"]


def test_88_what_is_kept_for_the_next_time_is_sound_after_a_kill(channel: Path) -> None:
    asked = ["check", "--format", "jsonl", "--level", "note"]
    for instant in (0, 1, 2, 3, 5):
        shutil.rmtree(channel / ".spoonproof", ignore_errors=True)
        killing.killed_at(channel, asked, instant)
        assert killing.run_in(channel, asked) == 1
    for size in (0, 500):
        shutil.rmtree(channel / ".spoonproof", ignore_errors=True)
        killing.killed_in_a_write(channel, asked, size)
        assert killing.run_in(channel, asked) == 1


@pytest.mark.parametrize("size", [0, 700, 9_000])
def test_87_a_full_disk_leaves_the_old_site_and_nothing_half_made(channel: Path, size: int) -> None:
    old, new = two_sites(channel)
    kept = killing.with_files_no_larger_than(size, channel, ["publish", "--out", "whole"])
    assert kept in (0, 3) and tree(channel / "whole") == new, "pages that are kept need no room to be given again"
    shutil.rmtree(channel / ".spoonproof")
    assert killing.with_files_no_larger_than(size, channel, ["publish", "--out", "pages"]) == 3
    assert tree(channel / "pages") == old
    left = [path.name for path in channel.iterdir() if path.name.startswith(".pages")]
    assert left in ([], [".pages.lock"])


def test_87_a_full_disk_loses_no_recipe_and_stops_no_check(channel: Path) -> None:
    recipe = channel / "recipes" / "leek-bowl.md"
    recipe.write_text(FIXABLE)
    assert killing.with_files_no_larger_than(10, channel, ["check", "--fix"]) == 3
    assert recipe.read_text() == FIXABLE
    assert killing.with_files_no_larger_than(0, channel, ["check"]) == 1
    assert killing.with_files_no_larger_than(10, channel, ["new", "recipe", "next"]) == 3
    assert sorted(path.name for path in (channel / "recipes").iterdir()) == ["leek-bowl.md"]


def test_86_a_file_nobody_may_read_is_told_and_the_others_are_checked(
    channel: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    secret = channel / "recipes" / "secret.md"
    secret.write_text(RECIPE)
    secret.chmod(0)
    assert killing.as_nobody(channel, ["check"]) == 1
    (channel / "channel.yaml").chmod(0)
    assert killing.as_nobody(channel, ["check"]) == 2


def test_86_a_folder_nobody_may_write_to_is_told_and_the_old_site_stays(channel: Path) -> None:
    old, _ = two_sites(channel)
    for arguments in (["publish", "--out", "pages"], ["shoot", "leek-bowl"], ["new", "recipe", "next"]):
        assert killing.as_nobody(channel, arguments) == 3
    assert tree(channel / "pages") == old
    assert killing.as_nobody(channel, ["check"]) == 0, "nothing is kept for the next time, and that is all"


def test_86_a_file_gone_between_listing_and_reading_is_told(channel: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from spoonproof import folder

    real = folder._recipe_files
    monkeypatch.setattr(folder, "_recipe_files", lambda place: [*real(place), place / "gone.md"])
    assert killing.run_in(channel, ["check"]) == 1


def test_89_two_builds_at_once_leave_one_whole_site(channel: Path) -> None:
    _, new = two_sites(channel)
    command = [sys.executable, "-m", "spoonproof", "publish", "--out", "pages"]
    runs = [
        subprocess.Popen(command, cwd=channel, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
        for _ in range(3)
    ]
    said = [run.communicate()[1] for run in runs]
    assert {run.returncode for run in runs} <= {0, 2}
    assert all("another run" in words for run, words in zip(runs, said, strict=True) if run.returncode == 2)
    assert 0 in {run.returncode for run in runs}
    assert tree(channel / "pages") == new


def test_89_a_name_is_given_once_though_two_ask_for_it_at_once(channel: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from spoonproof.commands import new

    path = channel / "recipes" / "next.md"
    monkeypatch.setattr(new, "_refuse_existing", lambda _: path.write_text("mine"))
    assert killing.run_in(channel, ["new", "recipe", "next"]) == 2
    assert path.read_text() == "mine"


def test_89_what_was_saved_while_it_was_being_mended_is_not_written_over(
    channel: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from spoonproof.reading import edits as reading_edits

    recipe = channel / "recipes" / "leek-bowl.md"
    recipe.write_text(FIXABLE)
    saved = FIXABLE.replace("200 g", "300 g")
    real = reading_edits.apply_edits

    def slow(document: Any, edits: Any) -> str:
        recipe.write_text(saved)
        return real(document, edits)

    monkeypatch.setattr(reading_edits, "apply_edits", slow)
    killing.run_in(channel, ["check", "--fix"])
    assert "300 g" in recipe.read_text()


def test_91_content_decides_and_no_clock(channel: Path) -> None:
    recipe = channel / "recipes" / "leek-bowl.md"
    assert killing.run_in(channel, ["check"]) == 0
    assert killing.run_in(channel, ["publish", "--out", "pages"]) == 0
    for moment, title in ((recipe.stat().st_mtime, "Leek dish"), (4e9, "Leek pots"), (1, "Leek cups")):
        recipe.write_text(RECIPE.replace("Leek bowl", title))
        os.utime(recipe, (moment, moment))
        assert killing.run_in(channel, ["publish", "--out", "pages"]) == 0
        assert title in (channel / "pages" / "recipes" / "leek-bowl.html").read_text()


@pytest.mark.parametrize("content", [b"", b"\x80\x05K\x01.", b"x" * 100, b"\x00" * (5 << 20)])
def test_90_what_was_kept_and_is_damaged_is_made_anew(channel: Path, content: bytes) -> None:
    recipe = channel / "recipes" / "leek-bowl.md"
    recipe.write_text(RECIPE + "This bowl prevents colds.\n")
    assert killing.run_in(channel, ["check"]) == 1
    kept = [path for path in (channel / ".spoonproof").rglob("*") if path.is_file()]
    for path in kept:
        path.write_bytes(content)
    assert killing.run_in(channel, ["check"]) == 1
    for path in kept:
        path.unlink()
        path.symlink_to("/dev/zero")
    assert killing.run_in(channel, ["check"]) == 1


@pytest.mark.parametrize("name", ["explain", "check"])
def test_95_a_closed_or_narrow_output_is_no_fault(channel: Path, name: str) -> None:
    arguments = {"check": "check --level note", "explain": "explain carrot"}.get(name, f"{name} recipes/leek-bowl.md")
    whole = f"{sys.executable} -m spoonproof {arguments}"
    for command in (f"{whole} >&-", f"{whole} | true", f"{whole} >/dev/full"):
        done = subprocess.run(
            ["sh", "-c", command], cwd=channel, capture_output=True, text=True, check=False,
            env={**os.environ, "COLUMNS": "20", "NO_COLOR": "1", "TERM": "xterm"},
        )  # fmt: skip
        assert "Traceback" not in done.stderr and "Exception" not in done.stderr, done.stderr
        assert "\x1b" not in done.stdout
