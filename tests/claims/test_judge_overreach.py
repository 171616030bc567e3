"""What a true statement says beyond what makes it true, and what lately was refused though it is sound."""

from __future__ import annotations

import pytest
from test_judge_labelled import spoken

from tests.each import each


def advices(said: str) -> set[str]:
    return {one.advice for one in spoken(said)}


@each(
    "said",
    [
        "Salmon three times a day is ideal for one year olds.",
        "Egg at every meal is fine from seven months.",
        "One slice of cheddar covers a toddler's protein for the week.",
        "A yoghurt takes care of the day's calcium.",
        "Soak rice for an hour and all the arsenic is gone.",
        "Quartering blueberries is a waste of time.",
        "Halving cherry tomatoes is overkill.",
        "It's a myth that grapes need cutting.",
        "Solids at three months are not too early.",
        "Egg white is poison before one year.",
        "Formula is better than breast milk.",
        "Babies with a milk allergy can have a little yoghurt.",
    ],
)
def test_what_says_too_much_is_not_kept(said: str) -> None:
    found = advices(said)
    assert found
    assert "keep" not in found


@each(
    "said",
    [
        "Salmon twice a week is fine from six months.",
        "Solids before four months are too early.",
        "Cow's milk is fine in porridge from six months, but not as a main drink before one.",
        "No salt goes into a baby's bowl.",
        "Brown seaweed can hold too much iodine for a baby.",
        "Babies with an egg allergy should not have egg.",
        "A home kitchen can't promise gluten-free for coeliacs.",
        "Formula isn't better than breast milk.",
        "Gluten-free doesn't mean healthier.",
        "Lentils hold less iron that the body can use than meat does.",
        "Sweet potatoes contain beta-carotene, which the body turns into vitamin A.",
        "Cutting grapes is never a waste of time.",
        "Grapes need quartering until the age of five.",
    ],
)
def test_sound_advice_beside_it_stands(said: str) -> None:
    found = advices(said)
    assert found
    assert found == {"keep"}


def test_chopping_told_by_its_verb_clears_dried_fruit() -> None:
    assert "cut-untrue" not in advices("Chop sultanas finely for a baby.")


@pytest.mark.parametrize(
    "said",
    [
        "Nothing is healthier than kale.",
        "Honestly, it couldn't be healthier.",
        "Shop-bought purées are not as nutritious as home-made.",
        "No food is more nutritious than liver.",
    ],
)
def test_a_no_that_puts_a_food_above_or_below_another_is_no_modesty(said: str) -> None:
    found = advices(said)
    assert found
    assert "keep" not in found


@pytest.mark.parametrize(
    "said",
    [
        "Brown sugar is no healthier than white sugar.",
        "Organic parsnips have no more vitamins than ordinary ones.",
        "Solid food before seventeen weeks is too early.",
        "You shouldn't start solids before 17 weeks.",
        "Early weaning, before seventeen weeks, isn't safe.",
    ],
)
def test_modesty_and_ages_in_weeks_stand(said: str) -> None:
    found = advices(said)
    assert found
    assert found == {"keep"}


@each(
    "said",
    [
        "Almond milk can't replace formula in the first year.",
        "Nothing replaces breast milk in the first months.",
        "Porridge with breast milk is fine from six months.",
        "Mustard is a listed allergen.",
        "Marlin and swordfish are not for children.",
        "Honey and jam are not for babies.",
        "Soft cheese in thin strips is a good finger food from nine months.",
    ],
)
def test_what_keeps_a_thing_from_babies_or_names_it_stands(said: str) -> None:
    assert not advices(said) - {"keep", "add"}


@pytest.mark.parametrize(
    "said",
    [
        "Cashew milk replaces breast milk just as well.",
        "Oat drink does the job of breast milk.",
        "Hazelnut milk instead of formula saves money.",
    ],
)
def test_what_takes_the_place_of_milk_or_medicine_does_not(said: str) -> None:
    found = advices(said)
    assert found
    assert "keep" not in found
