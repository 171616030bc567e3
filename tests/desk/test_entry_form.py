"""An entry of the register by form: saved only when the register has nothing against it, comments kept."""

from __future__ import annotations

from pathlib import Path

from spoonproof.desk.entry_form import ENTRIES, FIELDS, SOURCES, save
from spoonproof.knowledge import Knowledge

GIVEN = {
    "id": "Swede and knees", "said": "good for the knees", "truth": "unproven", "why": "No study: shows that.",
    "harm": "1", "new_title": "Roots: an overview", "new_author": "Moth Institute", "new_year": "2024",
    "locator": "p. 12", "basis": "read", "checked": "2026-11-25", "due": "2027-11-25",
}  # fmt: skip


def given(**changed: str) -> dict[str, str]:
    """What the form sends."""
    return {**dict.fromkeys(FIELDS, ""), **GIVEN, **changed}


def channel(tmp_path: Path) -> Path:
    """A channel's folder."""
    (tmp_path / "channel.yaml").write_text("title: Moth\n", encoding="utf-8")
    return tmp_path


def test_a_sound_entry_is_written_with_its_source_and_then_known(tmp_path: Path) -> None:
    root = channel(tmp_path)
    assert save(root, Knowledge(root), given()) == []
    known = Knowledge(root)
    entry = known.register.get("swede-and-knees")
    assert entry is not None and entry.why == "No study: shows that." and entry.harm == 1
    assert known.sources[entry.refs[0].id]["title"] == "Roots: an overview"
    assert known.register_faults == Knowledge(None).register_faults


def test_a_second_entry_leaves_the_first_and_its_comments(tmp_path: Path) -> None:
    root = channel(tmp_path)
    save(root, Knowledge(root), given())
    path = root / ENTRIES
    path.write_text(path.read_text("utf-8").replace("    truth: unproven", "    truth: unproven  # mine"), "utf-8")
    assert save(root, Knowledge(root), given(id="other", said="good for the elbows")) == []
    text = path.read_text("utf-8")
    assert "# mine" in text and text.index("swede-and-knees") < text.index("other")
    sources = (root / SOURCES).read_text("utf-8")
    assert "own-moth-2024-2" in sources, "a second source of one author and year has a name of its own"


def test_what_is_missing_or_wrong_is_told_and_nothing_is_written(tmp_path: Path) -> None:
    root = channel(tmp_path)
    known = Knowledge(root)
    for changed in (
        {"why": ""}, {"locator": ""}, {"new_title": ""}, {"id": "!"}, {"said": ""}, {"new_year": "soon"},
        {"truth": "perhaps"}, {"ages": "young"}, {"kind": "nonsense"}, {"id": "superfood"}, {"new_url": "javascript:x"},
        {"checked": "last week"},
    ):  # fmt: skip
        assert save(root, known, given(**changed)), changed
    assert not (root / "claims").exists() and not (root / "shared").exists()


def test_an_own_file_that_cannot_be_read_is_left_alone(tmp_path: Path) -> None:
    root = channel(tmp_path)
    (root / "claims").mkdir()
    (root / ENTRIES).write_text("- [broken\n", encoding="utf-8")
    assert "by hand" in save(root, Knowledge(root), given())[0]
    assert (root / ENTRIES).read_text(encoding="utf-8") == "- [broken\n"
