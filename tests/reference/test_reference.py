"""The committed reference says what the code says; ``python -m spoonproof.reference`` writes it anew."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from spoonproof.cli import COMMANDS
from spoonproof.reading.recipe_keys import RECIPE_KEYS
from spoonproof.reference.__main__ import write
from spoonproof.reference.pages import pages as made_pages
from spoonproof.reference.picture import rooms, storeys, with_picture

ROOT = Path(__file__).parents[2]
pages = cache(made_pages)  # none of the tests writes into it
STALE = "out of date: run python -m spoonproof.reference"


def test_the_committed_pages_are_those_the_code_makes() -> None:
    made = pages()
    folder = ROOT / "guide" / "reference"
    assert {path.name for path in folder.glob("*.md")} == made.keys()
    for name, text in made.items():
        assert (folder / name).read_text(encoding="utf-8") == text, f"{name} is {STALE}"


def test_the_picture_in_the_notes_is_that_of_the_code() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert with_picture(text) == text, f"the picture of imports is {STALE}"


def test_writing_twice_changes_nothing(tmp_path: Path) -> None:
    (tmp_path / "DEVELOPERS.md").write_text((ROOT / "DEVELOPERS.md").read_text(encoding="utf-8"), encoding="utf-8")
    write(tmp_path)
    before = {path: path.read_bytes() for path in sorted(tmp_path.rglob("*.md"))}
    write(tmp_path)
    assert before == {path: path.read_bytes() for path in sorted(tmp_path.rglob("*.md"))}


def test_every_command_and_every_key_of_a_recipe_is_there() -> None:
    made = pages()
    assert set(re.findall(r"^## (\w+)$", made["commands.md"], re.MULTILINE)) == set(COMMANDS)
    keys = set(re.findall(r"^\| `([a-z_]+)` ", made["recipe-file.md"], re.MULTILINE))
    assert keys == {key.name for key in RECIPE_KEYS}


def test_a_room_stands_above_what_it_knows() -> None:
    known = rooms()
    above = {name: place for place, storey in enumerate(storeys(known)) for name in storey}
    assert above["cli"] < above["dish"] < above["foods"] < above["model"]
    assert known["model"] == frozenset()


def test_rooms_that_know_each_other_share_a_storey() -> None:
    known = {"a": frozenset({"b"}), "b": frozenset({"a", "c"}), "c": frozenset()}
    assert storeys(known) == [["a", "b"], ["c"]]


def test_a_picture_without_its_marks_is_refused() -> None:
    with pytest.raises(ValueError, match="marks"):
        with_picture("no marks here")


def test_every_table_is_told_in_the_notes_of_the_tables() -> None:
    notes = (ROOT / "shared" / "README.md").read_text(encoding="utf-8")
    assert set(re.findall(r"`([a-z_]+)`", notes)) >= {path.stem for path in (ROOT / "shared").glob("*.csv")}
