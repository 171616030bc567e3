"""Every demo dish against lists of what is said to be left out: one allergen that goes in spoils the list."""

from __future__ import annotations

import itertools

from test_judge_labelled import SLUGS, STANDS, Labelled, dish, heard

from tests.each import each

SAID = {
    "milk": "milk",
    "egg": "egg",
    "peanut": "peanuts",
    "fish": "fish",
    "sesame": "sesame",
    "celery": "celery",
    "soya": "soya",
    "wheat": "wheat",
    "nuts": "nuts",
}
LISTS = (
    "Made without {} or {}.",
    "Free from {} and {}.",
    "It contains no {} and no {}.",
    "{} and {} free.",
    "It is {}-free and {}-free.",
    "Made without salt, {} or {}.",
)


def advices(slug: str, said: str) -> list[str]:
    row = Labelled(slug, "EU GB US", "editorial", said[:1].upper() + said[1:], "", "", "")
    return [judged.advice for judged in heard(row)]


@each("slug", SLUGS)
def test_a_list_is_kept_only_where_all_of_it_is_left_out(slug: str) -> None:
    brought = set(dish(slug).numbers.dish_allergens())
    # "Nuts" are peanuts too for who reads "no nuts".
    there = [name for name in SAID if name in brought or (name == "nuts" and "peanut" in brought)]
    absent = [name for name in SAID if name not in there]
    told = 0
    for number, (one, other) in enumerate((a, b) for b in there for a in absent[:3]):
        for pair in ((one, other), (other, one)):
            found = advices(slug, LISTS[number % len(LISTS)].format(*(SAID[name] for name in pair)))
            assert not found or not all(advice in STANDS for advice in found), pair
            told += bool(found)
    for number, (one, other) in enumerate(itertools.pairwise(absent)):
        said = LISTS[number % len(LISTS)].format(SAID[one], SAID[other])
        assert not any(advice.startswith("cut-") for advice in advices(slug, said)), said
    assert told or not there


def test_what_goes_into_the_family_bowl_alone_is_told() -> None:
    for said in ("fish-free.", "made without fish or egg.", "it contains no egg and no fish."):
        assert advices("slow-beef-and-barley-pot", said) == ["add"], said
    assert advices("slow-beef-and-barley-pot", "For the baby it is fish-free.") == ["keep"]


def test_what_is_made_of_a_food_is_the_dish() -> None:
    for said in (
        "Spinach ribbons, egg-free.",
        "Spinach ribbons, nut and egg-free.",
        "Egg-free spinach ribbons for Tuesday.",
    ):
        assert advices("egg-and-spinach-ribbons", said) == ["cut-untrue"], said
    assert advices("egg-and-spinach-ribbons", "The spinach is egg-free.") == ["keep"]


@each(
    ("slug", "said", "advice"),
    [
        ("turkey-and-courgette-patties", "These patties are meat-free.", "cut-untrue"),
        ("salmon-potato-and-pea-fork-mash", "It is meat-free.", "keep"),
        ("salmon-potato-and-pea-fork-mash", "This mash is vegetarian.", "cut-untrue"),
        ("egg-and-spinach-ribbons", "It's vegetarian.", "keep"),
        ("aubergine-and-tomato-orzo", "It's vegetarian.", "add"),
        ("aubergine-and-tomato-orzo", "This is meat-free.", "keep"),
        ("egg-and-spinach-ribbons", "Parmesan is vegetarian.", "soften"),
        ("egg-and-spinach-ribbons", "A stock cube is meat-free.", "soften"),
        ("egg-and-spinach-ribbons", "Cheddar is vegetarian.", "keep"),
        ("aubergine-and-tomato-orzo", "This bake is vegan.", "cut-untrue"),
        ("egg-and-spinach-ribbons", "It's vegan.", "cut-untrue"),
        ("egg-and-spinach-ribbons", "It's not vegan.", "keep"),
        ("slow-beef-and-barley-pot", "Coeliacs can tuck into this.", "cut-untrue"),
        ("slow-beef-and-barley-pot", "Not suitable for coeliacs.", "keep"),
        ("peanut-and-raspberry-yoghurt", "Fine for anyone avoiding dairy.", "cut-untrue"),
        ("red-lentil-and-fennel-cream", "People who can't have dairy can eat this one.", "soften"),
    ],
)
def test_who_may_eat_it_is_answered_by_what_goes_in(slug: str, said: str, advice: str) -> None:
    assert advices(slug, said) == [advice]
