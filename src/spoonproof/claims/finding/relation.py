"""The words a claim relates to, with the lexicon's own name for them where that is another."""

from __future__ import annotations

import re

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.number import age_text
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

NUTRIENTS = frozenset(
    "nutrient nutrient-weak ambiguous-nutrient energy contaminant additive unsweetened label-abroad".split()
)
_AUDIENCE = frozenset({"audience-baby", "audience-adult"})
_AGES = frozenset({"age", "age-unit"})
_AGE_REACH = 16  # items
_NUMBER = frozenset({"number"})
_TAKING_UP = re.compile(
    r"(?:(?:better|easily|poorly|well|readily|more|most|less) )?"
    r"(?:absorb(?:ed)?|absorption|(?:take|taken|taking) (?:up|in)|uptake|bioavailable)"
)
_OF_THE_BODY = ("function", "comparative")
_TAKEN_REACH = 5  # items
_SAYING = frozenset({"copula", "pronoun", "negation", "bound", "for"})
_FOR = frozenset({"for"})
_DONE_GOOD = frozenset({"effect", "effect-weak", "body", "inner-body"})
_SPREAD = frozenset({"per-day", "per-week"})
_PER = _SPREAD | {"per-portion"}


def relates_to(tagged: Tagged, match: Match, effect: str | None, nutrients: tuple[str, ...]) -> str | None:
    """The words it relates to, with the lexicon's own name for them where that is another."""
    kind = match.rule.kind
    start, end = match.object or match.trigger
    if kind == "safety-age" and (age := age_text(tagged, match)):
        danger = effect if effect != "age" and not tagged.find(_AGES, start, end) else None
        return f"{age}, {_name(danger)}" if danger else age
    whose = (kind == "general-benefit" or match.rule.name == "needs") and _whose(tagged, match)
    if kind == "quantity" or match.rule.name in _WITH_TRIGGER or whose:
        start, end = min(start, match.trigger[0]), max(end, match.trigger[1])
    if match.rule.name == "is-so-much":
        end = _of_what(tagged, end)
    if kind == "quantity":
        ends = tagged.find(_PER, end, end + 4)
        end = ends[0] + 1 if ends else end
    said = tagged.words(start, end)
    names = [_name(n) for n in ((effect,) if effect and effect != "age" else nutrients[:4])]
    if kind in _OF_THE_BODY and (taken_up := _taken_up(tagged, start, end)):
        names.append(taken_up)
    if kind == "safety-age" and (effect == "readiness-signs" or (effect == "age" and _whose(tagged, match))):
        names.append(_age_beside(tagged, match.end))
    if match.rule.name == "needs" and tagged.find(_AUDIENCE, start, match.trigger[0]):
        names.extend([tagged.words(*match.trigger), "importance", _what_for(tagged, match.end)])
    if kind == "process" and match.object is not None:
        names.append(tagged.words(*match.trigger).lower())
    if kind == "quantity" and (spread := tagged.find(_SPREAD)):
        names.append("weekly" if any("week" in tagged.items[at].words for at in spread) else "daily")
    spoken = set(re.findall(r"[a-z]+", said.lower()))
    new = [n for n in names if n and n.split()[0] not in spoken]
    return f"{said} ({', '.join(new)})" if new else said


_WITH_TRIGGER = ("free-from", "is-needed", "against-anything", "wait-between-foods", "outgrown")


def _whose(tagged: Tagged, match: Match) -> bool:
    """Whether the object is only who is done good: "*wonderful for* toddlers"."""
    return match.object is not None and bool(tagged.find(_AUDIENCE, *match.object))


def _what_for(tagged: Tagged, end: int) -> str:
    """What a need is said to be for: "babies need fat in their meals *for brain development*"."""
    purpose = next(iter(tagged.find(_FOR, end, end + _TAKEN_REACH)), len(tagged.items))
    said = tagged.find(_DONE_GOOD, purpose, purpose + 4)
    return tagged.items[said[0]].words if said else ""


def _taken_up(tagged: Tagged, start: int, end: int) -> str:
    """What it is that the body takes up, where only that it does was matched: "helps him take up *the vitamin K*",
    "makes *the iron* easier to absorb"."""
    said = fold(tagged.words(start, end))
    if _TAKING_UP.fullmatch(said) is None:
        return ""  # "calcium absorption" says what
    beside = tagged.find(NUTRIENTS, end, end + _TAKEN_REACH)
    if not beside and (said.endswith(("ed", "able", "ion")) or tagged.items[start - 1].words == "to"):
        beside = tagged.find(NUTRIENTS, max(0, start - _TAKEN_REACH), start)[-1:]
    return tagged.items[beside[0]].words if beside else ""


def _age_beside(tagged: Tagged, end: int) -> str:
    """The age that a sentence goes on to name: "babies can have it as part of a meal *from six months*"."""
    for at in tagged.find(_AGES, end, end + _AGE_REACH):
        first = at - 1 if tagged.has(at, "age-unit") else at
        if tagged.has(at, "age") or tagged.is_any(first, _NUMBER):
            return tagged.words(first, at + 1)
    return ""


def _of_what(tagged: Tagged, end: int) -> int:
    """The end of what a share is a share of: "96% *water*"."""
    while end < len(tagged.items) and tagged.symbols[end] not in ".?,:()" and not tagged.is_any(end, _SAYING):
        end += 1
        if tagged.items[end - 1].words not in ("of", "pure", "just", "only"):
            break
    return end


_NAMES = {
    "bones": "bone health",
    "skin": "skin health",
    "gut": "stomach",
    "cells": "cell protection",
    "lactation": "breast milk",
}


def _name(identifier: str) -> str:
    """The readable name of an id: "vitamin_c_mg" is "vitamin c", "brain-development" "brain development"."""
    if identifier in _NAMES:
        return _NAMES[identifier]
    return re.sub(r"_(?:g|mg|ug|kcal|rae_ug)$", "", identifier).replace("_", " ").replace("-", " ")
