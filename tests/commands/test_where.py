"""``where``: by words, by meaning, by entry, and what has changed since it was last seen."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from spoonproof.cli import main
from spoonproof.commands.where import SEEN, fingerprint
from spoonproof.knowledge import Knowledge

RECIPE = """---
title: Pear mash
ages: 7-9 months
texture: mashed
makes: 4 x 60 g
foods:
  - 300 g pears, peeled, 1 cm dice
steps:
  - Steam the pears for 12 minutes.
  - Mash with a fork.
film:
  segments:
    - {name: Hook, say: "Pears are packed with iron, my neighbour says.", shot: CU, super: "Soft in twelve minutes"}
  description: Pears, steamed soft in twelve minutes.
  social: Soft in twelve minutes, and never any honey before twelve months.
---
A story in which pears are soft in twelve minutes.
"""


@pytest.fixture
def channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-25")
    (tmp_path / "channel.yaml").write_text("title: Test\nbase_url: https://test.example\nmarkets: [EU]\n")
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes/pear-mash.md").write_text(RECIPE)
    (tmp_path / "captions").mkdir()
    (tmp_path / "captions/pear-mash.vtt").write_text(
        "WEBVTT\n\n00:00:01.000 --> 00:00:03.000\nsoft in twelve\n\n00:00:03.000 --> 00:00:06.000\nminutes and never "
        "give honey before twelve months\n"
    )
    (tmp_path / "out").mkdir()
    (tmp_path / "out/pear-mash.srt").write_text("soft in twelve minutes")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def found(capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 1) -> list[dict[str, object]]:
    assert main(["where", "--format", "jsonl", *arguments]) == code
    return [json.loads(line) for line in capsys.readouterr().out.splitlines()]


def test_words_over_pages_scripts_social_texts_and_cues(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    places = found(capsys, "Soft in twelve minutes!")
    assert [place["file"] for place in places].count("captions/pear-mash.vtt") == 1
    lines = {place["line"] for place in places if place["file"] == "recipes/pear-mash.md"}
    assert lines == {13, 14, 15, 17}  # super, description, social text, story
    assert not any(str(place["file"]).startswith("out/") for place in places)


def test_the_same_claim_in_other_words(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    places = found(capsys, "pears are rich in iron")
    assert [str(place["what"]).partition(" in ")[0] for place in places] == ["says so"]
    assert found(capsys, "pears are rich in zinc", code=0) == []


def test_an_entry_in_recipes_and_captions(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = {str(place["file"]) for place in found(capsys, "honey-held-back")}
    assert files == {"recipes/pear-mash.md", "captions/pear-mash.vtt"}


def test_what_is_due(channel: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    assert found(capsys, "--changed", code=0) == []
    monkeypatch.setenv("SPOONPROOF_TODAY", "2029-01-01")
    assert any("due since 2027-05-25, on honey-held-back" in str(place["what"]) for place in found(capsys, "--changed"))


def test_what_has_changed_since_it_was_seen(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["where", "--changed"]) == 0
    assert f"no {SEEN} yet" in capsys.readouterr().out
    assert found(capsys, "--changed", "--seen", code=0) == []
    seen = channel / SEEN
    whole = seen.read_text()
    assert found(capsys, "--changed", code=0) == []
    line = next(line for line in whole.splitlines() if line.startswith("honey-held-back,"))
    seen.write_text(whole.replace(line, "honey-held-back,0000000000000000,2025-01-01"))
    assert all("changed: honey-held-back" in str(place["what"]) for place in found(capsys, "--changed"))
    seen.write_text(whole.replace(line + "\n", ""))
    assert all("new: honey-held-back" in str(place["what"]) for place in found(capsys, "--changed"))
    assert found(capsys, "--changed", "--seen")
    assert seen.read_text() == whole


@pytest.mark.parametrize("text", ["what,ever\n", 'entry,fingerprint\n"a'])
def test_a_broken_memory_is_told(channel: Path, capsys: pytest.CaptureFixture[str], text: str) -> None:
    (channel / SEEN).write_text(text)
    assert main(["where", "--changed"]) == 2
    assert SEEN in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [[], ["--seen", "pears"], ["pears", "--changed"], ["!!!"]])
def test_arguments_that_ask_nothing(channel: Path, arguments: list[str]) -> None:
    assert main(["where", *arguments]) == 2


def test_a_fingerprint_changes_with_what_is_said_and_not_with_dates() -> None:
    entry = Knowledge().register.entries[0]
    assert fingerprint(entry) == fingerprint(replace(entry, checked="2030-01-01", due=""))
    assert fingerprint(entry) != fingerprint(replace(entry, why="Otherwise."))
    assert len({fingerprint(each) for each in Knowledge().register.entries}) == len(Knowledge().register.entries)


def test_nearly_the_same_words_are_found_where_nobody_says_just_those(
    channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (channel / "captions/talk.txt").write_text("Steaming pears softly is what we do.\n")
    assert "nearly said in line 1" in {place["what"] for place in found(capsys, "soft steamed pear")}
    assert found(capsys, "soft steamed kohlrabi", code=0) == []


def test_what_is_said_of_anything_is_found_by_its_effect(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "captions/talk.txt").write_text("Beetroot strengthens a baby's immune system.\n")
    assert [place["file"] for place in found(capsys, "boosts immunity")] == ["captions/talk.txt"]


def test_words_over_two_cues_are_quoted_as_said_with_their_clause(
    channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["where", "twelve minutes and never"]) == 1
    assert "“soft in twelve minutes and never give honey before twelve months”" in capsys.readouterr().out


def test_nothing_found_says_what_was_looked_through(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (channel / "recipes/broken.md").write_text("---\ntitle: [\n")
    assert main(["where", "honey-held-bak"]) == 0
    out, err = capsys.readouterr()
    assert "Looked through 1 recipe and 1 file of captions" in out and "perhaps honey-held-back" in out
    assert "recipes/broken.md: can't be read" in err
