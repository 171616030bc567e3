"""One missing colon hides neither a hazard nor a claim."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.cli import main

RECIPE = """---
title: Pear bowl
ages: 7-9 months
texture: mashed
season [October]
foods:
  - 300 g pears
  - 1 tsp honey
steps:
  - Boil the pears for 12 minutes.
  - Mash everything.
---
Pears cure colds.
"""


def test_the_honey_and_the_cure_are_told_beside_the_colon(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "recipes").mkdir()
    (tmp_path / "channel.yaml").write_text("title: Test\nbase_url: https://test.example\nmarkets: [EU]\n")
    (tmp_path / "recipes/pear.md").write_text(RECIPE)
    assert main(["check"]) == 1
    said = capsys.readouterr().out
    assert "yaml-syntax" in said and "honey" in said and "cure colds" in said
    assert main(["publish"]) == 1
    assert not (tmp_path / "out/site/recipes/pear.html").exists(), "nothing is made of it"


def test_a_broken_step_hides_no_food_that_no_step_could_mend(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "recipes").mkdir()
    (tmp_path / "channel.yaml").write_text("title: Test\nbase_url: https://test.example\nmarkets: [EU]\n")
    text = RECIPE.replace("season [October]\n", "").replace("  - 300 g pears\n", "  - 300 g carrots, 1 cm dice\n")
    (tmp_path / "recipes/bowl.md").write_text(text.replace("Boil the pears for", "Boil: the carrots: for"))
    assert main(["check"]) == 1
    said = capsys.readouterr().out
    assert "Honey can carry" in said and "Not all of this recipe could be read" in said.replace("\n    ", " ")
    assert "raw and hard" not in said, "the step that can't be read may cook them"
