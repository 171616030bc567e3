"""Statements whose answer follows from published figures alone: the law's thresholds and the USDA's values.

Thresholds: Regulation (EU) No 1169/2011, Annex XIII Part A (15 % of the reference value is a significant
amount); Regulation (EC) No 1924/2006, Annex. Values: USDA National Nutrient Database for Standard Reference.
"""

from __future__ import annotations

import pytest

from spoonproof.claims.conditions import Threshold, limit_of
from spoonproof.claims.judge import Context, judge
from spoonproof.claims.register import Register
from spoonproof.foods.numbers import KitchenNumbers
from spoonproof.model.claim import Claim, Kind, Quantity
from spoonproof.model.text import Document, Passage, Piece
from tests import kitchen
from tests.each import each

# Annex XIII Part A point 1, and 15 % of it as point 2 says.
SIGNIFICANT = [
    ("vitamin_a_rae_ug", 120), ("vitamin_d_ug", 0.75), ("vitamin_e_mg", 1.8), ("vitamin_k_ug", 11.25),
    ("vitamin_c_mg", 12), ("thiamin_mg", 0.165), ("riboflavin_mg", 0.21), ("niacin_mg", 2.4), ("vitamin_b6_mg", 0.21),
    ("folate_ug", 30), ("vitamin_b12_ug", 0.375), ("potassium_mg", 300), ("calcium_mg", 120), ("phosphorus_mg", 105),
    ("magnesium_mg", 56.25), ("iron_mg", 2.1), ("zinc_mg", 1.5), ("selenium_ug", 8.25), ("iodine_ug", 22.5),
]  # fmt: skip


def register() -> Register:
    return kitchen.knowledge().register


@each(("nutrient", "amount"), SIGNIFICANT)
def test_significant_amounts(nutrient: str, amount: float) -> None:
    entry = register().get("source-of-vitamin-or-mineral")
    assert entry is not None and isinstance(entry.condition, Threshold)
    assert limit_of(entry.condition, register().references, nutrient) == pytest.approx(amount)
    high = register().get("high-vitamin-or-mineral")
    assert high is not None and isinstance(high.condition, Threshold)
    assert limit_of(high.condition, register().references, nutrient) == pytest.approx(2 * amount)


@pytest.mark.parametrize(
    ("reference", "percent"),
    [("EU NRV", 21.4), ("EU baby-food NRV", 50.0), ("US DV infants", 27.3), ("US DV adults", 16.7)],
)
def test_three_milligrams_of_iron_by_each_reference(reference: str, percent: float) -> None:
    # Annex XIII: 14 mg; Directive 2006/125/EC Annex V: 6 mg; 21 CFR 101.9(c)(8)(iv): 11 and 18 mg.
    day = register().references.amount(reference, "iron_mg")
    assert day is not None
    assert 3 / day * 100 == pytest.approx(percent, abs=0.05)


def test_the_lists_of_allergens_are_whole() -> None:
    # Annex II of Regulation (EU) No 1169/2011 has fourteen, the US law nine since sesame.
    assert len(register().allergens.named("EU")) == 14
    assert len(register().allergens.named("GB")) == 14
    assert len(register().allergens.named("US")) == 9


def says(text: str, food: str, nutrient: str, level: str, number: Quantity | None = None) -> str:
    known = kitchen.knowledge()
    document = Document("x.md", text)
    passage = Passage(text, document, (Piece(0, 0, len(text)),))
    kind: Kind = "quantity" if number else "nutrient-content"
    claim = Claim(passage, 0, len(text), kind, (food,), foods=(food,), nutrients=(nutrient,),
                  level=level, number=number)  # fmt: skip
    numbers = KitchenNumbers(known.foods, units=known.measures("UK"))
    return judge(claim, known.register, numbers, Context(today="2026-11-25")).truth


@pytest.mark.parametrize(
    ("food", "nutrient", "level", "truth"),
    [
        ("sweet-potato", "vitamin_a_rae_ug", "high", "true"),  # 709 µg RAE against 240
        ("carrot", "vitamin_a_rae_ug", "high", "true"),  # 835 µg RAE
        ("kiwi", "vitamin_c_mg", "high", "true"),  # 92.7 mg against 24
        ("egg", "vitamin_d_ug", "source", "true"),  # 2.0 µg against 0.75
        ("plain-yoghurt", "calcium_mg", "high", "overstated"),  # 121 mg: a source, not 240
        ("spinach", "iron_mg", "high", "overstated"),  # 2.71 mg: a source, not 4.2
        ("apple", "fibre_g", "high", "true"),  # 4.6 g per 100 kcal against 3
        ("lentils-boiled", "protein_g", "high", "true"),  # 31 % of the energy against 20
        ("banana", "protein_g", "source", "false"),  # 5 % of the energy against 12, and under 6
        ("salmon", "omega-3", "high", "true"),
        ("banana", "sugars_g", "free", "false"),  # 12.2 g against 0.5
        ("porridge-oats", "iron_mg", "high", "false"),  # dry 4.25 mg, but 0.90 mg cooked, as eaten (Art 5(3))
        ("lentils", "iron_mg", "source", "true"),  # boiled 3.3 mg against 2.1
        ("turmeric", "iron_mg", "high", "unproven"),  # by the 100 g; nobody eats that (Art 5(1)(d))
    ],
)
def test_foods_against_the_thresholds(food: str, nutrient: str, level: str, truth: str) -> None:
    assert kitchen.knowledge().foods.get(food) is not None
    assert says("as the table has it", food, nutrient, level) == truth


def test_a_medium_banana() -> None:
    # USDA SR record 09040: 358 mg potassium per 100 g; a medium banana weighs 118 g, so 422 mg.
    assert (
        says("422 mg of potassium per banana", "banana", "potassium_mg", "contains", Quantity(422, 422, "mg", "piece"))
        == "true"
    )
    assert (
        says("42 g of protein per banana", "banana", "protein_g", "contains", Quantity(42, 42, "g", "piece")) == "false"
    )
