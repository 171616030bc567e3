"""Matches that name an allergy or a free-from product and say nothing of a food: whose it is, what is bought or asked.

Like ``people``, of rules whose words turn up wherever a family lives with an allergy.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, end_of, first_of, said_at, text_before
from spoonproof.claims.scan import Tagged

_HAS_ONE = re.compile(
    r"\b(?:he|she|i|we|they|who|friends?|cousins?|boys?|girls?) (?:\w+ )?(?:has|have|had) "
    r"(?:an? )?(?:\w+ (?:or |and )?){0,2}$"
)
_KNOWN = re.compile(
    r"\b(?:know|knew|known|heard|learned|learnt|told) (?:about|of) "
    r"(?:the |his |her |their )?(?:\w+ (?:and |or )?){0,2}$"
)
_PROVIDED = re.compile(
    r"\b(?:unless|if|until|provided|as long as|so long as) (?:they|it|these|this|that)(?:'re|'s| are| is) $"
)
_SWAPPED = re.compile(
    r"\bsubstitut(?:e|ed|ing)\b[^.;:?!]{0,30}$|"
    r"\b(?:swap|swapped|swapping|use|used|using|buy|buying|bought|find|finding|found|order|ordered) (?:[\w-]+,? ){0,4}$"
)
_MEATLESS = frozenset({"meat", "meatless"})  # which no law lists among the allergens
_TO_BE_NONE = re.compile(r"\b(?:could|must|should|meant) (?:there )?(?:be )?(?:no [^.;:?!]{0,60})?$")
_FAMILY = frozenset(
    "family families kid kids parent parents mum mums mom moms clinic specialist struggles triggers community "
    "box boxes list lists table section menu policy plan journey blog world".split()
)
_ALLERGY = ("allerg", "intoleran", "sensitiv")
_DOINGS = frozenset("baking cooking eating living catering bakery bakeries aisle shelf".split())
_OCCASIONS = frozenset("birthday party place space home hands side bet environment distance".split())
_CAKES = frozenset("cake cakes party parties".split())
_DOES = frozenset("benefit benefit-weak harm harm-weak give avoid avoid-weak forbid introduce".split())


def _has_one(tagged: Tagged, match: Match) -> bool:
    """ "*She has* a dairy allergy": who has it."""
    return match.object is not None and _HAS_ONE.search(text_before(tagged, match.object[0])) is not None


def _has_one_only(tagged: Tagged, match: Match) -> bool:
    """ "*She has* a dairy allergy", where nothing is advised or said to bring or spare it."""
    return _has_one(tagged, match) and not tagged.find(_DOES)


def _known(tagged: Tagged, match: Match) -> bool:
    """ "We *knew about* the egg allergies": an old tale."""
    return match.object is not None and _KNOWN.search(text_before(tagged, match.object[0])) is not None


def _of_a_family(tagged: Tagged, match: Match) -> bool:
    """ "An allergy *family*", "their allergy *triggers*": who lives with it."""
    return said_at(tagged, end_of(match)).partition(" ")[0] in _FAMILY


def _allergy_to_it(tagged: Tagged, match: Match) -> bool:
    """ "He has a gluten *allergy*": nothing holds the gluten."""
    return said_at(tagged, end_of(match)).startswith(_ALLERGY)


def _provided(tagged: Tagged, match: Match) -> bool:
    """ "Skip the crisps *unless they are* egg-free": a condition."""
    return _PROVIDED.search(text_before(tagged, first_of(match))) is not None


def _ingredient(tagged: Tagged, match: Match) -> bool:
    """ "I *substituted* gluten-free oats", "gluten free *baking*": which product is used, what is done."""
    return (
        said_at(tagged, end_of(match)) in _DOINGS or _SWAPPED.search(text_before(tagged, first_of(match))) is not None
    )


def _meatless(tagged: Tagged, match: Match) -> bool:
    """ "*Meat-free* Monday": no allergen."""
    start, end = match.object or match.trigger
    return tagged.items[start].words.partition("-")[0] in _MEATLESS and end - start == 1


def _to_be_none(tagged: Tagged, match: Match) -> bool:
    """ "There *could be no* eggs, no nuts": what was asked of the cook."""
    return _TO_BE_NONE.search(text_before(tagged, match.trigger[0])) is not None


def _safe_occasion(tagged: Tagged, match: Match) -> bool:
    """ "A safe *birthday*": no food is called safe."""
    at = end_of(match)
    words = [item.words for item in tagged.items[at : at + 2]]
    return words[:1] != [] and words[0] in _OCCASIONS and words[-1] not in _CAKES


def _birthday_cake(tagged: Tagged, match: Match) -> bool:
    """ "Their *first birthday cake*": a cake, and no age to eat it from."""
    if match.object is None or match.object[1] >= len(tagged.items):
        return False
    birthday = tagged.items[match.object[1] - 1].words.endswith("birthday")
    return birthday and tagged.items[match.object[1]].words.rpartition(" ")[2] in _CAKES


ALLERGIES: Mapping[str, tuple[Ask, ...]] = {
    "allergy": (_has_one_only, _of_a_family),
    "food-allergy": (_has_one_only, _known, _of_a_family),
    "start-allergens": (_has_one,),
    "contains-gluten": (_allergy_to_it,),
    "free-from": (_provided, _ingredient, _meatless),
    "sugar-free": (_ingredient,),
    "free-of-several": (_to_be_none,),
    "safe": (_safe_occasion,),
    "age-and-solids": (_birthday_cake,),
    "age-and-food": (_birthday_cake,),
}
"""Rule name and what to ask of its matches."""
