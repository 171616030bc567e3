"""Our figures against an independent national table.

Source: Anses. 2020. Ciqual French food composition table (``ciqual.csv``: figures for foods that we keep, by its
alim_code; carbohydrate with fibre added, vitamin A as retinol + beta-carotene / 12; values below its limits left out).
Two countries' carrots differ; a difference that soil, season, variety and method can't explain must have a line in
``ciqual_differences.csv`` that says why it is left as it is.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from math import inf, log2
from pathlib import Path
from statistics import median
from typing import NamedTuple

from tests.foods.bench import table

HERE = Path(__file__).parent

# A difference no larger than the first number is none; above that, the larger figure may be so many times the other.
VARIATION = {
    "energy_kcal": (15, 1.6),
    "protein_g": (1, 2),
    "fat_g": (1, 3),
    "carbohydrate_g": (2, 2),
    "fibre_g": (1.5, 2.5),
    "water_g": (5, 1.35),
    "sodium_mg": (15, 8),
    "potassium_mg": (60, 3),
    "calcium_mg": (15, 4),
    "iron_mg": (0.4, 4),
    "zinc_mg": (0.3, 4),
    "magnesium_mg": (10, 4),
    "phosphorus_mg": (20, 4),
    "vitamin_c_mg": (6, 5),
    "thiamin_mg": (0.06, 5),
    "riboflavin_mg": (0.06, 5),
    "vitamin_b6_mg": (0.1, 5),
    "folate_ug": (25, 5),
    "vitamin_e_mg": (0.7, 6),
    "vitamin_a_rae_ug": (30, 5),
}


class Pair(NamedTuple):
    food: str
    nutrient: str
    ours: float
    theirs: float

    @property
    def times(self) -> float:
        low, high = sorted((self.ours, self.theirs))
        return inf if low <= 0 else high / low


def _rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def _pairs() -> Iterator[Pair]:
    for row in _rows("ciqual.csv"):
        food = table().get(row["food"])
        assert food is not None, row["food"]
        for nutrient in VARIATION:
            ours = food.per_100g.get(nutrient)
            if ours is not None and row[nutrient]:
                yield Pair(row["food"], nutrient, ours.amount, float(row[nutrient]))


def _too_far(pair: Pair) -> bool:
    floor, times = VARIATION[pair.nutrient]
    return abs(pair.ours - pair.theirs) > floor and pair.times > times


def test_no_figure_is_further_off_than_nature_without_a_word() -> None:
    pairs = list(_pairs())
    print(f"{len(pairs)} figures of {len({pair.food for pair in pairs})} foods compared")
    for nutrient in VARIATION:
        steps = sorted(abs(log2(p.times)) for p in pairs if p.nutrient == nutrient and 0 < p.times < inf)
        tenth = steps[int(len(steps) * 0.9)]
        print(f"  {nutrient:18} median {2 ** median(steps):.2f} times, nine in ten within {2**tenth:.2f} times")
    noted = {(row["food"], row["nutrient"]) for row in _rows("ciqual_differences.csv")}
    unexplained = [pair for pair in pairs if _too_far(pair) and (pair.food, pair.nutrient) not in noted]
    assert not unexplained
    assert len(pairs) > 2500


def test_a_slip_of_the_decimal_point_would_be_seen() -> None:
    carrot = next(pair for pair in _pairs() if (pair.food, pair.nutrient) == ("carrot", "potassium_mg"))
    assert not _too_far(carrot)
    assert _too_far(carrot._replace(ours=carrot.ours * 10))


def test_no_note_outlives_its_difference() -> None:
    far = {(pair.food, pair.nutrient) for pair in _pairs() if _too_far(pair)}
    assert [row for row in _rows("ciqual_differences.csv") if (row["food"], row["nutrient"]) not in far] == []
    assert all(row["why"] for row in _rows("ciqual_differences.csv"))


def test_most_figures_agree_well() -> None:
    for nutrient, most in (("energy_kcal", 1.15), ("water_g", 1.1), ("protein_g", 1.4), ("potassium_mg", 1.5)):
        steps = [abs(log2(p.times)) for p in _pairs() if p.nutrient == nutrient and 0 < p.times < inf]
        assert 2 ** median(steps) < most, nutrient
