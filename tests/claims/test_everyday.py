"""What cooks say in everyday words is a claim all the same; kitchen talk of the same shape is none."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("This bowl suits babies from seven months.", "safety-age"),
        ("From 9 months", "safety-age"),
        ("Oat drinks are no replacement for breast milk.", "safety-age"),
        ("Never give raw milk.", "safety-age"),
        ("Constipation: prunes, pears and water", "disease"),
        ("Cold-busting ginger soup", "disease"),
        ("Tummy-friendly barley", "function"),
        ("Walnut oil keeps hair shiny.", "function"),
        ("Oats keep them full until lunch.", "function"),
        ("May contain traces of nuts", "allergen"),
        ("no dairy, no egg in this one", "allergen"),
        ("Offer one new allergen at a time.", "allergen"),
    ],
)
def test_it_is_found(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@pytest.mark.parametrize(
    "text",
    [
        "Replace the milk with oat milk if you like.",
        "The tin contains six rolls.",
        "Family-friendly, budget-busting suppers.",
        "Make the pastry thick and shiny with egg wash.",
        "Stir until the sauce is full of bubbles.",
        "Hungry? Try the muffins.",
        "Always cut the pastry with a cold knife.",
    ],
)
def test_kitchen_talk_is_left_alone(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    ("text", "nutrient"),
    [
        ("Long boiling alters the nutritional value of spinach.", "nutritional value"),
        ("Most of the folate in cabbage is lost on the way to the plate.", "folate"),
        ("Riboflavin is stable to heat.", "riboflavin"),
        ("Peppers have more vitamin C when raw.", "vitamin c"),
        ("Vitamin C is higher in frozen than in fresh.", "vitamin c"),
    ],
)
def test_what_is_done_to_a_food_changes_what_it_holds(text: str, nutrient: str) -> None:
    assert any(nutrient in (claim.relates_to or "").lower() for claim in claims(text) if claim.kind == "process")


@each(
    "text",
    [
        "We decided to start solids at five months, and nobody slept any better.",
        "My youngest wasn't ready for lumps at nine months.",
        "When he was seven months old he met his first omelette.",
        "Click here for all the signs of readiness.",
        "The chapter was about the benefits of porridge.",
        "It may be called dextrose, fructose or fruit concentrate.",
        "There is one nutritional question about pasta that I hear each week.",
        "This post covers figs, their health benefits and two ways to cook them.",
        "A food allergy is when the body takes a protein for an enemy.",
        "Make sure their lunch contains some protein and a fruit.",
        "We try to get iron into every supper.",
        "We want the snacks to be healthy and quick.",
        "It was important to me that she chose her own spoon.",
        "I thought she would need more protein than that.",
        "The gag reflex of a baby sits further forward and keeps choking away.",
        "Were you worried about choking when you began?",
        "Know the difference between gagging and choking.",
        "There is a chapter on healthier snack choices.",
        "I make sure what she picks at home is healthy and fresh.",
        "They don't require as many calories as we do.",
        "She tried to cough the lentil out.",
        "Keep reading to learn about rye and its health benefits.",
        "In this guide we look at figs, their nutritional value and their health benefits.",
        "How can you get him to eat more beans?",
        "Most of us get too little of wholegrains and fibre.",
        "Simmer until the rice is soft, absorbing most of the stock.",
        "The bran, the germ and the endosperm make up the kernel.",
        "The bicarbonate turns the starches into something brown.",
        "Choose a yoghurt that contains live cultures.",
        "The body is busy fighting the infection.",
        "Since five months we've been trying bits of soft pear.",
        "My plan was to wait until six months with solids.",
        "One marrow yields 300 g of purée.",
        "The soup can be safely frozen for two months.",
        "I'm sure the mash is fine to give my son.",
        "Proteins are made of amino acids.",
        "Porridge has come back over the past few years.",
        "Wash your hands after handling raw meat to prevent the spread of bacteria.",
        "It is hard to get them to eat healthily when we travel.",
        "People like foods with little sodium as much as foods with excessive sodium.",
        "When your daughter is down with a fever, nothing else counts.",
    ],
)
def test_a_story_or_a_topic_claims_nothing(text: str) -> None:
    assert claims(text) == []


def test_benefits_for_someone_are_those_of_the_food_before() -> None:
    assert "general-benefit" in {claim.kind for claim in claims("Barley has a wealth of benefits for growing babies.")}
    assert claims("The benefits of a big table are plain.") == []


def test_what_helps_the_body_to_fight_is_still_a_claim() -> None:
    assert "disease" in {claim.kind for claim in claims("Garlic helps the body fight a cold.")}
    assert "nutrient-content" in {claim.kind for claim in claims("I chose barley, which contains fibre.")}
    assert "nutrient-content" in {claim.kind for claim in claims("According to the label, peas are a source of fibre.")}


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Thyme tea soothes the throat.", "disease"),
        ("I use less syrup in the porridge while I am stirring it, so it is still healthy.", "general-benefit"),
        ("Millet makes a quick and nourishing breakfast.", "general-benefit"),
        ("The acid in the tomatoes makes the iron of the beans more available.", "function"),
    ],
)
def test_what_is_said_of_the_food_and_not_of_the_cook(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@pytest.mark.parametrize(
    "text", ["Thin the tahini with garlic and the cold water.", "Add the garlic to the cold milk."]
)
def test_a_thing_that_is_cold_is_no_illness(text: str) -> None:
    assert not [claim for claim in claims(text) if claim.kind == "disease"]
    assert [claim.kind for claim in claims("Garlic fights the cold.")] == ["disease"]


def test_what_a_cook_can_still_see_helps_nobody() -> None:
    assert not [
        claim for claim in claims("Mash it and stop while you can still see the swede.") if claim.kind == "function"
    ]


def test_this_bowl_is_not_the_food_the_sentence_opened_with() -> None:
    found = [
        claim for claim in claims("Swedes are rich in iron, and this bowl prevents colds.") if claim.kind == "disease"
    ]
    assert [claim.quote for claim in found] == ["bowl prevents colds"]
