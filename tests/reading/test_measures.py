"""Kitchen measures: exact, by system, each with a source."""

from __future__ import annotations

from fractions import Fraction

import pytest

from spoonproof.model.table import Row
from spoonproof.reading.measures import SYSTEMS, Measures
from tests.each import each
from tests.kitchen import knowledge
from tests.reading.readings import measures


@each(
    ("system", "unit", "ml"),
    [
        ("UK", "tsp", "5"),
        ("UK", "tbsp", "15"),
        ("AU", "tbsp", "20"),
        ("AU", "cup", "250"),
        ("US", "tsp", "4.92892159375"),
        ("US", "tbsp", "14.78676478125"),
        ("US", "cup", "236.5882365"),
        ("US", "fl-oz", "29.5735295625"),
        ("UK", "fl-oz", "28.4130625"),
        ("UK", "pint", "568.26125"),
        ("US", "pint", "473.176473"),
        ("metric", "cup", "250"),
        ("metric", "l", "1000"),
    ],
)
def test_volumes_are_exact(system: str, unit: str, ml: str) -> None:
    assert measures(system).ml(unit) == Fraction(ml)


def test_a_us_cup_is_sixteen_spoons_and_eight_fluid_ounces() -> None:
    us = measures("US")
    cup, tbsp, tsp, ounce = (us.ml(unit) for unit in ("cup", "tbsp", "tsp", "fl-oz"))
    assert cup is not None and tbsp is not None and tsp is not None and ounce is not None
    assert cup == 16 * tbsp == 48 * tsp == 8 * ounce


@pytest.mark.parametrize(("unit", "grams"), [("g", "1"), ("kg", "1000"), ("oz", "28.349523125"), ("lb", "453.59237")])
def test_masses_are_exact_in_every_system(unit: str, grams: str) -> None:
    assert {measures(system).grams(unit) for system in SYSTEMS} == {Fraction(grams)}


def test_an_ounce_is_no_volume_and_a_fluid_ounce_no_mass() -> None:
    assert measures().ml("oz") is None
    assert measures().grams("fl-oz") is None


@each("unit", ["pinch", "dash", "handful", "knob", "splash", "thumb", "drop", "drizzle"])
def test_loose_measures_have_a_range(unit: str) -> None:
    measure = measures().get(unit)
    assert measure is not None and measure.kind == "about"
    assert measure.low is not None and measure.value is not None and measure.high is not None
    assert measure.low < measure.value < measure.high


@each(
    ("word", "unit"),
    [
        ("Tablespoons", "tbsp"),
        ("tbsp.", "tbsp"),
        ("fl. oz.", "fl-oz"),
        ("fluid ounces", "fl-oz"),
        ("grammes", "g"),
        ("litre", "l"),
        ("handfuls", "handful"),
        ("cans", "tin"),
        ("packet", "pack"),
        ("dessertspoon", "dsp"),
        ("thumb-sized piece", "thumb"),
        ("T", None),
        ("t", None),
        ("Mg", None),
        ("firkin", None),
    ],
)
def test_unit_words(word: str, unit: str | None) -> None:
    assert measures().unit(word) == unit


def test_every_row_has_a_source_that_is_defined() -> None:
    sources = set(knowledge().sources) | {"common-practice"}
    for table in ("measures", "cuts", "preparations"):
        for row in knowledge().rows(table):
            assert row.text("source") in sources, f"{row.file}:{row.line}"


def test_gas_marks_rise() -> None:
    marks = [measures().gas_mark(mark) for mark in ("1/4", "1/2", *map(str, range(1, 10)))]
    degrees = [mark for mark in marks if mark is not None]
    assert len(degrees) == len(marks) and degrees == sorted(set(degrees))


def test_unknown_system_and_broken_row_are_said() -> None:
    with pytest.raises(ValueError, match="should be one of"):
        Measures.from_rows((), "imperial")
    row = Row({"unit": "tsp", "kind": "volume", "system": "any", "value": "five", "per": "ml"}, "measures.csv", 3)
    with pytest.raises(ValueError, match=r"measures\.csv:3"):
        Measures.from_rows((row,), "UK")
    cut = Row({"shape": "spiral", "words": "spirals"}, "cuts.csv", 2)
    with pytest.raises(ValueError, match=r"cuts\.csv:2"):
        Measures.from_rows((), "UK", (cut,))
    word = Row({"word": "peeled", "kind": "odd", "forms": "peeled"}, "preparations.csv", 4)
    with pytest.raises(ValueError, match=r"preparations\.csv:4"):
        Measures.from_rows((), "UK", (), (word,))
