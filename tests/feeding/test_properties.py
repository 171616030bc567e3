"""What must hold for any dish: safer handling adds no hazard, honey always fails, order and names change nothing."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.feeding.kinds import kinds_of
from spoonproof.feeding.tables import HEAD
from spoonproof.model.recipe import FoodLine
from spoonproof.model.text import Span
from tests import kitchen
from tests.each import each
from tests.feeding.dishes import dish, hazard_ids

BASES = (
    "100 g plain yoghurt",
    "50 g porridge oats",
    "200 g potatoes, peeled, 1 cm dice",
    "150 g courgette, sliced",
    "100 g red lentils",
    "2 tbsp cream cheese",
    "1 ripe banana",
    "30 g cheddar, grated",
)
ROUND = ("grapes", "cherry tomatoes", "blueberries", "strawberries", "cherries, stoned", "blackberries")
STONES = ("plums", "cherries", "apricots", "olives", "peaches", "prunes")
AGES = ("6-8", "7-9", "8-12", "9-12", "10-24")

bases = st.lists(st.sampled_from(BASES), min_size=1, max_size=4, unique=True)
ages = st.sampled_from(AGES)


def choking(age: str, foods: Sequence[str], steps: Sequence[str]) -> set[str]:
    return {hazard.id for hazard in dish(age, foods, steps).hazards if hazard.kind == "choking"}


@settings(max_examples=40, deadline=None)
@given(ages, bases, st.sampled_from(ROUND))
def test_quartering_lengthways_never_adds_a_hazard(age: str, base: list[str], fruit: str) -> None:
    whole = choking(age, [*base, f"80 g {fruit}"], ["Mix everything."])
    cut = choking(age, [*base, f"80 g {fruit}, quartered lengthways"], ["Mix everything."])
    assert cut <= whole
    assert len(cut) < len(whole)


@settings(max_examples=40, deadline=None)
@given(ages, bases, st.sampled_from(STONES))
def test_taking_out_the_stone_never_adds_a_hazard(age: str, base: list[str], fruit: str) -> None:
    with_stone = choking(age, [*base, f"80 g {fruit}"], ["Mix everything."])
    without = choking(age, [*base, f"80 g {fruit}, stoned"], ["Mix everything."])
    assert without < with_stone


@settings(max_examples=12, deadline=None)
@given(ages, bases, st.sampled_from(ROUND))
def test_quartering_in_a_step_is_as_good_as_on_the_line(age: str, base: list[str], fruit: str) -> None:
    foods = [*base, f"80 g {fruit}"]
    whole = choking(age, foods, ["Mix everything."])
    name = fruit.partition(",")[0]
    cut = choking(age, foods, [f"Cut the {name} lengthways into quarters.", "Mix everything."])
    assert cut < whole


@settings(max_examples=12, deadline=None)
@given(ages, bases, st.sampled_from(STONES))
def test_taking_out_the_stone_in_a_step_is_as_good_as_on_the_line(age: str, base: list[str], fruit: str) -> None:
    foods = [*base, f"80 g {fruit}"]
    with_stone = choking(age, foods, ["Mix everything."])
    without = choking(age, foods, [f"Take the stones out of the {fruit}.", "Mix everything."])
    assert without < with_stone


@settings(max_examples=12, deadline=None)
@given(
    st.integers(6, 11),
    bases,
    st.sampled_from(["honey", "honeycomb", "creamed honey", "honey mustard", "honeyed yoghurt"]),
    st.sampled_from(["Stir the {} in at the end.", "Glaze everything with the {}.", "Serve with the {} over the top."]),
)
def test_honey_that_the_family_gets_is_no_fault_and_the_babys_is(
    youngest: int, base: list[str], honey: str, step: str
) -> None:
    foods, last = [*base, f"20 g {honey}"], step.format(honey)
    split = "Lift out the baby's portion."
    assert "honey" in {hazard.id for hazard in dish(f"{youngest}-24", foods, ["Mix.", last, split]).hazards}
    assert "honey" not in {hazard.id for hazard in dish(f"{youngest}-24", foods, ["Mix.", split, last]).hazards}


@settings(max_examples=60, deadline=None)
@given(
    st.integers(4, 11),
    bases,
    st.sampled_from(["honey", "runny honey", "clear honey", "manuka honey"]),
    st.sampled_from(
        ["Stir everything together.", "Bake everything for 30 minutes.", "Simmer everything for 20 minutes."]
    ),
)
def test_honey_in_the_babys_bowl_always_fails_before_twelve_months(
    youngest: int, base: list[str], honey: str, step: str
) -> None:
    made = dish(f"{youngest}-24", [*base, f"1 tsp {honey}"], [step])
    assert any(hazard.id == "honey" and hazard.level == "error" for hazard in made.hazards)


def test_honey_is_no_botulism_fault_from_twelve_months() -> None:
    assert "honey" not in hazard_ids(dish("12-24", ["100 g plain yoghurt", "1 tsp honey"], ["Mix."]), notes=True)


@settings(max_examples=40, deadline=None)
@given(
    st.sampled_from(["carrots", "parsnips", "broccoli", "green beans", "apples, peeled, cored", "swede, peeled"]),
    st.sampled_from(["cut into batons", "1 cm dice", "2 cm chunks"]),
    st.integers(1, 40),
    st.integers(1, 40),
)
def test_a_longer_steam_never_makes_it_harder(food: str, cut: str, minutes: int, more: int) -> None:
    short = choking("7-9", [f"300 g {food}, {cut}"], [f"Steam everything for {minutes} minutes."])
    long = choking("7-9", [f"300 g {food}, {cut}"], [f"Steam everything for {minutes + more} minutes."])
    assert len(long) <= len(short)
    assert not ("underdone" in long and "underdone" not in short)


@settings(max_examples=40, deadline=None)
@given(
    ages,
    st.lists(
        st.sampled_from([*BASES, "80 g grapes", "1 tsp honey", "30 g almonds", "1 egg"]),
        min_size=2,
        max_size=6,
        unique=True,
    ),
    st.randoms(),
)
def test_shuffling_foods_changes_nothing(age: str, foods: list[str], random: Random) -> None:
    shuffled = foods[:]
    random.shuffle(shuffled)
    before, after = dish(age, foods, ["Mix everything."]), dish(age, shuffled, ["Mix everything."])
    assert sorted((h.id, h.level, h.food) for h in before.hazards) == sorted(
        (h.id, h.level, h.food) for h in after.hazards
    )
    assert {(a.allergen, a.food, a.how) for a in before.allergens} == {
        (a.allergen, a.food, a.how) for a in after.allergens
    }


# Names that ask for another form of the food than its record has: more dangerous, and rightly so.
OTHER_FORMS = {
    "osso buco",
    "fish balls",
    "allspice berry",
    "allspice berries",
    "peppercorn",
    "black peppercorns",
    "whole black peppercorns",
    "chevre",
    "baby rice",
    "mozzarella ball",
    "bocconcini",
    "pork chop",
    "baked pork chop",
    "roast pork chop",
    "cinnamon stick",
    "cinnamon quill",
    "cinnamon quills",
    "cardamom pods",
    "green cardamom pods",
    "cardamon pods",
    "jelly cubes",
    "fennel tea",
    "sugar apple",
    "pumpernickel",
    "gravlax",
    "gravadlax",
    "cured salmon",
    "peppercorns",
    "pimento berries",
    "sichuan peppercorns",
    "szechuan peppercorns",
    "glutinous rice flour",
    "sweet rice flour",
    "mochiko",
    "plantain fufu flour",
    "coconut flakes",
    "coconut chips",
    "water biscuits",
    "veal shank",
    "ham hock",
    "smoked ham hock",
    "gammon hock",
    "lamb neck fillet",  # and less dangerous, as it is off the bone
    "boiled lamb neck fillet",
    "cooked lamb neck fillet",
    "aioli",  # made with raw egg more often than mayonnaise is
    "cookie dough",  # eaten raw
    "chicken",  # one is the whole bird
    "roasting chicken",
    "chicken with skin",
    "turkey",
    "duck meat",
    "duck breast",
}


def test_renaming_a_food_by_its_synonym_changes_nothing() -> None:
    known = kitchen.knowledge()
    different = []
    for row in known.rows("foods"):
        food = known.foods.get(row.text("id"))
        assert food is not None
        kinds = {
            name: kinds_of(
                FoodLine(name, Span(0, len(name)), name, Span(0, len(name)), food=food.id), known.foods, known.feeding
            )
            for name in (food.name, *food.names)
        }
        different += [name for name, found in kinds.items() if found != kinds[food.name] and name not in OTHER_FORMS]
    assert different == []


@each(
    ("one", "other"),
    [
        ("courgette", "zucchini"),
        ("aubergine", "eggplant"),
        ("chickpeas", "garbanzo beans"),
        ("swede", "rutabaga"),
        ("beetroot", "beet"),
        ("prawns", "shrimp"),
        ("sultanas", "golden raisins"),
        ("peanut butter", "groundnut butter"),
    ],
)
def test_synonyms_give_the_same_hazards(one: str, other: str) -> None:
    steps = ["Mix everything."]
    assert hazard_ids(dish("8-10", [f"100 g {one}"], steps), notes=True) == hazard_ids(
        dish("8-10", [f"100 g {other}"], steps), notes=True
    )


def _unconditional() -> list[tuple[str, str, float]]:
    """(name of a food, row it must meet, months before which) of every row that no cut and no heat clears."""
    known = kitchen.knowledge()
    rows = [
        row
        for row in known.feeding.hazards
        if row.level == "error" and not row.when and not row.unless and not row.policy and "*" not in row.classes
    ]
    return [
        (name.removeprefix("=") if HEAD not in entry.items("classes") else f"barberry {name[1:]}", row.id, row.until)
        for entry in known.rows("feeding_foods")
        for row in rows
        if row.classes & set(entry.items("classes"))
        for name in entry.items("names")
        if name != "sprinkle"  # of which 30 g are an amount
    ]


_AT_ONCE = 80  # foods in a dish: the law is asked of many, and only the first unknown ones get hints, which are dear


def _unseen(line: str, steps: list[str]) -> list[tuple[str, str]]:
    """The names that, written as ``line`` has them, draw no error."""
    unseen = []
    named = sorted(_unconditional(), key=lambda one: one[2])
    for until in sorted({until for *_, until in named}):
        mine = [one for one in named if one[2] == until]
        for start in range(0, len(mine), _AT_ONCE):
            some = mine[start : start + _AT_ONCE]
            made = dish(f"{int(min(until, 24)) - 1}-24", [line.format(name) for name, *_ in some], steps)
            wrong = {hazard.line for hazard in made.hazards if hazard.level == "error"}
            unseen += [(name, row) for at, (name, row, _) in enumerate(some) if at not in wrong]
    return unseen


def test_what_no_handling_clears_is_found_under_every_name_and_in_a_swap() -> None:
    assert len({row for _, row, _ in _unconditional()}) >= 5
    steps = ["Simmer everything for 20 minutes.", "Blend until smooth."]
    assert _unseen("{{food: 1 ripe banana, or: '30 g {}, finely chopped'}}", steps) == []
