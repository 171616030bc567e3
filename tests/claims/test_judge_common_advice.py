"""What is often said of feeding babies: the wrong half is never kept, the right half never refused."""

from __future__ import annotations

from test_judge_labelled import Labelled, heard, spoken

from tests.each import each

WRONG = (
    "Keep peanut from babies until they are one.",
    "You needn't keep honey from a baby.",
    "Nobody has to keep honey away from babies.",
    "Salt is fine in purees.",
    "Early peanut causes peanut allergy.",
    "Giving egg early leads to egg allergy.",
    "Barley does not contain gluten.",
    "Oats do not contain gluten.",
    "No meat before one.",
    "Lentils should wait until the first birthday.",
    "By nine months babies don't need milk feeds any more.",
    "Slightly pink chicken is safe for babies.",
    "Salted butter is fine for babies.",
    "Talk to your doctor before giving honey to cure eczema.",
    "Almond milk has more calcium than cow's milk.",
    "Oat milk is high in calcium.",
    "Babies who eat peanut early never get an allergy.",
    "Babies who eat egg early won't get an egg allergy.",
    "Smoked salmon is not too salty for babies.",
    "Honey is never too sweet for babies.",
    "Rub the food on their skin first to test for allergy.",
    "Freezing kills all bacteria.",
    "Why not add a pinch of salt to bring out the flavour for your baby?",
    "Milk contains no calcium.",
    "Milk is low in calcium.",
    "Chicken contains no iron.",
    "Bananas have no protein.",
    "Apples have no fibre.",
    "Sweetened yoghurt is ideal from six months.",
    "Babies don't need vitamin D drops.",
    "No food can cure a cold except garlic.",
    "A vegan baby doesn't need B12 drops.",
    "Cashews are fine if roughly chopped.",
    "Yoghurt is fine for babies with milk allergy because it is fermented.",
)
RIGHT = (
    "Wheat contains gluten.",
    "Rye contains gluten.",
    "Oats contain gluten.",
    "Cow's milk can be used in purees from six months.",
    "No honey before one.",
    "Don't give babies pink chicken.",
    "Talk to your doctor before giving peanut if your baby has severe eczema.",
    "Shark and swordfish are too high in mercury for children.",
    "Ham is too salty for babies.",
    "No alcohol in a baby's food.",
    "No salt in a baby's food.",
    "Nuts must be ground for babies.",
    "It is never too early for peanut.",
    "Offer one new allergen at a time.",
    "Broccoli is low in calcium.",
    "Butter contains no fibre.",
    "Unsweetened yoghurt is fine from six months.",
    "Fizzy drinks are not suitable for babies.",
    "Keep giving peanut regularly once your baby tolerates it.",
    "No food can cure a cold.",
    "Freezing does not kill all bacteria.",
    "A vegan baby needs a vitamin B12 supplement.",
    "Keep honey from babies until they are one.",
    "We keep honey from her until her first birthday.",
)


def advice(said: str) -> list[str]:
    """What is advised for each claim of a sentence, in speech that no law of food claims binds."""
    return [judged.advice for judged in spoken(said)]


@each("said", WRONG)
def test_what_is_wrong_is_heard_and_not_kept(said: str) -> None:
    found = advice(said)
    assert found
    assert not set(found) & {"keep", "add"}


@each("said", RIGHT)
def test_what_is_right_stands(said: str) -> None:
    found = advice(said)
    assert found
    assert set(found) <= {"keep", "add"}


def test_naming_the_gluten_of_a_cereal_needs_no_set_words_where_the_law_binds() -> None:
    said = Labelled("", "EU GB US", "own-product", "Barley contains gluten.", "", "", "")
    assert [judged.advice for judged in heard(said)] == ["keep"]


def test_what_one_carton_holds_and_another_does_not_is_called_neither_true_nor_false() -> None:
    judged = spoken("Oat milk is high in calcium.")
    assert [(one.truth, "carton" in one.why) for one in judged] == [("unproven", True)]


def test_a_drawback_that_is_told_is_no_nutrition_claim() -> None:
    said = Labelled("", "EU GB", "own-product", "Butter is high in saturated fat.", "", "", "")
    assert [judged.advice for judged in heard(said)] == ["keep"]
