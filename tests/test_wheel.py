"""The built wheel alone, in a folder that is not the repository, read-only: the complete tool."""

from __future__ import annotations

import json
import os
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


def _run(installed: Path, folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
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
        env={**env, "HOME": str(folder)},
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
    for slug in sorted(read.recipes):
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
