"""Side by side, another food, and trials over time."""

from __future__ import annotations

from dataclasses import replace

from spoonproof.foods.compare import side_by_side, swapped, trials
from tests.foods.bench import amount, counted, line, makes, recipe, table, trial


def test_two_dishes_stand_side_by_side() -> None:
    one = counted([line("red-lentils", amount(100))], makes=makes(2, 50))
    other = counted([line("pear", amount(100))], makes=makes(2, 50))
    text = side_by_side(one, other, ("Lentils", "Pear"))
    iron = next(row for row in text.splitlines() if row.startswith("iron"))
    assert " mg" in iron and "3." in iron
    assert "Lentils" in text
    assert "a portion" in text
    assert "100 g" in side_by_side(one, counted([line("pear", amount(100))]), ("a", "b"))


def test_an_or_comes_in_with_its_own_amount() -> None:
    flax = line("flaxseed", amount(1, "tbsp"))
    egg = replace(line("egg", amount(1, "piece")), choices=(flax,))
    got = swapped(recipe([egg, line("carrot", amount(100))]), "ground flaxseed", table())
    assert got is not None
    assert [a_line.food for a_line in got[0].foods] == ["flaxseed", "carrot"]
    assert got[2].amount == flax.amount


def test_any_other_food_takes_the_place_of_one_of_its_kind() -> None:
    made = recipe([line("red-lentils", amount(100)), line("carrot", amount(200)), line("rapeseed-oil", amount(5))])
    got = swapped(made, "parsnip", table())
    assert got is not None
    assert [a_line.food for a_line in got[0].foods] == ["red-lentils", "parsnip", "rapeseed-oil"]
    assert got[2].amount == amount(200)
    assert swapped(made, "flurb", table()) is None
    assert swapped(made, "salmon", table()) is None


def test_trials_over_time() -> None:
    assert trials(recipe([])) == ""
    weighed = [trial("2026-11-02", 545), trial("2026-09-01", 520), trial("2026-10-01", 560)]
    over_time = "Weighed 3 times from 2026-09-01 to 2026-11-02: 520 to 560 g, last 545 g."
    assert trials(recipe([], makes(9, 60), trials=weighed)) == over_time
    fits_no_longer = f"{over_time} It no longer fits the 720 g that the recipe makes."
    assert trials(recipe([], makes(12, 60), trials=weighed)) == fits_no_longer
    assert trials(recipe([], trials=weighed[:1])) == "Weighed once, 2026-11-02: 545 g."
