"""Words as spoken and the seconds they take."""

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.reading.spoken import as_spoken, number_words, seconds, word_count
from tests.each import each


@each(
    ("text", "words"),
    [
        ("350 °F", 5),  # three hundred fifty degrees Fahrenheit
        ("180 °C", 5),
        ("1½ tsp of cumin", 7),
        ("16-20 minutes", 4),
        ("Steam the parsnip.", 3),
        ("0.5 kg", 4),
        ("", 0),
        ("…", 0),
    ],
)
def test_counts_words_as_they_are_said(text: str, words: int) -> None:
    assert word_count(text) == words


def test_a_unit_is_singular_after_one() -> None:
    assert as_spoken("1 cm dice") == "one centimetre dice"
    assert as_spoken("2 cm dice") == "two centimetres dice"


def test_a_letter_that_begins_a_word_is_no_unit() -> None:
    assert as_spoken("2 garlic cloves") == "two garlic cloves"
    assert as_spoken("3 little ones") == "three little ones"


@given(st.integers(0, 999_999))
def test_every_number_has_words_and_no_digits(value: int) -> None:
    said = number_words(value)
    assert said
    assert not any(character.isdigit() for character in said)


@given(st.text(alphabet="abc de.1½", max_size=60), st.text(alphabet="abc de.1½", max_size=60))
def test_more_words_never_take_less_time(first: str, second: str) -> None:
    assert seconds(f"{first} . {second}", 145) >= seconds(first, 145) - 1e-9


@given(st.text(max_size=200))
def test_any_text_has_a_time(text: str) -> None:
    assert seconds(text, 145) >= 0.0
