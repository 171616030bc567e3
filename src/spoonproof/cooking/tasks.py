"""Work put on the clock: each piece as soon as its food, a pair of hands and its appliance are free."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from spoonproof.cooking.chores import AWAY_FROM_HANDS, Draft
from spoonproof.model import channel as house
from spoonproof.model.finding import Bowl
from spoonproof.model.record import dataclass

_WARMS: Mapping[str, tuple[str, ...]] = {"ring": ("ring", "steamer")}  # what a pan of boiling water is for
_ALSO: Mapping[str, str] = {"steamer": "ring"}  # a steamer stands on a ring


@dataclass(frozen=True, slots=True)
class Task:
    """One stretch of work. Times are minutes from the start; ``hands`` the share that needs hands, 0 to 1.

    ``lane`` is the appliance (ring, steamer, oven, microwave, blender) or "hands" or "" (waits by itself); ``after``
    the indexes of the tasks it waits for; ``step`` the index of the step, None for what the food lines ask for;
    ``assumed`` when the recipe gives no time.
    """

    index: int
    label: str
    start: float
    end: float
    hands: float
    lane: str
    step: int | None
    after: tuple[int, ...] = ()
    heat: bool = False
    assumed: bool = False
    bowl: Bowl | None = None

    @property
    def minutes(self) -> float:
        """How long it takes."""
        return self.end - self.start

    @property
    def unattended(self) -> bool:
        """Whether it runs without hands for most of its time."""
        return self.hands < AWAY_FROM_HANDS


def schedule(drafts: Sequence[Draft], kitchen: house.Kitchen) -> list[Task]:
    """A task for each draft, in the order given; deterministic."""
    free = _Free(kitchen)
    tasks: list[Task] = []
    for index, (draft, after) in enumerate(zip(drafts, _waits_for(drafts), strict=True)):
        ready = max((tasks[i].end for i in after), default=0.0)
        held = draft.minutes if draft.hands >= AWAY_FROM_HANDS else min(draft.minutes, 1.0 if draft.hands else 0.0)
        start = free.earliest(ready, draft.lane, draft.minutes, held)
        free.take(start, draft.lane, draft.minutes, held)
        tasks.append(
            Task(
                index,
                draft.label,
                start,
                start + draft.minutes,
                draft.hands,
                draft.lane,
                draft.step,
                after,
                draft.heat,
                draft.assumed,
                draft.bowl,
            )
        )
    return tasks


def _waits_for(drafts: Sequence[Draft]) -> Iterator[tuple[int, ...]]:
    """Of each draft the indexes of those that must be done first: what was done to its food before, what it is warmed
    or made ready on."""
    last_of: dict[int, int] = {}
    warming: dict[str, int] = {}
    readied: set[int] = set()  # "line a tin": done to no food, and done before the food that the recipe names next
    for index, draft in enumerate(drafts):
        after = {last_of[line] for line in (*draft.lines, *draft.behind) if line in last_of}
        if draft.warms:
            warming.update(dict.fromkeys(_WARMS.get(draft.lane, (draft.lane,)), index))
        elif not draft.lines and index and draft.step is not None:
            after = {index - 1}
            readied.add(index)
        elif draft.step is not None:
            if draft.lane in warming:
                readied.add(warming.pop(draft.lane))
            after |= readied
            readied.clear()
        yield tuple(sorted(after))
        for line in draft.lines:
            last_of[line] = index


class _Free:
    """When hands and appliances are taken: lists of (start, end) a resource."""

    def __init__(self, kitchen: house.Kitchen) -> None:
        self.count = {
            "hands": max(1, kitchen.cooks),
            "ring": max(1, kitchen.rings),
            "steamer": max(1, min(kitchen.steamer_tiers, kitchen.rings)),
            "oven": max(1, kitchen.oven),
            "blender": max(1, kitchen.blender),
            "microwave": 1,
        }
        self.taken: dict[str, list[tuple[float, float]]] = {name: [] for name in self.count}

    def earliest(self, ready: float, lane: str, minutes: float, held: float) -> float:
        """The first moment from ``ready`` at which hands (for ``held``) and the appliance are both free."""
        ends = [end for spans in self.taken.values() for _, end in spans if end > ready]
        for start in (ready, *sorted(ends)):
            if self._fits("hands", start, held) and all(self._fits(name, start, minutes) for name in self._needs(lane)):
                return start
        return max(ends, default=ready)

    def _fits(self, name: str, start: float, minutes: float) -> bool:
        if minutes <= 0:
            return True
        clashing = [span for span in self.taken[name] if span[0] < start + minutes and span[1] > start]
        points = {start, *(span[0] for span in clashing if span[0] >= start)}
        return all(sum(a <= point < b for a, b in clashing) < self.count[name] for point in points)

    def take(self, start: float, lane: str, minutes: float, held: float) -> None:
        if held > 0:
            self.taken["hands"].append((start, start + held))
        for name in self._needs(lane):
            self.taken[name].append((start, start + minutes))

    def _needs(self, lane: str) -> tuple[str, ...]:
        names = (lane, _ALSO.get(lane, ""))
        return tuple(name for name in names if name in self.count and name != "hands")


def critical_path(tasks: Sequence[Task]) -> tuple[int, ...]:
    """From the task that ends last backwards: each time the task whose end let it start."""
    if not tasks:
        return ()
    at = max(tasks, key=lambda task: (task.end, task.index))
    chain = [at.index]
    while at.start > 0:
        before = [t for t in tasks if t.index != at.index and abs(t.end - at.start) < 1e-9 and t.index not in chain]
        # hands that were let go after the first minute of an unattended task end no task: then look for its start
        before = before or [t for t in tasks if t.index < at.index and t.start < at.start <= t.end]
        if not before:
            break
        at = max(before, key=lambda t: (t.index in at.after, t.index))
        chain.append(at.index)
    return tuple(reversed(chain))
