"""How English says that a food is for an age, not yet, to be shaped, or an allergen: each frame of ``frames/ages.csv``
over foods, ages and turns of phrase is heard, and what only looks like one is left alone.
"""

from __future__ import annotations

import csv
from itertools import product
from pathlib import Path

from spoonproof.claims.find import find_claims
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen

with (Path(__file__).parent / "frames" / "ages.csv").open(encoding="utf-8", newline="") as file:
    FRAMES = [(row["heard"] == "yes", row["words"], row["sentence"]) for row in csv.DictReader(file)]
WORDS = {
    "give": ("avocado", "plain yogurt", "salmon", "porridge"),
    "keep": ("honey", "salt", "fruit juice", "cow's milk"),
    "milk": ("cow's milk", "whole milk", "cows' milk"),
    "round": ("grapes", "sausages", "whole cherries", "olives"),
    "allergen": ("wheat", "sesame", "egg", "milk"),
    "thing": ("puzzle", "blanket", "toy"),
    "dish": ("soup", "lasagne", "pancakes"),
}
AGES = ("7 months", "seven months", "around 7 months", "the age of seven months")
WHENS = ("once they turn one", "when they turn 1", "after the first birthday", "once your child is two")
PLUSES = ("7m+", "7+ months", "7 months+", "7 months and up")
YEARS = ("12 months", "1 year", "their first birthday", "one year")
EVERY = 3
"""One in so many of all frames over all words and ages, each in its turn."""


def said(wanted: bool) -> list[str]:
    sentences = []
    for heard, words, frame in FRAMES:
        if heard is wanted:
            for food, (age, when, plus, year) in product(WORDS[words], zip(AGES, WHENS, PLUSES, YEARS, strict=True)):
                filled = {"food": food, "Food": food.capitalize(), "age": age, "plus": plus, "year": year}
                sentences.append(frame.format(when=when, When=when.capitalize(), **filled))
    return list(dict.fromkeys(sentences))[::EVERY]


def claims_in(sentence: str) -> list[str]:
    passages, _ = read_statements(Document("said.txt", sentence), lines=True)
    return [claim.kind for claim in find_claims(passages, kitchen.knowledge().lexicon)]


def test_an_age_a_shape_and_an_allergen_are_heard_however_they_are_said() -> None:
    assert [one for one in said(True) if not {"safety-age", "allergen"} & set(claims_in(one))] == []


def test_what_only_looks_like_one_is_left_alone() -> None:
    assert [one for one in said(False) if claims_in(one)] == []
