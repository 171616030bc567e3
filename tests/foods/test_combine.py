"""Laws that every sum keeps."""

from __future__ import annotations

import math
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.foods.combine import Part, combine

AMOUNT = st.floats(0, 5000, allow_nan=False)
SHARE = st.floats(0, 1)
KEY = st.sampled_from(["iron_mg", "vitamin_c_mg", "energy_kcal", "anything at all"])
PART = st.builds(
    Part, st.floats(0, 10_000), st.dictionaries(KEY, AMOUNT, max_size=4), st.dictionaries(KEY, SHARE, max_size=4)
)
PARTS = st.lists(PART, max_size=8)


@given(PARTS, st.randoms(use_true_random=False))
def test_the_order_of_the_foods_changes_not_one_digit(parts: list[Part], random: Random) -> None:
    shuffled = list(parts)
    random.shuffle(shuffled)
    assert combine(parts) == combine(shuffled)


@given(PARTS)
def test_coverage_is_a_share(parts: list[Part]) -> None:
    got = combine(parts)
    assert all(0 <= share <= 1 for share in got.coverage.values())
    assert got.coverage.keys() == got.amounts.keys()


@given(PARTS, st.sampled_from([0.5, 2.0, 4.0]))
def test_twice_the_recipe_has_twice_of_all(parts: list[Part], times: float) -> None:
    once, more = combine(parts), combine([Part(p.grams * times, p.per_100g, p.kept) for p in parts])
    for key, amount in once.amounts.items():
        assert math.isclose(more.amounts[key], amount * times, rel_tol=1e-12, abs_tol=1e-300)
        assert math.isclose(more.coverage[key], once.coverage[key], rel_tol=1e-12, abs_tol=1e-12)


@given(PARTS, PART)
def test_more_food_never_has_less(parts: list[Part], extra: Part) -> None:
    before, after = combine(parts), combine([*parts, extra])
    assert all(after.amounts[key] >= amount for key, amount in before.amounts.items())


def test_what_no_food_knows_has_no_amount_and_what_one_knows_is_not_zero_for_the_rest() -> None:
    got = combine([Part(100, {"iron_mg": 2}), Part(300, {})])
    assert got.amounts == {"iron_mg": 2}
    assert got.coverage == {"iron_mg": 0.25}
    assert "zinc_mg" not in got.amounts
    assert combine([Part(100, {"iron_mg": 2}), Part(300, {"iron_mg": 0})]).coverage == {"iron_mg": 1}


def test_water_that_leaves_changes_the_weight_and_nothing_else() -> None:
    parts = [Part(200, {"iron_mg": 1.5})]
    assert combine(parts, final_grams=120).amounts == combine(parts).amounts
    assert combine(parts, final_grams=120).grams == 120
    assert combine(parts).grams == 200


def test_cooking_keeps_a_share() -> None:
    assert combine([Part(200, {"vitamin_c_mg": 10, "iron_mg": 1}, {"vitamin_c_mg": 0.75})]).amounts == {
        "iron_mg": 2,
        "vitamin_c_mg": 15,
    }


@pytest.mark.parametrize("bad", [-1.0, math.nan, math.inf])
def test_nonsense_is_refused(bad: float) -> None:
    with pytest.raises(ValueError):
        combine([Part(bad, {})])
    with pytest.raises(ValueError):
        combine([Part(1, {"iron_mg": bad})])
    with pytest.raises(ValueError):
        combine([Part(1, {"iron_mg": 1}, {"iron_mg": bad})])
    with pytest.raises(ValueError):
        combine([Part(1, {})], final_grams=bad)


def test_no_food_at_all_is_nothing() -> None:
    assert combine([]).amounts == {}
    assert combine([Part(0, {"iron_mg": 3})]).coverage == {"iron_mg": 0}
