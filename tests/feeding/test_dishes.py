"""Dishes that hold a danger and dishes that only look as if they did: each gives its hazards and no others."""

from __future__ import annotations

from tests.each import each
from tests.feeding.dishes import Small, dish, hazard_ids, small_dishes

DISHES = small_dishes()


@each("small", DISHES)
def test_the_hazards_of_a_dish_and_no_others(small: Small) -> None:
    assert small.foods and small.steps
    assert hazard_ids(dish(small.ages, small.foods, small.steps, small.texture)) == small.hazards


def test_both_kinds_are_there() -> None:
    with_hazards = sum(bool(small.hazards) for small in DISHES)
    assert min(with_hazards, len(DISHES) - with_hazards) > 50
