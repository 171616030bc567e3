"""The compiled table is the table: it goes through JSON and comes back with every food and every name."""

from __future__ import annotations

import json

import pytest

from spoonproof.foods.compiled import compile_foods
from spoonproof.foods.table import FoodTable
from spoonproof.foods.words import key
from spoonproof.model.table import Row
from tests.foods.bench import rows, table


def test_it_survives_json() -> None:
    data = compile_foods(rows("foods"), rows("food_values"), rows("food_portions"), rows("food_values_more"))
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    back = FoodTable(json.loads(text))
    assert [food.id for food in back] == [food.id for food in table()]
    for food in table():
        other = back.get(food.id)
        assert other is not None
        assert dict(other.per_100g) == dict(food.per_100g)
        assert (other.portions, other.allergens, other.traits) == (food.portions, food.allergens, food.traits)
    assert list(back.names()) == list(table().names())
    assert back.match("baby spinach") == table().match("baby spinach")
    assert json.dumps(compile_foods(rows("foods")), sort_keys=True) == json.dumps(
        compile_foods(rows("foods")), sort_keys=True
    )


def test_no_two_foods_share_a_name() -> None:
    """The first would have it, and the other be asked for in vain."""
    first: dict[str, str] = {}
    plain = [(row, name) for row in rows("foods") for name in (row.text("name"), *row.items("names"))]
    for row, name in plain:
        if name[:1] not in "=~":
            assert first.setdefault(" ".join(key(name)), row.text("id")) == row.text("id"), name


def test_another_version_is_not_read() -> None:
    with pytest.raises(ValueError, match="version"):
        FoodTable({"version": 0})


def test_a_broken_value_says_where() -> None:
    foods = [Row({"id": "a", "name": "a", "group": "g"}, "foods.csv", 2)]
    with pytest.raises(ValueError, match=r"food_values\.csv:2: iron_mg"):
        compile_foods(foods, [Row({"food": "a", "iron_mg": "much"}, "food_values.csv", 2)])
    with pytest.raises(ValueError, match=r"more\.csv:4: value"):
        compile_foods(foods, (), (), [Row({"food": "a", "nutrient": "iodine_ug", "value": "-1"}, "more.csv", 4)])
