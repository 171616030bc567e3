"""What claims may ask: of the dish, of a food alone, of a spoonful; None is not known, never zero."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest

from spoonproof.foods.numbers import KitchenNumbers
from spoonproof.model.numbers import Numbers
from tests.foods.bench import amount, counted, heat, line, makes, recipe, table, units


def _dish(**more: Any) -> KitchenNumbers:
    lines = [
        line("red-lentils", amount(150)),
        line("spinach", amount(100)),
        line("plain-yoghurt", amount(50)),
        line("salt", amount(3)),
    ]
    facts = counted(lines, {1: [heat("boiled", "kept")]}, makes(6, 50), bowls={3: "family"}, **more)
    return KitchenNumbers(table(), facts, units())


def test_it_is_what_claims_know_it_as() -> None:
    numbers: Numbers = _dish()
    assert numbers.dish_foods()[:2] == ("red-lentils", "spinach")


def test_the_dish_by_every_basis() -> None:
    numbers = _dish()
    per_100g, portion, batch = (numbers.dish("iron_mg", per) for per in ("100g", "portion", "batch"))
    assert per_100g is not None and portion is not None and batch is not None
    assert portion.amount == pytest.approx(per_100g.amount / 2)
    assert batch.amount == pytest.approx(portion.amount * 6)
    energy, by_energy = numbers.dish("energy_kcal", "100g"), numbers.dish("iron_mg", "100kcal")
    assert energy is not None and by_energy is not None
    assert by_energy.amount == pytest.approx(per_100g.amount * 100 / energy.amount)
    assert by_energy.low <= by_energy.amount <= by_energy.high
    assert portion.unit == "mg"
    assert portion.assumed
    iodine = numbers.dish("iodine_ug", "portion")
    assert iodine is None or iodine.coverage < 1
    grams = numbers.portion_grams()
    assert grams is not None
    assert grams.amount == 50


def test_the_familys_salt_is_not_the_babys() -> None:
    sodium = _dish().dish("sodium_mg", "100g")
    assert sodium is not None
    assert sodium.amount < 60
    assert "salt" not in _dish().dish_foods()


def test_what_a_food_brings_to_a_portion() -> None:
    numbers = _dish()
    spinach = numbers.food_in_portion("spinach", "iron_mg")
    portion = numbers.dish("iron_mg", "portion")
    assert spinach is not None and portion is not None
    assert 0 < spinach.amount < portion.amount
    assert numbers.food_in_portion("pear", "iron_mg") is None
    parts = [numbers.food_in_portion(food, "iron_mg") for food in ("red-lentils", "spinach", "plain-yoghurt")]
    assert sum(part.amount for part in parts if part) == pytest.approx(portion.amount, rel=1e-6)


def test_allergens_come_with_their_foods() -> None:
    assert _dish().dish_allergens() == {"milk": ("plain-yoghurt",)}


def test_allergens_of_a_recipe_inside() -> None:
    stock = recipe([line("celery", amount(100)), line("water", amount(500, "ml"))], makes(4, 100), "stock")
    facts = counted([line(None, amount(200), recipe="stock")], others={"stock": stock})
    numbers = KitchenNumbers(table(), facts, units())
    assert numbers.dish_allergens() == {"celery": ("celery",)}


def test_a_food_alone_needs_no_dish() -> None:
    numbers = KitchenNumbers(table(), units=units())
    iron = numbers.food("spinach", "iron_mg", "100g")
    assert iron is not None
    assert iron.amount == pytest.approx(2.71)
    assert iron.low < iron.amount < iron.high
    assert iron.sources == ("usda-sr28",)
    by_energy = numbers.food("spinach", "iron_mg", "100kcal")
    assert by_energy is not None
    assert by_energy.amount == pytest.approx(2.71 * 100 / 23)
    assert numbers.food("spinach", "iron_mg", "portion") is None
    assert numbers.food("garam-masala", "iron_mg", "100g") is None
    assert numbers.food("flurb", "iron_mg", "100g") is None
    assert numbers.dish("iron_mg", "100g") is None
    assert numbers.portion_grams() is None
    assert numbers.dish_foods() == ()
    assert numbers.dish_allergens() == {}


def test_spoons_and_pieces() -> None:
    numbers = _dish()
    spoon = numbers.unit_grams("olive-oil", "tbsp")
    assert spoon is not None
    assert spoon.amount == pytest.approx(13.6, abs=0.3)
    pear = numbers.unit_grams("pear", "piece")
    assert pear is not None
    assert pear.low < pear.amount < pear.high
    dish_spoon = numbers.unit_grams("", "tbsp")
    assert dish_spoon is not None
    assert 13 < dish_spoon.low < dish_spoon.high < 17
    assert numbers.unit_grams("flurb", "tbsp") is None
    assert numbers.unit_grams("salt", "bunch") is None


def test_an_unweighed_food_is_not_known() -> None:
    facts = counted([line("carrot", None), line("pear", amount(100))], makes=makes(2, 50))
    numbers = KitchenNumbers(table(), facts, units())
    assert numbers.food_in_portion("carrot", "iron_mg") is None
    dish = numbers.dish("iron_mg", "portion")
    assert dish is not None
    assert dish.high == inf
