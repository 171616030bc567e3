"""Set-ups: where the camera stands and how the light is, read out of a shot's words; shots of one are filmed together.

Shot sizes and angles are the trade's own words (common practice, no source).
"""

from __future__ import annotations

import re

from spoonproof.dish import Dish
from spoonproof.model.kitchen import Verb
from spoonproof.model.recipe import Step
from spoonproof.model.record import dataclass

SIZES = {
    "ecu": "ECU", "cu": "CU", "close-up": "CU", "mcu": "MCU", "ms": "MS", "mws": "MWS", "ws": "WS", "wide": "WS",
    "ews": "EWS", "insert": "insert",
}  # fmt: skip
ANGLES = {"top": "top shot", "overhead": "top shot", "ots": "over the shoulder", "pov": "POV", "low": "low angle"}
MOVES = ("push-in", "slider", "pan", "tilt", "rack focus", "dolly", "handheld")
_PLACES = (
    ("high chair", ("baby", "chair", "lap")),
    ("board", ("board", "knife", "foods", "ingredients", "peel", "grate", "dice")),
    ("blender", ("blender",)),
    ("oven", ("oven", "tray")),
    ("hob", ("pan", "pot", "steamer", "steam", "hob", "ring", "frying")),
    ("table", ("bowl", "spoon", "plate", "fork", "table", "cube", "jar", "mash")),
)
_SHOT_OF_MEDIUM = {
    "steam": "MS hob, lid off the steamer, steam rising", "water": "MS hob, hands and pan", "fat": "CU pan on the hob",
    "oven": "MS oven, tray going in", "microwave": "MS bowl out of the microwave",
    "pressure": "MS hob, hands and pan",
}  # fmt: skip
_SHOT_OF_ROLE = {
    "blend": "CU bowl, from pieces to mash", "cut": "Top shot, knife and board", "serve": "CU bowl and spoon",
    "season": "CU hand over the pan", "split": "CU hands and pan", "soak": "Top shot, bowl of water",
    "chill": "MS bowl going into the fridge", "cool": "CU bowl, steam going off",
}  # fmt: skip


_LEAVES_IT_THERE = ("join", "season", "other")
_OFF_THE_HOB = re.compile(
    r"\boff the (?:heat|hob|ring|stove)\b|\bset aside\b|\bin(?:to)? an? (?:\w{1,20} )?(?:bowl|jug|dish|tin)\b", re.I
)
_SHOT_OF_SPLIT = "CU ladle, pan to small bowl"

_CAMERA_WORDS = re.compile(r"^(?:(?:ecu|cu|mcu|ms|mws|ws|ews|top shot|overhead|insert)\b[ ,:]{0,3})+", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Shot:
    """A shot's words in parts: "" where they do not say."""

    size: str
    angle: str
    movement: str
    subject: str
    setup: str


def read_shot(words: str) -> Shot:
    """Size, angle, movement, subject and set-up of a shot as written ("CU spoon lifting mash")."""
    lower = words.lower()
    tokens = re.findall(r"[a-z-]+", lower)
    size = next((SIZES[token] for token in tokens if token in SIZES), "")
    angle = next((ANGLES[token] for token in tokens if token in ANGLES), "eye level")
    movement = next((move for move in MOVES if f"{move} " in f"{lower} " and move != "pan"), "locked off")
    subject = _CAMERA_WORDS.sub("", words)
    place = next((name for name, marks in _PLACES if any(mark in tokens for mark in marks)), "kitchen")
    if "high chair" in lower:
        place = "high chair"
    camera = "camera overhead" if angle == "top shot" else "camera at eye level"
    return Shot(
        size or ("WS" if angle == "top shot" else "MS"), angle, movement, subject or words, f"{place}, {camera}"
    )


def shot_of(dish: Dish, step: Step) -> str:
    """How a step is filmed where its author does not say: by what is done in it."""
    verbs = [dish.knowledge.verbs.get(action.verb) for action in step.actions]
    for verb in verbs:
        if verb.tool == "blender":
            return "CU blender jug"
        medium = _medium(dish, step.index, verb) if verb.role == "heat" else ""
        if medium in _SHOT_OF_MEDIUM:
            return _SHOT_OF_MEDIUM[medium]
    if step.splits:
        return _SHOT_OF_SPLIT
    for verb in verbs:
        if verb.role in _SHOT_OF_ROLE:
            return _SHOT_OF_ROLE[verb.role]
        if verb.tool == "oven":
            return "MS oven, hand on the dial"
    return _SHOT_OF_MEDIUM["water"] if _on_the_hob(dish, step) else "MS hands and bowl"


def _medium(dish: Dish, step: int, verb: Verb) -> str:
    """What it cooks in: a "cook" is in water where the pot holds some, or grains that take it up."""
    if verb.medium != "pan":
        return verb.medium
    found = [
        (heat.medium, story)
        for story in dish.walked.stories
        for heat in story.heats
        if heat.step == step and heat.verb == verb.id
    ]
    wet = any(medium != "fat" or (story.food and story.food.hardness == "grain") for medium, story in found)
    return "water" if wet else "fat"


def _on_the_hob(dish: Dish, step: Step) -> bool:
    """Whether what a step puts together stands on the hot ring: the last thing done with its pot was to heat it."""
    events = dish.walked.events
    pot = {line for event in events if event.step == step.index for line in event.pot}
    done = [event for event in events if event.step < step.index and pot & set(event.pot)]
    last = next((event for event in reversed(done) if event.verb.role not in _LEAVES_IT_THERE), None)
    if last is None or last.verb.role != "heat" or _medium(dish, last.step, last.verb) not in ("water", "fat"):
        return False
    return not any(_OFF_THE_HOB.search(each.text) for each in dish.recipe.steps[last.step : step.index + 1])
