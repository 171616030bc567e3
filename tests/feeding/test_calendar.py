"""The calendar of new foods: rules kept, and no better order where it says so."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.feeding.calendar import Calendar, as_text, calendar, candidate_of, unfit_lines
from spoonproof.feeding.calendar_order import Candidate, Gaps, Had, New, best_order
from spoonproof.feeding.tables import FeedingTables
from spoonproof.site.lean import candidate_of as candidate_again
from spoonproof.site.lean import candidate_text
from tests import kitchen
from tests.each import each
from tests.feeding.dishes import dish

ALLERGENS = {
    "egg": ("egg",),
    "peanut-butter": ("peanut",),
    "whole-milk": ("milk",),
    "cod": ("fish",),
    "cheddar-egg-tart": ("milk", "egg"),
}
GAPS = {"market": Gaps(0, 1), "slow": Gaps(3, 3)}
FOODS = ("parsnip", "pear", "porridge-oats", "beef-mince", "red-lentils", *ALLERGENS)


def candidate(number: int, foods: tuple[str, ...], iron: bool = False) -> Candidate:
    return Candidate(f"r{number}", f"Recipe {number}", foods, {f: ALLERGENS[f] for f in foods if f in ALLERGENS}, iron)


def tables() -> FeedingTables:
    return kitchen.knowledge().feeding


def opening(plan: Calendar) -> dict[str, int]:
    return {event.slug: event.day for event in plan.events if event.kind == "dish"}


def test_market_gives_allergens_singly_and_other_foods_freely() -> None:
    plan = calendar([candidate(1, ("parsnip", "pear", "egg", "whole-milk"))], (), tables())
    days = [event.day for event in plan.events if event.kind == "allergen"]
    assert len(days) == len(set(days)) == 2
    assert opening(plan)["r1"] == 3
    assert not [event for event in plan.events if event.kind == "food"]


def test_slow_waits_three_days_after_each_new_food() -> None:
    plan = calendar([candidate(1, ("parsnip", "pear"))], (), tables(), {"new-foods": "slow"})
    assert [event.day for event in plan.events if event.kind == "food"] == [1, 4]
    assert opening(plan)["r1"] == 7
    assert plan.policy == "slow"
    assert any("three days" in note for note in plan.notes)


def test_what_the_baby_knows_needs_no_waiting() -> None:
    assert opening(calendar([candidate(1, ("egg", "parsnip"))], ("egg", "parsnip"), tables()))["r1"] == 1


def test_advice_comes_first_for_a_baby_at_risk() -> None:
    plan = calendar([candidate(1, ("egg",))], (), tables(), advice="severe eczema")
    assert plan.events[0].kind == "advice"
    assert "health professional" in plan.notes[0]


def test_whoever_reads_a_calendar_with_allergens_is_told_whom_to_ask_first() -> None:
    plan = calendar([candidate(1, ("egg", "peanut-butter"))], (), tables())
    assert "diagnosed allergy" in plan.notes[0] and "soon" in plan.notes[0]
    assert "peanut" in plan.notes[1]
    assert not any("diagnosed" in note for note in calendar([candidate(1, ("parsnip",))], (), tables()).notes)


def test_iron_opens_first_and_allergens_stay_weekly() -> None:
    chosen = [
        candidate(1, ("egg", "pear")),
        candidate(2, ("beef-mince", "parsnip"), True),
        *(candidate(n, ("cod", "whole-milk", "peanut-butter")) for n in (3,)),
    ]
    plan = calendar(chosen, (), tables(), {"new-foods": "slow"})
    assert min(opening(plan), key=lambda slug: opening(plan)[slug]) == "r2"
    first = {e.what: e.day for e in plan.events if e.kind == "allergen"}
    for food, day in first.items():
        assert [(e.day, e.every) for e in plan.events if e.kind == "keep" and e.what == food] == [(day + 7, 7)]


def cost(order: list[Candidate], policy: str, age: int | None) -> tuple[int, int, int]:
    """The measure of an order, straight from its definition."""
    gap_food, gap_allergen = (0, 1) if policy == "market" else (3, 3)
    known: set[str] = set()
    had: set[str] = set()
    day, iron, strong_sum, total = 1, 0, 0, 0
    for one in order:
        strong = 0
        for food in dict.fromkeys(one.foods):
            if food in known:
                continue
            known.add(food)
            new = set(ALLERGENS.get(food, ())) - had
            had |= set(ALLERGENS.get(food, ()))
            strong += bool(new)
            day += gap_allergen if new else gap_food
        wait = round((one.from_months - age) * 365.25 / 12) + 1 if age is not None else 1
        opens = max(day, wait)
        iron = opens if one.iron_rich and not iron else iron
        strong_sum += strong * day
        total += opens
        day += 1
    return iron, strong_sum, total


def some_dishes(least: int, most: int) -> st.SearchStrategy[list[Candidate]]:
    """So many dishes of one to four foods each, rich in iron or not, for several ages."""
    dish = st.tuples(
        st.lists(st.sampled_from(FOODS), min_size=1, max_size=4, unique=True), st.booleans(), st.sampled_from((6, 7, 9))
    )
    return st.lists(dish, min_size=least, max_size=most).map(
        lambda drawn: [
            replace(candidate(n, tuple(foods), iron), from_months=months)
            for n, (foods, iron, months) in enumerate(drawn)
        ]
    )


@settings(max_examples=25, deadline=None)
@given(some_dishes(1, 5), st.sampled_from(["market", "slow"]), st.sampled_from([None, 6]))
def test_no_order_is_better_than_the_proved_one(chosen: list[Candidate], policy: str, age: int | None) -> None:
    plan = calendar(chosen, (), tables(), {"new-foods": policy}, age_months=age)
    assert plan.proved
    by_slug = {one.slug: one for one in chosen}
    mine = best_order(sorted(chosen, key=lambda one: one.title), frozenset(), GAPS[policy], age)[0]
    assert cost(mine, policy, age) == min(cost(list(order), policy, age) for order in permutations(chosen))
    opened = opening(plan)
    assert sum(opened.values()) == cost(mine, policy, age)[2]
    assert all(age is None or opened[one.slug] >= (one.from_months - age) * 30 for one in by_slug.values())


def test_many_recipes_are_said_not_to_be_proved() -> None:
    plan = calendar([candidate(n, (FOODS[n % len(FOODS)],)) for n in range(20)], (), tables())
    assert not plan.proved
    assert "so many recipes" in as_text(plan)


def test_a_dish_as_a_candidate_leaves_out_water_and_the_familys_bowl() -> None:
    made = dish(
        "8-24",
        ["300 g parsnips, diced", "400 ml water", "50 g couscous", "1 egg"],
        [
            "Simmer the parsnips and couscous in the water for 20 minutes.",
            "Lift out the baby's portion and mash it.",
            "Stir the egg into the rest and simmer for 5 minutes.",
        ],
    )
    found = candidate_of(made.recipe, made.treatments, made.knowledge.foods, made.allergens)
    assert found.foods == ("parsnip", "couscous")
    assert found.allergens == {"couscous": ("gluten", "wheat")}


def test_what_is_no_food_for_a_baby_is_not_introduced_and_an_unknown_food_is_named_so() -> None:
    made = dish(
        "8-24",
        ["300 g parsnepp, diced", "1 pinch salt", "1 stock cube", "1 tsp honey", "1 egg", "100 g pears, diced"],
        ["Simmer everything for 20 minutes.", "Mash everything."],
    )
    unfit = unfit_lines(made.recipe, made.hazards, made.knowledge.feeding)
    found = candidate_of(made.recipe, made.treatments, made.knowledge.foods, made.allergens, unfit=unfit)
    assert found.foods == ("parsnepp", "egg", "pear")
    assert found.unfit[0] == "salt" and found.unfit[1].startswith("stock cube (") and found.unfit[2] == "honey"
    plan = calendar([found], (), tables(), age_months=8)
    assert not any(word in event.what + event.why for event in plan.events for word in ("salt", "honey", "stock"))
    assert any("parsnepp (unknown)" in event.with_it for event in plan.events)
    assert any(note.startswith("Unknown") and "parsnepp" in note for note in plan.notes)
    assert any("leave it out of the bowl" in note and "honey" in note for note in plan.notes)
    assert candidate_text(candidate_again(candidate_text(found))) == candidate_text(found)


def test_what_only_needs_another_form_or_a_later_age_stays_a_food() -> None:
    made = dish("12-24", ["1 tsp honey", "1 egg"], ["Beat the egg with the honey.", "Serve it raw."])
    assert unfit_lines(made.recipe, made.hazards, made.knowledge.feeding) == frozenset()


def test_a_recipe_used_as_a_food_gives_its_own_foods() -> None:
    made = dish(
        "8-24",
        ["300 g parsnips, diced", "{recipe: celery-base, amount: 200 g}"],
        ["Simmer the parsnips in the celery base for 20 minutes.", "Mash everything."],
    )
    inner = Candidate("celery-base", "Celery base", ("celery", "onion"), {"celery": ("celery",)})
    foods, rooms = made.knowledge.foods, made.allergens
    found = candidate_of(made.recipe, made.treatments, foods, rooms, inner={"celery-base": inner})
    assert found.foods == ("parsnip", "celery", "onion")
    assert found.allergens == {"celery": ("celery",)}


def test_a_dish_for_a_later_age_waits_while_the_next_foods_go_on() -> None:
    late = replace(candidate(1, ("egg",)), from_months=8)
    plan = calendar([late, candidate(2, ("cod", "pear"))], (), tables(), age_months=6)
    assert opening(plan)["r1"] == 62
    assert max(event.day for event in plan.events if event.kind == "allergen") < 6
    assert "about 6 months" in plan.notes[0]


def test_iron_that_comes_late_is_said() -> None:
    late = replace(candidate(1, ("beef-mince",), True), from_months=9)
    plan = calendar([late, candidate(2, ("pear",))], (), tables(), age_months=6)
    assert any("9 months" in note and "iron" in note for note in plan.notes)
    early = calendar([candidate(1, ("beef-mince",), True)], (), tables(), age_months=6)
    assert not any("rich in iron here" in note for note in early.notes)


def soonest_first(dishes: list[Candidate], policy: str, age: int | None) -> list[Candidate]:
    """The order of many dishes, straight from its definition: always the one that opens soonest, iron first."""
    order: list[Candidate] = []
    while left := [one for one in dishes if one not in order]:
        iron = [one for one in left if one.iron_rich] if not order else []
        order.append(min(iron or left, key=lambda one: opens_last([*order, one], policy, age)))
    return order


def opens_last(order: list[Candidate], policy: str, age: int | None) -> int:
    """The day on which the last of these opens."""
    return cost(order, policy, age)[2] - cost(order[:-1], policy, age)[2]


@settings(max_examples=30, deadline=None)
@given(some_dishes(13, 20), st.sampled_from(["market", "slow"]), st.sampled_from([None, 6]))
def test_of_many_dishes_always_the_one_that_opens_soonest_comes_next(
    chosen: list[Candidate], policy: str, age: int | None
) -> None:
    assert best_order(chosen, frozenset(), GAPS[policy], age) == (soonest_first(chosen, policy, age), False)


def test_the_work_of_ordering_grows_with_the_dishes_and_not_with_their_square(monkeypatch: pytest.MonkeyPatch) -> None:
    counted = 0
    before = Had.new_in

    def counting(had: Had, one: Candidate) -> New:
        nonlocal counted
        counted += 1
        return before(had, one)

    monkeypatch.setattr(Had, "new_in", counting)
    best_order([candidate(n, (FOODS[n % 10], FOODS[n % 7])) for n in range(500)], frozenset(), GAPS["slow"], 6)
    assert counted <= 500 * 6  # once at first, then when a food or an allergen of its own comes to be known


@each(
    ("food", "allergen"),
    [
        ("1 tsp ghee", "milk"),
        ("10 g butter", "milk"),
        ("1 tsp sesame oil", "sesame"),
        ("1 low-salt stock cube", "celery"),
        ("200 ml unsalted vegetable stock", "celery"),
        ("1 pinch curry powder", "mustard"),
    ],
)
def test_a_trace_introduces_no_allergen(food: str, allergen: str) -> None:
    one = dish("7-9", ["200 g parsnips, peeled, diced", food], ["Simmer everything for 20 minutes.", "Blend it."])
    assert allergen in {found.allergen for found in one.allergens}
    plan = calendar([one.candidate], (), tables())
    assert not [event for event in plan.events if event.kind in ("allergen", "keep")]
    assert any("trace of" in note and allergen in note and "still to be introduced" in note for note in plan.notes)
    assert any("trace" in note and "may react" in note for note in plan.notes)
    assert f"a trace of {allergen}" in plan.events[-1].why or "celery and mustard" in plan.events[-1].why
    assert any("Ask" in note or "doctor" in note for note in plan.notes)


@each(
    ("food", "allergen"),
    [
        ("40 g yoghurt", "milk"),
        ("1 celery stick, diced", "celery"),
        ("1 tsp tahini", "sesame"),
        ("1 tsp pesto", "nuts"),
        ("1 tsp smooth peanut butter", "peanut"),
        ("50 g mayonnaise", "egg"),
    ],
)
def test_a_real_amount_introduces_it(food: str, allergen: str) -> None:
    one = dish("7-9", ["200 g parsnips, peeled, diced", food], ["Simmer everything for 20 minutes.", "Blend it."])
    plan = calendar([one.candidate], (), tables())
    assert allergen in " ".join(event.why for event in plan.events if event.kind == "allergen")
    assert not [note for note in plan.notes if "trace" in note]


def test_what_brings_a_trace_is_not_what_brings_it_in_earnest() -> None:
    dal = dish("7-9", ["100 g red lentils", "1 tsp ghee"], ["Simmer for 25 minutes.", "Blend it."]).candidate
    oats = dish("7-9", ["40 g yoghurt", "1 pear, peeled"], ["Blend it."]).candidate
    plan = calendar([replace(dal, slug="dal"), replace(oats, slug="cream")], (), tables())
    assert [event.what for event in plan.events if event.kind == "allergen"] == ["yoghurt"]
    assert any("trace of milk" in note and "which yoghurt introduces" in note for note in plan.notes)
    assert candidate_again(candidate_text(dal)) == dal


def test_oats_do_not_introduce_wheat() -> None:
    oats = dish("6-9", ["40 g porridge oats", "1 pear, peeled"], ["Simmer for 10 minutes.", "Blend it."]).candidate
    bread = dish("6-9", ["50 g bread", "1 pear, peeled"], ["Simmer for 10 minutes.", "Blend it."]).candidate
    plan = calendar([replace(oats, slug="oats"), replace(bread, slug="bread")], (), tables(), by_hand=True)
    said = [event.why.split(" on its own")[0] for event in plan.events if event.kind == "allergen"]
    assert said == ["a new allergen (gluten)", "a new allergen (wheat)"]


def test_a_food_stands_in_the_calendar_as_it_was_written() -> None:
    pot = dish(
        "6-9", ["200 ml no-salt vegetable stock", "100 g floury potatoes"], ["Simmer for 20 minutes.", "Mash it."]
    )
    assert set((pot.candidate.names or {}).values()) >= {"no-salt vegetable stock"}


@pytest.mark.parametrize(("milk", "new"), [("baby's usual milk", False), ("whole milk", True)])
def test_what_the_baby_drinks_already_is_nothing_to_introduce(milk: str, new: bool) -> None:
    bowl = kitchen.dish(
        f"foods:\n  - 300 g parsnips, peeled, 1 cm dice\n  - 30 ml {milk}\n"
        "steps:\n  - Boil the parsnips for 15 minutes, until a cube squashes.\n  - Blend with the milk."
    )
    assert bool(bowl.candidate.allergens) is new
