"""Matches of what a family tells of itself: who is allergic, what a test found, whose appetite it is about."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, said_at, text_before
from spoonproof.claims.finding.ordinary import is_story
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

_DOES_GOOD = frozenset("benefit harm forbid introduce".split())
_SAYS_MORE = frozenset("allergy allergy-weak food-allergy benefit harm forbid avoid".split())
_ONE_OF_US = r"(?:i|we|he|she|(?:my|our|his|her|the only|this) (?:\w+ )?\w+)"
_IS_ALLERGIC = re.compile(
    rf"\b{_ONE_OF_US}(?:'s|'m|'re)?(?: \w+){{0,3}} $"
    r"|\b(?:being|tested|diagnosed|turned out|turns out|found)(?: \w+){0,4} $"
)
_IN_GENERAL = re.compile(
    r"\b(?:babies|children|infants|people|kids|toddlers|child|baby|infant|toddler|if|whether|many|some|most)\b"
    r"[^.,;:?!]{0,40}$"
)
_OUR_CHILD = re.compile(r"\b(?:my|our|his|her|only|this) (?:\w+ )?(?:baby|child|toddler|kid)\b[^.,;:?!]{0,40}$")
_HAD_ONE = re.compile(
    rf"\b{_ONE_OF_US} (?:has |had |have |having |developed )(?:\w+ ){{0,4}}$"
    r"|\b(?:know|knew|known|heard|learned|learnt|told|discovered) (?:about|of) [^.,;:?!]{0,40}$"
    rf"|\b{_ONE_OF_US} (?:had |has )?(?:started|began|begun) (?:to )?(?:show|showing|have|having) [^.,;:?!]{{0,20}}$"
)
_TESTED = re.compile(
    r"\b(?:skin|prick|scratch|blood|needle|patch|antibody|allergy)[ -](?:\w+ )?(?:tests?|testing|results?|work)\b"
    r"|\btest(?:ing|ed) (?:for|positive|negative|him|her)\b|\bfood challenges?\b"
)
_PICKY = ("eaters", "eater")
_WALKED = frozenset({"you", "us", "me"})


def _is_allergic(tagged: Tagged, match: Match) -> bool:
    """ "*She's badly* allergic to eggs", "*he had a* reaction to egg": who is; nothing is said to bring or spare it."""
    if match.object is None or tagged.find(_DOES_GOOD):
        return False
    before = text_before(tagged, match.object[0])
    if _IN_GENERAL.search(before) is not None and _OUR_CHILD.search(before) is None:
        return False
    if tagged.items[match.object[0]].words.startswith("allergic"):
        return _IS_ALLERGIC.search(before) is not None
    return _HAD_ONE.search(before) is not None


def _tested(tagged: Tagged, _match: Match) -> bool:
    """ "The *blood test* said he is allergic to almonds": what a clinic found."""
    return not tagged.find(_DOES_GOOD) and _TESTED.search(fold(tagged.text)) is not None


def _we_introduced(tagged: Tagged, _match: Match) -> bool:
    """ "*At eight months we started* the introduction of eggs": done once, and nothing said to come of it."""
    return not tagged.find(_SAYS_MORE) and is_story(fold(tagged.text))


def _picky_eaters(tagged: Tagged, match: Match) -> bool:
    """ "Perfect for *picky eaters*": who eats it, and no appetite is said to mend."""
    return match.object is not None and tagged.items[match.object[1] - 1].words.endswith(_PICKY)


def _walks_through(tagged: Tagged, match: Match) -> bool:
    """ "This will *walk you through* it": explained, and nobody walks."""
    if match.object is None or not tagged.items[match.object[0]].words.startswith("walk"):
        return False
    at = match.object[1]
    return said_at(tagged, at) == "through" or (said_at(tagged, at) in _WALKED and said_at(tagged, at + 1) == "through")


FAMILY: Mapping[str, tuple[Ask, ...]] = {
    "allergy": (_is_allergic, _tested),
    "food-allergy": (_is_allergic, _tested),
    "reacts-to": (_is_allergic, _tested),
    "start-allergens": (_is_allergic,),
    "introduce-allergen": (_we_introduced,),
    "both": (_tested,),
    "good-for": (_picky_eaters,),
    "food-and-function": (_picky_eaters,),
    "function-and-food": (_picky_eaters,),
    "does-better": (_walks_through,),
}
"""Rule name and what to ask of its matches."""
