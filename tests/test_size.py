"""No module grows past what a person reads in one sitting, and a newcomer finds every room."""

from __future__ import annotations

import subprocess
from pathlib import Path

ROOT = Path(__file__).parents[1]
MOST = 400
TABLES = {"tests/feeding/test_dishes.py"}
"""Rows of data that happen to be written in Python."""
TOP = frozenset(
    """
    .ci .gitignore .pre-commit-hooks.yaml CHANGELOG.md DEVELOPERS.md LICENSE README.md SECURITY.md benchmarks
    channel.yaml claims corrections.csv guide hatch_build.py pyproject.toml recipes shared site src tests
    """.split()
)


def test_nothing_but_what_belongs_there_lies_at_the_top() -> None:
    kept = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout.split("\n")
    assert {name.partition("/")[0] for name in kept if name} == TOP


def test_no_module_is_longer_than_400_lines() -> None:
    modules = [path for room in ("src", "tests", "benchmarks") for path in (ROOT / room).rglob("*.py")]
    lengths = {path.relative_to(ROOT).as_posix(): path.read_text("utf-8").count("\n") for path in modules}
    assert len(lengths) > 300
    assert {name: lines for name, lines in lengths.items() if lines > MOST and name not in TABLES} == {}


def test_developers_find_every_room_in_their_page() -> None:
    told = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    places = (ROOT / "src" / "spoonproof").iterdir()
    rooms = [f"`{path.name}/`" for path in places if (path / "__init__.py").is_file()]
    rooms += [f"`{path.name}`" for path in (ROOT / "src" / "spoonproof").glob("[a-z]*.py")]
    assert len(rooms) > 30
    assert [room for room in rooms if room not in told] == []
