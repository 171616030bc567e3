"""Words of guidance for a group of foods, and amounts as one would say them."""

from __future__ import annotations

import pytest
from test_judge_labelled import STANDS, spoken


@pytest.mark.parametrize(
    "said",
    [
        "Offer iron-rich foods such as red meat, beans and eggs every day.",
        "You want to give iron-rich foods like beef, lentils and fortified cereal.",
        "Meat, fish and beans are good sources of iron.",
    ],
)
def test_what_guidance_calls_iron_foods_may_be_called_so(said: str) -> None:
    assert {one.advice for one in spoken(said)} <= set(STANDS)


@pytest.mark.parametrize(
    "said",
    [
        "Offer iron-rich foods such as apples and beef every day.",
        "Iron-rich foods such as honey and cucumber come first.",
        "Eggs are packed with iron.",
        "Lentils are the most iron-rich food there is.",
    ],
)
def test_a_food_beside_them_or_more_praise_is_judged_by_its_own_iron(said: str) -> None:
    assert not {one.advice for one in spoken(said) if one.claim.kind == "nutrient-content"} & set(STANDS)


def test_the_amount_that_stands_is_said_in_two_figures() -> None:
    (one,) = [one for one in spoken("100 g of boiled lentils has 12 mg of iron.") if one.claim.kind == "quantity"]
    assert one.advice == "cut-untrue"
    assert one.wording == "about 2.9 to 3.8 mg iron per 100 g"


def test_how_much_of_a_food_for_a_day_asks_for_guidance() -> None:
    (one,) = [one for one in spoken("Toddlers need no more than 500 ml of milk a day.") if one.claim.kind == "quantity"]
    assert one.advice == "source-it" and "for a day" in one.why


def test_what_costs_less_than_something_compares_no_nutrient() -> None:
    found = spoken("These pouches are sugar free and cost less than a pound each.")
    assert found and all("compares" not in one.why for one in found)


def test_a_bad_old_practice_called_dangerous_is_a_right_warning() -> None:
    (one,) = [
        one
        for one in spoken("A dummy dipped in honey is an old wives' tale and dangerous.")
        if "dangerous" in one.claim.quote
    ]
    assert one.advice in STANDS


@pytest.mark.parametrize(
    "said",
    [
        "Oat bars with mashed banana, no added sugar whatsoever, just dates and a tablespoon of maple syrup.",
        "They're sugar free, I only used agave.",
        "No syrup, no sugar, just dates.",
    ],
)
def test_no_added_sugar_does_not_stand_beside_what_sweetens(said: str) -> None:
    assert not {one.advice for one in spoken(said)} & set(STANDS)


@pytest.mark.parametrize(
    "said",
    ["They don't need teeth: gums are strong enough for soft food.", "Babies don't need teeth to eat finger food."],
)
def test_gums_that_do_for_soft_food_may_be_said(said: str) -> None:
    assert {one.advice for one in spoken(said)} <= set(STANDS)


def test_what_is_made_at_home_without_salt_is_not_what_the_table_holds() -> None:
    assert {one.advice for one in spoken("I make my own stock without salt.")} == {"source-it"}
    assert "cut-untrue" in {one.advice for one in spoken("Stock without salt.")}


@pytest.mark.parametrize("said", ["Honey has never done any harm.", "A bit of salt has never done anyone any harm."])
def test_a_harm_denied_by_what_came_of_it_is_false(said: str) -> None:
    assert {one.advice for one in spoken(said)} == {"cut-untrue"}


def test_no_cows_milk_until_one_stands_with_what_is_meant() -> None:
    (one,) = spoken("No cow's milk until one.")
    assert one.advice == "add" and "cooking" in f"{one.why} {one.wording}"


@pytest.mark.parametrize(
    "said", ["Remember that “no added sugar” doesn't mean no sugar.", "Sugar free is not the same as no added sugar."]
)
def test_how_a_label_is_read_claims_nothing(said: str) -> None:
    assert {one.advice for one in spoken(said)} <= set(STANDS)


def test_raw_dough_is_no_treat_whoever_it_never_killed() -> None:
    assert {one.advice for one in spoken("Raw cookie dough never killed anyone.")} == {"cut-untrue"}


def test_a_rash_round_the_mouth_is_no_illness_that_a_food_is_said_to_treat() -> None:
    assert all(one.claim.kind != "disease" for one in spoken("Strawberry rashes round the mouth aren't an allergy."))


@pytest.mark.parametrize(
    "said",
    [
        "Give this omelette to a child with an egg allergy.",
        "You can give peanut butter to a baby with a nut allergy.",
        "Serve the omelette to toddlers with an egg allergy.",
    ],
)
def test_what_a_child_is_allergic_to_is_not_given_to_it(said: str) -> None:
    assert "cut-untrue" in {one.advice for one in spoken(said)}


@pytest.mark.parametrize(
    "said",
    [
        "Chewing his fists isn't just a sign of teeth, it's a sign of being ready for solids.",
        "Dribbling isn't only teething, it's a sign he is ready for food.",
    ],
)
def test_a_false_sign_of_readiness_is_false_across_a_comma(said: str) -> None:
    assert {one.advice for one in spoken(said)} == {"cut-untrue"}
