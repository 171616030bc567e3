"""Same input, same bytes: in any locale, time zone, hash seed, umask and order of folders; and whole or not at all."""

from __future__ import annotations

import hashlib
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="module")
def tool(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The checkout as it stands now: whoever edits a table while the tests run changes nothing here."""
    place = tmp_path_factory.mktemp("tool")
    for folder in ("src", "shared", "claims", "site", "recipes"):
        shutil.copytree(ROOT / folder, place / folder, ignore=shutil.ignore_patterns("__pycache__", "made"))
    return place / "src"


def copied(target: Path, backwards: bool, most: int = 99) -> Path:
    """The demo channel with its files made in one order or the other."""
    target.mkdir()
    shutil.copy(ROOT / "channel.yaml", target)
    (target / "recipes").mkdir()
    for path in sorted((ROOT / "recipes").glob("*.md"), reverse=backwards)[:most]:
        shutil.copy(path, target / "recipes")
    return target


def run(tool: Path, folder: Path, *arguments: str, umask: int = 0o022, **env: str) -> subprocess.CompletedProcess[str]:
    kept = {k: v for k, v in os.environ.items() if k not in ("LC_ALL", "TZ", "PYTHONHASHSEED", "SOURCE_DATE_EPOCH")}
    return subprocess.run(
        [sys.executable, "-m", "spoonproof", *arguments],
        cwd=folder,
        env={**kept, "PYTHONPATH": str(tool), **env},
        capture_output=True,
        text=True,
        errors="backslashreplace",
        umask=umask,
        check=False,
    )


def tree(folder: Path) -> dict[str, str]:
    """The hash of every file below a folder."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


@pytest.mark.timeout(240)
def test_site_and_film_are_the_same_bytes_anywhere(tool: Path, tmp_path: Path) -> None:
    one, other = copied(tmp_path / "one", False), copied(tmp_path / "other", True)
    day = "1780000000"
    settings = (
        (one, 0o022, {"PYTHONHASHSEED": "0", "TZ": "UTC", "LC_ALL": "C.UTF-8"}),
        (other, 0o077, {"PYTHONHASHSEED": "7", "TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONUTF8": "0"}),
    )
    made = []
    for folder, umask, env in settings:
        done = run(tool, folder, "publish", "--out", "pages", umask=umask, SOURCE_DATE_EPOCH=day, **env)
        assert done.returncode in (0, 1), done.stderr
        filmed = run(
            tool,
            folder,
            "shoot",
            "plum-and-millet-porridge",
            "--out",
            "film",
            umask=umask,
            SOURCE_DATE_EPOCH=day,
            **env,
        )
        assert filmed.returncode in (0, 1), filmed.stderr
        checked = run(tool, folder, "check", "--level", "note", "--format", "jsonl", SOURCE_DATE_EPOCH=day, **env)
        assert checked.returncode in (0, 1), checked.stderr
        made.append((tree(folder / "pages"), tree(folder / "film"), checked.stdout))
    assert len(made[0][0]) > 20 and made[0][1]
    assert made[0] == made[1]


@pytest.mark.parametrize("epoch", ["", "soon", "-1x", "1e9"])
def test_a_source_date_that_is_no_number_is_unusable(tool: Path, tmp_path: Path, epoch: str) -> None:
    folder = copied(tmp_path / "one", False)
    done = run(tool, folder, "check", "plum-and-millet-porridge", SOURCE_DATE_EPOCH=epoch)
    if epoch:
        assert done.returncode == 2 and "SOURCE_DATE_EPOCH" in done.stderr and "Traceback" not in done.stderr
    else:
        assert done.returncode in (0, 1, 2) and "Traceback" not in done.stderr


@pytest.mark.timeout(240)
def test_a_killed_publish_leaves_the_whole_old_or_the_whole_new_site(tool: Path, tmp_path: Path) -> None:
    folder = copied(tmp_path / "one", False, 2)
    site = folder / "pages"
    assert run(tool, folder, "publish", "--out", "pages", SOURCE_DATE_EPOCH="1780000000").returncode in (0, 1)
    old = tree(site)
    started = time.monotonic()
    (folder / "channel.yaml").write_text(
        (folder / "channel.yaml").read_text("utf-8").replace("Lantern", "Lamp"), "utf-8"
    )
    whole = tmp_path / "whole"
    assert run(tool, folder, "publish", "--out", str(whole), SOURCE_DATE_EPOCH="1780000000").returncode in (0, 1)
    lasts = time.monotonic() - started
    new = tree(whole)
    assert old != new
    moments = random.Random(5)
    env = {**os.environ, "PYTHONPATH": str(tool), "SOURCE_DATE_EPOCH": "1780000000"}
    for number in range(6):
        command = [sys.executable, "-m", "spoonproof", "publish", "--out", "pages"]
        process = subprocess.Popen(command, cwd=folder, env=env, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(lasts * (0.5 + 0.5 * moments.random()))
        process.send_signal((signal.SIGKILL, signal.SIGTERM, signal.SIGINT)[number % 3])
        process.wait()
        assert tree(site) in (old, new)
    assert run(tool, folder, "publish", "--out", "pages", SOURCE_DATE_EPOCH="1780000000").returncode in (0, 1)
    assert tree(site) == new
