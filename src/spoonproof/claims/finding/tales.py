"""Matches of a tale and its turns of speech: how long something went on, what a recipe is called, who had a fright."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, first_of, said_at, text_after, text_before
from spoonproof.claims.scan import Tagged

_LAST_YEARS = re.compile(  # not "till she is *past* her first birthday", "don't wait *past* seven months"
    r"\b(?:last|(?:the|these|this|my|our|his|her|their) past|next|coming|following|another) (?:few |couple of )?$"
)
_PART_OF = re.compile(r"\b(?:part|stage|phase|sign|step|period) (?:of|in) (?:\w+ )?$")
_FRIGHTS = frozenset({"heart attack", "panic attack", "meltdown", "meltdowns", "breakdown", "tantrum", "tantrums"})
_HAD = re.compile(r"\b(?:have|had|having|has) (?:\w+ ){0,2}$")
_HAD_EATEN = re.compile(r"\b(?:i|we|he|she|they) (?:had|has|have|'d|'s|'ve) (?:been )?(?:\w+ly )?$")
_AS_IF = re.compile(r"\b(?:like|as if|as though) (?:i|we|he|she|they|you) [^.,;:?!]{0,80}$")
_EATS = frozenset("eat eats eating ate".split())
_TREATS = frozenset({"treat", "treats"})
_A_TREAT = re.compile(
    r"\b(?:an?|the|his|her|my|our|their|your|this|that|as|or|special|sweet|little|odd|occasional|nice|of) $"
)
_SUCH_A_PAIN = re.compile(r"\b(?:such|just|is|be|was|'s|bit of) an? (?:real |bit of a )?$")
_COOK = re.compile(r"\b(?:cook|boil|steam|simmer|roast|poach|fry|prepare)(?: \w+){0,4} $")
_IN_MIND = re.compile(r"\b(?:wrap|change|changed|blow|blew|lose|lost|cross\w*) (?:my|your|our|his|her|their) $|\bin $")
_POORLY = re.compile(r"\b(?:cold|cough|sick|tired|fussy|ill|poorly|grumpy) and $|\b(?:while|been|was|is|'s) $")
_SHE_IS = re.compile(
    r"\b(?:if|when|while|as|since) (?:he|she|they)(?:'s| is| was| has| have| had| were| are)(?: \w+)? $"
)
_WE_DO = re.compile(r"\b(?:i|we)\b[^.,;:?!]{0,24}\buse (?:\w+ ){0,4}$")
_HE_LIKES = re.compile(
    r"\b(?:he|she) (?:\w+ )?(?:loves?|loved|likes?|liked|enjoys?|eats?|ate|prefers?|wants?) "
    r"(?:(?!for |with |because |which |that |since |as )[\w-]+,? ){0,6}$"
)
_TESTS = frozenset({"test", "tests", "work", "results"})
_TO_PACK = re.compile(r"\bto (?:pack|make|serve|prepare|build|cook) (?:an? |some )?(?:\w+,? (?:and )?){1,3}$")
_MAY = frozenset("can may might will often really sometimes".split())
_SPOILS = frozenset("kill kills killed killing spoil spoils ruin ruins lighten set sets".split())
_SOMEBODY = frozenset("you me us him her them".split())
_WHICH_ARE = re.compile(
    r"^\W*what(?:'s| is| are) [^.;:?!]{0,40}$|\b(?:which|what) (?:\w+ ){1,3}(?:are|is) [^.,;:?!]{0,30}$"
)

_EATEN = frozenset("food dish generic-food solids nutrient ambiguous-nutrient".split())
_SOMEBODY_IS = re.compile(
    r"\b(?:i|we|he|she)\b(?!'ve found| think| know)[^.;:?!]{0,90}$|\b(?:people|kids|children|famil(?:y"
    r"|ies)|society) \w+ $"
)


def _last_years(tagged: Tagged, match: Match) -> bool:
    """ "Over the *last* seven years": how long it went on, and no child's age."""
    return match.object is not None and _LAST_YEARS.search(text_before(tagged, match.object[0])) is not None


def _part_of(tagged: Tagged, match: Match) -> bool:
    """ "It is a normal *part of* development": what children do, and nothing eaten brings it."""
    return match.object is not None and _PART_OF.search(text_before(tagged, match.object[0])) is not None


def _had_a_fright(tagged: Tagged, match: Match) -> bool:
    """ "I nearly *had a heart attack*": a turn of speech."""
    if match.object is None or said_at(tagged, match.object[0]) not in _FRIGHTS:
        return False
    return _HAD.search(text_before(tagged, match.object[0])) is not None


def _had_eaten(tagged: Tagged, match: Match) -> bool:
    """ "What she *had been safely* eating": her tale, and no food is called safe."""
    return _HAD_EATEN.search(text_before(tagged, first_of(match))) is not None


def _which_are(tagged: Tagged, match: Match) -> bool:
    """ "You find out *which* sweets *are* always nut-free": not said."""
    return _WHICH_ARE.search(text_before(tagged, first_of(match))) is not None


def _as_if(tagged: Tagged, match: Match) -> bool:
    """ "He spat it out *as if we meant to poison* him": a likeness."""
    return match.object is not None and _AS_IF.search(text_before(tagged, match.object[0])) is not None


def _eats_it(tagged: Tagged, match: Match) -> bool:
    """ "Guests who don't *eat* gluten": who eats it, and no food that holds it."""
    return tagged.items[match.trigger[0]].words in _EATS


def _the_mood(tagged: Tagged, match: Match) -> bool:
    """ "I won't *kill the mood*": the one at table."""
    return (
        said_at(tagged, match.trigger[0]) in _SPOILS and said_at(tagged, (match.object or match.trigger)[0]) == "mood"
    )


def _makes_somebody(tagged: Tagged, match: Match) -> bool:
    """ "It *makes you* cook more nutritious meals": somebody does."""
    return said_at(tagged, match.trigger[1]) in _SOMEBODY


def _a_treat(tagged: Tagged, match: Match) -> bool:
    """ "*The treat* in his allergy box": something sweet, and nothing is treated."""
    at = match.trigger[0]
    return said_at(tagged, at) in _TREATS and _A_TREAT.search(text_before(tagged, at)) is not None


def _such_a_pain(tagged: Tagged, match: Match) -> bool:
    """ "A seafood allergy is *such a pain*": a nuisance."""
    if match.object is None or said_at(tagged, match.object[0]) != "pain":
        return False
    return _SUCH_A_PAIN.search(text_before(tagged, match.object[0])) is not None


def _already(tagged: Tagged, match: Match) -> bool:
    """ "*If your baby* is seven months and has had solids *already*": whom it is for, and no age to begin at."""
    return tagged.items[0].words == "if" and "already" in (item.words for item in tagged.items[: match.end + 3])


def _cook_without(tagged: Tagged, match: Match) -> bool:
    """ "*Cook these without* salt, then mash": what the cook is to do, with no reason given."""
    at = match.trigger[0]
    return said_at(tagged, at).startswith("without") and _COOK.search(text_before(tagged, at)) is not None


def in_mind(tagged: Tagged, match: Match) -> bool:
    """ "I can't *wrap my mind* around it", "the *blood test*": a turn of speech, a clinic's."""
    if match.object is None:
        return False
    if said_at(tagged, match.object[1] - 1) == "blood" and said_at(tagged, match.object[1]) in _TESTS:
        return True
    if said_at(tagged, match.object[0]) != "mind":
        return False
    return _IN_MIND.search(text_before(tagged, match.object[0])) is not None


def _while_teething(tagged: Tagged, match: Match) -> bool:
    """ "When *she has teething* troubles", "*teething can* upset a mealtime": nothing is said to ease it."""
    if match.object is None or said_at(tagged, match.object[0]) != "teething":
        return False
    if match.object[0] == 0 and said_at(tagged, match.object[1]) in _MAY:
        return True
    if _POORLY.search(text_before(tagged, match.object[0])) is not None:
        return True
    return _SHE_IS.search(text_before(tagged, match.object[0])) is not None


def _we_use(tagged: Tagged, match: Match) -> bool:
    """ "*We don't use* a lot of salt": how somebody cooks."""
    return match.object is not None and _WE_DO.search(text_before(tagged, match.object[0])) is not None


def _is_liked(tagged: Tagged, match: Match) -> bool:
    """ "*He loves* fruit, many carbs and the crust of a lentil bake": what somebody likes."""
    return match.object is not None and _HE_LIKES.search(text_before(tagged, match.object[0])) is not None


def _to_pack(tagged: Tagged, match: Match) -> bool:
    """ "You will know how *to pack a healthy and safe* lunch": what the cook is after."""
    return _TO_PACK.search(text_before(tagged, match.trigger[0])) is not None


def _if_it_is(tagged: Tagged, match: Match) -> bool:
    """ "*If it's* carbs today": left open, but not "if it's fibre *you're after*, take the beans"."""
    if match.object is not None and text_after(tagged, match.object[1]).startswith(("you're ", "you ")):
        return False
    return match.subject is not None and text_before(tagged, match.subject[0]).endswith("if ")


def _somebody_is(tagged: Tagged, match: Match) -> bool:
    """ "We get wiser and *healthier*": somebody does, and nothing to eat is named."""
    return not tagged.find(_EATEN) and _SOMEBODY_IS.search(text_before(tagged, match.trigger[0])) is not None


TALES: Mapping[str, tuple[Ask, ...]] = {
    "age-and-food": (_last_years, _already),
    "age-and-solids": (_last_years, _already),
    "free-of": (_cook_without,),
    "against-disease": (_a_treat,),
    "food-and-weak-disease": (_such_a_pain,),
    "complaint-and-food": (_such_a_pain,),
    "wait-until": (_last_years,),
    "start-at-age": (_last_years,),
    "is-a-function": (_part_of,),
    "gives-disease": (_had_a_fright,),
    "brings-disease": (_had_a_fright,),
    "told-beside": (_had_a_fright,),
    "gone-since": (_had_a_fright,),
    "safe": (_had_eaten, _which_are, _to_pack),
    "free-from": (_which_are,),
    "food-and-function": (_while_teething,),
    "function-and-food": (_while_teething,),
    "has-effect": (_while_teething,),
    "hides": (_we_use,),
    "amount-in": (_we_use,),
    "both": (_is_liked,),
    "is": (_if_it_is,),
    "from-age": (_to_pack,),
    "healthier": (_somebody_is,),
    "harmful": (_as_if,),
    "contains-gluten": (_eats_it,),
    "helps-a-function": (_the_mood,),
    "harms-a-function": (_the_mood,),
    "process-makes": (_makes_somebody,),
}
"""Rule name and what to ask of its matches."""
