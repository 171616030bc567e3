"""Matches whose food is no food or whose nutrient is none: a thing named after it, a course of a meal, a material."""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import pairwise

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, end_of, said_at, text_after, text_before
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

# What a food before it only names or shapes: "an *ice pack*", "the *cake* tin". Not what holds a food as it is eaten.
_THINGS = frozenset(
    "packs cutter cutters tin tins mould moulds mold molds theme themed costume party parties shop shops "
    "stores aisle aisles stall stand tree trees bush bushes patch patches seedling seedlings "
    "book books song songs game games toy toys shirt shirts box boxes carton cartons wrapper wrappers liner liners "
    "maker makers machine machines cooker cookers mill mills grinder grinders spoon spoons fork forks knife "
    "knives plate plates board boards tray trays rack racks van truck festival market counter deposits shaker shakers "
    "pen pens pistol pistols balloon balloons slide skillet pan pans emoji stickers sticker drawing picture "
    "pictures".split()
)
_EATEN = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient"})
_DISHES = frozenset({"food", "dish"})
_AFTER_A_VERB = frozenset("a an the in some plenty lots more all so such away down up".split())  # "milk *packs* a lot"
_NUTRIENTS = frozenset({"nutrient", "nutrient-weak", "energy"})
_WITHOUT = frozenset({"going-without", "without", "free"})
_PET_NAMES = frozenset({"honey", "sugar", "pumpkin", "peanut", "cupcake", "pudding"})
_CALLING = re.compile(r"(?:\b(?:hi|hey|oh|right|dear|thanks|sorry|ok|okay|yes|no|well|please|bye)|^),? $")
_MEALS = frozenset({"food", "dish", "generic-food"})
_IN_TITLES = frozenset({"death", "depression", "fever", "plague"})
_ILL_BEFORE = frozenset("postnatal postpartum clinical infant sudden cot cardiac yellow scarlet".split())
_JOINS = frozenset("and but so while ,".split())  # not "she sleeps *when she* has had oats"
_DOERS = frozenset({"i", "we", "he", "she"})
_FREE = frozenset({"free", "suffix-free"})
_MATERIAL = re.compile(
    r"\b(?:plastic|plastics|silicone?|glass|metal|steel|stainless|wood\w*|bamboo|melamine|tritan|tank|bottles?|cups?|"
    r"tubs?|lids?|trays?|bowls?|plates?|bibs?|containers?|boxes|box|toys?|straws?|bags?|dishwasher|materials?)\b"
)
_ENERGY = frozenset({"energy"})
_COOK_DOES = frozenset(
    "hide sneak cook make prepare plan find save pack organise organize create choose bake store chop serve track shop "
    "learn teach decide sort stick".split()
)
_DEMAND = frozenset({"supply", "demand", "hopes", "chair", "chairs", "street", "season", "spirits", "school"})
_NAMED = _DISHES | {"ambiguous-nutrient", "nutrient", "hazard-food"}
_BALANCED = re.compile(
    r"\W*(?:(?:eating|having|follow\w*|keep\w*) )?(?:an? |the |your )?"
    r"(?:balanced|well-balanced|varied|healthy|healthier|proper|good|nutritious|right) (?:and \w+ )?"
    r"(?:diets?|eating|nutrition|meals?|foods?|eating habits)\b"
)
_SEES_TO = re.compile(
    r"\b(?:feed|feeding|fed|eat|eating|ate|give|giving|gave|keep|have|having|had|follow|provide|providing"
    r"|serve|serving|"
    r"cook|cooking|make|making|pack|packing|offer|prepare|preparing|get|getting|put|putting|plan|planning|enjoy) "
    r"(?:[\w']+ ){0,4}?(?:an? |the |some |more |most )?(?:[\w-]+,? (?:and )?){0,2}$"
)
_MEAL = re.compile(
    r"[\w-]+,? (?:(?:and |but )?[\w-]+,? ){0,2}?(?:diet|meals?|dinners?|lunch(?:es)?|suppers?|breakfasts?)\b"
)


def _names_a_thing(tagged: Tagged, match: Match) -> bool:
    """ "The *ice packs* are slim", "mineral *deposits*": the food or nutrient only says which thing."""
    if match.object is not None and tagged.is_any(match.object[1] - 1, _NUTRIENTS) and _thing(tagged, match.object[1]):
        return True
    if match.subject is None or not _thing(tagged, match.subject[1]):
        return False
    own = range(*match.subject)
    return all(at in own for at in tagged.find(_EATEN, 0, end_of(match)))


def _thing(tagged: Tagged, at: int) -> bool:
    return said_at(tagged, at) in _THINGS and said_at(tagged, at + 1) not in _AFTER_A_VERB


def _owned(tagged: Tagged, match: Match) -> bool:
    """ "*KJ's* cake": somebody, and no measure of energy."""
    if match.object is None:
        return False
    at = match.object[1] - 1
    return tagged.is_any(at, _ENERGY) and tagged.items[at].words.endswith("'s")


def _of_a_material(tagged: Tagged, match: Match) -> bool:
    """ "The tank is *BPA-free plastic*": what a thing is made of, and nobody eats it."""
    if not tagged.find(_FREE, match.start, end_of(match) + 1) or tagged.find(_DISHES, 0, match.start):
        return False
    return _MATERIAL.search(fold(tagged.text)) is not None


def _helps_the_cook(tagged: Tagged, match: Match) -> bool:
    """ "A book that *helps you hide* healthy things in supper": what the cook brings off."""
    then = [item.words for item in tagged.items[match.trigger[1] : match.trigger[1] + 2]]
    doing = then[1] if then[:1] == ["to"] and then[1:] else then[0] if then else ""
    return doing in _COOK_DOES


def _in_demand(tagged: Tagged, match: Match) -> bool:
    """ "Sugar was in *high demand*": wanted, and no food is high in it."""
    return said_at(tagged, end_of(match)) in _DEMAND or said_at(tagged, match.trigger[1]) in _DEMAND


def _needs_doing(tagged: Tagged, match: Match) -> bool:
    """ "Not every meal *needs to* include it": what is to be done, and nobody's needs."""
    return match.object is not None and text_after(tagged, match.object[1]).startswith("to ")


def _eating_well(tagged: Tagged, match: Match) -> bool:
    """ "*A balanced diet* is crucial for health": eating well, and nothing that is eaten is named."""
    if any(not tagged.has(at, "diet") for at in tagged.find(_NAMED)):
        return False
    return _BALANCED.match(fold(tagged.text[: tagged.items[match.trigger[0]].start])) is not None


def _meal_of_ours(tagged: Tagged, match: Match) -> bool:
    """ "*Feed my child a healthy*, varied *diet*": what the cook sees to, where no food was said to be so before."""
    if tagged.find(_DISHES, 0, match.trigger[0]) or not _MEAL.match(text_after(tagged, match.trigger[1] - 1)):
        return False
    named = tagged.find(_DISHES, match.trigger[1])
    if named and not tagged.find(_WITHOUT, match.trigger[1], named[0]):
        return False
    return _SEES_TO.search(text_before(tagged, match.trigger[0])) is not None


def _supplement(tagged: Tagged, match: Match) -> bool:
    """ "*Gummy vitamins*": one thing with a name of two words, and no food is said to hold any."""
    if match.object is None or match.subject is None or said_at(tagged, match.object[0]) != "vitamins":
        return False
    return match.subject[1] == match.object[0]


def _called_honey(tagged: Tagged, _match: Match) -> bool:
    """ "Clear skin, *right honey?*": somebody is called so, and no food is named."""
    named = tagged.find(_DISHES)
    return bool(named) and all(_is_called(tagged, at) for at in named)


def _is_called(tagged: Tagged, at: int) -> bool:
    ends = said_at(tagged, at + 1) in (",", "?", "!", ".", "")
    return ends and said_at(tagged, at) in _PET_NAMES and _CALLING.search(text_before(tagged, at)) is not None


def _a_title(tagged: Tagged, match: Match) -> bool:
    """ "A bite of *Buttered Death*": what something is called."""
    if match.object is None or match.object[0] == 0 or said_at(tagged, match.object[0]) not in _IN_TITLES:
        return False
    if said_at(tagged, match.object[0] - 1) in _ILL_BEFORE:
        return False
    words = tagged.text.split()
    if 2 * sum(word[0].isupper() for word in words) > len(words):
        return False  # a heading
    return all(tagged.text[tagged.items[at].start].isupper() for at in (match.object[0] - 1, match.object[0]))


def _creates_lunch(tagged: Tagged, match: Match) -> bool:
    """ "I wanted to *create lunches* for energy": the cook's doing, and no harm."""
    made = said_at(tagged, match.trigger[0]).startswith("creat")
    return made and match.object is not None and bool(tagged.find(_MEALS, match.trigger[1], match.object[0]))


def _another_clause(tagged: Tagged, match: Match) -> bool:
    """ "He is a *string bean* and *I* don't worry about *calories*": somebody else's doing stands between."""
    if not match.rule.loose or match.subject is None or match.object is None:
        return False
    first, second = sorted((match.subject, match.object))
    between = tagged.items[first[1] : second[0]]
    return any(a.words in _JOINS and b.words.partition("'")[0] in _DOERS for a, b in pairwise(between))


KINDS: Mapping[str, tuple[Ask, ...]] = {
    "function": (_names_a_thing, _called_honey, _another_clause),
    "disease": (_called_honey, _another_clause, _a_title),
    "allergen": (_another_clause,),
    "safety-age": (_another_clause,),
    "nutrient-content": (_names_a_thing, _owned, _another_clause),
    "general-benefit": (_names_a_thing, _eating_well),
    "quantity": (_owned,),
}
"""Kind of claim and what to ask of its matches."""
THINGS: Mapping[str, tuple[Ask, ...]] = {
    "food-and-nutrients": (_supplement,),
    "nutrients-and-food": (_supplement,),
    "contaminant": (_of_a_material,),
    "helps-someone": (_helps_the_cook,),
    "loose-word": (_meal_of_ours,),
    "loose-dish": (_meal_of_ours,),
    "healthy-dish": (_meal_of_ours,),
    "content-is-low": (_in_demand,),
    "meets-needs": (_needs_doing,),
    "harms-a-function": (_creates_lunch,),
}
"""Rule name and what to ask of its matches."""
