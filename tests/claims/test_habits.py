"""How a child is fed: which food first, how often, by which method, and what is given in another's place."""

from __future__ import annotations

import pytest
from finding_kit import claims, only

from tests.each import each


@each(
    ("text", "kind", "about", "relates"),
    [
        ("Squash makes a marvellous first food.", "safety-age", "squash", "first food"),
        ("Lentils work well as a first solid.", "safety-age", "lentil", "first solid"),
        ("Formula is the main source of nourishment until one.", "safety-age", "formula", "until one"),
        ("Serve herring twice a week.", "quantity", "herring", "twice a week"),
        ("Toddlers should have 2 portions of sardines weekly.", "quantity", "sardine", "weekly"),
        ("Spoon-fed babies end up as picky eaters.", "function", "spoon-fed babies", "picky eaters"),
        ("Honey and salt are out.", "safety-age", "honey", "out"),
        ("Honey, grapes and bran are off the menu until one.", "safety-age", "bran", "until one"),
        ("Rusks are basically sugar.", "nutrient-content", "rusk", "sugar"),
        ("A toddler with an egg allergy can have tofu.", "allergen", "tofu", "egg allergy"),
        ("If she is allergic to cow's milk, offer oat milk instead.", "allergen", "oat milk", "allergic to cow's milk"),
        ("Whole milk suits two year olds.", "safety-age", "whole milk", "24 months"),
        ("Plums can really help babies (and grown-ups!) with constipation.", "disease", "plum", "constipation"),
        ("Constipated toddler? Try pears.", "disease", "pear", "constipat"),
        ("Rice is non-allergenic.", "allergen", "rice", "non-allergenic"),
        ("Limit squash to one cup a day.", "quantity", "squash", "a day"),
        ("Children need 3 cups of milk a day.", "quantity", "milk", "3 cups"),
        ("The daily limit is 2 g.", "quantity", "", "2 g"),
        ("White pasta lacks the fibre of its wholemeal counterpart.", "comparative", "pasta", "fibre"),
        ("You must not give this to a baby.", "safety-age", "", "baby"),
        ("However, these should be avoided under one year.", "safety-age", "", "under one year"),
        ("Old rice generates infections.", "disease", "rice", "infections"),
        ("Babies need a steady supply of nutrients for their brains.", "function", "nutrients", "brain"),
        ("Beans and peas should be introduced first to babies.", "safety-age", "bean", ""),
        ("It's wise to introduce them early.", "safety-age", "", "early"),
        ("Pair millet with vitamin C to absorb more iron.", "function", "vitamin c", "iron"),
        ("To absorb more of the iron, serve dal with vitamin C.", "function", "vitamin c", "iron"),
        ("Toddlers should have milk three times daily.", "quantity", "milk", "daily"),
        ("Preservatives are not added to this soup.", "nutrient-content", "soup", "preservatives"),
        ("This process improves the vitamin content and makes it keep.", "process", "", "vitamin"),
        ("Tinned peas have little vitamin C due to heating.", "process", "heating", "vitamin c"),
        ("Skyr: a thick milk that is even higher in protein than yoghurt.", "comparative", "skyr", "protein"),
        ("Sardines supply zinc and iodine, vital for brain development.", "function", "iodine", "brain"),
        ("Iron deficiency can cause behavioural delays.", "disease", "iron deficiency", "delays"),
        ("After a year, she should be ready to eat millet.", "safety-age", "millet", "after a year"),
        ("Give 3 eggs per week.", "quantity", "egg", "per week"),
        ("White bread is less fibrous than brown bread.", "comparative", "white bread", "fibrous"),
        ("It helps to reduce weight.", "function", "", "weight"),
        ("Frying has an impact on the vitamins in peppers.", "process", "pepper", "vitamins"),
        ("Boiling causes a loss of up to 40 % of the vitamin C.", "process", "boiling", "vitamin c"),
        ("Squash has negative effects on the teeth.", "disease", "squash", "teeth"),
        ("Introduce each item individually for 3 days.", "allergen", "", "each item"),
        ("Millet may be used in first foods because it is easy to digest.", "function", "millet", "digest"),
        ("Lentils and oats are some of the richest sources.", "nutrient-content", "oat", ""),
        ("Too much mango can turn a toddler's skin yellow.", "function", "mango", "skin"),
        ("A lack of iron can cause both early and lasting fatigue.", "disease", "iron", "fatigue"),
        ("Solids too soon may bring on food allergies.", "allergen", "", "allergies"),
        ("Salt is necessary for signals in the brain.", "function", "salt", "brain"),
        ("Beans must be soaked overnight for easier digestion.", "process", "bean", "digestion"),
        ("Polenta is a zinc-rich food suitable for toddlers.", "safety-age", "polenta", "toddlers"),
        ("Without enough zinc, children may not grow.", "function", "zinc", "grow"),
        ("Aim for at least two servings of beans daily.", "quantity", "bean", "daily"),
        ("No child needs biscuits.", "function", "biscuit", "child"),
        ("Sage should be avoided during breastfeeding.", "safety-age", "sage", "during breastfeeding"),
        ("Cabbage may upset some babies.", "function", "cabbage", "babies"),
        ("They should have about 200 ml of kefir a day.", "quantity", "kefir", "a day"),
        ("Tap water is the best drink.", "general-benefit", "water", "best drink"),
        ("The best drink for a toddler is water.", "general-benefit", "water", "best drink"),
        ("These make a really healthy snack.", "general-benefit", "", "healthy"),
        ("Thyme is a remedy for breathing trouble.", "disease", "thyme", "breathing"),
        ("Sticky jam causes decay.", "disease", "jam", "decay"),
        ("Milling strips wheat of B vitamins.", "process", "wheat", "b vitamins"),
    ],
)
def test_how_a_child_is_fed_is_heard(text: str, kind: str, about: str, relates: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert any(about in " ".join(claim.subjects) and relates in (claim.relates_to or "").lower() for claim in found), (
        claims(text)
    )


@pytest.mark.parametrize(
    "text",
    [
        "The muffins are out, let them cool.",
        "We have fish twice a week.",
        "Hungry? Lunch is in ten minutes.",
        "The cake is just flour and butter.",
        "Stir twice a week.",
        "For both toddlers and grown-ups, tummy ache is a result of a bug.",
        "Crackers are fine, but avoid tuna.",
        "Get them in early on Sunday, the oven is slow.",
        "Few families eat mackerel twice a week.",
        "Rest it for an hour before straining and drinking.",
    ],
)
def test_ordinary_talk_is_left_alone(text: str) -> None:
    assert claims(text) == []


def test_a_question_with_a_verb_stays_a_sentence_of_its_own() -> None:
    assert only("Is he constipated? Prunes are rich in fibre.", "nutrient-content").polarity == "asserts"


def test_an_abbreviation_ends_no_clause() -> None:
    assert only("Some nuts (e.g. walnuts) are rich in zinc.", "nutrient-content").subjects[-1] == "walnut"
