"""What words that give a food leave open of how it is served, asked of the hazard tables."""

from __future__ import annotations

import pytest

from spoonproof.feeding.offered import danger_in
from spoonproof.model.danger import Danger
from tests import kitchen
from tests.each import each


def danger(said: str, months: int = 8, behind: str = "", known: frozenset[str] = frozenset()) -> Danger | None:
    return danger_in(said, (0, len(said)), months, kitchen.knowledge().feeding, {}, ("GB",), behind, known)


@pytest.mark.parametrize(
    ("said", "row"),
    [
        ("Swede is a fine finger food from six months", "hard-raw"),
        ("Pieces of kohlrabi to chew from six months", "hard-raw"),
        ("Cherry tomatoes as a snack from nine months", "round-uncut"),
        ("Blueberries from seven months", "berry-whole-baby"),
        ("Sultanas from eight months", "dried-fruit-whole"),
        ("Beef is a good finger food from eight months", "meat-chunk"),
    ],
)
def test_hard_and_round_food_is_open_until_the_words_say_how_it_is_served(said: str, row: str) -> None:
    found = danger(said)
    assert found is not None
    assert (found.row, found.told) == (row, False)


@each(
    "said",
    [
        "Swede, cooked until it is soft, is a fine finger food from six months",
        "Swede mash from six months",
        "Steamed carrot is a fine finger food from six months",
        "Swede and lentil soup from six months",
        "Swede is a lovely first food from six months",
        "Cherry tomatoes, quartered lengthways, as a snack from nine months",
        "Blueberries squashed flat from seven months",
        "Sultanas, finely chopped, from eight months",
        "Strips of tender beef are a good finger food from eight months",
        "Slices of ripe peach are a good finger food from six months",
        "Banana is a good finger food from six months",
        "Beef from six months",
        "Smooth peanut butter from six months",
        "Porridge from six months, but no honey",
        "Banana makes a better snack than popcorn",
    ],
)
def test_what_is_told_clears_it(said: str) -> None:
    assert danger(said) is None


@pytest.mark.parametrize(
    ("said", "row"),
    [
        ("Cubes of gouda are good finger food", "cheese-chunk"),
        ("Raw swede sticks are good finger food", "hard-raw"),
        ("Popcorn porridge", "popcorn"),
        ("Chopped nuts on porridge", "chopped-nuts"),
        ("Banana with toffee", "hard-sweets"),
        ("Banana with bacon", "salty-food"),
    ],
)
def test_what_the_words_show_is_told(said: str, row: str) -> None:
    found = danger(said)
    assert found is not None
    assert (found.row, found.told) == (row, True)


def test_foods_in_one_row_share_their_words_and_others_do_not() -> None:
    assert danger("Soft-cooked swede and parsnip batons are finger food") is None
    mixed = danger("Steamed swede and raw apple are finger food")
    assert mixed is not None
    assert (mixed.food, mixed.told) == ("apple", True)


def test_a_sentence_behind_it_and_the_recipe_itself_may_say_how_it_is_served() -> None:
    assert danger("Apple from six months", behind=" Steam it until it is soft") is None
    assert danger("Apple from six months", known=frozenset({"apple"})) is None
    assert danger("Apple from six months") is not None


def test_a_state_that_is_denied_tells_nothing() -> None:
    assert danger("Smooth peanut butter, never whole peanuts, from six months") is None
    uncut = danger("Blueberries from seven months, no need to squash them")
    assert uncut is not None


def test_another_food_with_an_age_of_its_own_is_another_matter() -> None:
    said = "Banana as finger food from six months and popcorn from five years"
    assert danger_in(said, (0, 36), 6, kitchen.knowledge().feeding, {}, ("GB",)) is None


def test_older_children_manage_what_babies_do_not() -> None:
    assert danger("Blueberries from six years", months=72) is None


def test_what_no_table_knows_is_said_to_be_unknown_where_it_is_given_in_pieces() -> None:
    found = danger("Gobstoppers are a good finger food")
    assert found is not None
    assert (found.row, found.food) == ("", "Gobstoppers")
    assert danger("Soft pieces make good finger food") is None
    assert danger("Gobstopper is a word of my gran's") is None
