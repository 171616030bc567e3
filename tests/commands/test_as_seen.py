"""Paths are printed as a person at her folder would type them."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.cli import main
from spoonproof.commands import as_seen

RECIPE = "potato-and-courgette-mash"


@pytest.fixture
def above(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Path:
    """A folder with a channel in it, and we stand in the folder."""
    monkeypatch.chdir(tmp_path)
    assert main(["new", "channel", "Copper Ladle"]) == 0
    capsys.readouterr()
    return tmp_path


def test_a_path_is_shown_from_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "kitchen" / "recipes").mkdir(parents=True)
    monkeypatch.chdir(tmp_path / "kitchen")
    assert as_seen(tmp_path / "kitchen" / "out" / "site") == "out/site"
    monkeypatch.chdir(tmp_path / "kitchen" / "recipes")
    assert as_seen(tmp_path / "kitchen" / "out" / "site") == "../out/site"
    assert as_seen(Path("/etc")) == "/etc", "the way up would be longer"
    assert as_seen(Path("../out")) == "../out", "as it was given"


def test_a_link_on_the_way_leads_nowhere_else(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "far" / "away" / "shelf").mkdir(parents=True)
    (tmp_path / "near").symlink_to(tmp_path / "far" / "away" / "shelf")
    monkeypatch.chdir(tmp_path)
    given = tmp_path / "near" / ".." / "site"  # far/away/site, and not ./site
    assert as_seen(given) == str(given)


def test_publish_and_shoot_say_where_from_here(above: Path, capsys: pytest.CaptureFixture[str]) -> None:
    channel = ["--channel", "copper-ladle"]
    assert main(["publish", *channel]) == 0
    said = capsys.readouterr().out
    assert said.startswith("copper-ladle/out/site: ") and "Look at it: copper-ladle/out/site/index.html" in said
    assert main(["shoot", *channel, f"recipes/{RECIPE}.md"]) in (0, 1)
    said = capsys.readouterr().out
    assert f"copper-ladle/out/film/{RECIPE}/script.txt\n" in said and str(above) not in said


def test_a_recipe_named_as_findings_name_it_is_found_in_its_channel(
    above: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (above / "copper-ladle" / "recipes" / "torn.md").write_text("---\ntitle: [Soup\n---\n", encoding="utf-8")
    assert main(["shoot", "--channel", "copper-ladle", "recipes/torn.md"]) == 1
    told = capsys.readouterr().err
    asked = told.rpartition("spoonproof ")[2].removesuffix(" says why\n")
    assert asked == "check --channel copper-ladle recipes/torn.md"
    assert main(asked.split()) == 1
    assert "recipes/torn.md:" in capsys.readouterr().out
