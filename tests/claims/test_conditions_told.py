"""Conditions in words: what a person reads in ``explain`` and on the register's page."""

from __future__ import annotations

from judging_kit import the_register

from spoonproof.claims.conditions import Absent, Condition, Group, Present, ReducedBy, Threshold
from spoonproof.claims.conditions_told import in_words
from tests.each import each

FIBRE = Threshold("at least", "fibre_g", "100g", 3.0)
LIGHT = Threshold("at least", "fibre_g", "100kcal", 1.5)


@each(
    ("condition", "words"),
    [
        (
            Threshold("at least", "iron_mg", "100g", share=15, reference="EU NRV"),
            "at least 15 % of the EU NRV of iron in 100 g",
        ),
        (Threshold("at most", "sodium_mg", "100g", 120.0), "at most 120 mg of sodium in 100 g"),
        (Threshold("at most", "energy_kcal", "100g", 40.0), "at most 40 kcal in 100 g"),
        (Threshold("at least", "protein_g", "energy", 12.0), "at least 12 % of its energy from protein"),
        (
            Threshold("at least", "claimed", "portion", share=10, reference="US DV adults"),
            "at least 10 % of the US DV adults of the nutrient named in a portion",
        ),
        (Absent(("added sugar", "sweeteners")), "no added sugar or sweeteners in it"),
        (Present(("gluten",)), "gluten in it"),
        (ReducedBy("sodium_mg", 25), "at least 25 % less sodium than the food it is compared with"),
        (Group("any", (FIBRE, LIGHT)), "at least 3 g of fibre in 100 g, or at least 1.5 g of fibre in 100 kcal"),
        (
            Group("any", (Group("all", (FIBRE, LIGHT)), Present(("bran",)))),
            "(at least 3 g of fibre in 100 g, and at least 1.5 g of fibre in 100 kcal), or bran in it",
        ),
    ],
)
def test_a_condition_reads_as_a_person_would_say_it(condition: Condition, words: str) -> None:
    assert in_words(condition) == words


def test_no_key_of_the_tables_stands_in_what_the_register_says() -> None:
    entries = the_register()[0].entries
    told = [
        in_words(condition)
        for entry in entries
        for condition in (entry.condition, *(allowance.condition for allowance in entry.allowed))
        if condition is not None
    ]
    assert told
    assert not [words for words in told if "_" in words or "claimed" in words]
