"""The cook's timeline of one recipe: what starts when, what needs hands, what needs a ring, and how long it all takes.

Work is done in the order of the recipe as soon as the food, a pair of hands and the appliance are free. Times of a
range count with their longer end. Where a step gives no time, the verb's usual minutes are assumed, and said.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.cooking.chores import doing, preparing
from spoonproof.cooking.pots import Kitchen
from spoonproof.cooking.tasks import Task, critical_path, schedule
from spoonproof.model import channel as house
from spoonproof.model.kitchen import Foods, Verbs
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass

__all__ = ["Plan", "Task", "iso", "plan"]


@dataclass(frozen=True, slots=True)
class Plan:
    """A recipe's tasks in order of their start; ``critical`` are the tasks that decide the total."""

    slug: str
    title: str
    tasks: tuple[Task, ...]
    critical: tuple[int, ...] = ()

    @property
    def total(self) -> float:
        """Minutes from the first task's start to the last one's end."""
        return max((task.end for task in self.tasks), default=0.0)

    @property
    def cook(self) -> float:
        """Minutes in which something is being heated."""
        return _covered([(task.start, task.end) for task in self.tasks if task.heat])

    @property
    def prep(self) -> float:
        """The rest of the total: ``prep`` and ``cook`` add up to it."""
        return self.total - self.cook

    @property
    def hands_on(self) -> float:
        """Minutes that need a pair of hands."""
        return sum(task.minutes * task.hands for task in self.tasks)

    @property
    def assumed(self) -> tuple[str, ...]:
        """What is timed by custom because the recipe gives no time."""
        return tuple(task.label for task in self.tasks if task.assumed)

    @property
    def iso(self) -> Mapping[str, str]:
        """prepTime, cookTime and totalTime as ISO 8601 durations of whole minutes that add up."""
        total = round(self.total)
        cook = min(total, round(self.cook))
        return {"prepTime": iso(total - cook), "cookTime": iso(cook), "totalTime": iso(total)}


def iso(minutes: float) -> str:
    """Minutes as an ISO 8601 duration: PT1H5M, PT0M."""
    whole = round(minutes)
    if whole < 0:
        raise ValueError("a duration is not negative")
    hours, rest = divmod(whole, 60)
    if not hours:
        return f"PT{rest}M"
    return f"PT{hours}H{rest}M" if rest else f"PT{hours}H"


def plan(recipe: Recipe, foods: Foods, verbs: Verbs, kitchen: house.Kitchen | None = None) -> Plan:
    """The timeline of a recipe in a kitchen (default: one cook, two rings); deterministic."""
    walk = Kitchen(recipe, foods, verbs)
    walk.walk()
    return planned(walk, foods, kitchen)


def planned(walk: Kitchen, foods: Foods, kitchen: house.Kitchen | None) -> Plan:
    """The timeline of a recipe that was walked through."""
    recipe = walk.recipe
    work = doing(recipe, walk.events, foods)
    # water and oven are put on before anything is peeled
    first = next((at for at, draft in enumerate(work) if draft.lines), len(work))
    early = [draft for draft in work[:first] if draft.warms]
    rest = [draft for at, draft in enumerate(work) if at >= first or not draft.warms]
    drafts = [*early, *preparing(recipe, foods), *rest]
    tasks = schedule(drafts, kitchen or house.Kitchen())
    return Plan(recipe.slug, recipe.title.value, tuple(sorted(tasks, key=_by_start)), critical_path(tasks))


def _by_start(task: Task) -> tuple[float, int]:
    return (task.start, task.index)


def _covered(spans: Sequence[tuple[float, float]]) -> float:
    total, reach = 0.0, 0.0
    for start, end in sorted(spans):
        total += max(0.0, end - max(start, reach))
        reach = max(reach, end)
    return total
