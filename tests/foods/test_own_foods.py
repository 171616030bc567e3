"""A channel's own foods: laid over the bundled ones, and told when their figures can't be."""

from __future__ import annotations

from pathlib import Path

from spoonproof.checks.rules import nutrients_do_not_add_up
from spoonproof.knowledge import Knowledge

FOODS = (
    "id,record,name,names,group,state,parent,form,scientific,refuse_pct,refuse,density,hardness,allergens,traits,"
    "retention,softens_as,note,source\n"
)
VALUES = "food,energy_kcal,protein_g,fat_g,carbohydrate_g,water_g\n"


def _channel(folder: Path, energy: str) -> Knowledge:
    shared = folder / "shared"
    shared.mkdir()
    row = "mooring-bread,,mooring bread,,baked,prepared,,,,,,,soft,gluten;wheat,added-salt,,,our own loaf,own\n"
    (shared / "foods.csv").write_text(FOODS + row, encoding="utf-8")
    (shared / "food_values.csv").write_text(VALUES + f"mooring-bread,{energy},9,2,47,40\n", encoding="utf-8")
    return Knowledge(folder)


def test_an_own_food_is_found_with_its_allergens(tmp_path: Path) -> None:
    known = _channel(tmp_path, "240")
    match = known.foods.match("mooring bread")
    assert match is not None
    food = known.foods.get(match.food)
    assert food is not None
    assert food.allergens == {"gluten", "wheat"}
    assert known.foods.match("wholemeal bread") is not None
    assert list(nutrients_do_not_add_up.check(known)) == []


def test_an_own_food_that_does_not_add_up_is_told(tmp_path: Path) -> None:
    faults = list(nutrients_do_not_add_up.check(_channel(tmp_path, "2400")))
    assert len(faults) == 1
    assert "mooring-bread (food_values.csv, line 2)" in faults[0].message
    assert "2400 kcal" in faults[0].message
