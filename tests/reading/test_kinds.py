"""Foods called by their kind: which lines a method means, and what such words must never hide."""

from __future__ import annotations

import pytest

from tests.reading.readings import read_method

MUFFINS = ("2 ripe pears, grated", "180 g self-raising flour", "1/2 tsp ground ginger", "2 eggs", "80 ml rapeseed oil")
STEW = (
    "1 onion, chopped", "2 courgettes, 1 cm dice", "1 red pepper, deseeded", "2 tbsp tomato purée", "2 tbsp capers",
    "200 g spinach", "1 scotch bonnet", "300 ml water", "1/2 tsp salt",
)  # fmt: skip


def acted_on(foods: tuple[str, ...], *steps: str) -> list[set[str]]:
    """The names that each action of the last step acts on."""
    read, _, lines, _ = read_method(foods, steps)
    return [{lines[i].name for i in action.foods} for action in read[-1].actions]


def said(foods: tuple[str, ...], *steps: str) -> set[str]:
    """The findings' rules with the words they stand at."""
    _, found, _, document = read_method(foods, steps)
    return {f"{one.rule} {document.at(one.span)}" for one in found}


def test_greens_are_the_leaves_of_the_list() -> None:
    assert acted_on(STEW, "Add the greens.") == [{"spinach"}]
    assert acted_on(("200 g broccoli, in florets", "1 carrot"), "Add the greens.") == [{"broccoli"}]
    assert "food-not-listed greens" in said(("1 carrot",), "Add the greens.")


def test_the_veg_is_no_puree_and_no_capers() -> None:
    assert acted_on(STEW, "Add the veg.") == [{"onion", "courgettes", "red pepper", "spinach", "scotch bonnet"}]


def test_the_rest_of_a_kind_is_what_was_not_used() -> None:
    steps = ("Fry the onion and the scotch bonnet.", "Add the rest of the veg.")
    assert acted_on(STEW, *steps) == [{"courgettes", "red pepper", "spinach"}]


def test_dry_and_wet_ingredients() -> None:
    assert acted_on(MUFFINS, "Mix the dry ingredients.") == [{"self-raising flour", "ground ginger"}]
    assert acted_on(MUFFINS, "Whisk the wet ingredients.")[0] == {"eggs", "rapeseed oil"}
    unused = said(MUFFINS, "Mix the dry things in one bowl and beat the rest together in another.")
    assert not any(one.startswith("food-never-used") for one in unused)


@pytest.mark.parametrize(
    "words",
    [
        "Put everything but the salt and capers in the pan.",
        "Add everything except for the capers and the salt.",
        "Put all the ingredients apart from the salt and the capers into a pot.",
        "Tip in everything else but the salt and capers.",
    ],
)
def test_everything_but(words: str) -> None:
    names = {"onion", "courgettes", "red pepper", "tomato purée", "spinach", "scotch bonnet", "water"}
    assert acted_on(STEW, words) == [names]


def test_what_was_left_out_goes_in_after() -> None:
    last = acted_on(MUFFINS, "Whisk everything but the pears, then fold those in.")[-1]
    assert "ripe pears" in last or "pears" in last


def test_two_of_a_name_that_went_in_before_are_both_meant() -> None:
    foods = ("50 g moong dal", "50 g masoor dal", "500 ml water")
    steps = ("Wash the moong dal and the masoor dal.", "Boil the dal in the water for 30 minutes.")
    assert acted_on(foods, *steps)[0] >= {"moong dal", "masoor dal"}
    assert not any(one.startswith("which-food") for one in said(foods, *steps))
    assert any(one.startswith("which-food") for one in said(foods, steps[1]))


def test_fruit_that_squashes_is_no_cordial() -> None:
    foods = ("2 ripe pears, diced", "100 ml water")
    assert said(foods, "Simmer the pears in the water for 12 minutes, until the fruit squashes.") == set()
    assert "food-not-listed fruit squash" in said(foods, "Simmer the pears in the water with fruit squash.")
    assert "food-not-listed honey" in said(foods, "Simmer the pears in the water with honey and squash it.")


def test_a_cook_may_call_the_chilli_the_pepper() -> None:
    assert acted_on(STEW[-3:], "Add the water and the pepper.") == [{"scotch bonnet", "water"}]


@pytest.mark.parametrize(
    ("words", "verb"),
    [
        ("Add the water and cook on low for 8 hours.", "slow-cook"),
        ("Simmer the onion in the slow cooker for 6 hours.", "slow-cook"),
        ("Cook the onion on a low heat for 2 hours.", "cook"),
        ("Simmer the onion on low for 20 minutes.", "simmer"),
    ],
)
def test_low_for_hours_is_a_slow_cooker(words: str, verb: str) -> None:
    read, *_ = read_method(STEW, [words])
    assert read[0].actions[-1].verb == verb
