import itertools
import re
import time
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.cooking.drawing import plan_svg, plan_text
from spoonproof.cooking.methods import METHODS, NUTRIENTS, VitaminsKept, side_by_side
from spoonproof.cooking.order import pot_orders, tender_together
from spoonproof.cooking.timeline import Plan, iso, plan
from spoonproof.model.channel import Kitchen
from spoonproof.model.recipe import Minutes
from tests.cooking.bench import Larder, food_line, recipe, rows, times, verbs
from tests.kitchen import dish

FOODS = ["parsnip, 10 mm dice", "pear, 10 mm dice", "oil"]
STEPS = [
    "Steam the parsnip for 14-16 minutes.",
    "Add the pear and steam 4 minutes more.",
    "Let the steam off for 5 minutes.",
    "Mash with the oil.",
]


def planned(foods: list[str] = FOODS, steps: list[str] = STEPS, kitchen: Kitchen | None = None) -> Plan:
    return plan(recipe(foods, steps), Larder(), verbs(), kitchen)


def test_harder_goes_in_first_and_all_ends_together() -> None:
    (order,) = pot_orders(recipe(FOODS, STEPS), Larder(), verbs(), times())
    assert [entry.name for entry in order.entries] == ["parsnip", "pear"]
    assert {entry.at + entry.minutes for entry in order.entries} == {order.minutes}
    assert all(entry.minutes >= entry.need.soft.low for entry in order.entries)
    assert order.entries[0].written == (18, 20)


def test_leaves_join_last() -> None:
    (order,) = pot_orders(
        recipe(
            ["spinach", "carrot, 10 mm dice", "pear, 10 mm dice"],
            ["Steam the spinach, carrot and pear for 20 minutes."],
        ),
        Larder(),
        verbs(),
        times(),
    )
    assert [entry.name for entry in order.entries] == ["carrot", "pear", "spinach"]


@settings(max_examples=200, deadline=None)
@given(st.dictionaries(st.integers(0, 9), st.tuples(st.floats(0.5, 60), st.floats(0, 60)), min_size=1))
def test_everything_ends_together_and_nothing_below_soft(ranges: dict[int, tuple[float, float]]) -> None:
    needs = {key: Minutes(low, low + more) for key, (low, more) in ranges.items()}
    placed = tender_together(needs)
    longest = max(minutes for _, minutes in placed.values())
    for key, (start, minutes) in placed.items():
        assert start + minutes == pytest.approx(longest)
        assert minutes >= needs[key].low
        assert start >= 0


def test_tasks_wait_for_food_hands_and_ring() -> None:
    found = planned()
    by_label = {task.label: task for task in found.tasks}
    steam, add = by_label["Steam: parsnip"], by_label["Add: pear"]
    assert steam.minutes == 16 and steam.lane == "steamer" and steam.unattended
    assert add.start >= steam.end
    for task in found.tasks:
        for before in task.after:
            earlier = next(t for t in found.tasks if t.index == before)
            assert task.start >= earlier.end
    hands = sorted((t.start, t.end) for t in found.tasks if not t.unattended)
    assert all(end <= start for (_, end), (start, _) in itertools.pairwise(hands))


def test_two_rings_let_two_pans_cook_at_once_and_one_does_not() -> None:
    foods = ["potato, 10 mm dice", "red lentils", "water"]
    steps = [
        "Boil the potato for 25 minutes.",
        "Meanwhile simmer the red lentils in the water in another pan for 20 minutes.",
    ]
    two, one = planned(foods, steps, Kitchen(rings=2)), planned(foods, steps, Kitchen(rings=1))
    assert two.total < one.total
    assert one.total >= 45
    assert two.cook < 30


@pytest.mark.parametrize(
    "joined", ["Mash the pear and stir in.", "Mash the pear and fold it in, then serve.", "Mash the pear. Add it."]
)
def test_what_is_stirred_in_waits_for_the_pot_it_goes_into(joined: str) -> None:
    made = planned(["carrot, 10 mm dice", "pear"], ["Simmer the carrot for 20 minutes.", joined, "Let it cool."])
    simmered = next(task for task in made.tasks if "Simmer" in task.label)
    cooled = next(task for task in made.tasks if "ool" in task.label)
    assert cooled.start >= simmered.end


def test_prep_and_cook_add_up_to_the_total() -> None:
    found = planned()
    assert found.prep + found.cook == pytest.approx(found.total)
    values = {key: int(value[2:-1]) for key, value in found.iso.items()}
    assert values["prepTime"] + values["cookTime"] == values["totalTime"]


@pytest.mark.parametrize(
    ("minutes", "text"), [(0, "PT0M"), (1, "PT1M"), (59.6, "PT1H"), (65, "PT1H5M"), (1440, "PT24H")]
)
def test_iso_durations(minutes: float, text: str) -> None:
    assert iso(minutes) == text
    assert re.fullmatch(r"P(?=.)(\d+D)?(T(?=\d)(\d+H)?(\d+M)?)?", text)


def test_the_critical_path_reaches_from_start_to_end_without_a_gap() -> None:
    found = planned()
    path = [next(t for t in found.tasks if t.index == i) for i in found.critical]
    assert path[0].start == 0
    assert path[-1].end == found.total
    assert all(later.start <= earlier.end for earlier, later in itertools.pairwise(path))


def test_what_is_assumed_is_said() -> None:
    assert "Steam: parsnip" not in planned().assumed
    assert any(label.startswith("Mash") for label in planned().assumed)


def test_the_text_fits_its_width_and_names_every_task() -> None:
    text = plan_text(planned())
    assert all(len(line) <= 90 for line in text.split("\n"))
    assert "Steam: parsnip (steamer)" in text
    assert text.endswith("\n")
    assert text.count("|") == 2 * len(planned().tasks)


def test_the_picture_is_whole_named_and_safe() -> None:
    foods = ["parsnip, 10 mm dice"]
    base = recipe(foods, ["Steam the parsnip for 20 minutes."])
    from dataclasses import replace

    from spoonproof.model.text import NOWHERE, Spanned

    nasty = replace(base, title=Spanned('</svg><script>alert(1)</script>"&', NOWHERE))
    svg = plan_svg(plan(nasty, Larder(), verbs()))
    root = ET.fromstring(svg)
    space = "{http://www.w3.org/2000/svg}"
    assert root.tag == f"{space}svg" and root.get("role") == "img"
    title, desc = root.find(f"{space}title"), root.find(f"{space}desc")
    assert title is not None and "<script>" in (title.text or "")
    assert desc is not None and "20 min" in (desc.text or "")
    assert root.get("aria-labelledby") == f"{title.get('id')} {desc.get('id')}"
    assert not list(root.iter(f"{space}script"))
    bars = list(root.iter(f"{space}rect"))
    assert all(float(bar.get("x", 0)) + float(bar.get("width", 0)) <= 640 for bar in bars)
    assert svg == plan_svg(plan(nasty, Larder(), verbs()))


def test_an_empty_recipe_has_an_empty_plan() -> None:
    found = planned([], [])
    assert (found.total, found.critical, found.iso["totalTime"]) == (0, (), "PT0M")
    ET.fromstring(plan_svg(found))
    assert plan_text(found)


def test_a_plan_takes_a_few_milliseconds() -> None:
    planned()
    best = 9.0
    for _ in range(5):
        start = time.process_time()
        planned()
        best = min(best, time.process_time() - start)
    assert best < 0.05


def vitamins() -> VitaminsKept:
    return VitaminsKept.from_rows(rows("vitamins_kept"))


def test_methods_stand_side_by_side_with_their_own_times() -> None:
    found = side_by_side("broccoli", food_line("broccoli, floret").cuts[0], times(), vitamins())
    assert [row.method for row in found] == list(METHODS)
    boil = next(row for row in found if row.method == "boil")
    assert boil.range("vitamin C") == (44, 45.4)
    assert boil.range("carotenoids") == (98, 100)
    assert all(row.pots for row in found)
    oven = next(row for row in found if row.method == "oven")
    assert oven.range("vitamin C") is None, "not found is not nought"


def test_no_share_is_printed_without_method_and_time() -> None:
    for found in vitamins().kept.values():
        for kept in found:
            assert re.search(
                r"\((steam|boil|microwave|pressure-cook|roast), (\d[\d.-]* min|time not given)\)", kept.words
            )
            assert kept.nutrient in NUTRIENTS


def test_one_study_has_steaming_worse_than_boiling_and_it_is_kept() -> None:
    steam = {k.minutes: k.low for k in vitamins().of("sweet-potato", "steam", "carotenoids") if "variety" in k.note}
    boil = {k.minutes: k.low for k in vitamins().of("sweet-potato", "boil", "carotenoids") if "variety" in k.note}
    assert set(steam) == set(boil)
    assert all(steam[minutes] < boil[minutes] for minutes in steam)


def test_lifting_out_the_portion_is_not_named_after_what_was_lifted_out_before() -> None:
    steps = [
        "Simmer the parsnip, the pear and the oil for 30 minutes.",
        "Take out the pear.",
        "Lift out the baby's portion and mash it.",
        "Season the family's pot with pepper.",
    ]
    labels = [task.label for task in planned(steps=steps).tasks]
    assert [label for label in labels if " out" in label] == ["Take out: pear", "Lift out: the baby's portion"]


def test_the_portion_comes_out_of_every_pot_and_the_family_is_served_last() -> None:
    tasks = dish(
        "makes: {portions: 2 x 120 g, family: two adult plates}\n"
        "foods:\n  - 300 g turkey mince\n  - 400 g tin chopped tomatoes\n  - 50 g orzo\n  - 200 g penne\n"
        "steps:\n  - Simmer the turkey with the tomatoes for 30 minutes.\n"
        "  - Boil the orzo for 9 minutes, then drain.\n"
        "  - Lift out the baby's portion of the ragu and stir it into the orzo.\n"
        "  - Boil the penne for 10 minutes and serve it with the rest for the grown-ups."
    ).plan.tasks
    ends = {word: max(task.end for task in tasks if word in task.label) for word in ("Simmer", "Boil")}
    starts = {word: next(task.start for task in tasks if word in task.label) for word in ("Lift out", "Serve")}
    assert starts["Lift out"] >= ends["Simmer"]
    assert starts["Serve"] >= max(ends.values())


def test_what_got_soft_in_a_pan_of_its_own_is_not_asked_to_cook_with_the_rest() -> None:
    steps = [
        "Boil the potato for 20 minutes.",
        "Boil the pea for 8 minutes.",
        "Bake the potato and the pea for 20 minutes.",
    ]
    assert pot_orders(recipe(["potato, 20 mm dice", "pea"], steps), Larder(), verbs(), times()) == ()


def test_what_is_grated_sets_no_time_for_a_pot() -> None:
    coarse, fine = (
        pot_orders(
            recipe([f"carrot, {cut}", "pear, 10 mm dice"], ["Boil the carrot and pear for 20 minutes."]),
            Larder(),
            verbs(),
            times(),
        )
        for cut in ("10 mm dice", "grated")
    )
    assert [entry.name for order in coarse for entry in order.entries] == ["carrot", "pear"]
    assert fine == ()


def test_a_range_wide_from_sources_that_differ_asks_for_no_long_cooking() -> None:
    placed = tender_together({0: Minutes(12, 20), 1: Minutes(3, 36)})
    assert placed[1][0] > placed[0][0]  # the rice first, the peas after it


def test_what_joins_for_the_last_minutes_does_not_lengthen_the_whole() -> None:
    found = dish(
        "foods:\n  - 200 g carrots, 1 cm dice\n  - 200 g pears, 1 cm dice\n"
        "steps:\n  - Steam the carrots for 20 minutes, adding the pears for the last 8.\n"
    ).plan
    steamed = [task for task in found.tasks if task.lane == "steamer"]
    assert [task.minutes for task in steamed] == [12, 8]
    assert found.cook == 20


def test_a_pan_that_is_heated_with_its_oil_cooks_nothing_yet() -> None:
    eggs = dish(
        "foods:\n  - 2 eggs\n  - 1 tsp rapeseed oil\n"
        "steps:\n  - Beat the eggs.\n  - Heat the oil in a frying pan and fry the eggs for 4 minutes.\n"
    ).treatments[0]
    assert [heat.verb for heat in eggs.heats] == ["fry"]


def labels_of(foods: list[str], steps: list[str]) -> list[str]:
    listed = "".join(f"  - {food}\n" for food in foods)
    return [
        task.label for task in dish(f"foods:\n{listed}steps:\n" + "".join(f"  - {step}\n" for step in steps)).plan.tasks
    ]


def test_a_pot_is_named_by_what_cooks_in_it_and_not_by_its_spice() -> None:
    labels = labels_of(
        ["200 g pears, 1 cm dice", "80 g millet", "1 cinnamon stick", "400 ml water"],
        ["Put the pears, the millet and the water in a pan and stir.", "Simmer for 25 minutes with the cinnamon."],
    )
    assert "Simmer: everything in the pot" in labels
    assert labels_of(["1 tsp cumin seeds"], ["Toast the cumin seeds for 2 minutes."]) == ["Toast: cumin seeds"]


def test_what_is_mashed_with_something_is_not_named_by_that_alone() -> None:
    labels = labels_of(
        ["300 g swede, 1 cm dice", "1 egg", "50 g plain flour"],
        ["Boil the swede for 20 minutes.", "Drain and mash with the egg and the flour."],
    )
    assert "Mash: everything in the pot" in labels


def test_what_is_done_to_the_portion_says_so() -> None:
    labels = labels_of(
        ["300 g swede, 1 cm dice", "1 tsp salt"],
        [
            "Boil the swede for 20 minutes.",
            "Lift out the baby's portion, mash it and let it cool.",
            "Season the family's pot with the salt.",
        ],
    )
    at = labels.index("Lift out: the baby's portion")
    assert labels[at + 1 :] == ["Mash: the baby's portion", "Cool: the baby's portion", "Season: salt"]


def test_a_word_of_getting_ready_stands_once_and_trimming_is_no_coring() -> None:
    labels = labels_of(["200 g leeks, topped, tailed, sliced"], ["Trim the leeks.", "Steam the leeks for 12 minutes."])
    assert labels[0] == "Get ready: leeks (trimmed, slice)"
    assert labels[1] == "Trim: leeks"


def test_two_dishes_are_two_pots() -> None:
    found = dish(
        "foods:\n  - 300 g parsnips, 1 cm dice\n  - 200 g haddock\n"
        "steps:\n  - Boil the parsnips for 20 minutes.\n"
        "  - Lay the haddock in a greased oven dish and cook in a preheated oven for 15 minutes.\n"
    )
    parsnip, haddock = found.treatments
    assert [heat.medium for heat in parsnip.heats] == ["water"]
    assert [(heat.verb, heat.medium) for heat in haddock.heats] == [("bake", "oven")]


def test_split_moong_softens_like_red_lentils_and_the_whole_bean_does_not() -> None:
    steps = "steps:\n  - Simmer the {} in the water for 20 minutes.\n"
    split = dish("foods:\n  - 60 g yellow moong dal\n  - 400 ml water\n" + steps.format("moong dal"))
    whole = dish("foods:\n  - 60 g green moong\n  - 400 ml water\n" + steps.format("moong"))
    assert split.treatments[0].softness in ("soft", "maybe-soft")
    assert whole.treatments[0].softness == "hard"


def test_what_fries_waits_until_its_fat_is_hot() -> None:
    head = "foods:\n  - 1 tbsp ghee\n  - 1 leek, sliced\nsteps:\n  - Melt the ghee and soften the leek for 6 minutes.\n"
    tasks = dish(head).plan.tasks
    melt = next(task for task in tasks if task.label.startswith("Melt"))
    sweat = next(task for task in tasks if task.label.startswith("Sweat"))
    assert melt.index in sweat.after


def test_the_leek_is_cut_before_the_fat_is_hot() -> None:
    done = planned(["leek", "oil"], ["Heat the oil in a pan.", "Slice the leek.", "Fry the leek for 8 minutes."]).tasks
    cut, hot = (next(task for task in done if task.label.startswith(word)) for word in ("Slice", "Heat"))
    assert cut.end <= hot.start and cut.index in hot.after
    ready = planned(["leek, sliced", "oil"], ["Heat the oil in a pan.", "Fry the leek for 8 minutes."]).tasks
    cut, hot = (next(task for task in ready if task.label.startswith(word)) for word in ("Get ready", "Heat"))
    assert cut.index in hot.after
