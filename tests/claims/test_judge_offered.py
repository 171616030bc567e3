"""Leave to give a food is held against the food's own dangers, as the words have it."""

from __future__ import annotations

from test_judge_labelled import spoken

from spoonproof.model.claim import JudgedClaim
from tests import kitchen
from tests.each import each


def of_safety(said: str) -> list[JudgedClaim]:
    return [one for one in spoken(said) if one.claim.kind == "safety-age"]


@each(
    "said",
    [
        "Kohlrabi is a fine finger food from six months.",
        "Swede wedges as finger food from six months.",
        "Venison jerky is a good finger food from ten months.",
        "Rye crackers are finger food from seven months.",
        "Toffee muffins for babies from nine months.",
        "Cherry tomatoes make good finger food from eight months.",
        "Cubes of gouda are good finger food from six months.",
        "Lumps of cheddar are finger food from nine months.",
        "Gobstoppers are a good finger food for babies from ten months.",
        "Chopped nuts on porridge from eight months.",
        "Marshmallow porridge from eight months.",
        "Mouldy puree for babies from six months.",
        "Parsnip from six months is fine.",
    ],
)
def test_what_is_hard_or_round_or_unknown_is_not_kept_unless_it_is_said_how_it_is_served(said: str) -> None:
    found = of_safety(said)
    assert found
    assert "keep" not in {one.advice for one in found}


@each(
    "said",
    [
        "Soft-cooked swede batons are good finger food from six months.",
        "Ripe papaya is a good finger food from six months.",
        "Steamed cauliflower florets as finger food from six months.",
        "Grapes, quartered lengthways, are finger food from eight months.",
        "Blueberries can be offered from six months, squashed flat.",
        "Parsnip is a lovely first food from six months, mashed.",
        "Toast fingers are good finger food from seven months.",
        "Soft finger foods can be offered from about six months.",
        "You can give your baby meat, fish and egg from six months.",
        "Honey is fine from twelve months.",
    ],
)
def test_what_says_how_it_is_served_is_kept(said: str) -> None:
    found = of_safety(said)
    assert found
    assert {one.advice for one in found} == {"keep"}


def test_what_is_left_open_is_added_in_words_that_stand() -> None:
    found = of_safety("Celeriac is a fine finger food from six months.")[-1]
    assert found.advice == "add"
    assert found.wording is not None
    assert found.wording.startswith("Celeriac is a fine finger food from six months; cook it until it squashes")
    assert "asked of the hazard tables at 6 months: celeriac, hard-raw: its words leave it open" in found.trail


def test_how_a_recipe_serves_its_own_food_is_asked_of_the_recipe() -> None:
    dish = kitchen.dish(
        """
title: Swede mash
ages: 7-9 months
texture: mashed
foods:
  - 300 g swede, peeled, 1 cm dice
steps:
  - Steam the swede, covered, for 18-20 minutes, until a cube squashes between finger and thumb.
  - Mash it.
summary: "Swede is fine from seven months. Celery is fine from seven months."
"""
    )
    advice = {one.claim.subjects[0].lower(): one.advice for one in dish.claims if one.claim.kind == "safety-age"}
    assert advice.get("swede") != "add"
    assert advice.get("celery") != "keep"


def test_a_food_as_bought_is_not_the_dish_that_is_called_after_it() -> None:
    dish = kitchen.dish(
        """
title: Moong khichdi
ages: 7-9 months
texture: mashed
foods:
  - 60 g split moong dal
  - 60 g white rice
  - 900 ml water
steps:
  - Simmer the moong dal and the rice in the water for 40 minutes, until they squash between finger and thumb.
  - Mash it.
summary: "Dry moong has about 24 g of protein per 100 g."
"""
    )
    assert [one.advice for one in dish.claims if one.claim.kind == "quantity"] == ["keep"]
