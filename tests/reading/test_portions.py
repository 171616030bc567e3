"""What a recipe makes, in the ways that cooks say it."""

import pytest

from spoonproof.model.recipe import Makes
from spoonproof.model.text import Span
from spoonproof.reading.quantities import made_of
from tests.each import each

NOWHERE = Span(0, 0)


def made(
    count: int,
    most: int | None = None,
    grams: float | None = None,
    ml: float | None = None,
    all_grams: float | None = None,
) -> Makes:
    return Makes(count, grams, NOWHERE, ml=ml, most=most, all_grams=all_grams)


@each(
    ("written", "expected"),
    [
        ("9 x 60 g", made(9, grams=60.0)),
        ("Serves 5", made(5)),
        ("Serves 5-6", made(5, 6)),
        ("2 or 3 portions", made(2, 3)),
        ("14-16 bite-size rissoles", made(14, 16)),
        ("Makes: about 10", made(10)),
        ("about 650 g", made(1, all_grams=650.0)),
        ("1.2kg in all", made(1, all_grams=1200.0)),
        ("about 2 cups", made(1, ml=480.0)),
        ("1 1/2 litres", made(1, ml=1500.0)),
        ("½ l", made(1, ml=500.0)),
        ("750 ml, 6 x 125 ml", made(6, grams=125.0)),
        ("3 grown-up helpings or 9 little ones", made(9)),
        ("5 portions (60 g each)", made(5, grams=60.0)),
        ("6 x 2 oz", made(6, grams=56.7)),
        ("4 x 3 fl oz", made(4, grams=87.0)),
        ("1 lb", made(1, all_grams=453.59237)),
    ],
)
def test_made(written: str, expected: Makes) -> None:
    assert made_of(written, NOWHERE) == expected


@each(
    "written",
    ["plenty", "serves us all", "3 adults and 1 baby", "g", "/ cups", "1/ cup", "1 ice-cube tray", "2 small jars"],
)
def test_what_says_no_number_of_portions_is_refused(written: str) -> None:
    assert made_of(written, NOWHERE) is None


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("6 x 60 g", "6 portions of 60 g"),
        ("1 portion", "1 portion"),
        ("3-4 portions", "3–4 portions"),
        ("900 ml", "900 ml"),
    ],
)
def test_what_it_makes_is_told_in_one_way(written: str, told: str) -> None:
    makes = made_of(written, NOWHERE)
    assert makes is not None and makes.told == told
