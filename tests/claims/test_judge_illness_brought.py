"""An illness that a food brings, that it is said not to bring, and that it is said to cure: three ways to judge it."""

from __future__ import annotations

import pytest
from test_judge_labelled import STANDS, spoken

from spoonproof.model.claim import JudgedClaim
from tests.each import each


@each(
    "said",
    [
        "Raw milk causes food poisoning.",
        "Raw milk can make toddlers very sick.",
        "Undercooked eggs cause salmonella.",
        "Runny eggs can give babies food poisoning.",
        "Raw shellfish makes babies ill.",
        "Cold smoked salmon can give a child listeriosis.",
        "Don't give raw milk, it makes babies ill.",
        "Honey can make babies ill.",
    ],
)
def test_a_right_warning_of_an_illness_stands(said: str) -> None:
    assert _advice(said) == {"keep"}


@each(
    "said",
    [
        "Give her raw milk, it never gave anyone food poisoning.",
        "Raw milk never made a baby ill.",
        "Honey won't give your baby botulism.",
        "Honey has never given a baby botulism.",
        "A little honey never made anybody ill.",
        "Nobody ever got ill from raw milk.",
        "Runny eggs don't make children sick.",
        "Raw oysters won't give a toddler food poisoning.",
        "Rare burgers never made anyone ill.",
    ],
)
def test_a_danger_said_to_make_nobody_ill_is_false(said: str) -> None:
    assert "cut-untrue" in _advice(said)
    assert not _advice(said) & set(STANDS)


@each("food", ["grapes", "popcorn", "sausages", "bone broth", "whole nuts", "raw apple"])
def test_a_cure_is_judged_as_one_though_the_food_may_choke(food: str) -> None:
    for cured in ("We gave her {} every day and her eczema went", "{} cures colds", "{} cured his asthma"):
        said = cured.format(food)
        found = [one for one in spoken(said[0].upper() + said[1:]) if one.claim.kind == "disease"]
        assert found, said
        assert all(one.advice == "cut-untrue" and "choking" not in (one.entry or "") for one in found), said


def _advice(said: str) -> set[str]:
    found: list[JudgedClaim] = spoken(said)
    assert found
    return {one.advice for one in found}


@pytest.mark.parametrize(
    "said",
    [
        "There is no benefit in putting off peanut or egg past six months.",
        "There is no reason to delay peanut past six months.",
        "No benefit in waiting with allergens.",
        "Delaying peanut raises the risk of allergy.",
    ],
)
def test_what_is_said_against_waiting_with_allergens_stands(said: str) -> None:
    assert _advice(said) <= set(STANDS)


@pytest.mark.parametrize(
    "said", ["There is no benefit in putting off honey.", "Waiting with egg lowers the risk of allergy."]
)
def test_no_such_word_lets_honey_come_or_praises_waiting(said: str) -> None:
    assert _advice(said) == {"cut-untrue"}


@pytest.mark.parametrize(
    "said", ["These prevent peanut allergy!", "Giving this every week stops allergies.", "Camel milk cures allergies."]
)
def test_an_allergy_that_is_said_to_be_prevented_is_cut(said: str) -> None:
    assert "cut-untrue" in _advice(said)


def test_early_peanut_that_helps_to_prevent_stands() -> None:
    assert _advice("Early introduction helps prevent peanut allergy.") <= set(STANDS)


@pytest.mark.parametrize(
    "said", ["Solids start around eighteen months.", "Start solids at ten months.", "Introduce solids at nine months."]
)
def test_solids_that_begin_late_are_false(said: str) -> None:
    assert _advice(said) == {"cut-untrue"}


@pytest.mark.parametrize("said", ["Start solids at six months.", "By ten months babies can manage lumpy solids."])
def test_solids_in_time_and_later_stages_stand(said: str) -> None:
    assert _advice(said) <= set(STANDS)
