"""Matches of what a family tells of itself: who is allergic, what a test found, whose appetite it is about."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import (
    Ask,
    end_of,
    first_of,
    said_at,
    text_after,
    text_before,
)
from spoonproof.claims.scan import Tagged

_ALLERGENS = frozenset({"allergen-word", "allergen-food"})
_WHAT = re.compile(r"(?<!is )(?<!are )(?<!was )(?<!'s )(?<!'re )\bwhat (?:exactly )?$")
_ALLERGIES = ("allergies", "allergy", "intolerances", "intolerance")
_PEOPLE_WITH = re.compile(r"\b(?:with|have|has|had|having|there are|there were) $")
_PICKY = ("eaters", "eater")
_SAID_BY = frozenset({"authority"})
_ASKED_OF_US = re.compile(
    r"\b(?:he|she|i|we) (?:needs?|needed|has|had|have) to $|"
    r"\b(?:deal|dealing|cope|coping|juggle|juggling) with\b[^.;:?!]{0,80}$"
    r"|\b(?:ensure|ensuring|make sure|making sure|check|guarantee)\b[^.;:?!]{0,40}$"
    r"|\b(?:schools?|nurser(?:y|ies)|kindergartens?|classes|classrooms?) (?:being|is|are|was|were|going) (?:\w+ )?$"
    r"|\b(?:party|house|home|classroom|kitchen|school|nursery|table|(?<!every )(?<!each )(?<!a )day|event|picnic) $"
)
_PLACES = frozenset("environment place space school home kitchen table nursery".split())
_HAD_TO = re.compile(r"^(?:had|has|have) to be\b|^(?:was|is) (?:required|needed|requested|the rule)\b|^means?\b")
_CRITERIA = frozenset("criteria standards standard guidelines guideline rules".split())


def _with_none(tagged: Tagged, match: Match) -> bool:
    """ "Two children *with no* allergies": who has none, and no food is said to be free of any."""
    if match.object is None or not said_at(tagged, match.object[1] - 1).endswith(_ALLERGIES):
        return False
    if said_at(tagged, match.trigger[0]).startswith(("has no", "have no", "had no")):
        return True
    return _PEOPLE_WITH.search(text_before(tagged, match.trigger[0])) is not None


def _intolerance_to(tagged: Tagged, match: Match) -> bool:
    """ "She *has an intolerance to* gluten": nothing holds the gluten."""
    if match.object is None:
        return False
    between = (item.words for item in tagged.items[match.trigger[1] : match.object[0]])
    return any(words.startswith(("allerg", "intoleran", "sensitiv", "reaction")) for words in between)


def _what_causes(tagged: Tagged, match: Match) -> bool:
    """ "Theories as to *what causes* allergies": not said; "sugar *is what causes* cavities" is."""
    return _WHAT.search(text_before(tagged, match.trigger[0])) is not None


def _asked_of_us(tagged: Tagged, match: Match) -> bool:
    """ "We had to *deal with* gluten-free", "nut-free *had to be* added", "what nut-free *means*": asked of a cook."""
    if _ASKED_OF_US.search(text_before(tagged, first_of(match))) is not None:
        return True
    return _HAD_TO.search(text_after(tagged, end_of(match))) is not None


def _safe_place(tagged: Tagged, match: Match) -> bool:
    """ "A *safe environment* for children with allergies": a place."""
    return said_at(tagged, match.trigger[1]) in _PLACES


def _criteria(tagged: Tagged, match: Match) -> bool:
    """ "Lunches that meet the nutrition *criteria*": a school's rules."""
    return said_at(tagged, end_of(match)) in _CRITERIA


def _about_it(tagged: Tagged, match: Match) -> bool:
    """ "The next lesson is *about* nutrition", "they only come if it's *for* sugar": what is talked of, or sought."""
    if match.object is None:
        return False
    if said_at(tagged, match.trigger[1]) == "for":
        return True
    return any(item.words.rpartition(" ")[2] == "about" for item in tagged.items[match.trigger[1] : match.object[0]])


def _ends_up_in(tagged: Tagged, match: Match) -> bool:
    """ "More of it *ends up in* her tummy": eaten."""
    return said_at(tagged, match.trigger[0]).startswith(("end up", "ends up", "ended up")) and (
        said_at(tagged, match.trigger[1]) == "in"
    )


def _its_protein(tagged: Tagged, match: Match) -> bool:
    """ "Anything with *walnut protein*": what somebody is allergic to, and no food is said to hold it."""
    if match.object is None or said_at(tagged, match.object[0]) not in ("protein", "proteins"):
        return False
    return bool(tagged.find(_ALLERGENS, match.object[0] - 1, match.object[0]))


def _picky_eaters(tagged: Tagged, match: Match) -> bool:
    """ "Perfect for *picky eaters*": who eats it, and no appetite is said to mend, nor a doctor to say so."""
    if match.object is None or tagged.find(_SAID_BY):
        return False
    end = match.object[1]
    return any(item.words.endswith(_PICKY) for item in tagged.items[end - 1 : end + 2])


FAMILY: Mapping[str, tuple[Ask, ...]] = {
    "free-from": (_asked_of_us, _with_none, _safe_place),
    "contains-gluten": (_intolerance_to,),
    "brings-disease": (_what_causes,),
    "sugar-free": (_asked_of_us,),
    "low-fat": (_asked_of_us,),
    "both": (_its_protein,),
    "contains": (_criteria,),
    "is-source": (_about_it,),
    "harms-a-function": (_ends_up_in,),
    "has": (_its_protein,),
    "changes-an-organ": (_ends_up_in,),
    "helps-a-function": (_picky_eaters,),
    "good-for": (_picky_eaters,),
    "for-a-function": (_picky_eaters,),
    "feels-so": (_picky_eaters,),
    "is": (_asked_of_us,),
    "food-and-function": (_picky_eaters,),
    "function-and-food": (_picky_eaters,),
}
"""Rule name and what to ask of its matches."""
