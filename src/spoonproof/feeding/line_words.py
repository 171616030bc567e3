"""What the words of a food line say of the food, before any step: its cut, its state, what was taken out of it."""

from __future__ import annotations

import re

from spoonproof.feeding.step_words import (
    BONE_IN,
    COOKED_WORDS,
    FINELY,
    FROM_THE_COW,
    LOW_SALT,
    NO_SALT,
    PREPARED,
    RAW_MILK,
    TINY_UNITS,
    WORD_FACTS,
)
from spoonproof.feeding.words import fold, keys
from spoonproof.model.recipe import FoodLine

_HARD_WORDS = frozenset({"hard", "crunchy", "crisp", "chewy", "gummy", "brittle", "unripe", "round"})
_IN_SHELL_WORDS = frozenset({"scrubbed", "debearded", "live", "purged"})
_SOFT_WORDS = frozenset({"soft", "silken", "tender", "smooth", "fluffy", "ripe"})
_SPLIT_PULSES = frozenset({"split", "dal", "dhal", "daal"})

_NOT_DONE = re.compile(r"\bnot (?:too )?[a-z]{3,}", re.I)  # "haddock (not smoked)"


def from_words(line: FoodLine, facts: set[str]) -> None:
    """Add what the line says of its food."""
    text = line.text
    here = keys(_NOT_DONE.sub(" ", text))
    for word, _ in line.prepared:
        fact = PREPARED.get(word, PREPARED.get(fold(word), ""))
        if fact:
            facts.add(fact)
        if fold(word) in COOKED_WORDS:
            facts.add("cooked")
    for key in here:
        if fact := WORD_FACTS.get(key, ""):
            facts.add(fact)
    if here & _SPLIT_PULSES and not here & {"whole", "sabut", "makhani"}:
        facts.add("split")
    if NO_SALT.search(text):
        facts.add("no-salt")
    if LOW_SALT.search(text):
        facts.add("low-salt")
    if FINELY.search(text):
        facts.add("fine")
    if BONE_IN.search(text):
        facts.add("bone-in-word")
    if RAW_MILK.search(text) or FROM_THE_COW.search(text):
        facts.add("unpasteurised")  # "60 g raw-milk raclette", "curd made with raw milk"
    if re.search(r"\bsweetened (?:\w+ )?(?:with|by)\b", text, re.I):
        facts.discard("sweetened")  # "with mashed banana"; with what else, the words name
    if "home" in here and "made" in here:
        facts.add("homemade")
    if {"alcohol", "free"} <= here:
        facts.add("alcohol-free")
    if re.search(r"\b(?:skin|skins|peel) (?:off|removed)\b|\bno skin\b", text, re.I):
        facts.add("peeled")
    if re.search(r"\bbones? (?:removed|out|taken out)\b|\bpin[- ]?boned\b|\bno bones\b", text, re.I):
        facts |= {"boned"}
    if re.search(r"\b(?:stones?|pits?) (?:removed|out|taken out)\b|\bde-stoned\b", text, re.I):
        facts |= {"stoned"}
    if re.search(r"\b(?:seeds?|pips?) (?:removed|out|taken out)\b", text, re.I):
        facts |= {"deseeded"}
    if re.search(r"\b(?:cut|scooped|made) in(?:to)? (?:\w+ )?balls\b|\bballed\b", text, re.I):
        facts.add("chunk")  # "a melon, cut into balls"
    if re.search(r"\b(?:strings?) (?:removed|pulled off|off)\b|\bde-?strung\b", text, re.I):
        facts |= {"destrung"}
    if re.search(r"\bin (?:lightly )?salt(?:ed|y)? water\b", text, re.I):
        facts.add("in-brine")
    if "skin" in here and "on" in here:
        facts.discard("peeled")
    if line.amount and line.amount.unit == "piece":
        facts.add("counted")
    if here & _IN_SHELL_WORDS:
        facts.add("in-shell")
    if here & _HARD_WORDS and not here & {"boiled"}:
        facts.add("said-hard")
    if here & _SOFT_WORDS:
        facts.add("said-soft")
    if line.amount and line.amount.unit in TINY_UNITS:
        facts.add("tiny")
    if (line.amount and line.amount.unit in {"tsp", "drop", "dash", "squeeze"}) or here & {"squeeze", "splash", "dash"}:
        facts.add("a-little")
    if line.state == "canned":
        facts.add("tinned")
    if facts & {"tinned"} or here & COOKED_WORDS or line.state in {"cooked", "canned"}:
        facts.add("cooked")
