"""Where a nutrient is got from, whatever stands before it; which kind of food is meant, and by which examples."""

from __future__ import annotations

import pytest
from finding_kit import claims, only

from tests.each import each


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


@each(
    ("text", "kind", "subject"),
    [
        ("Beetroot and peas release more folate when cooked.", "process", "beetroot"),
        ("Kale may lose a good part of its vitamins when microwaved.", "process", "kale"),
        ("Vitamin content is also altered during roasting.", "process", "roasting"),
        ("B vitamins are particularly susceptible to degradation during boiling.", "process", "b vitamin"),
        ("The folate lost into the cooking water depends on the peas.", "process", "pea"),
        ("Steaming helps the body absorb carotene.", "process", "steaming"),
        ("Zinc becomes more bioavailable in lentils after soaking.", "process", "lentil"),
        ("Boiling can lead to a reduction of half the vitamin C in kale.", "process", "kale"),
        ("There is some zinc in oats, but it is far less than in beef.", "comparative", "oat"),
        ("A whole egg contains almost the daily recommended amount.", "nutrient-content", "egg"),
        ("You can find it in eggs, milk and kale.", "nutrient-content", "egg"),
        ("Limit ham because of its high salt.", "nutrient-content", "ham"),
        ("An ounce of gouda has 200 milligrams.", "quantity", "gouda"),
        ("By chewing carrots, teeth become stronger.", "function", "carrot"),
        ("Thyme is known to help with respiratory problems.", "disease", "thyme"),
        ("When it comes to boosting immunity, oranges are the champions.", "function", "orange"),
        ("Add other good sources of zinc, such as beef and oats.", "nutrient-content", "beef"),
    ],
)
def test_what_cooking_does_and_where_it_is_found_is_heard(text: str, kind: str, subject: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert any(subject in said.lower() for claim in found for said in claim.subjects), claims(text)


@pytest.mark.parametrize(
    "text",
    [
        "You can find it in the drawer.",
        "Put the pasta into the water.",
        "The cake rises because of its high walls.",
        "When it comes to plates, ours are blue.",
        "Both of my sons like drums.",
        "A reduction of the sauce takes ten minutes.",
        "It can be given a stir now and then.",
    ],
)
def test_the_same_words_in_the_kitchen_are_not(text: str) -> None:
    assert claims(text) == []


def test_both_are_the_two_that_were_named() -> None:
    assert claims("Here are kale and lentils. Both contain iron.")[-1].subjects == ("kale", "lentil")
