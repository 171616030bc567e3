"""What the heat makes of a food: cooked, soft or still firm, an egg solid or runny, raw until a later step."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from spoonproof.feeding.baby_steps import baby_text, only_family
from spoonproof.feeding.step_words import (
    BOILED_HARD,
    COOK,
    EGG_FIRM,
    EGG_WORDS,
    LAST_MINUTES,
    SET_IN_HEAT,
    SLOW,
    SOFT_END,
    UNDERDONE,
    WITHIN,
)
from spoonproof.feeding.words import keys
from spoonproof.model.food import Food
from spoonproof.model.recipe import Recipe
from spoonproof.model.treatment import Heat, Treatment


def from_heat(treatment: Treatment | None, texts: Sequence[str], food: Food | None, facts: set[str]) -> None:
    """Add what the heat makes of a food: cooked, soft, underdone, soaked or raw."""
    softness = treatment.softness if treatment else "not-judged"
    heats = [heat for heat in treatment.heats if heat.medium not in ("none", "cold")] if treatment else []
    # Where the cooking room could not place the food at all, a step that names both it and heat counts as heat.
    unplaced = (treatment is None or treatment.joined is None) and any(COOK.search(text) for text in texts)
    bought_cooked = food is not None and food.state in ("cooked", "canned")
    if heats or unplaced or bought_cooked:
        facts.add("cooked")
    if softness in ("soft", "spent", "maybe-soft"):
        facts.add("soft")
    if softness in ("hard", "crisp-tender") and any(SOFT_END.search(text) for text in texts):
        facts |= {"soft", "cooked"}  # where the time disagrees with the end point, the cooking room says so
    elif softness in ("hard", "crisp-tender") and "tinned" not in facts and not bought_cooked:
        facts |= {"underdone", "cooked"}
    if not _boiled(heats, texts) and (
        any(heat.verb == "slow-cook" for heat in heats) or any(SLOW.search(text) for text in texts)
    ):
        facts.add("slow-cooked")
    if heats and not any(heat.medium in ("water", "pressure") for heat in heats):
        facts.add("never-boiled")
    if treatment and treatment.soaked_minutes > 0:
        facts.add("soaked")
    if _cut_short(treatment, texts, food):
        facts.add("seared")
    cores = [core for text in texts for core in _cores(text)]
    if cores and cores[-1] < _CORE_C:  # the last that is said
        facts.add("core-low" if cores[-1] < _BARELY_C else "core-short")
    if "cooked" not in facts:
        # Words speak of "raw beans" too; that no step cooks them is of a recipe alone.
        facts |= {"raw", "uncooked"}


_SEARED_MINUTES = 3.0  # both sides together; a piece of meat is raw inside after so little (common practice)
_DRY_HEAT = frozenset({"fat", "pan"})
_OF_ANIMALS = frozenset({"meat", "poultry", "offal", "fish", "shellfish"})
_COOKED_THROUGH = re.compile(
    r"\b(?:(?:cook(?:ed)?|done|hot|opaque|white|set|firm|brown(?:ed)?|flak\w+|way|right)(?: \w+)? through"
    r"|no (?:\w+ )?pink|not pink|no longer pink|run clear|well[- ]done|opaque|crisp\w*|\d ?°? ?C inside)\b"
    r"|\b(?:wafer|paper)[- ]thin\b|\b(?:comes?|falls?) apart\b|\b(?:until|till|when|once)\b[^.;]{0,40}\bflak",
    re.I,
)


def quick(treatment: Treatment | None, food: Food | None) -> bool:
    """Whether it is of an animal and done in a short time: cooked to be safe and not for tenderness."""
    needed = treatment.needed if treatment is not None else None
    return food is not None and food.group in _OF_ANIMALS and needed is not None and needed.low < _LONG_STEWED


_CORE_C = 70.0  # University of Nottingham, core temperature (nottingham-core): 70 °C for two minutes
_BARELY_C = 63.0  # below it a joint is rare in the middle (from memory, so it only parts a warning from an error)
_CORE = re.compile(
    r"\b(?:inside|internal|core|cent(?:re|er)|middle|thermometer|probe|registers?|reads?|reach(?:es|ed)?"
    r"|(?:cook|grill|fry|sear|griddle)(?:ed)?(?: it| them)? to)\b[^.;]{0,40}?"
    r"\b(?P<degrees>\d{2,3}) ?(?:°|º|degrees?)? ?(?P<scale>[CF])\b",
    re.I,
)


@lru_cache(maxsize=4_000)
def _cores(text: str) -> tuple[float, ...]:
    """The heats in the middle, in °C, at which a step says that something is done: asked for each food in it."""
    said = (match for match in _CORE.finditer(text) if not re.search(r"\boven\b", match[0], re.I))
    heats = ((float(match["degrees"]), match["scale"] in "cC") for match in said)
    return tuple(degrees if celsius else (degrees - 32) / 1.8 for degrees, celsius in heats)


_LONG_STEWED = 60.0  # minutes from which a meat is cooked for its tenderness (common practice)


def _cut_short(treatment: Treatment | None, texts: Sequence[str], food: Food | None) -> bool:
    """Whether the heat is too short for raw meat or fish, and nothing says that it is cooked through: "1 minute on each
    side"."""
    if treatment is None or food is None or food.group not in _OF_ANIMALS or food.state != "raw":
        return False
    heats = [heat for heat in treatment.heats if heat.medium not in ("none", "cold")]
    if not heats or any(heat.minutes is None for heat in heats):
        return False
    minutes = sum(heat.minutes.high for heat in heats if heat.minutes is not None)
    seared = minutes <= _SEARED_MINUTES and all(heat.medium in _DRY_HEAT for heat in heats)
    short = quick(treatment, food) and treatment.softness in ("hard", "crisp-tender")
    return (seared or short) and not any(_COOKED_THROUGH.search(text) for text in texts)


_BOILS = frozenset({"boil", "parboil", "blanch", "bring-to-the-boil"})


def _boiled(heats: Sequence[Heat], texts: Sequence[str]) -> bool:
    """Whether it is boiled itself ("boil the rice" boils no beans): by its own heats, else by the words about it."""
    if heats:
        return any(heat.medium == "pressure" or heat.verb in _BOILS for heat in heats)
    return any(BOILED_HARD.search(text) for text in texts)


def left_underdone(texts: Sequence[str], *, bakes: bool = False) -> bool:
    """Whether a sentence about the egg ends with it soft ("take them off while they are still wet"), or with what it
    is in soft within ("so that the centre still runs"), unless it ``bakes`` in a dough."""
    for text in texts:
        for sentence in re.split(r"[.](?:\s|$)", text):
            about = EGG_WORDS.search(sentence) or (not bakes and WITHIN.search(sentence))
            match = UNDERDONE.search(sentence) if about else None
            if match and not EGG_FIRM.search(sentence[: match.start()]):
                return True
        if (match := _COVERED_OFF_HEAT.search(text)) and not SET_IN_HEAT.search(text[match.start() :]):
            return True
    return False


# "crack the eggs into the sauce, put the lid on and turn the heat off": what heat is left sets no yolk
_COVERED_OFF_HEAT = re.compile(
    r"\b(?:break|crack|slide|slip|drop)\b(?: in| \w+){0,2}? eggs?\b[^.;]{0,90}"
    r"\b(?:(?:turn|switch|take)\w* (?:off the (?:heat|hob|gas|ring|flame)|(?:the |it )?(?:\w+ )?off)|off the heat)\b",
    re.I,
)
_FIRM_YOLK_MINUTES = 7.0  # an egg in its shell or poached is soft inside before that (common practice)
_FRIED_YOLK_MINUTES = 4.0  # a fried egg is, unless it is turned over (common practice)
_BEATEN = re.compile(r"\b(?:beat|whisk|stir|mix|scrambl)", re.I)
_TURNED = re.compile(r"\b(?:turn|flip|both sides|each side|side|lid|cover|hard|firm|solid|through)", re.I)


def boiled_briefly(recipe: Recipe, index: int) -> bool:
    """Whether a whole egg is boiled, poached or fried by itself for less than makes a firm yolk."""
    foods = recipe.foods
    before = foods[index].text
    for step in recipe.steps:
        named = {i for action in step.actions for i in action.foods}
        if index not in named:
            continue
        if _BEATEN.search(before) or any(action.verb in ("beat", "whisk") for action in step.actions):
            return False
        before += f" {step.text}"
        beside = {i for i in named - {index} if foods[i].food != "water" and not keys(foods[i].name) & FATS}
        for action in step.actions:
            if beside & (set(action.foods) or named):
                continue
            minutes = action.time.high if action.time is not None else _FIRM_YOLK_MINUTES
            boiled = action.verb == "poach" or (action.verb in ("boil", "simmer") and index in action.foods)
            fried = action.verb == "fry" and not _TURNED.search(step.text)
            if (boiled and minutes < _FIRM_YOLK_MINUTES) or (fried and minutes < _FRIED_YOLK_MINUTES):
                return True
    return False


_DOUGH = frozenset({"flour", "oat", "oatmeal", "semolina", "cornmeal", "polenta", "breadcrumb"})
_DOUGH_GRAMS = 40  # of flour an egg, from which it is a biscuit or a cake and no custard (common practice)
_GRAMS = {"g": 1.0, "kg": 1000.0, "oz": 28.35, "cup": 120.0, "tbsp": 8.0}


def in_a_dough(recipe: Recipe, index: int) -> bool:
    """Whether flour or oats enough for a dough stand beside the egg: "until just set" is said of the biscuit then."""
    eggs = recipe.foods[index].amount
    count = float(eggs.high) if eggs is not None and eggs.unit == "piece" else 1.0
    flour = sum(
        float(one.amount.low) * _GRAMS.get(one.amount.unit, 0.0)
        for one in recipe.foods
        if one.amount is not None and keys(one.name) & _DOUGH
    )
    return flour >= _DOUGH_GRAMS * max(count, 1.0)


_COLD = frozenset({"soak", "chill", "rest", "cool", "stand", "freeze", "marinate", "leave", "steep"})


def timed_into_the_pot(recipe: Recipe, index: int) -> bool:
    """Whether a step adds the food for some minutes to what is already cooking ("add the leek for 10 minutes")."""
    cooking = False
    for step in recipe.steps:
        cooking = cooking or bool(COOK.search(step.text))
        if cooking and index in {i for a in step.actions for i in a.foods} and LAST_MINUTES.search(step.text):
            return True
        for action in step.actions:
            timed = action.time is not None and action.time.low >= 2
            if cooking and timed and index in action.foods and action.verb not in _COLD:
                return True
    return False


_MIXTURE = re.compile(
    r"\b(?:mix|mixture|batter|dough|patt(?:y|ies)|fritters?|pancakes?|spoonfuls?|omelette|muffins?|everything|frittata"
    r"|cakes?|custard|meatballs?|burgers?)\b",
    re.I,
)

_ON_HEAT = re.compile(r"\b(?:pan|skillet|griddle|tawa|kadhai|wok|hotplate|plancha|oven|heat)\b", re.I)
# "do not let it cook again", "it must not see the flame again or it turns to scramble"
_NO_HEAT = re.compile(
    r"\b(?:not|don['’]t|never|without|no need to)\b(?:[^.;,]{0,30}\b(?:or|lest)\b[^.;,]{0,40}|[^.;,]{0,30})"
    r"|\b(?:own|residual|remaining|leftover|last of the|off the|from the) (?:heat|warmth)\b"
    r"|\b(?:while|as|if)\b[^.;,]{0,80}(?=,)",  # "while everything is cooked, beat the eggs", "if it is too hot, ..."
    re.I,
)
_COLD_SET = re.compile(r"\b(?:chill|fridge|freez|refrigerat|cold)\w*", re.I)
FATS = frozenset({"butter", "oil", "ghee", "lard", "dripping", "spread", "margarine"})
COOKED_IN = FATS | {"water", "stock", "broth"}


def heated_later(recipe: Recipe, texts: Sequence[str]) -> bool:
    """Whether what the food went into is put into heat at or after its step ("fry spoonfuls of the batter")."""
    met = False
    mates: set[int] = set()
    for step in recipe.steps:
        if only_family(step):
            continue
        text = baby_text(step)
        heat = _NO_HEAT.sub(" ", text)
        named = {i for action in step.actions for i in action.foods}
        if all(keys(recipe.foods[i].name) & FATS for i in named):
            named = set()
        if text in texts:
            met = True
            mates |= named
        if met and SET_IN_HEAT.search(text) and _ON_HEAT.search(text) and not _COLD_SET.search(text):
            return True  # "pour thin layers into a pan and roll up each, until set right through"
        if met and COOK.search(heat) and (text in texts or not named or named & mates or _MIXTURE.search(text)):
            return True
    return False
