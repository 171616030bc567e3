"""Amounts as shown: exact where units allow, rounded to what a kitchen can measure, never a cup for a weight."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.recipe import Amount
from spoonproof.model.text import NOWHERE
from spoonproof.site import amounts
from spoonproof.site.foods import food_items
from tests import kitchen
from tests.each import each

OUNCE = Fraction("28.349523125")
CUP = Fraction("236.5882365")
HOLDS = {
    "g": ("g", Fraction(1)),
    "kg": ("g", Fraction(1000)),
    "ml": ("ml", Fraction(1)),
    "tsp": ("ml", Fraction(5)),
    "tbsp": ("ml", Fraction(15)),
    "oz": ("g", OUNCE),
}


def amount(low: str, unit: str, high: str = "", **more: Any) -> Amount:
    return Amount(Fraction(low), Fraction(high or low), unit, NOWHERE, **more)


def shown(value: Amount, system: str, scale: str = "1") -> str:
    return next(s.text for s in amounts.shown(value, HOLDS.get) if (s.system, s.scale) == (system, scale))


@each(
    ("value", "system", "scale", "text"),
    [
        (amount("300", "g"), "written", "1", "300 g"),
        (amount("300", "g"), "written", "half", "150 g"),
        (amount("300", "g"), "us", "1", "10½ oz"),
        (amount("1", "kg"), "us", "1", "2 lb 3½ oz"),
        (amount("700", "ml"), "us", "1", "3 cups"),
        (amount("250", "ml"), "us", "1", "1 cup"),
        (amount("40", "ml"), "us", "1", "2½ tbsp"),
        (amount("1", "tsp"), "us", "1", "1 tsp"),
        (amount("1/2", "tsp"), "written", "half", "¼ tsp"),
        (amount("1", "tbsp"), "metric", "3", "45 ml"),
        (amount("8", "oz"), "metric", "1", "225 g"),
        (amount("2", "piece", size="medium"), "written", "2", "4 medium"),
        (amount("2", "piece", size="medium"), "us", "1", "2 medium"),
        (amount("1", "clove"), "written", "3", "3 cloves"),
        (amount("1", "pinch"), "written", "2", "2 pinches"),
        (amount("1", "leaf"), "written", "3", "3 leaves"),
        (amount("2", "g", "3"), "written", "2", "4–6 g"),
        (amount("100", "g", "150"), "us", "1", "3½ oz to 5¼ oz"),
        (amount("1/3", "tsp"), "written", "1", "⅓ tsp"),
        (amount("1", "tsp", about=True), "metric", "1", "about 5 ml"),
        (amount("1.2", "l"), "written", "1", "1.2 l"),
        (amount("1/2", "tbsp"), "metric", "1", "7.5 ml"),
        (amount("1.5", "kg"), "metric", "1", "1.5 kg"),
        (amount("2", "tin", each=amount("400", "g")), "written", "1", "2 × 400 g tins"),
    ],
)
def test_amounts(value: Amount, system: str, scale: str, text: str) -> None:
    assert shown(value, system, scale) == text


def test_no_amount_and_to_taste() -> None:
    assert amounts.shown(None, HOLDS.get) == ()
    assert {s.text for s in amounts.shown(amount("1", "piece", to_taste=True), HOLDS.get)} == {"to taste"}


@given(st.fractions(min_value=Fraction(1, 10), max_value=20000), st.sampled_from(["g", "ml"]))
def test_rounding_never_moves_an_amount_by_more_than_a_quarter(value: Fraction, unit: str) -> None:
    """What is read back from the American text is near what was meant."""
    text = amounts.american(unit, value)
    factors = {"oz": OUNCE, "lb": OUNCE * 16, "cup": CUP, "cups": CUP, "tbsp": CUP / 16, "tsp": CUP / 48}
    signs = {sign: number for number, sign in amounts._SIGNS.items()}
    total, words = Fraction(0), text.split()
    for number, word in zip(words[::2], words[1::2], strict=True):
        whole = number.rstrip("".join(signs))
        part = signs.get(number[len(whole) :], Fraction(0))
        total += (Fraction(whole or 0) + part) * factors[word]
    smallest = factors["oz"] / 8 if unit == "g" else factors["tsp"] / 4
    assert abs(total - value) <= max(value / 4, smallest)


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("2 bay leaves", "2"),
        ("1 cinnamon stick", "1"),
        ("2 cloves garlic, crushed", "2 cloves"),
        ("200 g rice", "200 g"),
    ],
)
def test_a_unit_that_the_name_says_is_not_said_twice(line: str, first: str) -> None:
    made = kitchen.dish(f"foods:\n  - {line}\n  - 300 g floury potatoes, peeled, 1 cm dice")
    item = food_items(made, lambda _: None)[0]
    assert next(s.text for s in item.shown if (s.system, s.scale) == ("written", "1")) == first
