"""A filming day: several recipes in one kitchen, with its rings, tiers, oven, blender, hands and camera.

What a recipe's plan needs becomes tasks with uses of resources; each recipe adds its washing-up, and a twin pan made
ahead stands in for every long stretch of heat, so that the camera need not wait for it. Hands and heat stay out of the
hours when nobody is in the kitchen; cooling and soaking go on by themselves. CP-SAT finds the shortest day, proven or
with its gap; without it a list schedule does, and says so. When not all fits, the fewest recipes are dropped.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Literal, NamedTuple

from spoonproof.cooking.day_list import list_schedule
from spoonproof.cooking.timeline import Plan, Task
from spoonproof.model.channel import Day
from spoonproof.model.channel import Kitchen as Appliances

CAMERA_MINUTES = 3  # to set up a shot, by custom
WASH_MINUTES = 10  # to wash up after a recipe, by custom
RINSE_MINUTES = 2  # to rinse the blender between two uses, by custom
_QUESTION = 0.3  # the share of the effort spent on whether a day fits at all
SOON_MINUTES = 15  # how long a hot pan may wait for its next step, by custom
TWIN_FROM = 20  # minutes of heat from which a twin is worth a pan, by custom


class Use(NamedTuple):
    """A task takes ``units`` of ``resource`` from ``offset`` minutes after its start, for ``minutes``."""

    resource: str
    offset: int
    minutes: int
    units: int = 1


@dataclass(frozen=True, slots=True)
class DayTask:
    """One task of the day, in whole minutes; ``after`` are ids; ``present``: somebody must be in the kitchen."""

    id: str
    recipe: str
    label: str
    minutes: int
    uses: tuple[Use, ...] = ()
    after: tuple[str, ...] = ()
    present: bool = True
    filmed: bool = False
    soon: tuple[str, ...] = ()  # which of ``after`` should not be kept waiting: hot food


@dataclass(frozen=True, slots=True)
class DayProblem:
    """Tasks, how much there is of each resource, the length of the day and its absences, in minutes from its start."""

    tasks: tuple[DayTask, ...]
    capacity: Mapping[str, int]
    length: int
    away: tuple[tuple[int, int], ...] = ()


class Slot(NamedTuple):
    """A task and when it starts, in minutes from the start of the day."""

    task: DayTask
    start: int

    @property
    def end(self) -> int:
        """When it ends."""
        return self.start + self.task.minutes


@dataclass(frozen=True, slots=True)
class DayPlan:
    """A scheduled day. ``how``: optimal (proven), feasible (``bound`` says how short it might still be), or list.

    ``dropped`` are the recipes that do not fit, ``certain`` when it is proven that fewer can't be dropped; ``start`` is
    the minute of the day at which it begins.
    """

    slots: tuple[Slot, ...]
    how: Literal["optimal", "feasible", "list"]
    bound: int
    start: int = 0
    dropped: tuple[str, ...] = ()
    certain: bool = True

    @property
    def makespan(self) -> int:
        """Minutes from the start of the day to the end of the last task."""
        return max((slot.end for slot in self.slots), default=0)

    @property
    def waiting(self) -> tuple[tuple[Slot, int], ...]:
        """Tasks that come too late to a hot pan, and how many minutes it has waited."""
        ends = {slot.task.id: slot.end for slot in self.slots}
        late = ((slot, slot.start - ends[name]) for slot in self.slots for name in slot.task.soon)
        return tuple((slot, minutes) for slot, minutes in late if minutes > SOON_MINUTES)

    @property
    def gap(self) -> float:
        """The share of the day that might still be saved, 0 when it is proven shortest."""
        return 0.0 if not self.makespan else max(0.0, (self.makespan - self.bound) / self.makespan)

    @property
    def words(self) -> str:
        """How good the plan is, in a sentence."""
        if self.how == "optimal":
            return "This is the shortest day these tasks allow."
        if self.how == "feasible":
            return f"A shorter day may exist: at most {self.gap:.0%} could still be saved."
        return "A list schedule: the solver (the extra `day`) is not installed, so a shorter day may exist."


def day_problem(plans: Sequence[Plan], kitchen: Appliances, day: Day, twins: bool = True) -> DayProblem:
    """The day's tasks from the recipes' plans. Times are rounded up to whole minutes."""
    tasks: list[DayTask] = []
    for plan in plans:
        tasks += _recipe_tasks(plan, twins)
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


def schedule_day(problem: DayProblem, start: int = 0, effort: float = 10.0, solver: bool = True) -> DayPlan:
    """The shortest day found; ``effort`` bounds the solver's work (about seconds on two cores, but the same on all).

    ``solver`` False asks for the list schedule. Raises ValueError when a task can never run (it needs more of a
    resource than there is, or its predecessors run in a circle).
    """
    check(problem)
    if solver:
        try:
            from spoonproof.cooking.day_solver import solve
        except ImportError:
            solver = False
    recipes = tuple(dict.fromkeys(task.recipe for task in problem.tasks))
    certain = True
    for count in range(len(recipes) + 1):
        for dropped in _choices(problem, recipes, count):
            kept = without(problem, dropped)
            if lower_bound(kept) > kept.length:
                continue
            found, impossible = _listed(kept), False
            if solver:
                # a day that is only asked whether it fits gets a small part of the effort
                better, impossible = solve(kept, effort if found else effort * _QUESTION)
                found = better or found
            if found is not None:
                return replace(found, start=start, dropped=dropped, certain=certain)
            certain = certain and impossible
    return DayPlan((), "list", 0, start, recipes, certain)


def _choices(problem: DayProblem, recipes: Sequence[str], count: int) -> list[tuple[str, ...]]:
    """Which ``count`` recipes to try without: those with most work first, since that frees most."""
    work = {name: sum(task.minutes for task in problem.tasks if task.recipe == name) for name in recipes}
    return sorted(combinations(recipes, count), key=lambda names: (-sum(work[name] for name in names), names))


def _listed(problem: DayProblem) -> DayPlan | None:
    starts = list_schedule(problem)
    slots = tuple(sorted((Slot(task, starts[task.id]) for task in problem.tasks), key=by_start))
    plan = DayPlan(slots, "list", lower_bound(problem))
    return plan if plan.makespan <= problem.length else None


def by_start(slot: Slot) -> tuple[int, str]:
    """Slots in the order of the day."""
    return (slot.start, slot.task.id)


def without(problem: DayProblem, dropped: Sequence[str]) -> DayProblem:
    """The problem without some recipes."""
    return replace(problem, tasks=tuple(task for task in problem.tasks if task.recipe not in dropped))


def lower_bound(problem: DayProblem) -> int:
    """Minutes no schedule can go below: the longest chain, and the load of the busiest resource."""
    tails: dict[str, int] = {}
    for task in problem.tasks:  # predecessors come first
        tails[task.id] = task.minutes + max((tails[before] for before in task.after), default=0)
    load: dict[str, int] = {}
    for task in problem.tasks:
        for use in task.uses:
            load[use.resource] = load.get(use.resource, 0) + use.minutes * use.units
    sitting = {name for name in load if kept_out(problem, name)}
    busiest = 0
    for name, minutes in load.items():
        needed = -(-minutes // problem.capacity[name])
        busiest = max(busiest, _past_absences(problem, needed) if name in sitting else needed)
    return max(max(tails.values(), default=0), busiest)


def kept_out(problem: DayProblem, resource: str) -> bool:
    """Whether everything that uses the resource needs somebody in the kitchen, so that absences close it."""
    return all(task.present for task in problem.tasks if any(use.resource == resource for use in task.uses))


def _past_absences(problem: DayProblem, minutes: int) -> int:
    """When so many minutes of work can be over at the earliest, with nothing done in the absences."""
    end = minutes
    for begin, until in problem.away:  # in order
        if begin < end:
            end += until - begin
    return end


def check(problem: DayProblem) -> None:
    """Raise ValueError when the problem makes no sense."""
    seen: set[str] = set()
    for task in problem.tasks:
        if task.id in seen:
            raise ValueError(f"two tasks are called {task.id}")
        for before in task.after:
            if before not in seen:
                raise ValueError(f"{task.id} waits for {before}, which does not come before it")
        for use in task.uses:
            if use.units > problem.capacity.get(use.resource, 0):
                raise ValueError(f"{task.id} needs {use.units} of {use.resource}, more than there is")
            if use.offset < 0 or use.offset + use.minutes > task.minutes:
                raise ValueError(f"{task.id} uses {use.resource} beyond its own time")
        seen.add(task.id)


def _recipe_tasks(plan: Plan, twins: bool) -> list[DayTask]:
    tasks: list[DayTask] = []
    ids: dict[int, str] = {}
    for task in _in_one_go(plan):
        name = f"{plan.slug}/{task.index:02d}"
        after = tuple(ids[i] for i in task.after if i in ids)
        minutes = max(1, -int(-task.minutes // 1))
        filmed = task.step is not None and not task.unattended
        made = _task(plan, name, task, minutes, after, filmed)
        hot = {one.id for one in tasks if one.id in after and not one.id.endswith("t") and _heats(one)}
        made = replace(made, soon=tuple(one for one in after if one in hot))
        if twins and task.heat and task.unattended and minutes >= TWIN_FROM:
            twin = f"{name}t"
            before = tuple(a for a in after)
            tasks.append(replace(made, id=twin, label=f"Twin, made ahead: {task.label}", filmed=False))
            made = replace(made, after=before)
            tasks.append(made)
            ids[task.index] = twin  # what comes next is filmed with the twin
            continue
        tasks.append(made)
        ids[task.index] = name
    if tasks:
        last = tuple(task.id for task in tasks if not any(task.id in other.after for other in tasks))
        wash = f"{plan.slug}/wash"
        uses = (Use("hands", 0, WASH_MINUTES),)
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
        uses.append(Use("camera", 0, minutes))
    if hands:
        uses.append(Use("hands", 0, hands))
    if task.lane in ("ring", "steamer", "oven", "microwave"):
        uses.append(Use(task.lane, 0, minutes))
    if task.lane == "steamer":
        uses.append(Use("ring", 0, minutes))
    if task.lane == "blender":
        minutes += RINSE_MINUTES
        uses = [use._replace(minutes=minutes) if use.resource == "hands" else use for use in uses]
        uses.append(Use("blender", 0, minutes))
    present = bool(hands) or task.heat
    return DayTask(name, plan.slug, task.label, minutes, tuple(uses), after, present, filmed)
