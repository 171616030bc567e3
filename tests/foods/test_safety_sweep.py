"""The whole food table gone through for what a baby's safety hangs on: allergens, mercury, stones, salt."""

from __future__ import annotations

import re

from spoonproof.feeding.kinds import kinds_of_record
from tests.each import each
from tests.kitchen import knowledge

BY_GROUP = {
    "fish": {"fish"},
    "shellfish": {"crustaceans", "molluscs"},
    "egg": {"egg"},
    "dairy": {"milk"},
    "cheese": {"milk"},
    "nut": {"nuts", "peanut"},
}
OF_PLANTS = {"coconut-yoghurt", "soya-yoghurt", "nut-yoghurt"}
NO_LISTED_NUT = re.compile(r"pine-nut|chestnut|coconut|creamed-coconut|desiccated-coconut")
"""Annex II of the EU's list names eight tree nuts; these are not among them."""

BY_WORD = {
    "wheat": "wheat",
    "semolina": "wheat",
    "couscous": "wheat",
    "bulgur": "wheat",
    "freekeh": "wheat",
    "spelt": "wheat",
    "barley": "gluten",
    "rye": "gluten",
    "oats": "gluten",
    "tahini": "sesame",
    "sesame": "sesame",
    "tofu": "soya",
    "tempeh": "soya",
    "miso": "soya",
    "edamame": "soya",
    "soy": "soya",
    "mustard": "mustard",
    "celery": "celery",
    "celeriac": "celery",
    "lupin": "lupin",
    "peanut": "peanut",
    "ghee": "milk",
    "paneer": "milk",
    "almond": "nuts",
    "cashew": "nuts",
    "hazelnut": "nuts",
    "pistachio": "nuts",
    "pecan": "nuts",
    "anchovy": "fish",
    "prawn": "crustaceans",
    "crab": "crustaceans",
}
ANOTHER_PLANT = re.compile(r"mustard-greens|mustard-oil|crab-apple")

AVOIDED_FOR_MERCURY = [
    "king mackerel",
    "marlin",
    "orange roughy",
    "shark",
    "swordfish",
    "tilefish",
    "bigeye tuna",
    "kingfish",
]
"""The choices to avoid of fda-fish; kingfish is a name of the king mackerel."""

SALTED_BUT_NEVER_EATEN_ALONE = {
    "baking-powder",
    "bicarbonate-of-soda",
    "chilli-powder",
    "wasabi",
    "udon",
    "ramen-noodles",
}


@each("group", sorted(BY_GROUP))
def test_every_food_of_a_group_carries_its_allergen(group: str) -> None:
    foods = [food for food in knowledge().foods if food.group == group]
    bare = [food.id for food in foods if not food.allergens & BY_GROUP[group]]
    assert len(foods) > 5
    assert [one for one in bare if one not in OF_PLANTS and not NO_LISTED_NUT.match(one)] == []


def test_every_food_named_after_an_allergen_carries_it() -> None:
    missing = []
    for food in knowledge().foods:
        words = set(re.findall(r"[a-z]+", food.name.lower()))
        said = {BY_WORD[word] for word in words & BY_WORD.keys()}
        if not ANOTHER_PLANT.match(food.id):
            missing += [(food.id, allergen) for allergen in sorted(said - food.allergens)]
    assert missing == []


@each("name", AVOIDED_FOR_MERCURY)
def test_every_fish_on_the_list_to_avoid_is_seen(name: str) -> None:
    known = knowledge()
    match = known.foods.match(name)
    food = known.foods.get(match.food) if match else None
    assert food is not None
    assert kinds_of_record(food, known.foods, known.feeding) & {"mercury-fish", "mercury-us"}


def test_what_is_bought_with_a_stone_says_so() -> None:
    assert [food.id for food in knowledge().foods if "stone" in food.refuse and "has-stone" not in food.traits] == []


def test_what_is_measured_salty_is_known_as_salty() -> None:
    known = knowledge()
    salty_kinds = {"salty-food", "salty", "salt", "salty-sauce", "stock-cube"}
    unseen = set()
    for food in known.foods:
        sodium = food.per_100g.get("sodium_mg")
        seen = food.traits & {"salty", "salt"} or kinds_of_record(food, known.foods, known.feeding) & salty_kinds
        if sodium is not None and sodium.amount >= 1500 and not seen:
            unseen.add(food.id)
    assert unseen <= SALTED_BUT_NEVER_EATEN_ALONE
