"""The filming day: own small instances, each proven by looking at every order there is."""

import sys
import time
import xml.etree.ElementTree as ET
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.cooking.day import DayPlan, DayProblem, DayTask, Use, check, lower_bound, schedule_day
from spoonproof.cooking.day_drawing import day_svg, day_text
from spoonproof.cooking.day_list import list_schedule, place_in_order
from spoonproof.cooking.day_work import day_problem
from spoonproof.cooking.timeline import Plan, plan
from spoonproof.model.channel import Away, Day, Kitchen
from tests.cooking.bench import Larder, recipe, verbs


def task(name: str, minutes: int, *uses: Use, after: tuple[str, ...] = (), present: bool = True) -> DayTask:
    return DayTask(name, name.split("/")[0], name, minutes, uses, after, present)


def hands(minutes: int) -> Use:
    return Use("hands", minutes)


def ring(minutes: int) -> Use:
    return Use("ring", minutes)


CAPACITY = {"hands": 1, "ring": 2, "oven": 1, "blender": 1, "camera": 1, "steamer": 1, "microwave": 1}


def exhaustive(problem: DayProblem) -> int:
    """The shortest makespan there is: every order that keeps predecessors first, each task as early as it can go.

    For a measure that never gains from waiting, one of these active schedules is optimal.
    """
    best = 10**9
    for order in permutations(problem.tasks):
        seen: set[str] = set()
        good = True
        for one in order:
            if not seen.issuperset(one.after):
                good = False
                break
            seen.add(one.id)
        if good:
            starts = place_in_order(problem, order)
            best = min(best, max(starts[t.id] + t.minutes for t in order))
    return best


def valid(problem: DayProblem, found: DayPlan) -> None:
    """Whether a schedule keeps to every rule, minute by minute, checked apart from the code that makes it."""
    start = {slot.task.id: slot.start for slot in found.slots}
    for slot in found.slots:
        assert slot.start >= 0 and slot.end <= problem.length
        for before in slot.task.after:
            other = next(s for s in found.slots if s.task.id == before)
            assert other.end <= slot.start
        if slot.task.present:
            assert all(slot.end <= begin or slot.start >= end for begin, end in problem.away)
    for name, most in problem.capacity.items():
        for minute in range(found.makespan):
            used = sum(
                use.units
                for slot in found.slots
                for use in slot.task.uses
                if use.resource == name and start[slot.task.id] <= minute < start[slot.task.id] + use.minutes
            )
            assert used <= most, (name, minute)


SMALL = [
    DayProblem(
        (
            task("a/1", 10, hands(10)),
            task("a/2", 30, hands(1), ring(30), after=("a/1",)),
            task("b/1", 5, hands(5)),
            task("b/2", 25, hands(1), ring(25), after=("b/1",)),
            task("a/3", 5, hands(5), after=("a/2",)),
            task("b/3", 5, hands(5), after=("b/2",)),
        ),
        CAPACITY,
        300,
    ),
    DayProblem(  # one ring: which pan goes first matters
        (
            task("a/1", 3, hands(3)),
            task("a/2", 20, ring(20), after=("a/1",)),
            task("a/3", 40, after=("a/2",), present=False),
            task("b/1", 3, hands(3)),
            task("b/2", 30, ring(30), after=("b/1",)),
            task("b/3", 2, hands(2), after=("b/2",)),
        ),
        {**CAPACITY, "ring": 1},
        300,
    ),
    DayProblem(  # a nap in the middle
        (
            task("a/1", 20, hands(20)),
            task("a/2", 15, hands(1), ring(15), after=("a/1",)),
            task("b/1", 15, hands(15)),
            task("b/2", 60, after=("b/1",), present=False),
            task("b/3", 5, hands(5), after=("b/2",)),
        ),
        CAPACITY,
        300,
        ((30, 60),),
    ),
    DayProblem(  # the oven wanted three times, the camera twice
        (
            task("a/1", 12, Use("oven", 12)),
            task("b/1", 18, Use("oven", 18)),
            task("c/1", 9, Use("oven", 9)),
            task("a/2", 10, hands(10), Use("camera", 10), after=("a/1",)),
            task("b/2", 10, hands(10), Use("camera", 10), after=("b/1",)),
            task("c/2", 10, hands(10), after=("c/1",)),
        ),
        CAPACITY,
        300,
    ),
]


@pytest.mark.parametrize("problem", SMALL)
def test_the_solver_finds_the_proven_optimum(problem: DayProblem) -> None:
    pytest.importorskip("ortools")
    found = schedule_day(problem)
    valid(problem, found)
    assert found.how == "optimal" and found.gap == 0
    assert found.makespan == exhaustive(problem)


@pytest.mark.parametrize("problem", SMALL)
def test_the_list_schedule_keeps_the_rules_and_says_what_it_is(problem: DayProblem) -> None:
    found = schedule_day(problem, solver=False)
    valid(problem, found)
    assert found.how == "list"
    assert "not installed" in found.words
    assert exhaustive(problem) <= found.makespan
    assert lower_bound(problem) <= exhaustive(problem)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(
        st.tuples(st.integers(1, 12), st.sampled_from(["hands", "ring", "oven", ""]), st.booleans()),
        min_size=1,
        max_size=5,
    ),
    st.integers(0, 20),
    st.integers(0, 15),
)
def test_solver_list_and_every_order_agree_on_random_days(
    drafts: list[tuple[int, str, bool]], begin: int, minutes: int
) -> None:
    pytest.importorskip("ortools")
    tasks: list[DayTask] = []
    for at, (length, name, follows) in enumerate(drafts):
        uses = (Use(name, length),) if name else ()
        after = (tasks[-1].id,) if follows and tasks else ()
        tasks.append(DayTask(f"r/{at}", "r", "", length, uses, after, bool(name)))
    away = ((begin, begin + minutes),) if minutes else ()
    problem = DayProblem(tuple(tasks), {**CAPACITY, "ring": 1}, 400, away)
    best = exhaustive(problem)
    solved, listed = schedule_day(problem), schedule_day(problem, solver=False)
    valid(problem, solved)
    valid(problem, listed)
    assert solved.makespan == best
    assert listed.makespan >= best


def test_what_cannot_fit_is_said_with_the_least_to_drop() -> None:
    problem = DayProblem(
        (
            task("stew/1", 100, hands(1), ring(100)),
            task("mash/1", 30, hands(30)),
            task("bake/1", 40, hands(40)),
            task("soup/1", 35, hands(35)),
        ),
        CAPACITY,
        80,
    )
    for solver in (True, False):
        found = schedule_day(problem, solver=solver)
        assert "stew" in found.dropped, "it alone is longer than the day"
        assert len(found.dropped) == 2
        assert found.makespan <= 80
        valid(problem, found)
        assert found.certain, "the loads alone prove it"


def test_a_drop_that_is_not_proven_is_not_called_so() -> None:
    # 20 + 20 + 5 minutes of hands fit into 50 only when the absence at 22 is not straddled
    problem = DayProblem(
        (task("a/1", 20, hands(20)), task("b/1", 20, hands(20)), task("c/1", 9, hands(9))), CAPACITY, 60, ((22, 30),)
    )
    listed, solved = schedule_day(problem, solver=False), schedule_day(problem)
    assert len(listed.dropped) >= len(solved.dropped)
    assert solved.certain
    if listed.dropped:
        assert not listed.certain
        text = day_text(listed, problem)
        assert "may exist" in text


def test_the_day_is_told_by_the_clock_and_drawn() -> None:
    problem = day_problem(plans()[:3], Kitchen(), Day(570, 900, (Away(720, 780, "nap"),)))
    found = schedule_day(problem, start=570, solver=False)
    text = day_text(found, problem)
    assert text.startswith("09:30 to ")
    assert "12:00-13:00  nobody in the kitchen" in text
    root = ET.fromstring(day_svg(found, problem))
    assert root.get("role") == "img"
    bars = [node for node in root.iter() if node.tag.endswith("rect")]
    assert len(bars) == len(found.slots) + len(problem.away)
    assert day_svg(found, problem) == day_svg(found, problem)


def test_a_hot_pan_is_not_left_over_the_nap() -> None:
    pytest.importorskip("ortools")
    one = task("a/1", 20, ring(20))
    two = DayTask("a/2", "a", "mash", 10, (hands(10),), ("a/1",), soon=("a/1",))
    problem = DayProblem((one, two), CAPACITY, 300, ((25, 80),))
    found = schedule_day(problem)
    valid(problem, found)
    assert found.waiting == () and found.slots[0].start >= 60
    listed = schedule_day(problem, solver=False)
    assert [minutes for _, minutes in listed.waiting] == [60]
    assert "waits longer than is good before: a: mash (60 min)" in day_text(listed, problem)


def test_a_day_that_fits_drops_nothing() -> None:
    assert schedule_day(SMALL[0]).dropped == ()


@pytest.mark.parametrize(
    ("tasks", "words"),
    [
        ((task("a", 5), task("a", 5)), "two tasks"),
        ((task("a", 5, after=("b",)), task("b", 5)), "does not come before"),
        ((task("a", 5, Use("ring", 5, 3)),), "more than there is"),
        ((task("a", 5, Use("ring", 7)),), "beyond its own time"),
    ],
)
def test_a_problem_that_makes_no_sense_is_refused(tasks: tuple[DayTask, ...], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        check(DayProblem(tasks, CAPACITY, 100))


DISHES = [
    (
        ["parsnip, 10 mm dice", "pear, 10 mm dice", "oil"],
        "Steam the parsnip for 16 minutes. Add the pear and steam 4 minutes more. Let the steam off for 5 minutes. "
        "Mash with the oil.",
    ),
    (
        ["potato, 10 mm dice", "leek, 10 mm slice", "water"],
        "Boil the potato in the water for 25 minutes. Add the leek and boil 10 minutes more. Blend everything.",
    ),
    (
        ["red lentils", "carrot, 5 mm dice", "stock"],
        "Simmer the red lentils and carrot in the stock for 30 minutes. Mash roughly.",
    ),
    (
        ["sweet potato, whole"],
        "Bake the sweet potato for 60 minutes. Cool for 10 minutes. Mash the sweet potato with a fork.",
    ),
    (["apple, 15 mm dice"], "Microwave the apple for 5 minutes. Mash the apple."),
    (
        ["beetroot, 10 mm dice", "yoghurt"],
        "Steam the beetroot for 30 minutes. Let the steam off for 5 minutes. Blend the beetroot until smooth. "
        "Stir in the yoghurt.",
    ),
]


def plans() -> list[Plan]:
    from dataclasses import replace

    return [
        plan(replace(recipe(foods, steps.rstrip(".").split(". ")), slug=f"dish-{n}"), Larder(), verbs())
        for n, (foods, steps) in enumerate(DISHES)
    ]


def test_a_day_of_six_recipes_is_solved_to_optimality_in_ten_seconds() -> None:
    pytest.importorskip("ortools")
    kitchen = Kitchen(cooks=1, rings=2, steamer_tiers=2, blender=1, oven=1)
    problem = day_problem(plans(), kitchen, Day(540, 900, (Away(720, 780, "nap"),)))
    started = time.perf_counter()
    found = schedule_day(problem, start=540)
    seconds = time.perf_counter() - started
    valid(problem, found)
    assert found.how == "optimal" and found.dropped == ()
    assert seconds < 10
    assert found.start == 540
    listed = schedule_day(problem, solver=False)
    valid(problem, listed)
    assert listed.makespan >= found.makespan
    assert found == schedule_day(problem, start=540), "the same day every time"


def test_twins_are_ready_before_the_camera_wants_them_and_washing_up_is_last() -> None:
    problem = day_problem(plans()[:2], Kitchen(), Day(540, 900))
    twins = [one for one in problem.tasks if one.label.startswith("Twin")]
    assert twins and not any(one.filmed for one in twins)
    for twin in twins:
        assert any(twin.id in other.after for other in problem.tasks)
    found = schedule_day(problem, solver=False)
    for slug in ("dish-0", "dish-1"):
        mine = [slot for slot in found.slots if slot.task.recipe == slug]
        assert max(mine, key=lambda slot: slot.end).task.label.startswith("Wash up")


def test_without_the_extra_a_list_schedule_stands_in(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in [name for name in sys.modules if name.partition(".")[0] == "ortools"] or ["ortools"]:
        monkeypatch.setitem(sys.modules, name, None)
    monkeypatch.delitem(sys.modules, "spoonproof.cooking.day_solver", raising=False)
    found = schedule_day(SMALL[0])
    assert found.how == "list"


def test_the_list_schedule_is_the_same_every_time() -> None:
    assert all(list_schedule(problem) == list_schedule(problem) for problem in SMALL)
