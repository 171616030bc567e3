"""Grams of a line: mass, volume, count, tins, waste, each with its range and its reasons."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.foods.weigh import Unweighed, Weight, weigh
from spoonproof.model.recipe import Amount, Cut, FoodLine
from spoonproof.model.record import replace
from spoonproof.model.text import NOWHERE, Span
from tests.foods.bench import amount, line, table, units


def weighed(a_line: FoodLine, system: str = "UK") -> Weight:
    food = table().get(a_line.food or "")
    assert food is not None
    got = weigh(a_line, food, units(system))
    assert isinstance(got, Weight), got
    return got


def test_grams_are_grams() -> None:
    got = weighed(line("red-lentils", amount(150)))
    assert got.bought == got.edible == (150, 150, 150)
    assert got.assumed == ()
    assert weighed(line("red-lentils", amount("1/2", "kg"))).edible.mid == 500
    assert weighed(line("red-lentils", amount(1, "lb"))).edible.mid == pytest.approx(453.59237)


def test_a_range_stays_a_range() -> None:
    got = weighed(line("red-lentils", amount(100, "g", 150)))
    assert got.edible == (125, 100, 150)


def test_about_widens() -> None:
    got = weighed(line("red-lentils", amount(100, about=True)))
    assert got.edible == pytest.approx((100, 90, 110))
    assert any("about" in said for said in got.assumed)


def test_waste_comes_off_what_is_weighed_as_bought() -> None:
    got = weighed(line("parsnip", amount(300), "peeled"))
    assert got.bought.mid == 300
    assert got.edible.mid == pytest.approx(255)
    assert got.edible.high == 300
    assert any("15 % taken off" in said for said in got.assumed)


def test_a_word_before_the_name_means_it_was_weighed_ready() -> None:
    got = weighed(line("parsnip", amount(300), before="peeled"))
    assert got.edible.mid == 300
    assert got.bought.mid == pytest.approx(300 / 0.85)


def test_peel_that_stays_on_is_eaten() -> None:
    assert (
        weighed(line("sweet-potato", amount(200), "unpeeled")).edible.mid
        > weighed(line("sweet-potato", amount(200), "peeled")).edible.mid
    )


def test_spoons_and_cups_go_by_the_food() -> None:
    assert weighed(line("rapeseed-oil", amount(1, "tsp"))).edible.mid == pytest.approx(4.6, abs=0.1)
    assert weighed(line("porridge-oats", amount(1, "cup")), "US").edible.mid == pytest.approx(81, abs=1)
    uk, au = weighed(line("tahini", amount(1, "tbsp"))), weighed(line("tahini", amount(1, "tbsp")), "AU")
    assert au.edible.mid / uk.edible.mid == pytest.approx(20 / 15, rel=1e-6)


def test_a_cup_goes_by_its_cut_and_is_wide_without_one() -> None:
    grated = weighed(line("carrot", amount(1, "cup"), cut="grated"), "US").edible
    chopped = weighed(line("carrot", amount(1, "cup"), cut="chopped"), "US").edible
    unsaid = weighed(line("carrot", amount(1, "cup")), "US").edible
    assert grated.mid == pytest.approx(110, abs=1)
    assert chopped.mid == pytest.approx(128, abs=1)
    assert unsaid.low <= 111 and unsaid.high >= 127


def test_water_weighs_what_it_is() -> None:
    got = weighed(line("water", amount(200, "ml")))
    assert got.edible.mid == pytest.approx(200, abs=1)
    assert got.assumed == ()


def test_counts_by_size() -> None:
    medium = weighed(line("pear", amount(2, "piece", size="medium")))
    assert medium.edible.mid == pytest.approx(356)
    assert medium.bought.mid == pytest.approx(356 / 0.9)
    unsaid = weighed(line("carrot", amount(1, "piece")))
    assert unsaid.edible.low < unsaid.edible.mid < unsaid.edible.high
    assert weighed(line("carrot", amount(1, "piece", size="large"))).edible.mid > unsaid.edible.mid
    assert weighed(line("garlic", amount(2, "clove"))).edible.mid == 6


def test_pinches_handfuls_and_knobs() -> None:
    assert 0.1 < weighed(line("turmeric", amount(1, "pinch"))).edible.mid < 2
    assert weighed(line("spinach", amount(1, "handful"))).edible.mid == 25
    assert weighed(line("butter", amount(1, "knob"))).edible.mid == 10


def test_tins_are_drained_where_the_food_lies_in_liquid() -> None:
    tin = amount(1, "tin", each=amount(400))
    drained = weighed(line("chickpea-canned", tin, "drained"))
    assert drained.edible.mid == pytest.approx(240)
    assert drained.edible.high < 300
    assert weighed(line("chopped-tomatoes-canned", tin)).edible.mid == 400
    two = weighed(line("coconut-milk", amount(2, "tin", each=amount(400))))
    assert two.edible.mid == 800


def test_what_no_table_tells_is_said_and_not_guessed() -> None:
    food = table().get("garam-masala")
    assert food is not None
    got = weigh(line("garam-masala", amount(1, "bunch")), food, units())
    assert isinstance(got, Unweighed)
    assert "write grams" in got.why
    no_amount = weigh(line("garam-masala", None), food, units())
    assert isinstance(no_amount, Unweighed)
    taste = Amount(Fraction(0), Fraction(0), "", NOWHERE, to_taste=True)
    to_taste = weigh(line("garam-masala", taste), food, units())
    assert isinstance(to_taste, Unweighed)
    assert to_taste.to_taste


@pytest.mark.parametrize("bad", [(0, 0), (-5, -5), (3, 2), (10**12, 10**12)])
def test_amounts_that_are_no_amounts_never_become_grams(bad: tuple[int, int]) -> None:
    food = table().get("carrot")
    assert food is not None
    got = weigh(line("carrot", Amount(Fraction(bad[0]), Fraction(bad[1]), "g", NOWHERE)), food, units())
    assert isinstance(got, Unweighed)


UNITS = st.sampled_from(
    ["g", "kg", "oz", "tsp", "tbsp", "cup", "ml", "piece", "handful", "pinch", "tin", "bunch", "slice"]
)


FOODS = st.deferred(lambda: st.sampled_from(sorted(food.id for food in table())))


@given(FOODS, UNITS, st.integers(1, 40), st.integers(1, 8))
def test_every_weight_lies_in_its_range(food_id: str, unit: str, top: int, under: int) -> None:
    food = table().get(food_id)
    assert food is not None
    got = weigh(line(food_id, Amount(Fraction(top, under), Fraction(top, under), unit, NOWHERE)), food, units())
    if isinstance(got, Unweighed):
        assert got.why
        return
    assert 0 < got.edible.low <= got.edible.mid <= got.edible.high
    assert got.bought.mid >= got.edible.mid * 0.999999


def test_a_new_potato_is_eaten_in_its_skin_unless_the_line_peels_it() -> None:
    whole, peeled = line("new-potato", amount(500)), line("new-potato", amount(500), "peeled")
    assert weighed(whole).edible == (500, 500, 500)
    assert weighed(peeled).edible.mid == pytest.approx(440)
    assert weighed(line("potato", amount(500))).edible.mid == pytest.approx(375)  # an old one is peeled as a rule


def test_a_volume_in_brackets_is_of_what_is_eaten() -> None:
    cups = amount(3, "piece", each=amount("1/2", "cup"))
    got = weighed(line("banana", cups, cut="mashed"), "US")
    assert got.edible.mid == pytest.approx(1.5 * 225, rel=0.01)  # SR28: a cup of mashed banana is 225 g
    assert got.bought.mid == pytest.approx(1.5 * 225 / 0.64, rel=0.01)  # and 36 % of a banana is its peel


@pytest.mark.parametrize(
    ("food", "unit", "words", "grams"),
    [
        ("crisps", "piece", (), 1.3),
        ("bagel", "piece", (), 105),
        ("brown-sugar", "cup", (), 145),
        ("brown-sugar", "cup", ("packed",), 220),
        ("potato-boiled", "cup", (), 156),
    ],
)
def test_a_portion_is_one_row_of_the_source_and_no_mean_of_several(
    food: str, unit: str, words: tuple[str, ...], grams: float
) -> None:
    assert weighed(line(food, amount(1, unit), *words), "US").edible.mid == pytest.approx(grams, rel=0.02)


def test_what_has_no_cup_is_weighed_by_the_piece() -> None:
    cups = line("rotisserie-chicken", amount(1, "piece", each=amount(3, "cup")))
    assert weighed(cups).edible.mid == 600


def test_pieces_of_a_cooked_food_weigh_what_raw_ones_do_where_no_table_has_them() -> None:
    assert weighed(line("plantain-boiled", amount(2, "piece"))).edible.mid == 2 * 179  # SR28 weighs the raw one


def test_a_cup_of_mash_is_full_and_a_cup_to_be_mashed_is_not() -> None:
    filled = weighed(line("pumpkin", amount(1, "cup"), cut="puréed"))  # cuts of the bench stand before the name
    assert filled.edible.mid > 1.5 * weighed(line("pumpkin", amount(1, "cup"))).edible.mid
    assert 0.85 <= filled.edible.mid / float(units().ml("cup") or 0) <= 1.05
    assert any("mash" in said for said in filled.assumed)
    afterwards = replace(line("pumpkin", amount(1, "cup")), cuts=(Cut("puréed", Span(40, 45)),))
    assert weighed(afterwards).edible.mid == pytest.approx(weighed(line("pumpkin", amount(1, "cup"))).edible.mid)


def test_leaves_packed_into_a_cup_weigh_more_within_a_wide_range() -> None:
    loose = weighed(line("kale", amount(1, "cup"))).edible
    packed = weighed(line("kale", amount(1, "cup"), "packed")).edible
    assert packed.mid > 1.5 * loose.mid and packed.low <= loose.mid and packed.high >= 3 * loose.mid


def test_hearts_of_artichokes_have_no_waste() -> None:
    assert weighed(line("artichoke-hearts", amount(400))).edible.mid == 400


def test_a_piece_of_a_big_fruit_is_not_all_of_it() -> None:
    from tests.kitchen import knowledge, read

    known = knowledge()
    recipe, _ = read(
        "foods:\n  - 1 large piece of pumpkin\n  - 1 large pumpkin\n  - 1 tin of haricot beans, 400 g, drained\n"
    )
    assert recipe is not None
    got = [weigh(line, known.foods.get(line.food or ""), known.measures("UK")) for line in recipe.foods]  # type: ignore[arg-type]  # each line has a known food
    assert isinstance(got[0], Unweighed) and isinstance(got[1], Weight)
    assert isinstance(got[2], Weight) and got[2].edible.mid == pytest.approx(240), (
        "what is left of 400 g in their liquid"
    )


def test_a_piece_without_a_size_is_a_middling_one() -> None:
    for food in ("tomato", "asparagus", "onion"):
        unit = "spear" if food == "asparagus" else "piece"
        plain = weighed(line(food, amount(1, unit))).edible.mid
        assert plain == weighed(line(food, amount(1, unit, size="medium"))).edible.mid, food


def test_a_heaped_spoon_holds_more_but_of_a_liquid() -> None:
    heaped, level = (weighed(line("porridge-oats", amount(1, "tbsp", size=size))).edible.mid for size in ("large", ""))
    assert heaped > level * 1.2
    of_oil = [weighed(line("olive-oil", amount(1, "tbsp", size=size))).edible.mid for size in ("large", "")]
    assert of_oil[0] == of_oil[1]


def test_leaves_are_weighed_as_they_fall_unless_they_are_packed() -> None:
    loose, packed = (weighed(line("spinach", amount(4, "cup"), word)).edible.mid for word in ("loose", "packed"))
    assert packed > loose == weighed(line("spinach", amount(4, "cup"))).edible.mid


def test_a_name_that_a_cup_is_known_for_goes_before_the_plain_cup() -> None:
    orzo, penne = (weighed(line("pasta", amount(1, "cup"), name=name)).edible.mid for name in ("orzo", "penne"))
    assert orzo > penne * 1.5
