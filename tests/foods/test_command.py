"""``nutrients`` from the command line: the table, JSON, another recipe beside it, another food in it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from spoonproof.cli import main

HEAD = """---
title: {title}
ages: 7-9 months
texture: mashed
makes: 4 x 60 g
foods:
  - {food}
  - 2 tsp rapeseed oil
steps:
  - Steam the {name} for 20 minutes, until a cube squashes between finger and thumb.
  - Mash the {name} with the oil.
---
A story.
"""


@pytest.fixture
def channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "channel.yaml").write_text("title: Lock Cottage\nmarkets: [EU]\nmeasures: UK\n", encoding="utf-8")
    recipes = tmp_path / "recipes"
    recipes.mkdir()
    swede = HEAD.format(title="Swede mash", food="300 g swede, peeled, 1 cm dice", name="swede")
    beans = HEAD.format(
        title="Butternut mash", food="300 g butternut squash, peeled, 1 cm dice", name="butternut squash"
    )
    (recipes / "swede.md").write_text(swede, encoding="utf-8")
    (recipes / "squash.md").write_text(beans, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_json(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["nutrients", "recipes/swede.md", "--format", "json"]) == 0
    out = json.loads(capsys.readouterr().out)
    assert out["portions"] == 4
    assert out["reference"]["authority"] == "EFSA"
    assert out["per_portion"]["vitamin_c_mg"]["amount"] > 0


def test_text(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["nutrients", "recipes/swede.md"]) == 0
    said = capsys.readouterr().out
    assert "4 portions of 60 g" in said
    assert "vitamin C" in said
    assert "Assumed:" in said


def test_beside_another(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["nutrients", "recipes/swede.md", "--with", "recipes/squash.md"]) == 0
    assert "Butternut mash" in capsys.readouterr().out


def test_another_food(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["nutrients", "recipes/swede.md", "--swap", "carrots"]) == 0
    said = capsys.readouterr()
    assert "carrot instead of swede" in said.err
    assert "with carrot" in said.out
    assert main(["nutrients", "recipes/swede.md", "--swap", "salmon"]) == 1
    assert main(["nutrients", "recipes/swede.md", "--swap", "corgette"]) == 1
    assert "courgette" in capsys.readouterr().err
