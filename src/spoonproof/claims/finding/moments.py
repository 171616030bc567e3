"""Matches of an age or a moment that no food is given at: a routine, a nap, a tale of who ran about."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, said_at, text_before
from spoonproof.claims.scan import Tagged

_EATEN = frozenset(
    "food dish generic-food solids hazard-food hazard-food-weak ambiguous-nutrient nutrient allergen-word eating fed "
    "milk-feed milk-drink drink-not-yet sweet-drink sweet-juice snack bottle contaminant additive baby-food".split()
)
_POINTING = frozenset("it they this these them its their that those which".split())
_AGE = frozenset({"age", "age-unit", "number"})
_BOUND = frozenset({"bound"})
_ALSO_BOUND = frozenset({"avoid", "okay", "give", "introduce", "forbid"})
_SLEEPS = frozenset({"sleep", "sleeping", "nap", "naps", "asleep"})
_WHEN = re.compile(
    r"\b(?:before|after|at|during|until|till|to|for|of|without|from|between) (?:a |an |the |his |her )?$"
)
_WAS = re.compile(r"\b(?:was|were) $")
_PLACE = re.compile(
    r"\b(?:places?|restaurants?|caf(?:e|é)s?|houses?|homes?|schools?|brands?) (?:[\w']+ ){0,4}(?:is|are"
    r"|were|was) (?:\w+ )?$"
)
_TASTY = re.compile(r"\b(?:\w+y|pur(?:é|e)ed|mashed|melted|baked|roasted|sweet|homemade|pumpkin|chocolate) $")
_HAD_ONE = re.compile(r"\b(?:had|has|have|having|with|got) an? (?:\w+ )?$")
_PERSON_SAFE = re.compile(
    r"\b(?:(?:my|our|his|her|your|the|their) (?:\w+ )?(?:child|children|kids?|kiddos?|son|daughter|baby"
    r"|boy|girl|family|tot)"
    r"|he|she|we|everyone|everybody|i|us|him|kiddos?)(?:'s|'re|'m)? (?:(?:will|would|can|is|are|was|were"
    r"|to|could|both|all) ){0,2}"
    r"(?:be |is |are |stay |stays |keep |kept |feel |feels |remain )(?:\w+ly )?$|\bsomewhere $|\b(?:keep"
    r"|keeps|keeping|kept)"
    r" (?:him|her|them|us|my|our|everyone|your)\b(?: \w+){0,2} $"
)
_SAFE_PLACES = frozenset("spot spots place places haven environment space school restaurant distance".split())
_SETTING = re.compile(
    r"\b(?:environment|atmosphere|routines?|habits?|schedules?|approach|setting|conversations?|games?|tone)"
    r",? (?:which|that) (?:\w+ ){0,3}$"
)
_OTHER_FOLK = re.compile(r"\b(?:different|other|many|our|all|various|across|some|most|asian|western|these|those) $")
_CUT = re.compile(r"cuts?(?: down| through| back)?\b|balances?\b|tames?\b|mellows?\b")


def _a_person(tagged: Tagged, match: Match) -> bool:
    """ "My child *will be safe*", "*somewhere safe* to eat": somebody or a place is."""
    begin, end = match.object or match.trigger
    if said_at(tagged, begin) != "safe":
        return False
    return said_at(tagged, end) in _SAFE_PLACES or _PERSON_SAFE.search(text_before(tagged, begin)) is not None


def _of_a_setting(tagged: Tagged, match: Match) -> bool:
    """ "A calm *atmosphere, which can help* him thrive": what does it is nothing eaten."""
    return _SETTING.search(text_before(tagged, match.trigger[0])) is not None


def _cultures(tagged: Tagged, match: Match) -> bool:
    """ "In *other cultures*": people, and none that live in yoghurt."""
    if match.object is None or said_at(tagged, match.object[0]) not in ("cultures", "culture"):
        return False
    return _OTHER_FOLK.search(text_before(tagged, match.object[0])) is not None


def _cuts_acidity(tagged: Tagged, match: Match) -> bool:
    """ "Butter *cuts the acidity*": the sauce's."""
    if match.object is None or said_at(tagged, match.object[0]) not in ("acidity", "acid"):
        return False
    return _CUT.match(said_at(tagged, match.trigger[0])) is not None


def _at_no_meal(tagged: Tagged, match: Match) -> bool:
    """ "Babies of eight weeks can enjoy *a routine*": nothing to eat is named or pointed at."""
    if match.object is None or not tagged.find(_AGE, *match.object) or len(tagged.items) < 8 or match.start < 2:
        return False
    return not tagged.find(_EATEN) and not any(item.words in _POINTING for item in tagged.items)


def _bounds_no_age(tagged: Tagged, match: Match) -> bool:
    """ "At two she needs a brush, and milk *before* bed ...": the word after the age bounds something else."""
    if match.object is None or match.trigger[0] < match.object[1]:
        return False
    at = match.trigger[0]
    return tagged.is_any(at, _BOUND) and not tagged.is_any(at, _ALSO_BOUND) and not tagged.find(_AGE, at + 1, at + 4)


def _bedtime(tagged: Tagged, match: Match) -> bool:
    """ "Milk *before sleep*": when it is drunk."""
    if match.object is None or said_at(tagged, match.object[0]) not in _SLEEPS:
        return False
    return _WHEN.search(text_before(tagged, match.object[0])) is not None


def _was_eaten(tagged: Tagged, match: Match) -> bool:
    """ "The children ran about, cake *was eaten*": a tale."""
    return _WAS.search(text_before(tagged, match.trigger[0])) is not None


def _a_place(tagged: Tagged, match: Match) -> bool:
    """ "A few *places* we know *are safe*": where somebody eats."""
    return _PLACE.search(text_before(tagged, (match.object or match.trigger)[0])) is not None


def _tasty_goodness(tagged: Tagged, match: Match) -> bool:
    """ "Some *puréed goodness*": something good to eat."""
    at = match.trigger[1] - 1
    return said_at(tagged, at) == "goodness" and _TASTY.search(text_before(tagged, at)) is not None


def _had_one(tagged: Tagged, match: Match) -> bool:
    """ "He *had a stomach* complaint": somebody did, and no food is said to act on it."""
    return match.object is not None and _HAD_ONE.search(text_before(tagged, match.object[0])) is not None


MOMENTS: Mapping[str, tuple[Ask, ...]] = {
    "can-at-age": (_at_no_meal,),
    "from-age": (_at_no_meal,),
    "ready-at-age": (_at_no_meal,),
    "may-have-at-age": (_at_no_meal,),
    "age-and-food": (_bounds_no_age,),
    "food-and-weak-function": (_bedtime, _had_one),
    "food-and-function": (_bedtime,),
    "fed-in-an-unsafe-place": (_was_eaten,),
    "safe": (_a_place, _a_person),
    "against-disease": (_of_a_setting, _cuts_acidity),
    "helps-a-function": (_of_a_setting,),
    "helps-someone": (_of_a_setting,),
    "nutrients-and-food": (_cultures,),
    "food-and-nutrients": (_cultures,),
    "health-good": (_tasty_goodness,),
}
"""Rule name and what to ask of its matches."""
