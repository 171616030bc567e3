"""What is waved through in passing: drops skipped, allergens "cooked out", honey on a dummy, milk alone for a year."""

from __future__ import annotations

import pytest
from finding_kit import claims
from test_judge_labelled import spoken

from tests.each import each


@each(
    "text",
    [
        "We gave up the vitamin drops last month.",
        "I skip the vitamin D since she eats so well.",
        "Frying takes the allergen out of peanut.",
        "Heat destroys the allergens in milk.",
        "Cashews are fine if roughly chopped.",
        "A little whisky on her gums helps.",
        "She has had honey since seven months.",
        "Popcorn never hurt anyone.",
        "Formula gives everything until one.",
    ],
)
def test_it_is_heard_and_cut(text: str) -> None:
    assert "cut-untrue" in {answer.advice for answer in spoken(text)}
    assert "keep" not in {answer.advice for answer in spoken(text)}


@pytest.mark.parametrize(
    "text",
    ["Don't skip the vitamin D drops.", "Never put honey on a dummy.", "Grapes are fine cut into quarters lengthways."],
)
def test_good_advice_is_kept(text: str) -> None:
    assert {answer.advice for answer in spoken(text)} == {"keep"}


@each(
    "text",
    [
        "I skip the garlic for the little one.",
        "We stopped the mixer after a minute.",
        "Everything you need is in one pan.",
        "The jars are full of plums.",
        "Put a drop of milk on the dough.",
        "Sunday porridge",
    ],
)
def test_kitchen_talk_is_not(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind"),
    [
        ("Sleepy semolina", "function"),
        ("Serve it on poorly days.", "disease"),
        ("Pouches are nothing but sugar.", "general-benefit"),
        ("With meals like this you won't need the doctor.", "disease"),
        ("#guthealth in a bowl", "general-benefit"),
        ("Blackberries bung them up.", "disease"),
    ],
)
def test_what_is_said_in_a_title_or_in_passing_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@each(
    "text",
    [
        "Solids are just for fun.",
        "Food under one is for fun.",
        "She only needs milk until one.",
        "Let him choke a bit, he'll learn.",
        "Why bother with vaccines when the food is this good.",
        "Agave is fine since it is unrefined.",
        "You can skip the iron drops with this stew.",
    ],
)
def test_a_slogan_against_what_protects_is_cut(text: str) -> None:
    assert {answer.advice for answer in spoken(text)} == {"cut-untrue"}


@pytest.mark.parametrize(
    "text", ["Maple syrup is fine if you have no treacle.", "Baking on a rainy day is just for fun.", "Let the pan be."]
)
def test_a_day_in_the_kitchen_is_not(text: str) -> None:
    assert claims(text) == []


@each(
    "text",
    [
        "Goat's milk suits babies with a milk allergy.",
        "Yoghurt is fine for a dairy allergy.",
        "Shark is full of protein for babies.",
        "Hot dogs are a fun snack at two years.",
        "Popcorn is soft so toddlers can have it.",
        "Give rice milk instead of cow's milk.",
        "Babies don't need iron until one.",
        "Infants need no supplements.",
        "Camomile tea soothes babies.",
        "Almond milk is just as good as formula.",
        "Keep sesame away until two.",
        "Mini sausages are a perfect lunch for a one year old.",
        "Salted peanuts are a good first allergen.",
        "Toddlers enjoy a bite of camembert.",
        "Blueberries are small so no need to cut them.",
        "Grapes are alright if you are watching.",
        "Swap formula for goat's milk at eight months.",
        "Rare burgers are fine.",
    ],
)
def test_what_is_wrong_for_a_child_is_never_kept(text: str) -> None:
    found = spoken(text)
    assert found
    assert not {"keep", "add"} & {answer.advice for answer in found}


@pytest.mark.parametrize(
    "text",
    [
        "Popcorn is what the grown-ups had with the film.",
        "Give it a stir instead of a shake.",
        "This recipe needs no oven.",
        "Keep the butter away from the heat until noon.",
        "Feta is salty so I rinse it.",
    ],
)
def test_a_kitchen_without_babies_is_not(text: str) -> None:
    assert [answer.advice for answer in spoken(text) if answer.claim.kind == "safety-age"] == []
