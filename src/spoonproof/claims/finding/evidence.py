"""What must be there for a match to be a claim at all: something eaten that could do it, a food that is said so."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from spoonproof.claims.finding.allergies import (
    holds_another,
    of_more_than_one_family,
    said_to_be_free,
    says_of_an_allergy,
)
from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import end_of, said_at, text_after, text_before
from spoonproof.claims.finding.phrase import lack
from spoonproof.claims.finding.ranking import is_about_no_food, pronoun_before
from spoonproof.claims.scan import Tagged

_SHORT = 8
"""Items: a heading or a caption leaves out what the page is about."""
_POINTED = 8
"""Items: a pronoun further back than that stands for what another clause is about."""
_LONG = 16
"""Items: a longer sentence speaks of more than one thing."""
_BESIDE = 4
_AROUND = 10
_NAMED = frozenset("food dish solids nutrient ambiguous-nutrient contaminant additive hazard-food milk-feed".split())
_EATEN = _NAMED | frozenset("generic-food nutrient-weak eating fed milk-feed bottle snack main-food amount low".split())
_RICH_IN = frozenset({"suffix-high"})
_STANDING = _NAMED | {"nutrient-weak"}
_RELATIVE = frozenset({"which", "that"})
_TAKES = frozenset({"takes", "give", "give-weak", "have", "fed"})
_TAKEN = frozenset("it this these them that with".split())
_POINTING = frozenset("it they this these that which those both them".split())
_THESE = frozenset({"this", "these"})
_HERE = frozenset({"here", "said"})
_OWNED = frozenset({"its", "their"})
_HOLDS = frozenset({"have", "contain"})
_READERS = frozenset({"audience-baby", "age", "age-unit"})
_PERSONS = frozenset({"audience-baby", "audience-adult"})
_COPULA = frozenset({"copula"})
_NOT_PUT_IN = ("need", "requir", "necessary", "was ", "were ")
_HOLDING = frozenset({"contain", "copula", "have", "with", "made-so"})
_DOERS = frozenset({"audience-adult", "process", "serve", "takes"})
_GIVEN = frozenset({"offer"})
_OF_FOOD = ("nutrient-content", "general-benefit")
_SAID_TO_BE = ("safe", "free-from", "contains-gluten")
_ONCE = re.compile(
    r"\b(?:i|we|he|she|they|everyone|someone|somebody)(?:'d| had| (?!baked|cooked|checked|tested)\w+ed)\b"
    r"|\b(?:was|were)\b"
)
_TELLER = re.compile(r"\b(?:i|we|my|our|he|she|his|her|that|there|everyone|someone|somebody)\b")
_NOW = re.compile(
    r"\b(?:is|are|has|have|contains?|gives?|helps?|can|should|must|may|need|never|you|your|do|does|don't|bab\w+|children"
    r"|study|studies|survey|researchers?|scientists?)\b"
    r"|'s |'re "
)
_GROUP = re.compile(r"proteins?|carb(?:ohydrate)?s?|fats?|starch(?:es)?|grains")
_ONE_OF = re.compile(r"\b(?:an?|one|another|(?:kind|sort|type) of) $")
_GAIN = frozenset({"gain-n", "source-noun", "suffix-high", "content"})  # "for a protein *boost*"
_CALLED = frozenset({"called", "that", "which"})
_BESIDE_IT = frozenset(", and or & plus".split())
_IN_A_LIST = _BESIDE_IT | frozenset("a an the some one two three".split())
_COURSES = frozenset({"food", "dish"})
_NUTRIENTS = frozenset({"nutrient", "nutrient-weak", "energy"})
_SUCH_AS = re.compile(r"(?:, ?)?(?:such as|like|e\.g|for example)\b")
_LASTED = re.compile(
    r"\bbeen (?:nearly |almost |about |over |only |just |more than ){0,2}$"
    r"|\b(?:last|(?:the|these|this|my|our|his|her|their) past|next|coming|following|another) (?:few |couple of )?$"
)
_AGO = re.compile(r"(?:ago|later)\b")
_EXPECTED = frozenset("him her them it you me us to that".split())
_STEAD = re.compile(
    r"\b(?:place of|replac\w+|displac\w+|crowd\w* out|push\w* out|instead of|(?:room|space|appetite) for) "
    r"(?:[\w-]+ ){0,2}$"
)
_FULL_FAT = re.compile(r"\bfull[ -]$")
_SO = re.compile(r"\b(?:so|thin enough|soft enough) (?:[\w-]+ ){0,2}(?:that )?(?:you|i|we|they|he|she) can (?:\w+ )?$")
_IN_SIGHT = ("in ", "at the ", "a ", "frightful ", "first ")
_LOOKED_AT = re.compile(r"(?:see|sees|seeing) (?:through|it|that|the|this|your|right|where|how|if)\b")
_LEFT_IN = re.compile(
    r"\b(?:with|keep|leave|mash|crush|eat) (?:the |their |its |soft |small |tiny |edible |those ){0,3}$"
)
_IN_IT = re.compile(r"bones (?:left |still |mashed |kept )?(?:in|on|in them|mashed|crushed|and all)\b")
_STAY_SAFE = re.compile(r"(?:^|[,;:–-] ?|\bto |\bjust )(?:be|stay|play it|keep \w+) $")
_UP_TO = re.compile(r"\bfor up to (?:about )?$")
_IS_SOME = re.compile(r"\b(?:there|if|whether)\b[^.;:?!]{0,12}$")


def has_evidence(tagged: Tagged, match: Match, points: bool) -> bool:
    """Whether what makes a match a claim is in its sentence. ``points``: the sentence points back at a food."""
    if match.rule.kind in _HEALTH and match.rule.name not in _OF_NOTHING_EATEN and not _does_it(tagged, match, points):
        return False
    if (match.rule.kind in _OF_FOOD or match.rule.name in _SAID_TO_BE) and _was_once(tagged):
        return False
    if match.rule.loose and match.rule.kind in _OF_THE_BODY and not _stands_close(tagged, match):
        return False
    if match.rule.kind == "function" and not _does_the_eyes(tagged, match):
        return False
    asked = _BY_RULE.get(match.rule.name)
    return asked is None or asked(tagged, match)


def _was_once(tagged: Tagged) -> bool:
    """Whether a food is told of as it was once, by whoever cooked or ate it: "the healthiest lunch *I'd packed*",
    "there *was* iron in the water at the cottage"."""
    text = tagged.low
    return all(one.search(text) is not None for one in (_ONCE, _TELLER)) and _NOW.search(text) is None


def _does_it(tagged: Tagged, match: Match, points: bool) -> bool:
    """Whether something eaten is named or pointed at that could do the body good or harm: "*a walk* helps digestion"
    names none. A short line may leave it out."""
    if len(tagged.items) <= _SHORT:
        return not is_about_no_food(tagged, match.trigger[0]) or bool(tagged.find(_EATEN))
    if promises_no_illness(tagged, match):
        return True
    if 0 < match.trigger[0] <= 3 and tagged.symbols[match.trigger[0] - 1] == ":":
        return True  # "nerve function: essential for ..." stands under what it is about
    own = {*range(*match.trigger), *range(*(match.object or match.trigger))} - {*tagged.find(_GIVEN, *match.trigger)}
    at = max(match.trigger[0], (match.object or match.trigger)[0])
    if any(index not in own for index in tagged.find(_EATEN, 0, at)):
        return True
    if points and any(item.words in _POINTING for item in tagged.items[:at]):
        return True
    if any(item.words.rpartition(" ")[2] in _HERE for item in tagged.items[:at]):
        return True
    pronoun = pronoun_before(tagged, 0, at)
    if pronoun is not None and at - pronoun <= _POINTED and said_at(tagged, pronoun) not in _OWNED:
        return True
    if any(index not in own for index in tagged.find(_NAMED, at)):
        return True
    end = end_of(match)
    if said_at(tagged, end) == "it" and tagged.find(_HOLDS, end + 1, end + 2):
        return True  # "the benefits *it has* for you"
    if any(said_at(tagged, index + 1) in _TAKEN for index in tagged.find(_TAKES, end)):
        return True  # "no colds since we *tried it*"
    return lack(tagged, at) is not None


def promises_no_illness(tagged: Tagged, match: Match) -> bool:
    """ "A bowl a week *prevents colds* all winter": a promise against an illness is heard whoever is said to keep it,
    unless that is what somebody does about the house, or no food."""
    if match.rule.name not in _PROMISES or match.object is None or not tagged.find(_ILLNESS, *match.object):
        return False
    at = match.trigger[0]
    return tagged.find(_PROMISED, *match.trigger) != [] and not tagged.find(_DONE, 0, at)


def _stands_close(tagged: Tagged, match: Match) -> bool:
    """Whether a food stands beside what a loose rule found of the body or of health: in a long sentence both may be
    there and have nothing to do with each other."""
    if len(tagged.items) <= _LONG:
        return True
    begin, end = match.object or match.trigger
    if any(said_at(tagged, index - 1) in _POINTING for index in tagged.find(_HOLDS, begin - _BESIDE, begin)):
        return True  # "nursing, while *it has* many benefits"
    if any(item.words.partition(" ")[0] in _THESE for item in tagged.items[max(0, begin - _AROUND - _BESIDE) : begin]):
        return True  # "*this stuff* is good and will make her tummy feel full"
    near = range(begin - 1, max(0, begin - _AROUND) - 1, -1)
    after = next((index for index in near if said_at(tagged, index) in _RELATIVE), None)
    if after is not None and tagged.is_any(after - 1, _NAMED) and tagged.find(_COPULA, after + 1, after + 2):
        return True  # "bad *fats that are* quite toxic to the brain"
    return bool(tagged.find(_STANDING, begin - _BESIDE, begin) or tagged.find(_STANDING, end, end + _BESIDE))


def _is_no_course(tagged: Tagged, match: Match) -> bool:
    """Whether a nutrient is one that a food holds, and no course of a meal: "lean *proteins* such as turkey", "a grain,
    *protein*, dairy", "*one protein* and something green"."""
    if match.object is None or _GROUP.fullmatch(said_at(tagged, match.object[0])) is None:
        return True
    first, last = match.object
    if _SUCH_AS.match(text_after(tagged, last)) is not None or (first == 0 and said_at(tagged, last) == ":"):
        return False
    if _ONE_OF.search(text_before(tagged, first)) is not None and not tagged.find(_GAIN, first + 1, first + 2):
        return said_at(tagged, first + 1) in _CALLED
    return not (_food_beside(tagged, first, -1) or _food_beside(tagged, last - 1, 1))


def _is_held(tagged: Tagged, match: Match) -> bool:
    return _is_said_of_it(tagged, match) and _is_no_course(tagged, match)


def _food_beside(tagged: Tagged, at: int, step: int) -> bool:
    """Whether the next thing named in a list, left or right, is a food."""
    at += step
    joined = False
    while 0 <= at < len(tagged.items) and said_at(tagged, at) in _IN_A_LIST:
        joined = joined or said_at(tagged, at) in _BESIDE_IT
        at += step
    return joined and tagged.is_any(at, _COURSES) and not tagged.is_any(at, _NUTRIENTS)


def _is_said_of_it(tagged: Tagged, match: Match) -> bool:
    """Whether a food is called rich in it, and not what it takes the place of: "it *replaces* iron-rich foods"."""
    if match.object is None or not tagged.find(_RICH_IN, match.object[1], match.object[1] + 1):
        return True
    return _STEAD.search(text_before(tagged, match.object[0])) is None


def _is_no_kind(tagged: Tagged, match: Match) -> bool:
    """Whether fat is said to be in it, and not which kind it is: "it's *full fat* yoghurt"."""
    if match.object is None or said_at(tagged, match.object[0]) != "fat":
        return True
    return _FULL_FAT.search(text_before(tagged, match.object[0])) is None


def _does_the_eyes(tagged: Tagged, match: Match) -> bool:
    """Whether somebody sees the better for it: "so thin *you can see* the plate" only shows it, "no sugar *in sight*"
    is none; nor does "while he *is teething*" say that anything eases it."""
    if match.object is not None and said_at(tagged, match.object[0]) == "teething":
        return not tagged.is_any(match.object[0] - 1, _COPULA)
    if match.object is not None and said_at(tagged, match.object[0]) == "sight":
        return not text_before(tagged, match.object[0]).endswith(_IN_SIGHT)
    if match.object is None or not said_at(tagged, match.object[0]).startswith("see"):
        return True
    looks = _LOOKED_AT.match(text_after(tagged, match.object[0]))
    return looks is None or _SO.search(text_before(tagged, match.object[0])) is None


def _is_the_body(tagged: Tagged, match: Match) -> bool:
    """Whether bones are a child's: "sardines *with the bones in*" are eaten so."""
    begin = (match.object or match.trigger)[0]
    left = _IN_IT.match(text_after(tagged, begin))
    return left is None or _LEFT_IN.search(text_before(tagged, begin)) is None


def _is_what_is_eaten(tagged: Tagged, match: Match) -> bool:
    """Whether a food is called healthy, and not who eats it: "a *healthy adult* who loves plums"."""
    return not tagged.find(_PERSONS, match.trigger[1], match.trigger[1] + 1)


def _is_an_age(tagged: Tagged, match: Match) -> bool:
    """Whether months or years are a child's age, and not how long something went on: "it's been five years"."""
    if match.object is None:
        return True
    begin, end = match.object
    return (
        _LASTED.search(text_before(tagged, begin)) is None
        and _UP_TO.search(text_before(tagged, begin)) is None
        and _AGO.match(text_after(tagged, end)) is None
    )


def _is_a_lack(tagged: Tagged, match: Match) -> bool:
    """Whether an illness that shows so is the lack of a nutrient: "*B12 deficiency* includes fatigue"."""
    return lack(tagged, match.trigger[0]) is not None


def _is_pregnant(tagged: Tagged, match: Match) -> bool:
    """Whether a woman is: "not *expecting him* to eat it all" is no sign of it."""
    if match.object is None or said_at(tagged, match.object[1] - 1) != "expecting":
        return True
    return said_at(tagged, match.object[1]) not in _EXPECTED


def _is_asked(tagged: Tagged, match: Match) -> bool:
    """Whether leave is asked or given: "*should* babies have it?", and not "parents should offer soft pieces"."""
    at = match.trigger[0]
    if said_at(tagged, match.trigger[1]) == "help":
        return False
    return at == 0 or tagged.text.rstrip().endswith("?") or "should" not in said_at(tagged, at)


def _called_safe(tagged: Tagged, match: Match) -> bool:
    """Whether a food is said to be safe, or safe for somebody: "a safe drink", not "a list of safe snacks"."""
    begin, end = match.object or match.trigger
    if _STAY_SAFE.search(text_before(tagged, begin)) is not None and tagged.symbols[end : end + 1] in ("", ".", ","):
        return False
    if said_at(tagged, begin) != "safe" or not tagged.find(_EATEN, end, end + 1):
        return True
    if tagged.find(_READERS, end, end + 6):
        return True
    return bool(tagged.find(_COPULA, begin - 4, begin)) and _IS_SOME.search(text_before(tagged, begin)) is None


def _goes_without(tagged: Tagged, match: Match) -> bool:
    """Whether a food is said to go without something, and not the cook or who eats: "we *do without* sugar", "*simmer*
    it without salt", "no sugar *needed*"."""
    begin, end = match.trigger[0], end_of(match)
    if said_at(tagged, end).startswith(_NOT_PUT_IN) or tagged.is_any(begin - 1, _NEED):
        return False  # "toddlers *need no* iron" says what they need
    clause = max((i + 1 for i in range(begin) if tagged.symbols[i] in ",.:?"), default=0)
    held = tagged.find(_HOLDING, clause, begin)
    done = [i for i in tagged.find(_DOERS, clause, begin) if not held or i > held[-1]]
    return not done or tagged.is_any(begin - 1, _COURSES)


_NEED = frozenset({"need", "need-weak"})
_OF_THE_BODY = ("function", "general-benefit")
_PROMISES = ("against-disease", "keeps-away")
_PROMISED = frozenset({"effect-verb", "keep"})
_ILLNESS = frozenset({"disease"})
_DONE = frozenset("nonfood other-doer hygiene drug process storing".split())
_HEALTH = ("function", "disease", "general-benefit")
_OF_NOTHING_EATEN = (
    "fed-so-eats-so",
    "teeth-blamed",
    "starved",
    "none-of-us-ill",
    "stores-last",
    "so-many-say",
)  # what is done, and no food, is claimed
_BY_RULE: Mapping[str, Callable[[Tagged, Match], bool]] = {
    "contains": _is_held,
    "iron-rich": _is_said_of_it,
    "is-source": _is_no_kind,
    "both": _is_no_course,
    "body-and-nutrient": _is_the_body,
    "allergy": says_of_an_allergy,
    "food-allergy": says_of_an_allergy,
    "reacts-to": of_more_than_one_family,
    "outgrown": of_more_than_one_family,
    "start-allergens": says_of_an_allergy,
    "watch-reactions": of_more_than_one_family,
    "introduce-allergen": of_more_than_one_family,
    "healthy-dish": _is_what_is_eaten,
    "age-and-food": _is_an_age,
    "limit-in-pregnancy": _is_pregnant,
    "can-babies": _is_asked,
    "safe": _called_safe,
    "free-from": said_to_be_free,
    "holds-it": holds_another,
    "free-of": _goes_without,
    "lack-shows": _is_a_lack,
}
