"""What is said aloud over a bowl: a claim in everyday speech is heard, and cooking talk of the same words is not."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@each(
    ("text", "kind"),
    [
        ("You can give him watered down juice with his tea.", "safety-age"),
        ("The beer boils off, so it's fine for the baby.", "safety-age"),
        ("Don't panic if the burger is still pink.", "safety-age"),
        ("Slice the chipolatas into rounds for her.", "safety-age"),
        ("Blueberries are okay whole once she has her back teeth.", "safety-age"),
        ("You don't need the bedtime bottle after this.", "safety-age"),
        ("She doesn't need any teeth to tackle this toast.", "safety-age"),
        ("Jelly cubes make a perfect finger food.", "safety-age"),
        ("Our paediatrician approves of this porridge.", "safety-age"),
        ("Five months is early enough for a little pear.", "safety-age"),
        ("He slept like a log after that lentil stew.", "function"),
        ("Butter plumps up skinny babies.", "function"),
        ("Sweet potato put two pounds on him in a month.", "function"),
        ("It's what her bones need.", "function"),
        ("Barley broth sees off a cold.", "disease"),
        ("Kale knocks spots off lettuce for vitamin K.", "comparative"),
        ("Steaming doesn't touch the vitamins.", "process"),
        ("There's a good whack of zinc in it.", "nutrient-content"),
        ("You can't beat it for goodness.", "general-benefit"),
        ("This mash is recommended by paediatricians.", "general-benefit"),
    ],
)
def test_speech_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@each(
    "text",
    [
        "Let it bubble until the wine cooks off.",
        "Cut the carrots into coins and tip them in.",
        "Put two kilos of plums on the heat.",
        "You can't beat pancakes on a Saturday.",
        "The bottle of oil is on the top shelf.",
        "My doctor said I looked tired.",
        "He filled out the form at nursery.",
        "Her gums are like iron.",
    ],
)
def test_cooking_talk_is_not(text: str) -> None:
    assert claims(text) == []


def test_one_egg_is_a_measure_and_a_food() -> None:
    (claim,) = claims("One egg has seven grams of protein.")
    assert claim.kind == "quantity" and "egg" in " ".join(claim.subjects)


@pytest.mark.parametrize(
    "text",
    [
        "he isn't a big eater so barley gives him energy",
        "I haven't got a steamer and simmering keeps all the vitamins in",
        "can you see how soft that looks now and the beetroot boosts immunity",
    ],
)
def test_a_no_or_a_question_of_something_else_leaves_the_claim_standing(text: str) -> None:
    assert {claim.polarity for claim in claims(text)} == {"asserts"}


@pytest.mark.parametrize(
    ("text", "polarity"),
    [
        ("I don't think carrots and peas boost immunity", "denies"),
        ("can carrots boost immunity in a baby", "asks"),
        ("barley does not boost immunity", "denies"),
    ],
)
def test_a_no_or_a_question_of_the_claim_itself_counts(text: str, polarity: str) -> None:
    assert polarity in {claim.polarity for claim in claims(text)}


FILM = (
    "so in the pan i have got some onion and a bit of garlic softening away and while that goes on let me tell you "
    "about beetroot we grow so much of it its loaded with iron and then next to it there are the sardines which i "
    "mash up with a fork theyre amazing for growing bones and after that comes yoghurt its got calcium and a little "
    "flax on top goes in"
)


@pytest.mark.parametrize(("relates", "food"), [("iron", "beetroot"), ("bones", "sardine"), ("calcium", "yoghurt")])
def test_speech_without_marks_keeps_each_pronoun_with_what_was_named_before_it(relates: str, food: str) -> None:
    (found,) = [claim for claim in claims(FILM) if relates in (claim.relates_to or "")]
    assert found.subjects == (food,)


@pytest.mark.parametrize(
    "text",
    [
        "serve beans and peppers and vitamin C helps the body absorb iron",
        "we had oats and pear and calcium builds strong bones",
        "peas and carrots and fibre keeps things moving",
    ],
)
def test_a_nutrient_that_does_something_of_its_own_is_not_said_to_be_in_the_foods_before_it(text: str) -> None:
    (found,) = claims(text)
    assert found.kind == "function" and len(found.subjects) == 1 and not found.foods


def test_a_food_and_a_nutrient_that_do_something_together_are_both_what_it_is_about() -> None:
    (found,) = claims("Lentils and vitamin C help iron absorption.")
    assert found.subjects == ("lentil", "vitamin c")


@pytest.mark.parametrize(
    ("text", "age"),
    [
        ("Whole nuts not before five.", "60 months"),
        ("Peanut butter goes into porridge, never off the spoon, and whole nuts not before five.", "60 months"),
        ("Cow's milk as a drink from one.", "12 months"),
        ("Soya milk is fine as a main drink from one if it is fortified.", "12 months"),
    ],
)
def test_an_age_in_years_is_heard_without_its_unit(text: str, age: str) -> None:
    assert any(age in (claim.relates_to or "") for claim in claims(text))


@pytest.mark.parametrize("text", ["It is sweet enough, so no sugar needed."])
def test_what_others_ask_about_and_what_can_be_done_without_is_no_claim(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "He had terrible reflux and trout didn't help one bit.",
        "We gave him pears for his constipation but they did nothing.",
        "Check the salmon for small bones.",
    ],
)
def test_what_was_no_help_and_a_fishs_own_bones_are_no_claim(text: str) -> None:
    assert claims(text) == []


def test_a_vitamin_that_helps_to_take_up_a_mineral_is_one_claim() -> None:
    (one,) = claims("Vitamin D helps the body to absorb the calcium.")
    assert one.effect == "absorption" and one.subjects == ("vitamin d",)


def test_a_fishs_soft_bones_are_not_a_childs() -> None:
    (one,) = claims("Tinned sardines are rich in calcium because you eat the soft bones.")
    assert one.kind == "nutrient-content"


def test_what_a_child_goes_without_till_an_age_says_nothing_of_a_dish() -> None:
    assert {claim.kind for claim in claims("No cow's milk, no honey, no salt in the first year.")} == {"safety-age"}


def test_how_hot_a_thing_gets_is_no_age() -> None:
    assert claims("Bake the chicken balls until they reach 165 in the middle.") == []
