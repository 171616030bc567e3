"""What the kitchen makes of a dish, as the rules about cooking ask for it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.cooking.pots import Kitchen
from spoonproof.cooking.softness import Need
from spoonproof.cooking.story import Event, Story, total
from spoonproof.cooking.time_row import STRETCH
from spoonproof.cooking.treatment import cut_when_heated, judge, method_of, softens_as
from spoonproof.dish import Dish
from spoonproof.feeding.heat import quick
from spoonproof.feeding.wording import listed
from spoonproof.model.durations import HOURS_FROM, lasting
from spoonproof.model.finding import Bowl, Level, SourceRef
from spoonproof.model.recipe import Minutes
from spoonproof.model.text import Span
from spoonproof.model.treatment import Softness
from spoonproof.reading.times import SQUASH

FINE = ("smooth", "thick")  # textures that leave no pieces
METHOD_WORDS = {
    "steam": "steaming",
    "boil": "boiling or simmering",
    "oven": "in the oven",
    "fry": "in the pan",
    "microwave": "in the microwave",
    "pressure": "under pressure",
    "soak": "soaking",
}


def judged(dish: Dish, story: Story) -> tuple[Softness, Need | None]:
    """How soft a food comes out, and the need it was measured by."""
    own = story is dish.walked.stories[story.index]  # some rules ask of a story as it would be without a part of it
    softness, need = dish.softened[story.index] if own else judge(story, dish.knowledge.cook_times)
    return softness, need


def cooked(story: Story) -> Minutes | None:
    """All the stated minutes in the heat."""
    return total([heat for heat in story.heats if method_of(heat)])


def time_span(kitchen: Kitchen, story: Story) -> Span:
    """Where the time of the longest stretch of heat is written; else the verb of the last stretch, else the line."""
    heated = [event for event in kitchen.events if event.verb.role == "heat" and story.index in event.pot]
    timed = [event for event in heated if event.action.time is not None]
    if timed:
        longest = max(timed, key=_high)
        return longest.action.time_span or longest.action.span
    return heated[-1].action.span if heated else story.line.span


def _high(event: Event) -> float:
    return event.action.time.high if event.action.time else 0.0


_FINE_MM = 4.0  # finely chopped
_FINE_SHAPES: tuple[str, ...] = ("grated", "shredded", "minced", "puréed", "mashed")

# hard roots that are eaten raw when grated, unlike potato, cassava or taro (common practice)
_NEVER_RAW = ("meat", "poultry", "offal", "fish", "shellfish", "egg", "pulse")
_RAW_WHEN_GRATED = frozenset("carrot baby-carrot beetroot celeriac mooli parsnip radish swede turnip".split())


def fine_raw(story: Story) -> bool:
    """Whether it is soft, or cut so fine, that it may be eaten raw: warming it through is then no cooking."""
    if story.food is not None and story.food.hardness == "soft" and story.food.group in ("fruit", "vegetable"):
        return True  # a tomato is soft before it is cooked
    if story.food is None or not story.cuts or story.food.group in _NEVER_RAW:
        return False
    if story.food.group == "fruit":
        return story.line.has("ripe") or any(cut.shape in _FINE_SHAPES for cut in story.cuts)
    # a later cut is often one of the whole dish: the omelette's strips leave its onion as fine as it was
    fine = any(cut.high_mm is not None and cut.high_mm <= _FINE_MM for cut in story.cuts)
    grated = any(cut.shape in ("grated", "shredded") for cut in story.cuts)
    return (story.food.hardness in ("firm", "leaf") and fine) or (grated and story.food.id in _RAW_WHEN_GRATED)


_WELL_BELOW = 0.45  # of the time in boiling water: below it no frying makes a piece soft (common practice)


def fried_short(dish: Dish, story: Story) -> Need | None:
    """What boiling would need, where a hard food that the table has no frying time for is only fried, and for well
    below half of that."""
    food, time = story.food, cooked(story)
    if food is None or time is None or story.tested or fine_raw(story) or blended_raw(story):
        return None
    if story.line.has("ripe"):
        return None  # a ripe plantain or pear is soft before the pan
    if food.hardness not in ("hard", "firm") or food.group not in ("vegetable", "fruit"):
        return None
    methods = {method_of(heat) for heat in story.heats} - {""}
    if methods != {"fry"} or any(heat.minutes is None for heat in story.heats if method_of(heat)):
        return None
    times = dish.knowledge.cook_times
    need = times.needed(softens_as(food, times), cut_when_heated(story), "boil")
    return need if need is not None and time.high < _WELL_BELOW * need.soft.low else None


def melts_in(story: Story) -> bool:
    """Whether it is grated or minced, so that it is meant to melt into the dish: ginger is not spent in a sauce."""
    return any(cut.shape in _FINE_SHAPES for cut in story.cuts)


def blended_raw(story: Story) -> bool:
    """Whether it was blended before any heat: a batter has no pieces that could stay hard."""
    first = min((heat.step for heat in story.heats if method_of(heat)), default=None)
    cut = cut_when_heated(story)
    if first is not None and (story.blended_first or (cut is not None and cut.shape == "ground")):
        return True  # also where what came of it is mashed in the end
    return story.made in FINE and story.made_step is not None and first is not None and story.made_step < first


KNIFE_TEST = re.compile(
    r"\b(?:knife|skewer|fork|point)\b[^.;]{0,20}\b(?:slid|slip|go|glid|sink)\w*\b[^.;]{0,12}\b(?:in|into|through)\b",
    re.IGNORECASE,
)

SAID_SOFT = re.compile(r"\b(?:until|till|and)\b[^.;]{0,30}\b(?:soft|tender|melting)\b", re.IGNORECASE)
_THROUGH = re.compile(r"\b(?:cooked (?:right )?through|soft|tender)\b", re.IGNORECASE)
_CAKE_MINUTES = 8.0  # a potato cake of raw, grated potato, both sides together (common practice)


def grated_through(dish: Dish, story: Story, time: Minutes) -> bool:
    """Whether it is grated and fried as a cake until it is cooked through."""
    fine = any(cut.shape in ("grated", "shredded") for cut in story.cuts)
    fried = any(heat.medium == "fat" for heat in story.heats)
    said = any(_THROUGH.search(dish.recipe.steps[heat.step].text) for heat in story.heats)
    return fine and fried and said and time.high >= _CAKE_MINUTES


def soft_by_a_test(dish: Dish, story: Story) -> bool:
    """Whether a squash test ends its heat; where it is mashed, a knife test or "until soft": the hard will not mash."""
    if story.tested or story.made not in ("mashed", *FINE):
        return story.tested
    if story.food is not None and story.food.group == "fruit":
        return True  # the masher tells
    texts = [dish.recipe.steps[heat.step].text for heat in story.heats]
    return any(KNIFE_TEST.search(text) or SAID_SOFT.search(text) for text in texts)


def late(dish: Dish, kitchen: Kitchen) -> dict[int, tuple[Story, Need]]:
    """Foods that stay hard only because they join late: line -> (a food that was in the pot before, the need)."""
    found: dict[int, tuple[Story, Need]] = {}
    for story in kitchen.stories:
        softness, need = judged(dish, story)
        mine = cooked(story)
        if (
            softness not in ("hard", "crisp-tender")
            or need is None
            or mine is None
            or fine_raw(story)
            or quick(dish.treatments[story.index], story.food)
            or _named_in_its_test(dish, story)
        ):
            continue
        for other in kitchen.stories:
            theirs = cooked(other)
            if other is story or theirs is None or not _share_pot(story, other) or not other.solid:
                continue
            if other.fat or other.flavours:
                continue  # the butter that the onion sweats in, the bay leaf
            first_in = (other.joined or 0) < (story.joined or 0)
            if first_in and round(mine.high) < round(need.soft.low) <= theirs.high:
                found[story.index] = (other, need)
                break
    return found


_EVERY_PIECE = re.compile(r"\b(?:everything|each|every|all|both|any|the veg(?:etables)?)\b", re.IGNORECASE)


def _named_in_its_test(dish: Dish, story: Story) -> bool:
    """Whether the squash test that ends its heat is made on this very food, or on every piece: "until a cube of potato
    squashes between your fingers". A test of another piece tells nothing of one that went in late."""
    if not story.tested:
        return False
    steps = dish.recipe.steps
    last = max(heat.step for heat in story.heats)
    words = [word.rstrip("es") for word in story.line.name.lower().split() if len(word) > 3]
    for step in steps[last : last + 2]:
        for found in SQUASH.finditer(step.text):
            clause = step.text[max(0, found.start() - 60) : found.end()].lower()
            clause = re.split(r"[.;]|\b(?:until|when|once|till|check|test)\b", clause)[-1]
            if _EVERY_PIECE.search(clause) or any(word in clause for word in words):
                return True
    return False


def _share_pot(one: Story, other: Story) -> bool:
    return bool(one.heats and other.heats and one.heats[-1] == other.heats[-1])


def minutes_words(minutes: Minutes) -> str:
    """A time as a cook says it: "18-22 minutes", "1 minute", "2 h 30 min", "12 days 12 hours"."""
    low, high = round(minutes.low), round(minutes.high)
    if low == high:
        return lasting(low)
    return f"{low}-{high} minutes" if high < HOURS_FROM else f"{lasting(low)} to {lasting(high)}"


def need_words(need: Need) -> str:
    """The range with what it rests on: "pieces of 25 mm need 20-52 minutes steaming to be soft (...)"."""
    piece = f"pieces of {need.mm:g} mm need" if need.mm is not None else "it needs"
    rests = []
    if need.stretched:
        low, high = STRETCH
        rests.append(f"published times give crisp-tender and are stretched {low:g} to {high:g} times for a baby")
    if need.stand_in:
        rests.append(f"times for {METHOD_WORDS.get(need.stand_in, need.stand_in)} stand in")
    if need.beyond:
        rests.append("no published time is near this size")
    if not need.published:
        rests.append("by common practice")
    tail = f" ({'; '.join(rests)})" if rests else ""
    return f"{piece} {minutes_words(need.soft)} {METHOD_WORDS.get(need.method, need.method)} to be soft{tail}"


def need_sources(need: Need) -> tuple[SourceRef, ...]:
    """The sources of both ends of the range."""
    rows = dict.fromkeys((need.low_row, need.high_row))
    refs = (SourceRef("" if row.source == "common-practice" else row.source, row.note, row.basis) for row in rows)
    return tuple(dict.fromkeys(ref._replace(id=ref.id or "common-practice") for ref in refs))


def severity(dish: Dish, story: Story, need: Need) -> tuple[Level, Bowl | None]:
    """How bad it is that a food is not soft: hard pieces in a baby's bowl are an error."""
    if story.bowl == "family":
        return "warning", "family"
    rests_on_memory = "from-memory" in (need.low_row.basis, need.high_row.basis)
    pieces = story.made not in FINE
    hard = story.food is not None and story.food.hardness == "hard"
    if pieces and hard and not story.tested and dish.recipe.youngest < 24 and not rests_on_memory:
        return "error", "baby"
    return "warning", "baby" if pieces else None


def names(stories: Sequence[Story]) -> str:
    """ "carrots and parsnips"."""
    return listed([story.line.name for story in stories])
