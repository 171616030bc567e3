"""What has happened to one food line, and one action as it happened: what the walk through the steps writes down."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.model.finding import Bowl
from spoonproof.model.food import Food
from spoonproof.model.kitchen import Medium, Verb
from spoonproof.model.recipe import Action, Cut, CutShape, FoodLine, Minutes
from spoonproof.model.record import dataclass, field
from spoonproof.model.treatment import Heat

_NOT_SOLID = ("liquid", "powder", "paste")
CUT_BY_VERB: dict[str, CutShape] = {
    "chop": "chopped",
    "slice": "slice",
    "dice": "dice",
    "halve": "half",
    "quarter": "quarter",
    "grate": "grated",
    "mince": "minced",
    "grind": "ground",
    "shred": "shredded",
    "flake": "flaked",
}


@dataclass(slots=True)
class Story:
    """What has happened to one food line so far."""

    index: int
    line: FoodLine
    food: Food | None
    joined: int | None = None
    seen: int | None = None  # the step that only prepares it
    bowl: Bowl | None = None
    heats: list[Heat] = field(default_factory=list)
    tested: bool = False  # a squash test ends one of its heats
    cuts: list[Cut] = field(default_factory=list)
    cuts_heated: int | None = None  # how many of the cuts were made before the first heat
    made: str = ""
    made_step: int | None = None
    blended_first: bool = False  # blended fine before any heat: a batter
    soaked: float = 0.0
    left_out: bool = False

    def warm(self, heat: Heat) -> None:
        """Heat reaches it, cut as it is now where it is the first."""
        if self.cuts_heated is None:
            self.cuts_heated = len(self.cuts)
        self.heats.append(heat)

    @property
    def solid(self) -> bool:
        """Whether it is a piece of something: what is not known counts as a piece."""
        return self.food is None or self.food.hardness not in _NOT_SOLID

    @property
    def in_a_sieve(self) -> bool:
        """Whether a sieve holds it back and it is what is eaten: no drink, nor what only gave it its taste."""
        return self.solid and not self.flavours

    @property
    def fat(self) -> bool:
        return self.food is not None and self.food.group in ("oil", "fat")

    @property
    def liquid(self) -> bool:
        food = self.food
        return food is not None and food.hardness == "liquid" and "fat" not in food.group and "oil" not in food.id

    @property
    def flavours(self) -> bool:
        """Whether it is there for its taste: a herb or a spice."""
        return self.food is not None and self.food.group in ("herb", "spice")


@dataclass(frozen=True, slots=True)
class Event:
    """One action as it happened: the lines it is done to, and those in the pot with them."""

    step: int
    action: Action
    verb: Verb
    lines: tuple[int, ...]
    pot: tuple[int, ...]
    bowl: Bowl | None = None


def served_apart(line: FoodLine) -> Bowl | None:
    """The family's bowl for "salt, for the grown-ups", as long as no step puts it elsewhere."""
    return "family" if line.has("for-others") else None


def cuts_of(action: Action, line: int) -> Sequence[Cut]:
    """The cuts an action gives a line: one each where as many cuts as foods are named, all of them otherwise."""
    if len(action.cuts) == len(action.foods) > 1 and line in action.foods:
        return (action.cuts[action.foods.index(line)],)
    return action.cuts


def total(heats: Sequence[Heat]) -> Minutes | None:
    """The stated minutes of some heats together; None when none has any."""
    timed = [heat.minutes for heat in heats if heat.minutes is not None]
    return Minutes(sum(t.low for t in timed), sum(t.high for t in timed)) if timed else None


def water_of(verb: Verb, medium: Medium) -> str:
    """What becomes of the water of a heat: none, kept, drained, driven off."""
    if medium in ("steam", "oven", "fat"):
        return "none"
    return verb.water
