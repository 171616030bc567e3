"""A filming day: several recipes in one kitchen, with its rings, tiers, oven, blender, hands and camera.

What a recipe's plan needs becomes tasks with uses of resources; each recipe adds its washing-up, and a twin pan made
ahead stands in for every long stretch of heat, so that the camera need not wait for it. Hands and heat stay out of the
hours when nobody is in the kitchen; cooling and soaking go on by themselves. CP-SAT finds the shortest day, proven or
with its gap; without it a list schedule does, and says so. When not all fits, the fewest recipes are dropped.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations
from typing import Literal

from spoonproof.cooking.day_list import list_schedule
from spoonproof.model.record import NamedTuple, dataclass, replace

_QUESTION = 0.3  # the share of the effort spent on whether a day fits at all
SOON_MINUTES = 15  # how long a hot pan may wait for its next step, by custom


class Use(NamedTuple):
    """A task takes ``units`` of ``resource`` for its first ``minutes``."""

    resource: str
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
            if use.minutes > task.minutes:
                raise ValueError(f"{task.id} uses {use.resource} beyond its own time")
        seen.add(task.id)
