"""What makes a match no claim after all: who eats, what is prescribed, which foods are only meant."""

from __future__ import annotations

import re
from itertools import pairwise

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import first_of, text_before
from spoonproof.claims.finding.unclaimed import claims_nothing
from spoonproof.claims.grammar import NEARBY
from spoonproof.claims.scan import Tagged

_NAMED = frozenset({"food", "dish", "nutrient", "ambiguous-nutrient", "contaminant", "additive"})
_EATERS = frozenset({"audience-baby", "audience-adult"})
_HOLDERS = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient"})
_DISHES = frozenset({"food", "dish", "ambiguous-nutrient"})
_KINDS_OF_FOOD = frozenset(
    "food foods option options ingredient ingredients product products diet diets choices".split()
)
_PLENTY = frozenset({"high-in", "low-in", "high-fibre", "low-fat"})  # "foods high in iron"
_HELD_RULES = ("has", "enough-of", "contains-gluten")
_NEEDS = frozenset({"need", "needs", "needed"})
_EATS = frozenset("eat eats eating ate consume consumes consuming get gets getting".split())
_PICK = frozenset("try look pick choose opt aim include start".split())
_OFFER = frozenset("offer choose pick serve provide include buy opt eat".split())
_TO_OFFER = frozenset(("to", verb) for verb in (*_OFFER, "start", "give", "feed", "have"))
_WHEN = frozenset({"when", "if", "while", "unless"})
_DRINK = frozenset({"drink", "drinks", "snack", "food", "meal", "lunch", "eating"})  # "healthier *drink* choices"
_SEVERAL = frozenset({"snacks", "meals", "eating", "recipes", "treats"})
_OF = frozenset({"of", "for", "in", "from"})
_THAT_ARE = frozenset({"that", "which", "are", "is", "have", "has", "a", "an"})
_CHOOSING = frozenset({"avoid", "give", "give-weak"})
_TAKES_IN = frozenset("eat eats eating ate consume consumes consuming".split())
_SHOULD = frozenset({"should", "must", "ought"})
_FOR_SOMEONE = ("good-for-someone", "excellent-for", "fine-for-babies")
_EATING = frozenset("eat have try drink taste consume enjoy start be introduce give offer".split())
_COOKS = frozenset("parents mum mums mom moms family families".split())
_WHO = frozenset({"we", "i", "it", "they", "she", "he", "you", "this", "these"})
_OUR = frozenset({"our", "my"})
_VESSELS = frozenset("pot pots jar jars pouch pouches bowl tray tub tin batch plate box pan".split())
_ARE = frozenset({"are", "am", "were", "'re", "is", "'s", "was"})
_TOPIC = frozenset({"topic"})
_AFTER_TOPIC = 8  # items: "an article about ...", "advice on ..." speak of a claim and make none
_NEAR = 6  # items before a match in which a veto counts
_GENERIC = frozenset({"generic-food"})
_POINTING = frozenset({"it", "they", "this", "these", "that", "which", "those", "both", "them"})


def spoken_against(tagged: Tagged, match: Match, points: bool) -> bool:
    """Whether its own words take a match for ordinary talk. ``points``: the sentence points back at a food."""
    return (
        _describes(tagged, match, points)
        or _prescribes(tagged, match)
        or _of_somebody(tagged, match)
        or _of_no_food(tagged, match)
        or _for_doing(tagged, match)
        or claims_nothing(tagged, match)
    )


def talks_of_else(tagged: Tagged, match: Match, present: frozenset[str]) -> bool:
    """Whether a word close by makes it talk of something else: cosmetics, exercise, how a jam sets, who eats."""
    near = NEARBY.intersection(match.rule.veto)
    about = tagged.find(_TOPIC, match.start - _AFTER_TOPIC, match.trigger[0]) if "topic" in present else []
    if about and "(" not in tagged.symbols[about[-1] : match.trigger[0]]:
        return True
    if not near.isdisjoint(present) and any(
        not _set_aside(tagged, at) for at in tagged.find(near, match.start - _NEAR, match.end + 3)
    ):
        return True
    return _eats(tagged, match)


def _set_aside(tagged: Tagged, at: int) -> bool:
    """Whether what else could do it is said not to: "clears ear infections *without antibiotics*"."""
    return tagged.is_any(at, _OTHERS) and _WITHOUT.search(text_before(tagged, at)) is not None


_OTHERS = frozenset({"other-doer"})
_WITHOUT = re.compile(
    r"\b(?:without|no|no need (?:for|of)|needs? no|instead of|rather than|than|skip|skips|skipping|save on|beats?) "
    r"(?:any |the |more |using |giving |a course of )?$"
)


def _eats(tagged: Tagged, match: Match) -> bool:
    """Whether somebody has the nutrient, and no food is said to: "children get all the nutrients"."""
    verb = tagged.items[match.trigger[0]].words
    if verb in _NEEDS and match.rule.name in ("has", "contaminant", "hides"):
        return True  # what needs a thing does not hold it
    if match.rule.name == "hides" and verb in _EATS:
        return bool(tagged.find(_EATERS, 0, match.trigger[0]))
    if match.rule.name not in _HELD_RULES or (match.subject and tagged.find(_HOLDERS, *match.subject)):
        return False
    at = match.trigger[0]
    return bool(tagged.find(_EATERS, at - 3, at))


def _describes(tagged: Tagged, match: Match, points: bool) -> bool:
    """Whether a nutrient or "healthier" only says which foods are meant, and none is named: "offer iron-rich foods"."""
    # "Start with an iron-rich food and offer *these* often": what points back afterwards names nothing before.
    points = points and any(item.words in _POINTING for item in tagged.items[: match.start])
    if points or (match.rule.level is None and match.rule.name != "healthier"):
        return False
    own = range(*match.object) if match.object is not None else range(0)
    said = {tagged.items[index].words for index in own}  # "salt" said twice is still no food that holds it
    if any(index not in own and tagged.items[index].words not in said for index in tagged.find(_DISHES)):
        return False
    if match.rule.name == "meal-with" and match.subject and tagged.items[match.subject[0]].words in _KINDS_OF_FOOD:
        return True
    after = [item.words for item in tagged.items[match.end : match.end + 3]]
    if after[:1] and after[0] in _DRINK and after[1:2] and after[1] in _KINDS_OF_FOOD:
        return True
    if after[:1] and (
        after[0] in _KINDS_OF_FOOD or (after[0] in ("type", "types", "kind", "kinds") and len(after) > 2)
    ):
        return True
    if match.rule.name == "healthier" and after[:1] and after[0] in _SEVERAL:
        return True
    before = match.start - 1
    if before >= 0 and tagged.items[before].words in ("something", "anything"):
        return True
    if match.rule.name == "has" and match.subject and tagged.items[match.subject[0]].words in _KINDS_OF_FOOD:
        return tagged.items[match.subject[1]].words in ("that", "which")  # "foods *that* have iron"
    if match.rule.name not in _PLENTY:
        return False
    while before > 0 and tagged.items[before].words in _THAT_ARE:
        before -= 1
    if before < match.start - 1 and tagged.items[before + 1].words not in ("that", "which"):
        return False  # "their diets *are* full of sugar" says so
    return before >= 0 and (
        tagged.items[before].words in _KINDS_OF_FOOD
        or (before < match.start - 1 and tagged.is_any(before, _GENERIC) and bool(tagged.find(_CHOOSING, 0, before)))
    )


def _prescribes(tagged: Tagged, match: Match) -> bool:
    """Whether a nutrient is what somebody should take or add, as if it were a food: "should include some protein"."""
    at = match.trigger[0]
    if match.rule.kind == "general-benefit":
        told = [item.words for item in (tagged.items[0], *tagged.items[max(0, at - 3) : at])]
        offered = told[0] in _OFFER or any(pair in _TO_OFFER for pair in pairwise(told[1:]))
        return offered and bool(tagged.find(_GENERIC, at, match.trigger[1] + 3))
    if match.rule.kind != "nutrient-content":
        return False
    verb = tagged.items[at].words
    at = first_of(match)
    before = [item.words for item in tagged.items[max(0, at - 3) : at]]
    if verb in _TAKES_IN and match.rule.name == "has":
        return True
    first = tagged.items[0].words
    if first == "there" and match.rule.name == "is-source":
        return True
    own = range(*match.object) if match.object is not None else range(0)
    if first in _PICK and all(index in own for index in tagged.find(_DISHES)):
        return True
    if (verb == "adding" and before[-1:] in (["by"], ["about"])) or (verb == "include" and at == 0):
        return True
    if _SHOULD.isdisjoint(before):
        return False
    return verb in ("include", "contain", "have") or "be" in before


def _of_somebody(tagged: Tagged, match: Match) -> bool:
    """Whether "we are" or "I am" comes before what is called healthy: a person is, not the food named before."""
    dish = tagged.find(_DISHES, match.end, match.end + 3)  # "our nut-free granola", not "we are nut-free"
    if match.rule.name == "free-from" and not dish and not tagged.find(_DISHES, 0, match.start):
        before = [item.words for item in tagged.items[max(0, match.start - 4) : match.start]]
        at_home = any(whose in _OUR and place not in _VESSELS for whose, place in pairwise(before))
        return at_home or "we" in before or "i" in before
    if match.rule.name not in ("is-healthy", "loose-word"):
        return False
    words = [item.words for item in tagged.items[match.start : match.trigger[0]]]
    said_of = [who for who, be in pairwise(words) if who in _WHO and be in _ARE]
    # "while *I am* cooking it, so *it is* healthy": the last one said to be is the one meant.
    return said_of[-1:] in (["we"], ["i"]) or ("i am" in words and not said_of)


def _of_no_food(tagged: Tagged, match: Match) -> bool:
    """ "The benefits of a big table": benefits of something, and no food among the words after it."""
    if match.rule.name != "health-good" or tagged.items[match.trigger[1] - 1].words.rpartition(" ")[2] not in _OF:
        return False
    end = match.trigger[1]
    if tagged.items[end - 1].words.endswith(" for") and tagged.find(_NAMED, 0, match.start):
        return False  # "oats have benefits for babies": whose they are stands before
    return not tagged.find(_NAMED | _GENERIC, end, end + 6) and not any(
        item.words in _POINTING for item in tagged.items[end : end + 3]
    )


def _for_doing(tagged: Tagged, match: Match) -> bool:
    """ "It is important for children *to eat* together", "perfect for busy parents": nobody's health is meant."""
    if match.rule.name not in _FOR_SOMEONE or match.object is None:
        return False
    end = match.object[1]
    if tagged.items[match.object[0]].words in ("me", "us") and tagged.items[match.trigger[0]].words.endswith(" to"):
        return True  # "it was important to me"
    if match.rule.name == "fine-for-babies":
        if tagged.items[match.object[0]].words.startswith("my "):
            return True  # "fine to give my daughter": one child's supper
        between = [item.words for item in tagged.items[match.trigger[1] : match.object[0]]]
        if not _WHEN.isdisjoint(between):
            return True
        done = [item.words for item in tagged.items[end : end + 2]]
        return done[:1] == ["to"] and done[1:] != [] and done[1] not in _EATING
    if end < len(tagged.items) and tagged.items[end].words == "to":
        return True
    return tagged.items[end - 1].words in _COOKS
