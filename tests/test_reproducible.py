"""Same input, same bytes: in any locale, time zone, hash seed, umask and order of folders."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import sys
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


def copied(target: Path, backwards: bool, kept: tuple[str, ...] = ()) -> Path:
    """The demo channel (or the recipes of it in ``kept``) with its files made in one order or the other."""
    target.mkdir()
    shutil.copy(ROOT / "channel.yaml", target)
    (target / "recipes").mkdir()
    for path in sorted((ROOT / "recipes").glob("*.md"), reverse=backwards):
        if not kept or path.stem in kept:
            shutil.copy(path, target / "recipes")
    return target


def _kept() -> dict[str, str]:
    named = ("LC_ALL", "TZ", "PYTHONHASHSEED", "SOURCE_DATE_EPOCH")
    return {name: value for name, value in os.environ.items() if name not in named}


def run(tool: Path, folder: Path, *arguments: str, umask: int = 0o022, **env: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "spoonproof", *arguments],
        cwd=folder,
        env={**_kept(), "PYTHONPATH": str(tool), **env},
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


KEPT = (
    "aubergine-and-tomato-orzo",
    "peanut-and-raspberry-yoghurt",
    "plum-and-millet-porridge",
    "red-lentil-and-sweet-potato-pot",
    "three-vegetable-base",
)
COMMANDS = (
    "publish --out pages",
    "shoot plum-and-millet-porridge --out film",
    "check --level note --format jsonl",
    "calendar --format ics",
    "calendar",
    "nutrients recipes/plum-and-millet-porridge.md --format json",
    "plan recipes/plum-and-millet-porridge.md",
    "listen recipes/plum-and-millet-porridge.md --format jsonl",
    "publish --out pages",
)
ALL = """
import contextlib, io, json, sys
from spoonproof.cli import main
said = []
for line in sys.argv[1:]:
    with contextlib.redirect_stdout(io.StringIO()) as out:
        said.append((main(line.split()), out.getvalue()))
print(json.dumps(said))
"""


@pytest.mark.timeout(240)
def test_what_is_made_is_the_same_bytes_anywhere(tool: Path, tmp_path: Path) -> None:
    """Pages, film, findings, calendar and figures; the second publish goes by what the first one kept."""
    one, other = copied(tmp_path / "one", False, KEPT), copied(tmp_path / "other", True, KEPT)
    settings = (
        (one, 0o022, {"PYTHONHASHSEED": "0", "TZ": "UTC", "LC_ALL": "C.UTF-8"}),
        (other, 0o077, {"PYTHONHASHSEED": "7", "TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONUTF8": "0"}),
    )
    made = []
    for folder, umask, env in settings:
        done = subprocess.run(
            [sys.executable, "-c", ALL, *COMMANDS],
            cwd=folder,
            env={**_kept(), "PYTHONPATH": str(tool), "SOURCE_DATE_EPOCH": "1780000000", **env},
            capture_output=True,
            text=True,
            encoding="utf-8",
            umask=umask,
            check=False,
        )
        assert done.returncode == 0, done.stderr
        said = json.loads(done.stdout)
        assert all(code in (0, 1) for code, _ in said), done.stderr
        assert "already as it should be" in said[-1][1]
        made.append((tree(folder / "pages"), tree(folder / "film"), said))
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
