"""Where a nutrient is got from, whatever stands before it; which kind of food is meant, and by which examples."""

from __future__ import annotations

import pytest
from finding_kit import claims, only


@pytest.mark.parametrize(
    ("text", "subjects", "relates"),
    [
        ("They also get some zinc from oats and beef.", {"oat", "beef"}, "zinc"),
        ("Selenium can be got from brazil nuts.", {"brazil nut"}, "Selenium"),
        ("Good sources include lentils and kale.", {"lentil", "kale"}, "Good sources"),
        ("Foods with added iodine include: yoghurt and bread.", {"yoghurt", "bread"}, "iodine"),
        ("Most zinc is in beef, although some is found in oats.", {"beef"}, "zinc"),
        ("Folate, found in spinach, is in most greens.", {"spinach"}, "Folate"),
        ("A vegetarian diet can meet a toddler's nutritional needs.", {"vegetarian diet"}, "nutritional needs"),
        ("Salty snacks such as crisps and olives are high in sodium.", {"crisps", "olive"}, "sodium"),
        ("Fried foods are full of fat, such as crisps.", {"crisps"}, "fat"),
        ("The small grain called teff is rich in iron.", {"teff"}, "iron"),
    ],
)
def test_it_is_named_where_it_is_found(text: str, subjects: set[str], relates: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == "nutrient-content"]
    assert any(subjects <= set(claim.subjects) and relates in str(claim.relates_to) for claim in found), found


def test_how_much_of_it_two_hold_is_compared() -> None:
    assert only("Kefir holds about as much calcium as milk.", "comparative").subjects == ("kefir",)


def test_a_meal_at_which_it_is_eaten_is_not_what_it_is_said_of() -> None:
    found = only("Too much swede in one meal may upset the digestive system.", "function")
    assert "swede" in found.subjects


def test_what_it_is_given_as_is_not_what_it_is_said_of() -> None:
    found = only("Offering mango as finger food builds fine motor skills.", "function")
    assert found.subjects == ("mango",)


def test_whose_need_it_is_stands_with_the_need() -> None:
    assert only("Toddlers need iron.", "function").relates_to == "Toddlers need (importance)"


def test_vitamins_that_dissolve_in_fat_are_no_fat() -> None:
    found = only("Eggs are a source of fat-soluble vitamins.", "nutrient-content")
    assert found.relates_to == "fat-soluble vitamins"


def test_nothing_is_listed_where_a_child_starts_on_it() -> None:
    assert only("Do not delay fish once your baby has started solids.", "safety-age").subjects == ("fish",)


def test_a_thing_that_nobody_says_to_hold_it_is_no_source() -> None:
    assert claims("Good sources include my mother and the woman next door.") == []
    assert claims("We get our milk from the farm.") == []
