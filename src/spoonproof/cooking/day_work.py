"""What a filming day asks to be done: the recipes' plans as tasks, with camera, twins and washing-up."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.cooking.day import DayProblem, DayTask, Use
from spoonproof.cooking.tasks import Task
from spoonproof.cooking.timeline import Plan
from spoonproof.model.channel import Day
from spoonproof.model.channel import Kitchen as Appliances
from spoonproof.model.record import replace

CAMERA_MINUTES = 3  # to set up a shot, by custom
WASH_MINUTES = 10  # to wash up after a recipe, by custom
RINSE_MINUTES = 2  # to rinse the blender between two uses, by custom
TWIN_FROM = 20  # minutes of heat from which a twin is worth a pan, by custom


def day_problem(plans: Sequence[Plan], kitchen: Appliances, day: Day) -> DayProblem:
    """The day's tasks from the recipes' plans. Times are rounded up to whole minutes."""
    tasks: list[DayTask] = []
    for plan in plans:
        tasks += _recipe_tasks(plan)
    capacity = {
        "hands": max(1, kitchen.cooks),
        "ring": max(1, kitchen.rings),
        "steamer": max(1, kitchen.steamer_tiers),
        "oven": max(1, kitchen.oven),
        "blender": max(1, kitchen.blender),
        "microwave": 1,
        "camera": 1,
    }
    away = tuple(
        (max(0, gap.start - day.start), min(day.end, gap.end) - day.start)
        for gap in sorted(day.away, key=lambda gap: gap.start)
        if gap.end > day.start and gap.start < day.end
    )
    return DayProblem(tuple(tasks), capacity, day.end - day.start, away)


def _recipe_tasks(plan: Plan) -> list[DayTask]:
    tasks: list[DayTask] = []
    ids: dict[int, str] = {}
    hot: set[str] = set()  # tasks that leave hot food behind: what is stirred into a hot pan lets it wait no longer
    for task in _in_one_go(plan):
        name = f"{plan.slug}/{task.index:02d}"
        after = tuple(ids[i] for i in task.after if i in ids)
        minutes = max(1, -int(-task.minutes // 1))
        filmed = task.step is not None and not task.unattended
        made = _task(plan, name, task, minutes, after, filmed)
        heated = {one.id for one in tasks if _heats(one)}
        made = replace(made, soon=tuple(one for one in after if one in hot and (_heats(made) or one in heated)))
        if _heats(made) or (task.lane and hot.intersection(after)):
            hot.add(name)
        if task.heat and task.unattended and minutes >= TWIN_FROM:
            twin = f"{name}t"
            tasks.append(replace(made, id=twin, label=f"Twin, made ahead: {task.label}", filmed=False))
            tasks.append(made)
            ids[task.index] = twin  # what comes next is filmed with the twin
            continue
        tasks.append(made)
        ids[task.index] = name
    if tasks:
        last = tuple(task.id for task in tasks if not any(task.id in other.after for other in tasks))
        wash = f"{plan.slug}/wash"
        uses = (Use("hands", WASH_MINUTES),)
        tasks.append(DayTask(wash, plan.slug, f"Wash up: {plan.title}", WASH_MINUTES, uses, last))
    return tasks


def _in_one_go(plan: Plan) -> list[Task]:
    """The plan's tasks, with handwork that follows handwork at once made one: one shot, one setup."""
    behind: dict[int, list[int]] = {}
    for task in plan.tasks:
        for before in task.after:
            behind.setdefault(before, []).append(task.index)
    done: list[Task] = []
    into: dict[int, int] = {}  # index of a task -> the index it was made part of
    for task in sorted(plan.tasks, key=lambda task: task.index):
        after = tuple(sorted({into.get(i, i) for i in task.after}))
        task = replace(task, after=after)
        last = next((one for one in done if after == (one.index,)), None)
        follows = last is not None and last.lane == task.lane == "hands" and (last.step is None) == (task.step is None)
        if last is not None and follows and all(into.get(i, i) in (last.index, task.index) for i in behind[last.index]):
            done[done.index(last)] = replace(last, label=f"{last.label}; {task.label}", end=last.end + task.minutes)
            into[task.index] = last.index
            behind[last.index] = behind.get(task.index, [])
        else:
            done.append(task)
    return done


def _heats(task: DayTask) -> bool:
    return any(use.resource in ("ring", "steamer", "oven", "microwave") for use in task.uses)


def _task(plan: Plan, name: str, task: Task, minutes: int, after: tuple[str, ...], filmed: bool) -> DayTask:
    uses: list[Use] = []
    hands = minutes
    if task.unattended:
        hands = 1 if task.hands else 0
    if filmed:
        minutes += CAMERA_MINUTES
        hands = minutes
        uses.append(Use("camera", minutes))
    if hands:
        uses.append(Use("hands", hands))
    if task.lane in ("ring", "steamer", "oven", "microwave"):
        uses.append(Use(task.lane, minutes))
    if task.lane == "steamer":
        uses.append(Use("ring", minutes))
    if task.lane == "blender":
        minutes += RINSE_MINUTES
        uses = [use._replace(minutes=minutes) if use.resource == "hands" else use for use in uses]
        uses.append(Use("blender", minutes))
    present = bool(hands) or task.heat
    return DayTask(name, plan.slug, task.label, minutes, tuple(uses), after, present, filmed)
