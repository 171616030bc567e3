"""The built wheel alone, in a folder that is not the repository, read-only: the complete tool.

Same input, same bytes: in any locale, time zone, hash seed, umask and order of folders.
"""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
pytest.importorskip("hatchling")


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel's content in a folder of its own, nobody may write to it."""
    dist = tmp_path_factory.mktemp("dist")
    made = subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(dist)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert made.returncode == 0, made.stderr[-2000:]
    (wheel,) = dist.glob("*.whl")
    place = tmp_path_factory.mktemp("installed")
    zipfile.ZipFile(wheel).extractall(place)
    for path in place.rglob("*"):
        path.chmod(0o555 if path.is_dir() else 0o444)
    return place


def _run(installed: Path, folder: Path, *arguments: str, **more: str) -> subprocess.CompletedProcess[str]:
    # -S leaves out the site's .pth files, and with them the checkout; the dependencies come by path.
    start = (
        f"import sys; sys.path[:0] = [{str(installed)!r}]; sys.path.append({sysconfig.get_path('purelib')!r});"
        "import spoonproof; from spoonproof.cli import main;"
        f"assert spoonproof.__file__.startswith({str(installed)!r}); sys.exit(main({list(arguments)!r}))"
    )
    env = {k: v for k, v in os.environ.items() if not k.startswith("PYTHON")}
    return subprocess.run(
        [sys.executable, "-S", "-B", "-c", start],
        cwd=folder,
        env={**env, "HOME": str(folder), **more},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture(scope="module")
def channel(installed: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("elsewhere")
    done = _run(installed, folder, "new", "channel", "Quiet Ladle")
    assert done.returncode == 0, done.stderr
    return folder / "quiet-ladle"


def test_the_wheel_has_what_people_curate(installed: Path) -> None:
    bundle = installed / "spoonproof" / "bundle"
    names = {path.name for path in bundle.iterdir()}
    assert {"recipes", "claims", "shared", "site", "channel.yaml", "compiled"} <= names
    assert {path.name for path in (bundle / "compiled").iterdir()} >= {"foods.pickle", "lexicon.pickle"}
    assert not (installed / "spoonproof" / "made").exists()


def test_check(installed: Path, channel: Path) -> None:
    done = _run(installed, channel, "check")
    assert done.returncode == 0, done.stdout + done.stderr
    (recipe,) = (channel / "recipes").glob("*.md")
    text = recipe.read_text(encoding="utf-8")
    wrong = text.replace("\nsteps:", "\n  - 1 tbsp honey\nsteps:", 1)
    assert wrong != text
    (channel / "recipes" / "with-honey.md").write_text(wrong, encoding="utf-8")
    done = _run(installed, channel, "check", "--format", "jsonl", "with-honey")
    (channel / "recipes" / "with-honey.md").unlink()
    assert done.returncode == 1, done.stderr
    assert any("honey" in json.loads(line)["message"].lower() for line in done.stdout.split("\n") if line)


def test_nutrients_and_listen(installed: Path, channel: Path) -> None:
    (recipe,) = (channel / "recipes").glob("*.md")
    done = _run(installed, channel, "nutrients", str(recipe), "--format", "json")
    assert done.returncode == 0 and json.loads(done.stdout)["grams"] > 0, done.stderr
    (channel / "said.txt").write_text("Spinach cures anaemia in babies.\n", encoding="utf-8")
    done = _run(installed, channel, "listen", "said.txt", "--format", "jsonl")
    assert json.loads(done.stdout.partition("\n")[0])["kind"] == "disease", done.stdout + done.stderr


def test_publish(installed: Path, channel: Path) -> None:
    done = _run(installed, channel, "publish", "--out", "pages")
    assert done.returncode == 0, done.stderr
    assert (channel / "pages" / "index.html").is_file()


def test_what_was_made_says_what_the_tables_say() -> None:
    """A lexicon, register or table as made finds the same as one read from the files."""
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge

    made, read = (ChannelFolder(ROOT, Knowledge(ROOT, made=made)) for made in (True, False))
    for slug in sorted(KEPT):  # all others are read from what was made by every other test
        one, other = made.dish(made.recipes[slug]), read.dish(read.recipes[slug])
        assert repr(one.facts) == repr(other.facts)
        said = [
            [(c.claim.start, c.claim.kind, c.truth, c.advice, c.entry, c.why) for c in d.claims] for d in (one, other)
        ]
        assert said[0] == said[1]
    assert sorted(made.knowledge.sources) == sorted(read.knowledge.sources)
    words = set(read.knowledge.lexicon.root.next)
    assert all(made.knowledge.lexicon.root.next.get(word) == read.knowledge.lexicon.root.next[word] for word in words)


def test_a_damaged_part_is_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from spoonproof import __version__, compiled

    monkeypatch.setattr(compiled, "_place", lambda: (tmp_path, __version__))
    for content in (b"", b"\x80\x05", b"not a pickle"):
        (tmp_path / "foods.pickle").write_bytes(content)
        assert compiled.load("foods") is None


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
import spoonproof
from spoonproof.cli import main
assert spoonproof.__file__.startswith(sys.argv.pop(1))
said = []
for line in sys.argv[1:]:
    with contextlib.redirect_stdout(io.StringIO()) as out:
        said.append((main(line.split()), out.getvalue()))
print(json.dumps(said))
"""


@pytest.mark.timeout(240)
def test_what_is_made_is_the_same_bytes_anywhere(installed: Path, tmp_path: Path) -> None:
    """Pages, film, findings, calendar and figures; the second publish goes by what the first one kept."""
    one, other = copied(tmp_path / "one", False, KEPT), copied(tmp_path / "other", True, KEPT)
    settings = (
        (one, 0o022, {"PYTHONHASHSEED": "0", "TZ": "UTC", "LC_ALL": "C.UTF-8"}),
        (other, 0o077, {"PYTHONHASHSEED": "7", "TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONUTF8": "0"}),
    )
    made = []
    for folder, umask, env in settings:
        done = subprocess.run(
            [sys.executable, "-c", ALL, str(installed), *COMMANDS],
            cwd=folder,
            env={**_kept(), "PYTHONPATH": str(installed), "SOURCE_DATE_EPOCH": "1780000000", **env},
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
def test_a_source_date_that_is_no_number_is_unusable(installed: Path, tmp_path: Path, epoch: str) -> None:
    folder = copied(tmp_path / "one", False)
    done = _run(installed, folder, "check", "plum-and-millet-porridge", SOURCE_DATE_EPOCH=epoch)
    if epoch:
        assert done.returncode == 2 and "SOURCE_DATE_EPOCH" in done.stderr and "Traceback" not in done.stderr
    else:
        assert done.returncode in (0, 1, 2) and "Traceback" not in done.stderr
