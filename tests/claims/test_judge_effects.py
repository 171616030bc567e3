"""Foods, verbs and effects set together at random but the same each time: of a whole food no effect is kept."""

from __future__ import annotations

import itertools

from test_judge_labelled import STANDS, spoken

FOODS = ("Spinach", "Banana", "Porridge", "Salmon", "Yoghurt", "Ginger", "Honey", "Carrot", "Avocado", "Bone broth")
VERBS = (
    "boosts", "supports", "helps", "improves", "prevents", "cures", "is good for", "strengthens", "is essential for",
    "fights", "guarantees", "may help", "works wonders for", "soothes",
)  # fmt: skip
EFFECTS = (
    "immunity", "brain development", "eyesight", "strong bones", "digestion", "sleep", "the skin", "the heart",
    "energy", "growth", "healthy teeth", "mood", "appetite", "colds", "anaemia", "eczema", "teething pain", "reflux",
)  # fmt: skip
NUTRIENTS = ("Iron", "Zinc", "Calcium", "Protein")
NOT_THEIRS = ("sleep", "mood", "appetite", "teething pain", "colds", "reflux")
"""Effects that no authorised claim gives to these nutrients."""


def kept(said: str) -> bool:
    found = [judged.advice for judged in spoken(said)]
    return bool(found) and all(advice in STANDS for advice in found)


def test_no_effect_of_a_whole_food_is_kept() -> None:
    said = [f"{food} {verb} {effect}." for food, verb, effect in itertools.product(FOODS, VERBS, EFFECTS)]
    assert [one for one in said[::11] if kept(one)] == []


def test_no_effect_is_kept_that_a_nutrient_was_never_given() -> None:
    said = [f"{one} {verb} {effect}." for one, verb, effect in itertools.product(NUTRIENTS, VERBS, NOT_THEIRS)]
    assert [one for one in said[::3] if kept(one)] == []
