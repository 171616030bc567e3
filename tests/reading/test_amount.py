"""Amounts: read exactly, or refused with the reason."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.model.recipe import Amount
from spoonproof.model.text import NOWHERE
from spoonproof.reading.amount import amount_at
from spoonproof.reading.amount_again import Problem
from spoonproof.reading.amount_words import show_amount
from spoonproof.reading.measures import Measures
from tests.each import each
from tests.reading.readings import amount_words, measures


def read_amount(text: str, known: Measures) -> tuple[Amount | None, str, tuple[Problem, ...]]:
    """The amount at the start of ``text``, the words left after it, and what is wrong with it."""
    reading = amount_at(text, 0, known)
    return (reading.amount, text[reading.end :].lstrip(), reading.problems) if reading else (None, text, ())


@each(
    ("text", "amount", "rest"),
    [
        ("300 g parsnip", "300 g", "parsnip"),
        ("25g butter", "25 g", "butter"),
        ("2 medium pears", "2 piece medium", "pears"),
        ("2 medium-sized pears", "2 piece medium", "pears"),
        ("½ tsp cumin", "1/2 tsp", "cumin"),
        ("1½ cups milk", "3/2 cup", "milk"),
        ("1 ½ cups milk", "3/2 cup", "milk"),
        ("1 1/2 lb beef", "3/2 lb", "beef"),
        ("1⁄2 lemon", "1/2 piece", "lemon"),
        ("1 1⁄3 cups milk", "4/3 cup", "milk"),
        ("1-1/2 cups milk", "3/2 cup", "milk"),
        ("50 g/2 oz/1/3 cup dried apricots", "50 g", "dried apricots"),
        ("200 g (½ tin) of chopped tomatoes", "200 g", "chopped tomatoes"),
        ("1 and a half cups milk", "3/2 cup", "milk"),
        ("one and a half cups milk", "3/2 cup", "milk"),
        ("three quarters of a cup of oats", "3/4 cup", "oats"),
        (".5 tsp oil", "1/2 tsp", "oil"),
        ("0.1 kg flour", "1/10 kg", "flour"),
        ("2-3 carrots", "2..3 piece", "carrots"),
        ("2–3 carrots", "2..3 piece", "carrots"),
        ("2 to 3 carrots", "2..3 piece", "carrots"),
        ("100g-120g oats", "100..120 g", "oats"),
        ("½-1 tsp cumin", "1/2..1 tsp", "cumin"),
        ("about 200 g potatoes", "~200 g", "potatoes"),
        ("~200 g potatoes", "~200 g", "potatoes"),
        ("a carrot", "1 piece", "carrot"),
        ("an egg", "1 piece", "egg"),
        ("half a lemon", "1/2 piece", "lemon"),
        ("half a small onion", "1/2 piece small", "onion"),
        ("a dozen eggs", "12 piece", "eggs"),
        ("half a dozen eggs", "6 piece", "eggs"),
        ("a pinch of cumin", "1 pinch", "cumin"),
        ("pinch of cumin", "1 pinch", "cumin"),
        ("a good pinch of nutmeg", "~1 pinch", "nutmeg"),
        ("large handful spinach", "1 handful large", "spinach"),
        ("2 small handfuls of spinach", "2 handful small", "spinach"),
        ("a few basil leaves", "~2..4 piece", "basil leaves"),
        ("a little oil", "taste", "oil"),
        ("some parsley", "taste", "parsley"),
        ("2 x 400 g tins chickpeas", "2 tin each 400 g", "chickpeas"),
        ("1 x 400g tin of chickpeas", "1 tin each 400 g", "chickpeas"),
        ("1 (400 g) tin chickpeas", "1 tin each 400 g", "chickpeas"),
        ("a 400 g tin of chickpeas", "1 tin each 400 g", "chickpeas"),
        ("400 g tin of chickpeas", "1 tin each 400 g", "chickpeas"),
        ("1 tin (400 g) chickpeas", "1 tin each 400 g", "chickpeas"),
        ("1 14-oz can chickpeas", "1 tin each 14 oz", "chickpeas"),
        ("1 cup (150 g) peas", "1 cup each 150 g", "peas"),
        ("400 g / 14 oz tomatoes", "400 g", "tomatoes"),
        ("2 tbsp + 1 tsp oil", "35 ml", "oil"),
        ("1 cup plus 2 tbsp flour", "280 ml", "flour"),
        ("8 fl oz milk", "8 fl-oz", "milk"),
        ("thumb-sized piece of ginger", "1 thumb", "ginger"),
        ("2 heaped tbsp yogurt", "2 tbsp large", "yogurt"),
        ("1 level tsp cinnamon", "1 tsp", "cinnamon"),
        ("4 large cloves of garlic", "4 clove large", "garlic"),
        ("2eggs", "2 piece", "eggs"),
        ("parsnip", "-", "parsnip"),
        ("", "-", ""),
    ],
)
def test_amounts(text: str, amount: str, rest: str) -> None:
    read, left, problems = read_amount(text, measures())
    assert (amount_words(read), left, problems) == (amount, rest, ())


@each(
    ("text", "rule", "written"),
    [
        ("1,5 g salt", "ambiguous-number", "1,5"),
        ("1,000 g flour", "ambiguous-number", "1,000"),
        ("1.000,5 g flour", "ambiguous-number", "1.000,5"),
        ("1_000 g flour", "ambiguous-number", "1_000"),
        ("012 g flour", "ambiguous-number", "012"),
        ("1/0 cup milk", "not-a-number", "1/0"),
        ("1/2/3 cup milk", "not-a-number", "1/2/3"),
        ("½½ cup milk", "not-a-number", "½½"),
        ("1½½ cup milk", "not-a-number", "1½½"),
        ("1.2.3 g milk", "not-a-number", "1.2.3"),
        ("nan g milk", "not-a-number", "nan"),
        ("NaN", "not-a-number", "NaN"),
        (".nan g milk", "not-a-number", ".nan"),
        ("inf g milk", "quantity-not-finite", "inf"),
        (".inf", "quantity-not-finite", ".inf"),
        ("-.inf", "quantity-not-finite", "-.inf"),
        ("1e400 g milk", "quantity-not-finite", "1e400"),
        ("1e308 g milk", "quantity-out-of-range", "1e308"),
        ("9e99 g milk", "quantity-out-of-range", "9e99"),
        ("1e-300 g milk", "quantity-out-of-range", "1e-300"),
        ("1234567890123456789012345678901234567890 g milk", "quantity-out-of-range", None),
        ("0.0000001 g milk", "quantity-out-of-range", "0.0000001"),
        ("0 g milk", "quantity-not-positive", "0"),
        ("0.0 g milk", "quantity-not-positive", "0.0"),
        ("-0 g milk", "quantity-not-positive", "-0"),
        ("-2 carrots", "quantity-not-positive", "-2"),
        ("−2 carrots", "quantity-not-positive", "−2"),
        ("3-2 carrots", "range-reversed", "3-2"),
        ("2- carrots", "range-not-closed", "2-"),
        ("2-", "range-not-closed", "2-"),
        ("2 – carrots", "range-not-closed", "2 –"),
        ("٣ carrots", "digits-not-plain", "٣"),
        ("３ carrots", "digits-not-plain", "３"),
        ("2 T oil", "ambiguous-unit", "T"),
        ("2 t oil", "ambiguous-unit", "t"),
        ("1 Mg salt", "ambiguous-unit", "Mg"),
    ],
)
def test_refusals(text: str, rule: str, written: str | None) -> None:
    read, _, problems = read_amount(text, measures())
    assert read is None
    assert [problem.rule for problem in problems] == [rule]
    if written is not None:
        assert text[problems[0].start : problems[0].end] == written


def test_both_readings_of_a_comma_are_named() -> None:
    _, _, problems = read_amount("1,500 g flour", measures())
    assert "1.500" in problems[0].message and "1500" in problems[0].message


def test_two_units_that_disagree_are_said_and_the_first_counts() -> None:
    read, _, problems = read_amount("400 g / 20 oz tomatoes", measures())
    assert amount_words(read) == "400 g"
    assert [problem.rule for problem in problems] == ["amounts-disagree"]


_NUMBERS = st.one_of(
    st.integers(1, 9999).map(Fraction),
    st.builds(Fraction, st.integers(1, 400), st.sampled_from([2, 3, 4, 5, 6, 7, 8, 9, 10, 100, 1000])),
)
_UNITS = st.sampled_from(["g", "kg", "ml", "l", "tsp", "tbsp", "cup", "fl-oz", "oz", "lb", "pinch", "handful", "clove"])


@given(st.lists(_NUMBERS, min_size=2, max_size=2), _UNITS, st.sampled_from(["", "small", "large"]), st.booleans())
def test_what_is_printed_reads_back_as_the_same_amount(ends: list[Fraction], unit: str, size: str, about: bool) -> None:
    low, high = sorted(ends)
    amount = Amount(low, high, unit, NOWHERE, size=size, about=about)
    printed = show_amount(amount)
    read, rest, problems = read_amount(printed, measures())
    assert problems == () and rest == "" and read is not None
    assert (read.low, read.high, read.unit, read.size, read.about) == (low, high, unit, size, about)


@given(st.text(max_size=40) | st.text(alphabet="0123456789½⅓¼.,/⁄-–xe +()gtsp oflacup", max_size=40))
def test_any_text_gives_a_positive_amount_or_none(text: str) -> None:
    read, rest, problems = read_amount(text, measures())
    assert len(rest) <= len(text)
    assert all(0 <= problem.start <= problem.end <= len(text) for problem in problems)
    if read is not None:
        assert read.to_taste or 0 < read.low <= read.high
        assert 0 <= read.span.start <= read.span.end <= len(text)
