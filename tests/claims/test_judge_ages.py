"""The age of a recipe said again in its words: it stands where it is the recipe's own, and "safe" never does."""

from __future__ import annotations

import pytest

from tests import kitchen

DISH = """
title: Swede mash
ages: 7-9 months
texture: mashed
foods:
  - 300 g swede, peeled, 1 cm dice
steps:
  - Steam the swede, covered, for 18-20 minutes, until a cube squashes between finger and thumb.
  - Mash it.
summary: "{said}"
"""


def advices(said: str) -> list[str]:
    dish = kitchen.dish(DISH.replace("{said}", said))
    return [judged.advice for judged in dish.claims if judged.claim.kind == "safety-age"]


@pytest.mark.parametrize(
    "said",
    ["Swede mash, for babies from 7 months.", "A mash for babies from seven months.", "Swede mash from eight months."],
)
def test_the_recipes_own_age_said_again_stands(said: str) -> None:
    found = advices(said)
    assert found and set(found) == {"keep"}


@pytest.mark.parametrize(
    "said", ["Swede mash, for babies from 5 months.", "This mash is perfectly safe for babies from 7 months."]
)
def test_a_younger_age_and_a_promise_of_safety_do_not(said: str) -> None:
    found = advices(said)
    assert found and "keep" not in found


def test_how_often_is_no_age() -> None:
    assert advices("Mackerel twice a week is a good habit from six months.") == ["keep"]
    early = advices("Mackerel twice a week is a good habit from three months.")
    assert early and "keep" not in early


def test_a_dish_that_is_a_food_as_well_is_the_one_of_the_title() -> None:
    curry = DISH.replace("title: Swede mash", "title: Mild swede curry")
    found = kitchen.dish(curry.replace("{said}", "A gentle curry for the whole table, from seven months.")).claims
    assert [one.advice for one in found if one.claim.kind == "safety-age"] == ["keep"]
    early = kitchen.dish(curry.replace("{said}", "A gentle curry for the whole table, from four months.")).claims
    assert "keep" not in [one.advice for one in early if one.claim.kind == "safety-age"]
