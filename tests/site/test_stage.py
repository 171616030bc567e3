"""The swap: whole or not at all, never over somebody's files, one build at a time."""

from __future__ import annotations

import multiprocessing
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from spoonproof import swap
from spoonproof.site import build, stage
from spoonproof.site.stage import MARKER
from spoonproof.swap import OutputRefused

OLD = {"index.html": b"old", "recipes/a.html": b"old a", "gone.html": b"old"}
NEW = {"index.html": b"new", "recipes/a.html": b"new a", "recipes/b.html": b"new b"}


def tree(root: Path) -> dict[str, bytes]:
    return {
        p.relative_to(root).as_posix(): p.read_bytes()
        for p in sorted(root.rglob("*"))
        if p.is_file() and p.name != MARKER
    }


@pytest.mark.parametrize("exchange", [True, False])
def test_the_new_site_takes_the_place_of_the_old(tmp_path: Path, exchange: bool) -> None:
    out = tmp_path / "site"
    assert build.write(out, OLD, ())
    stage.install(out, {path: stage.Held.of(body) for path, body in NEW.items()}, exchange)
    assert tree(out) == NEW
    assert [p.name for p in tmp_path.iterdir()] == ["site"]


def test_the_same_again_writes_nothing(tmp_path: Path) -> None:
    out = tmp_path / "site"
    build.write(out, NEW, ())
    before = (out / "index.html").stat().st_ino
    assert not build.write(out, NEW, ())
    assert (out / "index.html").stat().st_ino == before
    (out / "extra.txt").write_text("x")
    assert build.write(out, NEW, ()) and tree(out) == NEW


def test_somebodys_folder_is_refused_before_anything_is_touched(tmp_path: Path) -> None:
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "letter.txt").write_text("dear")
    with pytest.raises(OutputRefused, match="did not make"):
        build.write(mine, NEW, ())
    assert tree(mine) == {"letter.txt": b"dear"}
    channel = tmp_path / "channel"
    (channel / "recipes").mkdir(parents=True)
    for bad, why in (
        (channel, "made from"),
        (channel / "recipes", "made from"),
        (channel / "recipes" / "site", "among the sources"),
        (Path("/"), "root of the disk"),
        (Path.home(), "your own folder"),
        (tmp_path / "file", "is a file"),
    ):
        (tmp_path / "file").write_text("x")
        with pytest.raises(OutputRefused, match=why):
            build.write(bad, NEW, (channel / "recipes",))
    (tmp_path / "link").symlink_to(mine)
    with pytest.raises(OutputRefused, match="is a link"):
        build.write(tmp_path / "link", NEW, ())
    build.write(channel / "out" / "site", NEW, (channel / "recipes",))


def test_a_path_that_leads_out_is_refused_and_the_old_site_stays(tmp_path: Path) -> None:
    out = tmp_path / "site"
    build.write(out, OLD, ())
    with pytest.raises(OutputRefused, match="leads out"):
        build.write(out, {"../../escaped.html": b"x"}, ())
    assert tree(out) == OLD
    assert not list(tmp_path.glob("**/escaped.html"))


def test_a_full_disk_leaves_the_old_site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "site"
    build.write(out, OLD, ())
    real = stage._write

    def full(path: str, body: bytes) -> None:
        if path.endswith("/b.html"):
            raise OSError(28, "No space left on device", path)
        real(path, body)

    monkeypatch.setattr(stage, "_write", full)
    with pytest.raises(OSError, match="No space"):
        build.write(out, NEW, ())
    monkeypatch.undo()
    assert tree(out) == OLD
    assert not (tmp_path / ".site.new").exists()


def test_what_a_killed_build_left_is_put_right(tmp_path: Path) -> None:
    out = tmp_path / "site"
    build.write(out, OLD, ())
    out.rename(tmp_path / ".site.old")  # killed between the two renames
    (tmp_path / ".site.new").mkdir()
    swap.recover(out)
    assert tree(out) == OLD
    assert sorted(p.name for p in tmp_path.iterdir()) == ["site"]


def _hold(out: Path, ready: multiprocessing.synchronize.Event) -> None:
    with swap.locked(out):
        ready.set()
        time.sleep(30)


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
def test_a_second_build_says_who_holds_the_folder_and_a_dead_owner_holds_nothing(tmp_path: Path) -> None:
    out = tmp_path / "site"
    context = multiprocessing.get_context("fork")
    ready = context.Event()
    owner = context.Process(target=_hold, args=(out, ready))
    owner.start()
    assert ready.wait(10)
    with pytest.raises(OutputRefused, match=f"process {owner.pid}"):
        build.write(out, NEW, ())
    assert owner.pid is not None
    os.kill(owner.pid, signal.SIGKILL)
    owner.join()
    assert build.write(out, NEW, ())


_LOOP = """
import itertools, sys
from pathlib import Path
from spoonproof.site import build
out = Path(sys.argv[1])
for n in itertools.count():
    word = b"%d" % (n % 2)
    build.write(out, {f"p/{k}.html": word * 400 for k in range(60)}, ())
"""


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
@pytest.mark.timeout(180)
@pytest.mark.parametrize("how", [signal.SIGKILL, signal.SIGTERM])
def test_killed_at_any_moment_the_folder_holds_one_whole_site(tmp_path: Path, how: signal.Signals) -> None:
    out = tmp_path / "site"
    build.write(out, {f"p/{k}.html": b"0" * 400 for k in range(60)}, ())
    chance = random.Random(7)
    for _ in range(8):
        child = subprocess.Popen([sys.executable, "-c", _LOOP, str(out)], stderr=subprocess.DEVNULL)
        time.sleep(0.12 + chance.random() * 0.25)
        child.send_signal(how)
        child.wait()
        if not out.exists():
            swap.recover(out)
        found = tree(out)
        assert len(found) == 60 and len(set(found.values())) == 1
    build.write(out, NEW, ())
    assert tree(out) == NEW and sorted(p.name for p in tmp_path.iterdir()) == ["site"]
