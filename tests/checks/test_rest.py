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
