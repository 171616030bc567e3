"""What the words of a food line say of the food, before any step: its cut, its state, what was taken out of it."""

from __future__ import annotations

import re

from spoonproof.feeding.step_words import (
    BONE_IN,
    COARSE,
    COOKED_WORDS,
    FINELY,
    FROM_THE_COW,
    IN_FOUR,
    LOW_SALT,
    NO_SALT,
    PREPARED,
    RAW_MILK,
    TINY_UNITS,
    WORD_FACTS,
)
from spoonproof.feeding.words import fold, keys
from spoonproof.model.recipe import FoodLine

_HARD_WORDS = frozenset({"hard", "crunchy", "crisp", "chewy", "gummy", "brittle", "unripe", "underripe", "round"})
_PUREED = frozenset({"puree", "pureed", "pouch"})
_WORDS = (
    ("in-shell", frozenset({"scrubbed", "debearded", "live", "purged"})),
    ("said-soft", frozenset({"soft", "silken", "tender", "smooth", "fluffy", "ripe"})),
    ("split", frozenset({"split", "dal", "dhal", "daal"})),
    ("a-little", frozenset({"squeeze", "splash", "dash"})),
)
_SAID = (
    ("no-salt", NO_SALT), ("low-salt", LOW_SALT), ("fine", FINELY), ("bone-in-word", BONE_IN),
    ("coarse", COARSE), ("unpasteurised", FROM_THE_COW),
    ("unpasteurised", RAW_MILK),  # "60 g raw-milk raclette", "curd made with raw milk"
    ("peeled", re.compile(r"\b(?:skin|skins|peel) (?:off|removed)\b|\bno skin\b", re.I)),
    ("quartered", IN_FOUR),
    ("boned", re.compile(r"\bbones? (?:removed|out|taken out)\b|\bpin[- ]?boned\b|\bno bones\b", re.I)),
    ("stoned", re.compile(r"\b(?:stones?|pits?) (?:removed|out|taken out)\b|\bde-stoned\b", re.I)),
    ("deseeded", re.compile(r"\b(?:seeds?|pips?) (?:removed|out|taken out)\b", re.I)),
    ("chunk", re.compile(r"\b(?:cut|scooped|made) in(?:to)? (?:\w+ )?balls\b|\bballed\b", re.I)),  # of melon
    ("destrung", re.compile(r"\b(?:strings?) (?:removed|pulled off|off)\b|\bde-?strung\b", re.I)),
    ("in-brine", re.compile(r"\bin (?:lightly )?salt(?:ed|y)? water\b", re.I)),
)  # fmt: skip
_SWEETENED_WITH = re.compile(r"\bsweetened (?:\w+ )?(?:with|by)\b", re.I)
_NOT_DONE = re.compile(r"\bnot (?:too )?[a-z]{3,}", re.I)  # "haddock (not smoked)"


def _of_its_own(line: FoodLine, choice: bool) -> str:
    """The words of a line without what "or" puts beside its food: "unsalted butter or fish sauce" salts no less."""
    text = line.text
    if choice:
        before = text.rfind(" or ", 0, max(0, text.find(line.name)))
        return text[before + 4 :] if before >= 0 else text
    for other in line.choices:
        at = text.find(other.name)
        before = text.rfind(" or ", 0, max(0, at))
        if other.text == line.text and before >= 0:
            text = text[:before] + text[at + len(other.name) :]
    return text


def from_words(line: FoodLine, facts: set[str], *, choice: bool = False) -> None:
    """Add what the line says of its food. ``choice``: the food is the one that "or" allows in another's place."""
    text = _of_its_own(line, choice)
    here = keys(_NOT_DONE.sub(" ", text))
    unit = line.amount.unit if line.amount else ""
    own = [word for word, _ in line.prepared if text == line.text or word.lower() in text.lower()]
    prepared = {fold(word) for word in own}
    said = (PREPARED.get(word, PREPARED.get(fold(word), "")) for word in own)
    facts |= {*said, *(WORD_FACTS.get(key, "") for key in here)} - {""}
    facts |= {fact for fact, pattern in _SAID if pattern.search(text)}
    facts |= {fact for fact, words in _WORDS if here & words}
    if _SWEETENED_WITH.search(text):
        facts.discard("sweetened")  # "with mashed banana"; with what else, the words name
    if here & _PUREED:
        facts.add("stoned")  # "fruit purée (peach, apricot)": no blender takes a stone
    if {"home", "made"} <= here:
        facts.add("homemade")
    if {"alcohol", "free"} <= here:
        facts.add("alcohol-free")
    if {"skin", "on"} <= here:
        facts.discard("peeled")
    if here & {"whole", "sabut", "makhani"}:
        facts.discard("split")
    if unit == "piece":
        facts.add("counted")
    if here & _HARD_WORDS and "boiled" not in here:
        facts.add("said-hard")
    if unit in TINY_UNITS:
        facts.add("tiny")
    if unit in {"tsp", "drop", "dash", "squeeze"}:
        facts.add("a-little")
    if line.state == "canned":
        facts.add("tinned")
    if "tinned" in facts or (here | prepared) & COOKED_WORDS or line.state in {"cooked", "canned"}:
        facts.add("cooked")
