"""What is in a dish: cooking, bowls, portions, trials, recipes in recipes, and what is not known."""

from __future__ import annotations

import math
import random
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.foods.combine import Part, combine
from spoonproof.foods.facts import DEEPEST
from spoonproof.model.recipe import FoodLine, Recipe
from tests.feeding.dishes import dish
from tests.foods.bench import amount, counted, heat, line, makes, recipe, table, trial

PURÉE = [
    line("parsnip", amount(300), before="peeled", cut="dice"),
    line("pear", amount(356), before="cored"),
    line("rapeseed-oil", amount(5)),
]


def test_raw_sums_are_those_of_combine() -> None:
    got = counted(PURÉE)
    parts = []
    for a_line, grams in zip(PURÉE, (300, 356, 5), strict=True):
        food = table().get(a_line.food or "")
        assert food is not None
        parts.append(Part(grams, {key: value.amount for key, value in food.per_100g.items()}))
    plain = combine(parts)
    assert got.grams.mid == plain.grams == 661
    for nutrient, amount_ in plain.amounts.items():
        assert got.per_batch[nutrient].amount == pytest.approx(amount_, rel=1e-12)
        assert got.per_batch[nutrient].coverage == pytest.approx(plain.coverage[nutrient])


def test_steaming_keeps_minerals_and_loses_vitamin_c() -> None:
    raw, steamed = counted(PURÉE), counted(PURÉE, {0: [heat("steamed")], 1: [heat("steamed")]})
    assert steamed.per_batch["iron_mg"].amount == raw.per_batch["iron_mg"].amount
    assert steamed.per_batch["vitamin_c_mg"].amount < raw.per_batch["vitamin_c_mg"].amount
    assert steamed.grams.mid < raw.grams.mid
    assert steamed.per_100g["energy_kcal"].amount > raw.per_100g["energy_kcal"].amount
    # The published factor for root vegetables, steamed, is 75 % of vitamin C.
    alone = [line("parsnip", amount(100), before="peeled")]
    ratio = (
        counted(alone, {0: [heat("steamed")]}).per_batch["vitamin_c_mg"].amount
        / counted(alone).per_batch["vitamin_c_mg"].amount
    )
    assert ratio == pytest.approx(0.75)


def test_water_thrown_away_takes_more_with_it() -> None:
    alone = [line("carrot", amount(100), before="peeled")]
    kept = counted(alone, {0: [heat("boiled", "kept")]}).per_batch
    thrown = counted(alone, {0: [heat("boiled", "drained")]}).per_batch
    assert thrown["potassium_mg"].amount < kept["potassium_mg"].amount
    assert thrown["vitamin_c_mg"].amount < kept["vitamin_c_mg"].amount


def test_water_that_is_drained_off_is_in_nobodys_bowl() -> None:
    lines = [line("potato", amount(300), before="peeled"), line("water", amount(1000, "ml"))]
    got = counted(lines, {0: [heat("boiled", "drained")], 1: [heat("boiled", "drained")]}, left_out=[1])
    assert got.grams.mid < 320
    assert any("drained" in said for said in got.assumed)


def test_grain_takes_up_water_once() -> None:
    listed = [line("white-rice", amount(100)), line("water", amount(250, "ml"))]
    both = {0: [heat("boiled", "kept")], 1: [heat("boiled", "kept")]}
    alone = counted([line("white-rice", amount(100))], {0: [heat("boiled", "kept")]})
    assert alone.grams.mid == pytest.approx(280)
    assert counted(listed, both).grams.mid < 350
    assert alone.per_100g["water_g"].amount == pytest.approx(68.4, abs=0.5)  # usda:20445 says 68.44


def test_drained_pasta_swelled_in_water_that_no_line_names() -> None:
    steps = ["Boil the pasta for 12 minutes and drain it.", "Warm the milk for 3 minutes and stir in the pasta."]
    alone = dish("12-18", ["100 g pasta"], steps[:1]).facts.grams
    with_milk = dish("12-18", ["100 g pasta", "100 ml whole milk"], steps).facts.grams
    assert alone.low > 200  # usda:20421 against usda:20420 in USDA SR 28: 2.1 to 2.6 times its weight
    assert with_milk.low > alone.low + 50


def test_a_range_is_told_only_where_there_is_one() -> None:
    def said(food: str, method: str) -> str:
        return next(told for told in counted([line(food, amount(100))], {0: [heat(method)]}).assumed if "left" in told)

    assert "% of its weight left (assumed)" in said("plain-flour", "baked")
    assert " to " in said("potato", "baked")


def test_the_weighed_trial_decides_the_weight() -> None:
    got = counted(PURÉE, {0: [heat("steamed")]}, trials=[trial("2026-11-02", 545), trial("2026-10-01", 560)])
    assert got.grams == (545, 545, 560)
    assert got.per_100g["energy_kcal"].amount == pytest.approx(got.per_batch["energy_kcal"].amount * 100 / 545)
    assert any("weighed trial" in said for said in got.assumed)
    assert got.per_100g["water_g"].amount < counted(PURÉE).per_100g["water_g"].amount


def test_portions() -> None:
    got = counted(PURÉE, makes=makes(9, 60))
    assert got.portions == 9
    assert got.per_portion is not None
    assert got.per_portion["iron_mg"].amount == pytest.approx(got.per_100g["iron_mg"].amount * 0.6)
    by_count = counted(PURÉE, makes=makes(4))
    assert by_count.portion is not None
    assert by_count.portion.mid == pytest.approx(661 / 4)
    assert counted(PURÉE).per_portion is None
    assert counted(PURÉE, makes=makes(0, 60)).portions is None


def test_the_family_pot() -> None:
    lines = [
        line("red-lentils", amount(150)),
        line("carrot", amount(200), before="peeled"),
        line("salt", amount(5)),
        line("greek-yoghurt", amount(40)),
    ]
    got = counted(lines, bowls={2: "family", 3: "baby"}, makes=makes(2, 120))
    assert set(got.bowls) == {"baby", "family"}
    assert got.bowls["baby"].per_100g["sodium_mg"].amount < 60
    assert got.bowls["family"].per_100g["sodium_mg"].amount > 400
    assert got.grams.mid == 240
    assert got.per_batch["energy_kcal"].amount == pytest.approx(got.per_100g["energy_kcal"].amount * 2.4)


def test_missing_is_not_zero() -> None:
    got = counted([line("carrot", amount(300), before="peeled"), line("garam-masala", amount(100))])
    assert got.per_batch["iron_mg"].coverage == pytest.approx(0.75)
    assert got.per_batch["iron_mg"].high == inf
    assert counted([line("garam-masala", amount(100))]).per_batch == {}


def test_a_food_added_to_taste_leaves_sodium_open_but_not_what_salt_has_none_of() -> None:
    from fractions import Fraction

    from spoonproof.model.recipe import Amount
    from spoonproof.model.text import NOWHERE

    taste = Amount(Fraction(0), Fraction(0), "", NOWHERE, to_taste=True)
    got = counted([line("carrot", amount(300), before="peeled"), line("salt", taste)])
    assert got.per_batch["sodium_mg"].high == inf
    assert got.per_batch["protein_g"].high < inf
    assert any("to taste" in said for said in got.assumed)


def test_an_unknown_food_counts_in_the_weight_and_in_nothing_else() -> None:
    got = counted([line("carrot", amount(100), before="peeled"), line(None, amount(100), name="flurb")])
    assert got.grams.mid == 200
    assert got.per_batch["energy_kcal"].coverage == 0.5
    assert any("flurb" in said for said in got.assumed)


def test_a_doubt_about_how_much_pear_does_not_make_pear_purée_richer() -> None:
    got = counted([line("pear", amount(3, "piece"))])
    assert got.grams.low < got.grams.high
    energy = got.per_100g["energy_kcal"]
    assert energy.low == pytest.approx(energy.amount) == pytest.approx(energy.high)


def test_bounds_hold_for_every_mix_in_range() -> None:
    lines = [
        line("red-lentils", amount(100, "g", 200)),
        line("carrot", amount(50, "g", 300), before="peeled"),
        line("olive-oil", amount(5, "g", 15)),
    ]
    got = counted(lines)
    dice = random.Random(4)
    for _ in range(200):
        weights = [dice.uniform(100, 200), dice.uniform(50, 300), dice.uniform(5, 15)]
        mix = []
        for a_line, grams in zip(lines, weights, strict=True):
            food = table().get(a_line.food or "")
            assert food is not None
            mix.append(Part(grams, {"iron_mg": food.per_100g["iron_mg"].amount}))
        one = combine(mix)
        iron = one.amounts["iron_mg"] * 100 / one.grams
        assert got.per_100g["iron_mg"].low <= iron <= got.per_100g["iron_mg"].high


def _stock(slug: str, *lines: FoodLine) -> Recipe:
    return recipe(lines, makes(4, 100), slug)


def test_a_recipe_is_a_food() -> None:
    stock = _stock("galley-stock", line("carrot", amount(100), before="peeled"), line("water", amount(300, "ml")))
    got = counted(
        [line(None, amount(200), recipe="galley-stock"), line("pasta", amount(50))], others={"galley-stock": stock}
    )
    whole = counted(
        [line("carrot", amount(50), before="peeled"), line("water", amount(150, "ml")), line("pasta", amount(50))]
    )
    assert got.per_batch["vitamin_a_rae_ug"].amount == pytest.approx(
        whole.per_batch["vitamin_a_rae_ug"].amount, rel=0.01
    )
    assert [part.name for part in got.all_ingredients] == ["carrot", "water", "pasta"]
    batch = counted([line(None, amount(1, "batch"), recipe="galley-stock")], others={"galley-stock": stock})
    assert batch.grams.mid == pytest.approx(400, abs=2)
    portion = counted([line(None, amount(2, "portion"), recipe="galley-stock")], others={"galley-stock": stock})
    assert portion.grams.mid == 200


def test_recipes_in_a_circle_are_named_and_left_uncounted() -> None:
    a = recipe([line(None, amount(100), recipe="b")], slug="a")
    b = recipe([line(None, amount(100), recipe="a"), line("carrot", amount(100))], slug="b")
    others = {"a": a, "b": b}
    got = counted([line(None, amount(100), recipe="a")], others=others)
    assert got.chain == ("a", "b", "a")
    itself = counted([line(None, amount(100), recipe="bowl")], others={"bowl": recipe([])})
    assert itself.chain == ("bowl", "bowl")


def test_a_chain_of_thousands_ends_in_words() -> None:
    others = {f"r{i}": recipe([line(None, amount(100), recipe=f"r{i + 1}")], slug=f"r{i}") for i in range(5000)}
    got = counted([line(None, amount(100), recipe="r0")], others=others)
    assert len(got.chain) == DEEPEST + 1
    unknown = counted([line(None, amount(100), recipe="nobody")])
    assert any("not in this channel" in why for _, why in unknown.uncounted)


FOODS = st.deferred(lambda: st.sampled_from(sorted(food.id for food in table() if food.record)))
LINES = st.lists(st.tuples(FOODS, st.integers(1, 2000)), min_size=1, max_size=6)


@given(LINES, st.randoms(use_true_random=False))
def test_the_order_of_lines_changes_no_figure(foods: list[tuple[str, int]], shuffle: random.Random) -> None:
    mixed = list(foods)
    shuffle.shuffle(mixed)
    one = counted([line(food, amount(grams)) for food, grams in foods])
    other = counted([line(food, amount(grams)) for food, grams in mixed])
    assert one.per_batch == other.per_batch
    assert one.grams == other.grams


@given(LINES, st.integers(2, 9))
def test_figures_for_100_g_do_not_depend_on_the_size_of_the_batch(foods: list[tuple[str, int]], times: int) -> None:
    one = counted([line(food, amount(grams)) for food, grams in foods])
    many = counted([line(food, amount(grams * times)) for food, grams in foods if grams * times <= 1_000_000])
    for nutrient, value in one.per_100g.items():
        assert math.isclose(many.per_100g[nutrient].amount, value.amount, rel_tol=1e-9, abs_tol=1e-12)
        assert 0 <= value.low <= value.amount <= value.high
        assert 0 <= value.coverage <= 1


@given(LINES)
def test_nothing_weighs_more_than_it_is(foods: list[tuple[str, int]]) -> None:
    got = counted([line(food, amount(grams)) for food, grams in foods]).per_100g
    assert "water_g" not in got or got["water_g"].amount <= 100
    solids = [got[key].amount for key in ("protein_g", "fat_g", "carbohydrate_g") if key in got]
    assert sum(solids) <= 103  # rounding and nitrogen factors of the table itself
