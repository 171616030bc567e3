"""Dishes that the USDA computed and published, recomputed.

Source: USDA Food and Nutrient Database for Dietary Studies 2021-2023; weights, retention codes and moisture changes
of its recipes, and the figures it publishes for 100 g of each dish (``usda_dishes.json``, by its food codes).
``rounding`` is the bound that the rounding of the published inputs allows.
"""

from __future__ import annotations

import json
from math import fsum
from pathlib import Path
from typing import Any

from spoonproof.foods.combine import Part, combine
from tests.each import each

DISHES: list[dict[str, Any]] = json.loads(Path(__file__).with_name("usda_dishes.json").read_text(encoding="utf-8"))


def test_there_are_at_least_a_dozen() -> None:
    assert len({dish["food_code"] for dish in DISHES}) >= 12
    assert any(dish["moisture_change_pct"] for dish in DISHES)
    assert any(part["kept_pct"] for dish in DISHES for part in dish["parts"])


@each("dish", DISHES)
def test_a_published_dish_comes_out_within_its_rounding(dish: dict[str, Any]) -> None:
    parts = [
        Part(part["grams"], part["per_100g"], {key: pct / 100 for key, pct in part["kept_pct"].items()})
        for part in dish["parts"]
    ]
    final = fsum(part.grams for part in parts) * (1 + dish["moisture_change_pct"] / 100)
    got = combine(parts, final_grams=final)
    off = {
        nutrient: (got.amounts[nutrient] * 100 / got.grams, published)
        for nutrient, published in dish["per_100g"].items()
        if abs(got.amounts[nutrient] * 100 / got.grams - published) > dish["rounding"][nutrient] * 1.0001
    }
    assert not off


def test_leaving_out_what_cooking_destroys_would_be_seen() -> None:
    """The check can fail: without retention, vitamin C of the cooked beans is out of its bound."""
    beans = next(dish for dish in DISHES if dish["food_code"] == "75205045")
    parts = [Part(part["grams"], part["per_100g"]) for part in beans["parts"]]
    final = fsum(part.grams for part in parts) * (1 + beans["moisture_change_pct"] / 100)
    got = combine(parts, final_grams=final)
    wrong = abs(got.amounts["vitamin_c_mg"] * 100 / got.grams - beans["per_100g"]["vitamin_c_mg"])
    assert wrong > beans["rounding"]["vitamin_c_mg"]
