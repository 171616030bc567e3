"""Recipes as foods by their titles, and what a recipe makes by volume."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.checks.rules.broken_reference import check
from spoonproof.folder import ChannelFolder
from spoonproof.foods.facts import Facts
from spoonproof.foods.sense import mismatch
from spoonproof.model.recipe import Recipe
from tests.kitchen import dish, read

STOCK = """---
title: {title}
ages: 9-24 months
texture: smooth
foods:
  - 300 g carrots, peeled, 1 cm dice
  - 1 l water
steps:
  - Simmer the carrots in the water for 40 minutes.
  - Blend until smooth.
---
x
"""
MASH = """---
title: Mash
ages: 9-24 months
texture: mashed
foods:
  - 300 g floury potatoes, peeled, 1 cm dice
  - {{recipe: {name}, amount: 100 ml}}
steps:
  - Boil the potatoes in the stock for 25 minutes.
  - Mash the potatoes.
---
x
"""


def _folder(root: Path, name: str, titles: dict[str, str]) -> ChannelFolder:
    (root / "recipes").mkdir()
    (root / "channel.yaml").write_text("title: Here\nmeasures: UK\n", encoding="utf-8")
    for slug, title in titles.items():
        (root / "recipes" / f"{slug}.md").write_text(STOCK.format(title=title), encoding="utf-8")
    (root / "recipes" / "mash.md").write_text(MASH.format(name=name), encoding="utf-8")
    return ChannelFolder(root)


@pytest.mark.parametrize("name", ["pot-7", "Galley Stock", "galley stock", "GALLEY STOCK"])
def test_a_recipe_is_found_by_its_file_or_its_title(tmp_path: Path, name: str) -> None:
    folder = _folder(tmp_path, name, {"pot-7": "Galley Stock"})
    recipe = folder.recipes["mash"]
    assert [line.recipe for line in recipe.foods] == [None, "pot-7"]
    assert list(check(folder.dish(recipe))) == []


def test_a_title_of_two_recipes_names_both(tmp_path: Path) -> None:
    folder = _folder(tmp_path, "galley stock", {"pot-7": "Galley Stock", "pot-8": "Galley stock"})
    (fault,) = check(folder.dish(folder.recipes["mash"]))
    assert "pot-7" in fault.message and "pot-8" in fault.message
    assert [path.stem for path in folder._read] == ["mash"], "a thousand recipes would be read for one name"


def test_a_title_of_no_recipe_is_said(tmp_path: Path) -> None:
    folder = _folder(tmp_path, "Ship's stock", {"pot-7": "Galley Stock"})
    assert len(list(check(folder.dish(folder.recipes["mash"])))) == 1
    assert [path.stem for path in folder._read] == ["mash"]


@pytest.mark.parametrize("name", ["../secret", "con", "a/b", "-x"])
def test_a_name_that_leaves_the_folder_is_refused(name: str) -> None:
    recipe, faults = read(MASH.format(name=f'"{name}"'))
    assert recipe is not None and all(line.recipe is None for line in recipe.foods)
    assert "unsafe-slug" in {fault.rule for fault in faults}


@pytest.mark.parametrize(
    ("written", "ml"),
    [("900 ml", 900), ("1.2 litres", 1200), ("about 75 cl", 750), ("makes 2 l", 2000), ("900ml in all", 900)],
)
def test_makes_by_volume(written: str, ml: float) -> None:
    recipe, faults = read(f"makes: {written}")
    assert recipe is not None and recipe.makes is not None
    assert (recipe.makes.ml, recipe.makes.grams, faults) == (ml, None, [])


@pytest.mark.parametrize("written", ["0 ml", "900 ml each", "ml", "900 000 000 ml"])
def test_a_volume_that_is_none_is_refused(written: str) -> None:
    recipe, faults = read(f"makes: {written}")
    assert recipe is not None and recipe.makes is None and len(faults) == 1


def test_a_volume_is_held_against_what_goes_in() -> None:
    assert mismatch(*_made("300 ml")) is None  # 300 g of potatoes and a little oil
    much, little = mismatch(*_made("2 l")), mismatch(*_made("50 ml"))
    assert much is not None and much.kind == "more"
    assert little is not None and little.kind == "less"
    assert _made("300 ml")[1].portion is None


def _made(makes: str) -> tuple[Recipe, Facts]:
    made = dish(f"makes: {makes}")
    return made.recipe, made.facts


def test_a_batch_by_weight_is_held_against_what_goes_in() -> None:
    assert mismatch(*_made("about 300 g")) is None
    much = mismatch(*_made("2 kg"))
    assert much is not None and (much.kind, much.stated) == ("more", 2000.0)
    assert _made("about 300 g")[1].portion is None


def test_a_range_of_portions_gives_a_range_of_weights() -> None:
    portion = _made("3-4 portions")[1].portion
    batch = _made("3-4 portions")[1].grams
    assert portion is not None
    assert portion.low == pytest.approx(batch.low / 4)
    assert portion.mid == pytest.approx(batch.mid / 3)
