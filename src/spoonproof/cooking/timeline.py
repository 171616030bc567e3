"""The cook's timeline of one recipe: what starts when, what needs hands, what needs a ring, and how long it all takes.

Work is done in the order of the recipe as soon as the food, a pair of hands and the appliance are free. Times of a
range count with their longer end. Where a step gives no time, the verb's usual minutes are assumed, and said.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from spoonproof.cooking.pots import Event, Kitchen
from spoonproof.model import channel as house
from spoonproof.model.finding import Bowl
from spoonproof.model.kitchen import Foods, Verb, Verbs
from spoonproof.model.recipe import Cut, FoodLine, Recipe

_TOOL_OF_MEDIUM = {
    "steam": "steamer",
    "water": "ring",
    "fat": "ring",
    "pan": "ring",
    "pressure": "ring",
    "oven": "oven",
}
_PREPARED_MINUTES: Mapping[str, float] = {
    "peeled": 1.5, "cored": 1.0, "deseeded": 1.0, "stoned": 1.0, "trimmed": 0.5, "washed": 0.5, "rinsed": 0.5,
    "skinned": 1.0, "boned": 2.0, "drained": 0.5, "scrubbed": 0.5, "toasted": 4.0, "melted": 2.0,
}  # fmt: skip
_CUT_MINUTES: Mapping[str, float] = {"grated": 3, "chopped": 2, "dice": 3, "slice": 2, "minced": 3, "shredded": 3}
_LABELS: Mapping[str, str] = {
    "steam-off": "let the steam off", "bring-to-the-boil": "bring to the boil", "turn-heat": "turn the heat",
    "fork-mash": "fork-mash", "press-through": "press through a sieve", "thick-blend": "blend thick",
    "coarse-blend": "blend in short bursts", "stand": "leave to stand", "saute": "sauté", "puree": "purée",
    "stir-fry": "stir-fry", "deep-fry": "deep-fry", "pressure-cook": "pressure-cook", "slow-cook": "slow-cook",
}  # fmt: skip
_WARMS: Mapping[str, tuple[str, ...]] = {"ring": ("ring", "steamer")}  # what a pan of boiling water is for
_ALSO: Mapping[str, str] = {"steamer": "ring"}  # a steamer stands on a ring
AWAY_FROM_HANDS = 0.5  # a task that needs hands for less than this share of its time runs on its own


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
    doing = _doing(recipe, walk.events)
    # water and oven are put on before anything is peeled
    first = next((at for at, draft in enumerate(doing) if draft.lines), len(doing))
    early = [draft for draft in doing[:first] if draft.warms]
    rest = [draft for at, draft in enumerate(doing) if at >= first or not draft.warms]
    drafts = [*early, *_preparing(recipe, foods), *rest]
    tasks = _schedule(drafts, kitchen or house.Kitchen())
    return Plan(recipe.slug, recipe.title.value, tuple(sorted(tasks, key=_by_start)), _critical(tasks))


@dataclass(slots=True)
class _Draft:
    label: str
    minutes: float
    hands: float
    lane: str
    step: int | None
    lines: tuple[int, ...]
    heat: bool = False
    assumed: bool = False
    bowl: Bowl | None = None

    @property
    def warms(self) -> bool:
        """Whether it only brings water or an oven to heat: what cooks there next waits for it."""
        return not self.lines and (self.heat or self.lane == "oven")


def _preparing(recipe: Recipe, foods: Foods) -> list[_Draft]:
    """What the food lines ask for before the method begins: peeled, cored, diced."""
    drafts = []
    for index, line in enumerate(recipe.foods):
        minutes = sum(_PREPARED_MINUTES.get(word, 0.0) for word, _ in line.prepared)
        cuts = _cuts_to_make(line, foods)
        minutes += sum(_CUT_MINUTES.get(cut.shape, 2.0) for cut in cuts)
        if minutes and line.recipe is None and line.state not in ("canned", "frozen"):
            drafts.append(_Draft(_prepare_label(line, cuts), minutes, 1.0, "hands", None, (index,), assumed=True))
    return drafts


def _cuts_to_make(line: FoodLine, foods: Foods) -> list[Cut]:
    """The cuts somebody makes: not those the food is bought in (ground cumin, minced beef)."""
    food = foods.get(line.food) if line.food else None
    if food is not None and (
        food.hardness in ("powder", "liquid", "paste") or food.group in ("meat", "poultry", "spice")
    ):
        return []
    return [cut for cut in line.cuts if cut.shape not in ("whole", "ground", "flaked")]


def _prepare_label(line: FoodLine, cuts: Sequence[Cut]) -> str:
    words = [word for word, _ in line.prepared if word in _PREPARED_MINUTES]
    words += [cut.shape for cut in cuts]
    return f"Get ready: {line.name} ({', '.join(words)})" if words else f"Get ready: {line.name}"


def _doing(recipe: Recipe, events: Sequence[Event]) -> list[_Draft]:
    drafts: list[_Draft] = []
    for event in events:
        verb, time = event.verb, event.action.time
        minutes = time.high if time else verb.minutes
        heat = verb.role == "heat"
        lane = verb.tool or _TOOL_OF_MEDIUM.get(verb.medium, "") if heat or verb.tool else ""
        if not lane and verb.hands >= AWAY_FROM_HANDS:
            lane = "hands"
        lines = event.pot if event.pot else event.lines
        drafts.append(
            _Draft(
                _label(recipe, event, verb),
                minutes,
                verb.hands,
                lane,
                event.step,
                lines,
                heat,
                time is None,
                event.bowl,
            )
        )
    return drafts


def _label(recipe: Recipe, event: Event, verb: Verb) -> str:
    words = _LABELS.get(verb.id, verb.id.replace("-", " "))
    named = event.action.foods or (event.lines if len(event.lines) <= 2 else ())
    names = [recipe.foods[i].name for i in named if 0 <= i < len(recipe.foods)]
    if event.action.everything or (not names and event.lines):
        names = ["everything in the pot"] if verb.role in ("heat", "blend", "cool") else []
    text = f"{words}: {', '.join(names)}" if names else words
    return text[:1].upper() + text[1:]


def _schedule(drafts: Sequence[_Draft], kitchen: house.Kitchen) -> list[Task]:
    free = _Free(kitchen)
    last_of: dict[int, int] = {}
    warming: dict[str, int] = {}
    tasks: list[Task] = []
    for index, draft in enumerate(drafts):
        after = sorted({last_of[line] for line in draft.lines if line in last_of})
        if draft.warms:
            warming.update(dict.fromkeys(_WARMS.get(draft.lane, (draft.lane,)), index))
        elif draft.lane in warming and draft.lines:
            after = sorted({*after, warming.pop(draft.lane)})
        elif not draft.lines and tasks and draft.step is not None:
            after = [index - 1]
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
                tuple(after),
                draft.heat,
                draft.assumed,
                draft.bowl,
            )
        )
        for line in draft.lines:
            last_of[line] = index
    return tasks


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


def _critical(tasks: Sequence[Task]) -> tuple[int, ...]:
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


def _by_start(task: Task) -> tuple[float, int]:
    return (task.start, task.index)


def _covered(spans: Sequence[tuple[float, float]]) -> float:
    total, reach = 0.0, 0.0
    for start, end in sorted(spans):
        total += max(0.0, end - max(start, reach))
        reach = max(reach, end)
    return total
