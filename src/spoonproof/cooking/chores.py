"""What a recipe asks to be done, as timed pieces of work: the getting ready, then the method's actions in order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.cooking.story import Event
from spoonproof.model.finding import Bowl
from spoonproof.model.kitchen import Foods, Verb
from spoonproof.model.recipe import Cut, FoodLine, Recipe
from spoonproof.model.record import dataclass

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
_FATS = ("oil", "fat")
AWAY_FROM_HANDS = 0.5  # a task that needs hands for less than this share of its time runs on its own


@dataclass(slots=True)
class Draft:
    """One piece of work before it has a start; ``lines`` are the food lines it is done to."""

    label: str
    minutes: float
    hands: float
    lane: str
    step: int | None
    lines: tuple[int, ...]
    heat: bool = False
    assumed: bool = False
    bowl: Bowl | None = None
    behind: tuple[int, ...] = ()  # lines that must be ready before it starts: what goes into the hot fat

    @property
    def warms(self) -> bool:
        """Whether it only brings water or an oven to heat: what cooks there next waits for it."""
        return not self.lines and (self.heat or self.lane == "oven")


def preparing(recipe: Recipe, foods: Foods) -> list[Draft]:
    """What the food lines ask for before the method begins: peeled, cored, diced."""
    drafts = []
    for index, line in enumerate(recipe.foods):
        minutes = sum(_PREPARED_MINUTES.get(word, 0.0) for word, _ in line.prepared)
        cuts = _cuts_to_make(line, foods)
        minutes += sum(_CUT_MINUTES.get(cut.shape, 2.0) for cut in cuts)
        if minutes and line.recipe is None and line.state not in ("canned", "frozen"):
            drafts.append(Draft(_prepare_label(line, cuts), minutes, 1.0, "hands", None, (index,), assumed=True))
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
    words = list(dict.fromkeys([*words, *(cut.shape for cut in cuts)]))
    return f"Get ready: {line.name} ({', '.join(words)})" if words else f"Get ready: {line.name}"


def doing(recipe: Recipe, events: Sequence[Event], foods: Foods) -> list[Draft]:
    """The actions of the method, each with its stated time or the verb's usual one."""
    drafts: list[Draft] = []
    for event in events:
        verb, time = event.verb, event.action.time
        minutes = time.high if time else verb.minutes
        heat = verb.role == "heat"
        lane = verb.tool or _TOOL_OF_MEDIUM.get(verb.medium, "") if heat or verb.tool else ""
        if not lane and verb.hands >= AWAY_FROM_HANDS:
            lane = "hands"
        lines = event.pot if event.pot else event.lines
        if verb.role == "serve" and event.bowl == "family":  # with all that was cooked for them
            lines = tuple(dict.fromkeys((*lines, *(line for draft in drafts for line in draft.lines))))
        label = _label(recipe, event, verb, foods)
        before = drafts[-1] if drafts else None
        if heat and before and before.heat and before.lane == lane and _fats(before.lines, recipe, foods):
            lines = tuple(dict.fromkeys((*lines, *before.lines)))  # the fat is hot before anything goes into it
        if time and event.action.last and verb.role == "join" and before and before.heat and before.minutes > minutes:
            # "steam for 20 minutes, adding the pear for the last 8": within the 20, not after them
            before.minutes -= minutes
            drafts.append(Draft(label, verb.minutes, verb.hands, lane, event.step, lines, bowl=event.bowl))
            on = Draft(before.label, minutes, before.hands, before.lane, event.step, lines, True, bowl=before.bowl)
            drafts.append(on)
            continue
        drafts.append(Draft(label, minutes, verb.hands, lane, event.step, lines, heat, time is None, event.bowl))
    return _ready_for_the_fat(drafts, recipe, foods)


def _ready_for_the_fat(drafts: Sequence[Draft], recipe: Recipe, foods: Foods) -> list[Draft]:
    """Nobody melts butter and then cuts the leek: what goes into the fat is ready before the fat is hot."""
    ordered = list(drafts)
    for at in range(len(ordered) - 2, -1, -1):
        if not (ordered[at].heat and _fats(ordered[at].lines, recipe, foods)):
            continue
        fat = ordered.pop(at)
        while at < len(ordered) - 1 and ordered[at].lane == "hands" and not set(ordered[at].lines) & set(fat.lines):
            at += 1
        fat.behind = ordered[at].lines
        ordered.insert(at, fat)
    return ordered


def _label(recipe: Recipe, event: Event, verb: Verb, foods: Foods) -> str:
    """What is done, to what: a pot by what cooks in it, not by the spice that goes in last."""
    words = _LABELS.get(verb.id, verb.id.replace("-", " "))
    if verb.id == "core":
        said = recipe.document.at(event.action.span).split()
        words = said[0].lower() if said and said[0].isalpha() else words
    named = event.action.foods or (event.lines if len(event.lines) <= 2 else ())
    names = [recipe.foods[i].name for i in named if 0 <= i < len(recipe.foods)]
    whole = event.action.everything or (not names and event.lines) or _is_more(event, verb, named, recipe, foods)
    if whole:
        pot = "the baby's portion" if event.bowl == "baby" else "everything in the pot"
        names = [pot] if verb.role in ("heat", "blend", "cool") or event.bowl == "baby" else []
    if verb.id == "lift-out" and not event.action.foods and recipe.steps[event.step].splits:
        names = ["the baby's portion"]
    elif verb.id == "lift-out":
        words = "take out"
    text = f"{words}: {', '.join(names)}" if names else words
    return text[:1].upper() + text[1:]


def _is_more(event: Event, verb: Verb, named: Sequence[int], recipe: Recipe, foods: Foods) -> bool:
    """Whether more is cooked or mashed than is named: "simmer with the cinnamon", "mash with the egg"."""
    others = set(event.lines) - set(named)
    if not others or verb.role not in ("heat", "blend"):
        return False
    return verb.role == "blend" or all(_flavours(recipe.foods[i], foods) for i in named)


def _fats(lines: Sequence[int], recipe: Recipe, foods: Foods) -> bool:
    """Whether these food lines are nothing but fat or oil."""
    found = [food for i in lines if (food := foods.get(recipe.foods[i].food or "")) is not None]
    return bool(lines) and len(found) == len(lines) and all(food.group in _FATS for food in found)


def _flavours(line: FoodLine, foods: Foods) -> bool:
    food = foods.get(line.food) if line.food else None
    return food is not None and food.group in ("herb", "spice", *_FATS)
