"""Allergens, cautions, keeping, pictures, contradictions and words."""

from __future__ import annotations

import pytest

from spoonproof.feeding.allergens import labels, named_in
from spoonproof.feeding.pictures import picture_hazards
from spoonproof.feeding.words import Phrases, fold
from spoonproof.site.gather import allergens as page_allergens
from tests import kitchen
from tests.each import each
from tests.feeding.dishes import dish, hazard_ids, text_of

STIR = ["Stir everything together."]


@each(
    ("food", "allergens"),
    [
        ("1 tbsp tahini", {"sesame"}),
        ("1 tsp Worcestershire sauce", {"fish", "gluten"}),
        ("1 tbsp Thai red curry paste", {"crustaceans", "fish"}),
        ("30 g ground almonds", {"nuts"}),
        ("1 tbsp smooth peanut butter", {"peanut"}),
        ("100 g couscous", {"gluten", "wheat"}),
        ("100 ml coconut milk", set()),
        ("200 g butternut squash", set()),
        ("1 pinch nutmeg", set()),
        ("100 g butter beans", set()),
        ("100 g rice noodles", set()),
        ("1 aubergine", set()),
        ("100 g tofu", {"soya"}),
        ("100 g gluten-free pasta", set()),
        ("100 g vegan cheese", set()),
        ("200 g dairy-free yoghurt", set()),
        ("50 g porridge oats", {"gluten"}),
        ("1 stick celery", {"celery"}),
        ("100 g mussels", {"molluscs"}),
        ("100 g prawns", {"crustaceans"}),
    ],
)
def test_allergens_of_a_food(food: str, allergens: set[str]) -> None:
    found = {one.allergen for one in dish("12-24", [food], STIR).allergens}
    assert allergens <= found
    assert not (found if not allergens else set()), found


def test_a_hidden_allergen_is_called_hidden_and_a_choice_a_choice() -> None:
    made = dish("12-24", ["1 tbsp tahini", "{food: 100 ml oat drink, or: 100 ml whole milk}"], STIR)
    how = {(one.allergen, one.how) for one in made.allergens}
    assert ("sesame", "hidden") in how
    assert ("milk", "choice") in how


def test_label_words_are_may_contain_and_are_not_named_as_present() -> None:
    made = dish("12-24", ["{food: 50 g porridge oats, may_contain: [nuts, milk]}"], STIR)
    assert {(one.allergen, one.how) for one in made.allergens} >= {("nuts", "may-contain"), ("milk", "may-contain")}
    assert "nuts" not in {label.allergen for label in named_in(made.allergens, made.knowledge.feeding, "EU")}


def test_what_only_some_makers_use_is_may_contain() -> None:
    made = dish("12-24", ["2 slices wholemeal bread", "50 g tofu"], STIR)
    how = {(one.food, one.allergen): one.how for one in made.allergens}
    assert how["wholemeal bread", "soya"] == "may-contain"
    assert how["tofu", "soya"] != "may-contain"
    assert how["wholemeal bread", "wheat"] in ("present", "hidden")
    only_bread = dish("12-24", ["2 slices wholemeal bread"], STIR)
    assert "soya" not in {one.allergen for one in only_bread.allergen_labels}
    assert [(one.key, one.maybe) for one in page_allergens(only_bread)][-1] == ("soya", True)


def test_the_page_names_allergens_in_the_order_of_captions_and_cautions() -> None:
    made = dish("12-24", ["1 tbsp tahini", "100 ml whole milk", "1 egg", "50 g couscous"], STIR)
    in_captions = [one.allergen for one in made.allergen_labels]
    assert [one.key for one in page_allergens(made) if one.key in in_captions] == in_captions


def test_each_market_has_its_set() -> None:
    known = kitchen.knowledge().feeding
    assert len(labels(known, "EU")) == 14
    assert len(labels(known, "GB")) == 14
    assert len(labels(known, "US")) == 9
    assert {"celery", "lupin", "molluscs"}.isdisjoint(label.allergen for label in labels(known, "US"))


def test_the_familys_allergen_is_not_the_babys() -> None:
    made = dish(
        "8-24",
        ["300 g potatoes, diced", "30 g butter"],
        [
            "Boil the potatoes for 20 minutes.",
            "Lift out the baby's portion and mash it.",
            "Stir the butter into the rest.",
        ],
    )
    assert [(one.allergen, one.baby) for one in made.allergens] == [("milk", False)]


def test_cautions_are_computed_and_worded_once() -> None:
    made = dish(
        "7-9",
        ["150 g salmon fillet, boneless", "100 g spinach"],
        ["Steam everything for 10 minutes.", "Blend until smooth."],
    )
    ids = [caution.id for caution in made.cautions]
    assert len(ids) == len(set(ids))
    assert {
        "supervise",
        "upright",
        "appetite",
        "professional",
        "special-needs",
        "allergens-present",
        "bones",
        "nitrate-once",
        "keep-nitrate",
    } <= set(ids)
    assert "Contains fish." in next(c.text for c in made.cautions if c.id == "allergens-present")


def test_no_allergen_caution_without_an_allergen() -> None:
    made = dish("7-9", ["200 g parsnips, 1 cm dice"], ["Steam the parsnips for 20 minutes."])
    assert not {"allergens-present", "allergy-first", "nitrate-once"} & {caution.id for caution in made.cautions}


@pytest.mark.parametrize(
    ("food", "fridge", "cool"), [("100 g white rice", 24, 1), ("100 g spinach", 24, 2), ("200 g parsnips", 48, 2)]
)
def test_keeping_by_the_strictest_authority_read(food: str, fridge: float, cool: float) -> None:
    made = dish("7-9", [food, "400 ml water"], ["Simmer everything for 20 minutes."])
    fridge_limit, cool_limit = made.keeping.of("fridge_hours"), made.keeping.of("cool_hours")
    assert fridge_limit is not None and fridge_limit.value == fridge
    assert cool_limit is not None and cool_limit.value == cool


@pytest.mark.parametrize(
    ("hours", "channel", "level"),
    [(24, "", None), (48, "", "warning"), (48, "policies: {nitrate: AESAN}\n", "error"), (72, "", "error")],
)
def test_spinach_by_one_authority_is_an_error_only_where_it_is_chosen(
    hours: int, channel: str, level: str | None
) -> None:
    text = text_of("12-18", ["100 g spinach", "400 ml water"], ["Simmer everything for 10 minutes."])
    faults = kitchen.dish(f"{text}keeps: fridge {hours} h\n", channel).keeping.faults
    assert [fault.level for fault in faults] == ([level] if level else [])
    assert all(("AESAN" in fault.message) == (fault.level == "warning") for fault in faults)


def test_salt_that_a_step_names_is_told_once() -> None:
    foods, steps = ["200 g potatoes, 1 cm dice"], ["Boil the potatoes for 25 minutes and mash."]
    made = dish("8-10", foods, [*steps, "Season with a pinch of celery salt."])
    assert [(hazard.id, hazard.food) for hazard in made.hazards if hazard.id == "added-salt"] == [
        ("added-salt", "celery salt")
    ]
    assert [hazard.food for hazard in dish("8-10", foods, [*steps, "Season to taste."]).hazards] == ["Season"]


@each(
    ("food", "hazards"),
    [
        ("200 g candy-stripe beetroot, peeled, 1 cm dice", set()),
        ("200 g champagne mango, peeled, stoned", set()),
        ("2 doughnut peaches, peeled, stoned", set()),
        ("4 chocolate mint leaves", set()),
        ("100 g cocktail tomatoes, whole", {"round-uncut"}),
        ("2 tbsp candy", {"hard-sweets", "added-sugar"}),
    ],
)
def test_a_kind_that_is_named_after_a_sweet_is_none(food: str, hazards: set[str]) -> None:
    made = dish("9-12", [food, "300 ml water"], ["Simmer everything for 60 minutes."])
    assert hazard_ids(made) == hazards
    assert bool(made.recipe.foods[0].food) == (food != "2 tbsp candy")  # a sweet that the table has no record of


@pytest.mark.parametrize(
    ("words", "found"),
    [("brown as treacle", False), ("as thick as jam", False), ("sweet as honey", False), ("cool; treacle, too", True),
     ("soft as well as honey", True)],
)  # fmt: skip
def test_what_a_food_is_likened_to_is_not_in_it(words: str, found: bool) -> None:
    made = dish("9-12", ["200 g potatoes, 1 cm dice", "300 ml water"], [f"Simmer for 30 minutes, until {words}."])
    assert bool(hazard_ids(made)) == found


def test_pictures_endanger() -> None:
    made = kitchen.dish(
        "ages: 8-10 months\npictures:\n"
        '  - {file: a.jpg, text: "Bowl", shows: [whole nuts, honey jar, baby lying back, nobody by]}\n'
    )
    assert {hazard.id for hazard in picture_hazards(made.recipe, made.knowledge.feeding)} >= {
        "whole-nuts",
        "honey",
        "reclined",
        "alone",
    }


def test_a_recipe_used_as_a_food_brings_what_is_in_it() -> None:
    inner, _ = kitchen.read(
        "title: Honey oats\nages: 12-24 months\nfoods:\n  - 50 g porridge oats\n"
        "  - 1 tbsp honey\nsteps:\n  - Mix everything.\n",
        "recipes/honey-oats.md",
    )
    made = kitchen.dish(
        "ages: 8-10 months\nfoods:\n  - {recipe: honey-oats, amount: 50 g}\n"
        "  - 100 g plain yoghurt\nsteps:\n  - Stir everything together.\n"
    )
    assert inner is not None
    made.others = {"honey-oats": inner}
    assert "honey" in {hazard.id for hazard in made.hazards}
    assert {"gluten", "milk"} <= {one.allergen for one in made.allergens}


def test_recipes_that_use_each_other_end() -> None:
    one, _ = kitchen.read(
        "title: One\nfoods:\n  - {recipe: two, amount: 50 g}\nsteps:\n  - Mix everything.\n", "recipes/one.md"
    )
    two, _ = kitchen.read(
        "title: Two\nfoods:\n  - {recipe: one, amount: 50 g}\n  - 1 tsp honey\nsteps:\n  - Mix everything.\n",
        "recipes/two.md",
    )
    assert one is not None and two is not None
    made = kitchen.dish("ages: 8-10 months\nfoods:\n  - {recipe: one, amount: 50 g}\nsteps:\n  - Mix everything.\n")
    made.others = {"one": one, "two": two}
    assert "honey" in {hazard.id for hazard in made.hazards}


@each(
    ("text", "found"),
    [
        ("honey", 1),
        ("honeydew", 0),
        ("no honey", 0),
        ("honey-free", 0),
        ("without any honey", 0),
        ("Honey, no sugar", 1),
        ("instead of honey", 0),
        ("no lumps; add honey", 1),
    ],
)
def test_whole_words_and_negations(text: str, found: int) -> None:
    assert len(Phrases({"honey": ["honey"]}).find(text)) == found


@each(
    ("plural", "singular"),
    [
        ("tomatoes", "tomato"),
        ("berries", "berry"),
        ("olives", "olive"),
        ("cookies", "cookie"),
        ("purées", "purée"),
        ("goats'", "goat"),
        ("leaves", "leaf"),
    ],
)
def test_plurals_fold_to_the_singular(plural: str, singular: str) -> None:
    assert fold(plural) == fold(singular)


def test_a_salty_food_is_said_as_a_share_of_the_day() -> None:
    from spoonproof.checks.rules.added_salt import check

    made = kitchen.dish(
        "ages: 8-10 months\nmakes: 4 x 80 g\nfoods:\n  - 300 g potatoes, peeled, 1 cm dice\n  - 2 g salt\n"
        "steps:\n  - Boil the potatoes with the salt for 25 minutes.\n  - Mash everything.\n"
    )
    message = next(iter(check(made))).message
    assert "g of salt to a portion: a share of" in message and "of the 1 g that is the most" in message


@pytest.mark.parametrize(
    ("food", "hours", "soon"),
    [
        ("100 g rice", "24 hours", "one hour"),
        ("100 g spinach", "24 hours", "at once"),
        ("100 g oats", "48 hours", "two"),
    ],
)
def test_the_cautions_about_keeping_give_one_clock(food: str, hours: str, soon: str) -> None:
    made = dish("9-12", [food, "300 ml water"], ["Simmer everything for 20 minutes."])
    chill = next(caution for caution in made.cautions if caution.id == "keep-chill")
    assert hours in chill.text and soon in chill.text
    assert hours in chill.screen
    assert "{" not in chill.text + chill.screen


_IN_PIECES = [
    (["100 g strawberries, hulled"], ["Quarter the strawberries lengthways and serve them with a spoon of the oats."]),
    (["90 g grapes"], ["Quarter the grapes lengthways.", "Scatter them over the oats."]),
    (["90 g grapes", "1 banana"], ["Mash the banana with a fork.", "Quarter the grapes lengthways and stir them in."]),
]
_WORKED = [
    (["100 g strawberries, hulled"], ["Mash the strawberries with a fork and stir them into the oats."]),
    (["100 g strawberries, hulled"], ["Blend the strawberries until smooth and stir them into the oats."]),
    (["100 g strawberries, mashed"], ["Swirl the strawberries through the oats."]),
    (["90 g blueberries"], ["Squash each blueberry flat and stir them in."]),
    (
        ["120 g cherry tomatoes"],
        ["Simmer the tomatoes for 12 minutes.", "Mash the tomatoes with a fork and stir them in."],
    ),
    (["80 g raspberries"], ["Crush the raspberries with the back of a fork and fold them in."]),
]


@each(("foods", "steps"), _WORKED)
def test_what_is_mashed_is_not_cut_into_quarters_too(foods: list[str], steps: list[str]) -> None:
    made = dish("9-12", ["40 g porridge oats", *foods], ["Simmer the oats in 200 ml water for 5 minutes.", *steps])
    assert not [one for one in made.cautions if "quarters" in one.text]
    assert not [one for one in made.hazards if "uarter" in str(one.remedy)]


@pytest.mark.parametrize(("foods", "steps"), _IN_PIECES)
def test_what_stays_in_pieces_keeps_its_caution(foods: list[str], steps: list[str]) -> None:
    made = dish("9-12", ["40 g porridge oats", *foods], ["Simmer the oats in 200 ml water for 5 minutes.", *steps])
    assert [one for one in made.cautions if "quarters" in one.text]


def test_raw_grapes_mashed_with_a_fork_may_stay_whole() -> None:
    made = dish("9-12", ["90 g grapes", "1 banana"], ["Mash the banana.", "Mash the grapes with a fork and stir in."])
    assert "round-uncut" in {one.id for one in made.hazards}
