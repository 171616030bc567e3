"""Matches of what a family tells of itself: who is allergic, what a test found, whose appetite it is about."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import (
    Ask,
    classes_in,
    end_of,
    first_of,
    said_at,
    skipped,
    text_after,
    text_before,
)
from spoonproof.claims.finding.ordinary import is_ours, is_story
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

_DOES_GOOD = frozenset("benefit harm forbid introduce".split())
_ALLERGENS = frozenset({"allergen-word", "allergen-food"})
_FORBIDS = frozenset({"forbid"})
_AVOIDS = frozenset({"avoid"})
_SAYS_MORE = frozenset("allergy allergy-weak food-allergy benefit harm forbid avoid".split())
_ONE_OF_US = (
    r"(?:i|we|he|she|(?:one|another|two|none|some|both) of (?:them|us|\w+ \w+)"
    r"|(?:my|our|his|her|the only|this) (?:\w+ )?\w+)"
)
_OURS = re.compile(r"\b(?:i|we|my|our|us|me|he|she|his|her|him|i'm|i've|we've|we're|he's|she's)\b")
_ONE_NAMED = re.compile(r"(?<=[a-z,] )[A-Z][a-z]+ (?:is|was|has|had|still|now|will|can)\b")
_TO_ALL = re.compile(
    r"\b(?:you|your|babies|infants|children|toddlers|people|little ones|should|must|may|might|can|could|risk|likely|"
    r"common\w*|chances?|percent|prevents?|safe|never|always|advice|evidence|says|said|stud(?:y|ies)|recommend\w*)\b"
)
_IS_ALLERGIC = re.compile(
    rf"\b{_ONE_OF_US}(?:'s|'m|'re)?(?: \w+){{0,3}} $"
    r"|\b(?:grand)?(?:son|daughter|child|niece|nephew|boy|girl|friend|husband|wife|cousin|brother|sister)"
    r"(?: #?\d+| number \w+)?"
    r"(?:'s| is| was| has| had)(?: \w+){0,3} $"
    r"|\b(?:being|tested|diagnosed|turned out|turns out|found)(?: \w+){0,4} $"
)
_BY_NAME = re.compile(
    r"\b(?!Bab|Child|Infant|Kid|Toddler|Peop|Many|Some|Most|Who|If|They)[A-Z][a-z]+"
    r"(?:'s|’s| is| was| has| had| developed)(?: \w+){0,3} $"
)
_IN_GENERAL = re.compile(
    r"\b(?:babies|children|infants|people|kids|toddlers|child|baby|infant|toddler|if|whether|many|some|most)\b"
    r"[^.,;:?!]{0,40}$"
)
_OUR_CHILD = re.compile(
    r"\b(?:my|our|his|her|only|this) (?:\w+ )?(?:baby|child|toddler|kid|children|kids)\b[^.,;:?!]{0,40}$"
)
_SUFFERS = ("allergic", "react", "anaphyla")  # what a child is or has, and no food
_HAD_ONE = re.compile(
    rf"\b{_ONE_OF_US}(?:, [^.,;:?!]{{1,30}},)?\b[^.,;:?!]{{0,60}}\b(?:has|had|have|having|developed) (?:\w+ ){{0,4}}$"
    r"|\b(?:because of|due to|after|following) (?:an?|one|another|his|her|the) (?:\w+ ){0,3}$"
    r"|\bthere (?:is|was) an? (?:\w+ (?:and )?){0,3}$"
    r"|\bdiagnosed with [^.,;:?!]{0,40}$|\b(?:my|his|her|our|whose) (?:\w+ ){0,2}$"
    r"|\b(?:know|knew|known|heard|learned|learnt|told|discovered) (?:about|of) [^.,;:?!]{0,40}$"
    rf"|\b{_ONE_OF_US} (?:had |has )?(?:started|began|begun) (?:to )?(?:show|showing|have|having) [^.,;:?!]{{0,20}}$"
)
_WHAT = re.compile(r"(?<!is )(?<!are )(?<!was )(?<!'s )(?<!'re )\bwhat (?:exactly )?$")
_ALLERGIES = ("allergies", "allergy", "intolerances", "intolerance")
_PEOPLE_WITH = re.compile(r"\b(?:with|have|has|had|having|there are|there were) $")
_PICKY = ("eaters", "eater")
_FAMILY_WITH = re.compile(
    r"\b(?:(?:grand)?(?:kids?|child|children|kidd(?:ies|os))|those|people|families|famil(?:y|ies)"
    r"|friends?|anyone|someone|guests?) "
    r"(?:who (?:has|have) |with |(?:has|have) )[^.,;:?!]{0,40}$"
    r"|^\W*(?:use|swap|try|choose|thicken|replace)\b[^.;:?!]{0,50}\bif (?:you|anyone|someone|your \w+)"
    r"(?:'re| are| is| has| have)\b[^.,;:?!]{0,30}$"
)
_PERSONS = frozenset({"audience-baby", "audience-adult"})
_EATS_IT = frozenset({"child-can"})
_SAID_BY = frozenset({"authority"})
_ASKED_OF_US = re.compile(
    r"\b(?:he|she|i|we) (?:needs?|needed|has|had|have) to $|"
    r"\b(?:deal|dealing|cope|coping|juggle|juggling) with\b[^.;:?!]{0,80}$"
    r"|\b(?:ensure|ensuring|make sure|making sure|check|guarantee)\b[^.;:?!]{0,40}$"
    r"|\b(?:schools?|nurser(?:y|ies)|kindergartens?|classes|classrooms?) (?:being|is|are|was|were|going) (?:\w+ )?$"
    r"|\b(?:party|house|home|classroom|kitchen|school|nursery|table|(?<!every )(?<!each )(?<!a )day|event|picnic) $"
)
_SOLD = frozenset({"food", "dish", "generic-food"})
_PLACES = frozenset("environment place space school home kitchen table nursery".split())
_HAD_TO = re.compile(r"^(?:had|has|have) to be\b|^(?:was|is) (?:required|needed|requested|the rule)\b|^means?\b")
_CRITERIA = frozenset("criteria standards standard guidelines guideline rules".split())
_SAYS_HOW = frozenset("benefit harm forbid".split())
_TESTED = re.compile(
    r"\b(?:skin|prick|scratch|blood|needle|patch|antibody|allergy)[ -](?:\w+ )?"
    r"(?:tests?|testing|results?|work|sticks?|pricks?)\b"
    r"|\btest(?:ing|ed) (?:for|positive|negative|him|her)\b|\bfood challenges?\b"
    r"|\b(?:was|were|is|are|came back|testing|tested) (?:positive|negative) (?:for|to)\b"
)


def _is_allergic(tagged: Tagged, match: Match) -> bool:
    """ "*She's badly* allergic to eggs", "*he had a* reaction to egg": who is; nothing is said to bring or spare it."""
    if match.object is None or tagged.find(_DOES_GOOD - _FORBIDS):
        return False
    before = text_before(tagged, match.object[0])
    if _IN_GENERAL.search(before) is not None and _OUR_CHILD.search(before) is None:
        return False
    said = tagged.items[match.object[0]].words
    named = _BY_NAME.search(tagged.text[: tagged.items[match.object[0]].start])
    if named is not None and (said.startswith(_SUFFERS) or not _is_food(tagged, named.start())):
        return True
    if said.startswith(("allergic", "sensitive", "intolerant")) and "reaction" not in said:
        return _IS_ALLERGIC.search(before) is not None
    if tagged.items[match.object[0]].words.startswith("react") and _IS_ALLERGIC.search(before) is not None:
        return True
    return _HAD_ONE.search(before) is not None


def _is_food(tagged: Tagged, at: int) -> bool:
    """Whether the word at this character is a food: "*Pear* is hypoallergenic" tells of nobody."""
    return any(item.start <= at < item.end and tagged.is_any(i, _SOLD) for i, item in enumerate(tagged.items))


def _of_our_own(tagged: Tagged, _match: Match) -> bool:
    """ "*We* found the walnut allergy on *his* birthday": nothing is said to bring or spare it, and of nobody else."""
    if tagged.find(_DOES_GOOD - _FORBIDS):
        return False
    text = fold(tagged.text)
    if _TO_ALL.search(text) is not None:
        return False
    return _OURS.search(text) is not None or _ONE_NAMED.search(tagged.text) is not None


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


def _lives_with_it(tagged: Tagged, match: Match) -> bool:
    """ "*For kids with* peanut and egg allergies": who reads; "an *allergic baby* in the mix": who comes."""
    if match.object is None or tagged.find(_DOES_GOOD | _AVOIDS) or skipped(tagged):
        return False
    begin = match.object[0]
    if tagged.items[begin].words == "allergic" and tagged.find(_PERSONS, begin + 1, begin + 2):
        return True
    if tagged.find(_EATS_IT, match.object[1], match.object[1] + 2):
        return False  # "most people with a nut allergy *can eat* it"
    return _FAMILY_WITH.search(text_before(tagged, begin)) is not None


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


def _we_introduced(tagged: Tagged, _match: Match) -> bool:
    """ "*At eight months we started* the introduction of eggs": done once, and nothing said to come of it."""
    text = fold(tagged.text)
    return not tagged.find(_SAYS_MORE) and (is_story(text) or is_ours(text, classes_in(tagged)))


def _picky_eaters(tagged: Tagged, match: Match) -> bool:
    """ "Perfect for *picky eaters*": who eats it, and no appetite is said to mend, nor a doctor to say so."""
    if match.object is None or tagged.find(_SAID_BY):
        return False
    end = match.object[1]
    return any(item.words.endswith(_PICKY) for item in tagged.items[end - 1 : end + 2])


def _tested(tagged: Tagged, _match: Match) -> bool:
    """ "The *blood test* said he is allergic to almonds": what a clinic found."""
    return not tagged.find(_SAYS_HOW) and _TESTED.search(fold(tagged.text)) is not None


FAMILY: Mapping[str, tuple[Ask, ...]] = {
    "allergy": (_of_our_own, _is_allergic, _lives_with_it, _what_causes, _tested),
    "food-allergy": (_of_our_own, _is_allergic, _lives_with_it, _tested),
    "reacts-to": (_of_our_own, _is_allergic, _tested),
    "start-allergens": (_of_our_own, _is_allergic),
    "watch-reactions": (_of_our_own,),
    "free-from": (_asked_of_us, _with_none, _safe_place),
    "contains-gluten": (_intolerance_to,),
    "brings-disease": (_what_causes,),
    "sugar-free": (_asked_of_us,),
    "low-fat": (_asked_of_us,),
    "introduce-allergen": (_we_introduced,),
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
