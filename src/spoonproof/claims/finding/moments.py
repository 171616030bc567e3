"""Matches of an age or a moment that no food is given at: a routine, a nap, a tale of who ran about."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, end_of, said_at, text_after, text_before
from spoonproof.claims.lexicon import fold
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
_TASTY = re.compile(r"\b(?:\w+y|pur(?:é|e)ed|mashed|melted|baked|roasted|sweet|homemade|pumpkin|chocolate) $")
_HAD_ONE = re.compile(r"\b(?:had|has|have|having|with|got) an? (?:\w+ )?$")
_PERSON_SAFE = re.compile(
    r"\b(?:(?:my|our|his|her|your|the|their) (?:\w+ )?(?:child|children|kids?|kiddos?|son|daughter|baby"
    r"|boy|girl|family|tot)"
    r"|he|she|we|everyone|everybody|i|us|him|kiddos?)(?:'s|'re|'m)? (?:(?:will|would|can|is|are|was|were"
    r"|to|could|both|all) ){0,2}"
    r"(?:be |is |are |stay |stays |keep |kept |feel |feels |remain )(?:\w+ly )?$|\bsomewhere $|\bfe(?:el"
    r"|els|elt|lt|eling) $|\b(?:keep"
    r"|keeps|keeping|kept)"
    r" (?:him|her|them|us|my|our|everyone|your)\b(?: \w+){0,2} $"
)
_NONE_OF_IT = re.compile(r"\b(?:any|no|zero|little|less|lost|losing|lose|all|lack of) $")
_TOOL = re.compile(
    r"\b(?:knife|knives|scissors|graters?|peelers?|ovens?|stoves?|step-?stools?|stools?|ladders?"
    r"|furniture|tower|mixers?|blenders?|instructions|gate|chairs?|"
    r"straps?|beds?|cots?|toys?|slides?|swings?)\b"
)
_DISHES = frozenset({"food", "dish", "generic-food", "hazard-food", "hazard-food-weak", "solids"})
_WHEN_ELSE = re.compile(r"\b(?:when|if|once|knowing|that) (?:our|my|the|we|i|everything|there|you|your)\b")
_HANDS = re.compile(r"\b(?:wash\w*|clean\w*) (?:\w+ )?hands?\b|\bhand[- ]?washing\b")
_TASTE = re.compile(r"\b(?:keen|fan|fond|texture|taste|flavou?r|style|look)\b")
_OWN = frozenset("his her my the their its your our him me body".split())
_FEW = re.compile(r"\b(?:few|couple|several)\b")
_ROOM = re.compile(r"^take?s?\w* up [^.,;:?!]{0,30}\b(?:room|space|time)\b")
_WAS_SO = re.compile(r"\bwas (?:\w+ly |so |very |quite )?$")
_CHOICE = re.compile(
    r"\b(?:went|go|gone|going) (?:with|for) (?:a|the) $|\b(?:made|took|picked|chose|ordered) (?:a|the) $"
)
_NEEDNT = re.compile(r"\b(?:need not|needn't|(?:does|do)(?:n't| not) (?:have|need) to) be (?:\w+ly )?$")
_HERE = re.compile(r"(?:here|in (?:our|my|this) (?:family|house|home))\b")
_SAFE_PLACES = frozenset(
    "spot spots area areas shelf road roads corner place places haven environment space school restaurant distance "
    "neighbourhood".split()
)
_OTHER_FOLK = re.compile(r"\b(?:different|other|many|our|all|various|across|some|most|asian|western|these|those) $")


def _a_person(tagged: Tagged, match: Match) -> bool:
    """ "My child *will be safe*", "*somewhere safe* to eat": somebody or a place is."""
    begin, end = match.object or match.trigger
    if said_at(tagged, begin) != "safe":
        return False
    if _CHOICE.search(text_before(tagged, begin)) is not None and said_at(tagged, end) in ("choice", "option", "bet"):
        return True
    return said_at(tagged, end) in _SAFE_PLACES or _PERSON_SAFE.search(text_before(tagged, begin)) is not None


def _cultures(tagged: Tagged, match: Match) -> bool:
    """ "In *other cultures*": people, and none that live in yoghurt."""
    if match.object is None or said_at(tagged, match.object[0]) not in ("cultures", "culture"):
        return False
    return _OTHER_FOLK.search(text_before(tagged, match.object[0])) is not None


def _a_bad_place(tagged: Tagged, match: Match) -> bool:
    """ "In a *dangerous spot*": a shelf or a road is."""
    return said_at(tagged, (match.object or match.trigger)[1]) in _SAFE_PLACES


def _when_else(tagged: Tagged, match: Match) -> bool:
    """ "*It* helps me to feel calmer *when* the shelves are tidy": what does it is told after, and nobody eats it."""
    if said_at(tagged, 0) not in ("it", "this") or tagged.find(_EATEN):
        return False
    return _WHEN_ELSE.search(text_after(tagged, match.trigger[1])) is not None


def _of_the_hands(tagged: Tagged, _match: Match) -> bool:
    """ "*Wash your hands*, as food carries bacteria": hygiene, no food's own."""
    return _HANDS.search(fold(tagged.text)) is not None


def _to_taste(tagged: Tagged, match: Match) -> bool:
    """ "*Nothing wrong with* it, I am just *not keen on* the texture": a taste."""
    said = said_at(tagged, (match.object or match.trigger)[0])
    return said.startswith("nothing wrong") and _TASTE.search(fold(tagged.text)) is not None


def _all_over(tagged: Tagged, match: Match) -> bool:
    """ "Hives all *over his body*": where, and not that they are over."""
    at = match.trigger[0]
    return said_at(tagged, at) == "over" and said_at(tagged, at + 1) in _OWN


def _remembered(tagged: Tagged, match: Match) -> bool:
    """ "It makes *memories*": things remembered, and nobody's memory."""
    return match.object is not None and said_at(tagged, match.object[1] - 1) == "memories"


def _a_few_years(tagged: Tagged, match: Match) -> bool:
    """ "Fast forward *a few years*": some time, and no age."""
    if match.object is None or not _FEW.search(tagged.words(*match.object).lower()):
        return False
    return "first" not in f"{text_before(tagged, match.object[0])}{tagged.words(*match.object).lower()}".split()[-6:]


def _takes_room(tagged: Tagged, match: Match) -> bool:
    """ "They *take up* a heap of *room*": in a box."""
    return match.object is not None and _ROOM.search(text_after(tagged, match.object[0])) is not None


def _by_doing(tagged: Tagged, match: Match) -> bool:
    """ "They cook it themselves, *which makes them feel good*": the doing does, where nothing eaten is named."""
    if match.trigger[0] < 4 or tagged.find(_EATEN, 0, match.trigger[0]):
        return False
    return said_at(tagged, match.trigger[0] - 1) == "which"


def _was_so(tagged: Tagged, match: Match) -> bool:
    """ "It *was therapeutic*": an hour of it was."""
    said = match.object is not None and said_at(tagged, match.object[0]) == "therapeutic"
    return said and _WAS_SO.search(text_before(tagged, (match.object or match.trigger)[0])) is not None


def _sweet_tooth(tagged: Tagged, match: Match) -> bool:
    """ "He *has a sweet tooth*": what somebody likes."""
    said = match.object is not None and "sweet tooth" in tagged.words(*match.object).lower()
    return said and _HAD_ONE.search(text_before(tagged, (match.object or match.trigger)[0])) is not None


def _no_interest(tagged: Tagged, match: Match) -> bool:
    """ "He takes *no interest in food* before nine": his appetite, and no sign that a baby is ready."""
    return _NONE_OF_IT.search(text_before(tagged, (match.object or match.trigger)[0])) is not None


def _of_a_tool(tagged: Tagged, _match: Match) -> bool:
    """ "A blunt *knife* makes it safe even for a six-year-old": a tool, where no food is named."""
    return not tagged.find(_DISHES) and _TOOL.search(fold(tagged.text)) is not None


def _in_it(tagged: Tagged, match: Match) -> bool:
    """ "A race to the death *in* water": where, and nothing that brings it."""
    water = match.subject is not None and said_at(tagged, match.subject[0]) == "water"
    return water and said_at(tagged, match.trigger[0]) == "in"


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


def _tasty_goodness(tagged: Tagged, match: Match) -> bool:
    """ "Some *puréed goodness*": something good to eat."""
    at = match.trigger[1] - 1
    if said_at(tagged, at) != "goodness":
        return False
    return tagged.is_any(at - 1, _DISHES) or _TASTY.search(text_before(tagged, at)) is not None


def _need_not(tagged: Tagged, match: Match) -> bool:
    """ "It *need not be* laden with sugar": needless, and none is said to be."""
    return _NEEDNT.search(text_before(tagged, match.trigger[0])) is not None


def _none_here(tagged: Tagged, match: Match) -> bool:
    """ "Thankfully *no allergies here*": a family's luck."""
    return _HERE.match(text_after(tagged, end_of(match))) is not None


MOMENTS: Mapping[str, tuple[Ask, ...]] = {
    "can-at-age": (_at_no_meal,),
    "from-age": (_at_no_meal, _of_a_tool),
    "ready-at-age": (_at_no_meal,),
    "may-have-at-age": (_at_no_meal,),
    "age-and-food": (_bounds_no_age, _a_few_years),
    "gone-since": (_all_over,),
    "digests": (_takes_room,),
    "has-effect": (_remembered,),
    "makes": (_remembered,),
    "harms-a-function": (_remembered,),
    "food-and-weak-function": (_bedtime,),
    "food-and-function": (_bedtime,),
    "fed-in-an-unsafe-place": (_was_eaten,),
    "safe": (_a_person, _of_a_tool, _to_taste),
    "harmful": (_a_bad_place,),
    "contaminant": (_of_the_hands,),
    "makes-strong": (_when_else, _by_doing),
    "is-a-function": (_was_so,),
    "better-since": (_sweet_tooth,),
    "readiness": (_no_interest,),
    "high-in": (_need_not,),
    "free-from": (_none_here,),
    "never-ill-since": (_none_here,),
    "ill-from": (_in_it,),
    "helps-a-function": (_remembered,),
    "helps-someone": (_when_else,),
    "nutrients-and-food": (_cultures,),
    "food-and-nutrients": (_cultures,),
    "health-good": (_tasty_goodness,),
}
"""Rule name and what to ask of its matches."""
