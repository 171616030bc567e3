"""Matches that say nothing of a food, since they are said of a person, of an aim or of what the cook is to do."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, acts_alone, end_of, quoted, said_at, text_after, text_before
from spoonproof.claims.lexicon import fold
from spoonproof.claims.scan import Tagged

_PERSON = frozenset({"he", "she", "i", "we", "you", "he's", "she's", "i'm", "we're", "you're"})
_AIMS = frozenset(
    "goal aim focus point key priority purpose reason concern question trick idea topic subject issue".split()
)
_OWNERS = frozenset("my your our his her their whose".split())
_NEEDED = frozenset({"needed", "required", "necessary"})
_ASKED = re.compile(
    r"\b(?:ask\w*|questions?|messag\w*|emails?|e-mailed|comments?|talk\w*|chat\w*|wrote|writ\w+|read\w*|posts?|videos?)"
    r" (?:\w+ ){0,2}?about (?:\w+ )?$"
)
_NOT_THE_SAME = r"(?:doesn't|does not|don't) (?:always )?mean|(?:isn't|is not) (?:always )?the same(?: thing)? as"
_MEANS = re.compile(rf"\W{{0,3}}(?:{_NOT_THE_SAME})\b")
_MEANT_BEFORE = re.compile(rf"\b(?:{_NOT_THE_SAME}) (?:that )?(?:it is |it's )?\W?$")
_ROUND_THE_MOUTH = re.compile(
    r"(?:just |only )?(?:a?round|on|near) (?:the|their|his|her|a baby's) (?:mouth|lips|chin)\b"
)
_OLDEST = 36
"""Months: an age that is told without its unit is no higher."""
_AT_AN_AGE = re.compile(
    r"[^.;!?]{0,30}?\b(?:in (?:the|their|his|her|a baby's) first year|(?:before|until|till|under)"
    r" (?:one|two|1|2|12|twelve|the age|their|his|her|they|she|he|a year|the first))\b"
)
_NO_HELP = re.compile(
    r"[^.;!?]{0,20}?(?:(?:didn't|did not|doesn't|don't|never|hasn't|haven't|has not|have not)(?: \w+)?"
    r" (?:helped|help|work|worked|changed?|cured?|touch|made? (?:any|a|the slightest) difference)"
    r"|(?:did|does|do|done) (?:absolutely )?nothing|(?:made|makes?) no difference|(?:had|has) no effect"
    r"|(?:was|were) no help)\b"
)
_FISH_BONES = re.compile(
    r"\b(?:eat(?:ing|en|s)?|crush\w*|mash\w*|(?:check|look|feel|watch|sift|pick) (?:\w+ )?for|remov\w+|tak\w+ out|soft"
    r"|tiny|fine|edible|larger?|little|fish|salmon|sardines?|with) "
    r"(?:(?:the|their|its|any|all|out|soft|tiny|fine|small) ){0,3}$"
    r"|\b(?:salmon|sardines?|pilchards?|fish)\W{1,2}$"
)
_MANAGES = re.compile(
    r"\b(?:i|we|you|they|he|she|to)(?:'ve|'d|'ll| have| had| can| could| will| would)?(?: \w+)? "
    r"(?:do|does|did|done|go|goes|went|going|gone|live|lives|lived|manage|managed|survive|cope) (?:\w+ )?$"
    r"|\bif (?:you|we|i)(?: \w+)? (?:try|tried|make|made|bake|cook|do|did|serve|prefer|leave|left) [^.,;:?!]{0,30}$"
)
_SUCH_AS = re.compile(r"\b(?:such as|e\.g\.?|for example|for instance|^think)\b[^.;:?!]{0,80}$")
_THE_BABY = re.compile(
    r"\bfor (?:the |your |my |our |her |his )?"
    r"(?:baby|babies|bub|bubs|little ones?|toddlers?|kids?|children|child|tot|tots)(?:'s portion|'s share)?[.!,;]?\s*$"
)
_THERE_ARE = re.compile(r"\W*(?:there are|here are) (?:also )?(?:certain|some|a few|several|still|other|foods)\b")
_DISHES = frozenset({"food", "dish", "ambiguous-nutrient", "hazard-food", "allergen-word"})
_HOLDING = frozenset({"have", "contain"})
_TAKEN_OUT = frozenset("leave left omit omitting skip hold keep".split())
_FOOD = frozenset({"food", "dish"})
_DOING = frozenset("making being keeping saving letting turning hiding baking doing looking tasting thickening".split())
_DOES_GOOD = frozenset("effect effect-weak disease nutrient nutrient-weak body health absorb digest allergy".split())
_RECIPES = frozenset("recipe recipes idea ideas".split())
_AGES = frozenset({"age", "age-unit", "number"})
_GOOD = frozenset(
    "benefit benefit-weak harm harm-weak goodfor badfor healthy loose loose-weak contain have high source need".split()
)
_HEALTH = frozenset({"health", "health-weak"})
_AT_STAKE = re.compile(
    r"\b(?:more important than|risk(?:ing|ed)?|worr(?:y|ied) about|cared? about|gambl\w+ with"
    r"|roulette with|play\w* with)"
    r" (?:[\w']+ ){0,3}\w+'s $"
)
_INGREDIENT = frozenset({"gelatin", "gelatine"})
_TO_DO = frozenset(
    "add stir sprinkle mix whisk dissolve soak bloom pour fold tip melt heat warm blend combine beat place put".split()
)
_NEAR = 4  # items before what gives a match away


def _manages(tagged: Tagged, match: Match) -> bool:
    """ "We *do without* sugar", "*if you try it* without sugar": what somebody does, and no food is said to be so."""
    return _MANAGES.search(text_before(tagged, match.trigger[0])) is not None


def _needs_none(tagged: Tagged, match: Match) -> bool:
    """ "It is sweet, so no sugar *needed*": what the cook can do without, not what is in it."""
    return said_at(tagged, end_of(match)).partition(" ")[0] in _NEEDED


def _asked_about(tagged: Tagged, match: Match) -> bool:
    """ "So many of you *ask about* eczema since I started": what others want to hear of, nothing that ended."""
    return match.object is not None and _ASKED.search(text_before(tagged, match.object[0])) is not None


def _till_an_age(tagged: Tagged, match: Match) -> bool:
    """ "No honey, no salt *in the first year*": what a child goes without, and not what a dish does."""
    return _AT_AN_AGE.match(text_after(tagged, match.end)) is not None


def _as_hot(tagged: Tagged, match: Match) -> bool:
    """ "Until they reach *165*": how hot a thing is, and nobody's age."""
    said = "" if match.object is None else said_at(tagged, match.object[1] - 1)
    return said.isdigit() and int(said) > _OLDEST


def _what_it_means(tagged: Tagged, match: Match) -> bool:
    """ ""No added sugar" *doesn't mean* no sugar": how a label is read."""
    around = text_before(tagged, match.start), text_after(tagged, match.end)
    return _MEANT_BEFORE.search(around[0]) is not None or _MEANS.match(around[1]) is not None


def _by_contact(tagged: Tagged, match: Match) -> bool:
    """ "A rash *round the mouth* from strawberries": of the acid, and no illness."""
    return _ROUND_THE_MOUTH.match(text_after(tagged, end_of(match))) is not None


def _was_no_help(tagged: Tagged, match: Match) -> bool:
    """ "He had reflux, and sardines *didn't help* one bit"."""
    return _NO_HELP.match(text_after(tagged, match.end)) is not None


def _edible_bones(tagged: Tagged, match: Match) -> bool:
    """ "Rich in calcium because you *eat the soft bones*": a fish's bones, not a child's."""
    if match.object is None or "bones" not in said_at(tagged, match.object[1] - 1):
        return False
    return _FISH_BONES.search(text_before(tagged, match.object[0])) is not None


def _by_the_way(tagged: Tagged, match: Match) -> bool:
    """ "A drink *such as* sugar-free squash": which product is meant, and no more."""
    end = end_of(match)
    return bool(tagged.find(_FOOD, end, end + 2)) and _SUCH_AS.search(text_before(tagged, match.start)) is not None


def _aimed_at(tagged: Tagged, match: Match) -> bool:
    """ "The *goal isn't* nutrition alone": an aim is no food that holds it."""
    at = match.trigger[0]
    return at > 0 and tagged.items[at - 1].words in _AIMS


def _somebody_between(tagged: Tagged, match: Match, people: frozenset[str]) -> bool:
    if match.subject is None or match.object is None:
        return False
    return any(item.words in people for item in tagged.items[match.subject[1] : match.object[0]])


def _of_another(tagged: Tagged, match: Match) -> bool:
    """ "... but it seems *she's* lost her appetite": said of her, not of the food before."""
    return _somebody_between(tagged, match, _PERSON)


def _somebodys_health(tagged: Tagged, match: Match) -> bool:
    """ "*My son's* health worried me": whose it is stands before, and nothing is said to do it good."""
    begin, end = match.trigger
    if _AT_STAKE.search(text_before(tagged, begin)) is not None and tagged.words(begin, end).lower() == "health":
        return True
    if tagged.words(begin, end).lower() != "health" or tagged.find(_GOOD) or tagged.find(_HEALTH) != [begin]:
        return False
    return any(
        item.words in _OWNERS or item.words.endswith("'s") for item in tagged.items[max(0, begin - _NEAR) : begin]
    )


def _stirred_in(tagged: Tagged, match: Match) -> bool:
    """ "*Add the gelatine*, then warm it in the water": an ingredient that is a nutrient by name, and a step."""
    if match.object is None or tagged.items[0].words not in _TO_DO:
        return False
    return tagged.items[match.object[0]].words in _INGREDIENT


def _for_her_portion(tagged: Tagged, match: Match) -> bool:
    """ "*Omit* the salt *for the baby*": what the cook leaves out this time, with no age and no reason."""
    left_out = tagged.items[match.trigger[0]].words.partition(" ")[0] in _TAKEN_OUT
    return left_out and not tagged.find(_AGES) and _THE_BABY.search(fold(tagged.text)) is not None


def _for_doing_it(tagged: Tagged, match: Match) -> bool:
    """ "The added benefit *of making* the sauce creamy": what is good about it is no good to anybody's health."""
    then = [item.words for item in tagged.items[match.trigger[1] : match.trigger[1] + 2]]
    said = tagged.items[match.trigger[1] - 1].words
    if then[:1] == ["that"] and "benefit" in said and not tagged.find(_DOES_GOOD, match.trigger[1]):
        return True  # "the added benefit that the broth can be used"
    doing = then[0] if said.endswith(" of") and then else then[1] if then[:1] == ["of"] and then[1:] else ""
    return doing in _DOING and not tagged.find(_DOES_GOOD, match.trigger[1])


def _in_quotes(tagged: Tagged, match: Match) -> bool:
    """ "Another *“healthy”* muffin": a word held off by its quotes."""
    return quoted(tagged, *match.trigger)


def _kind_of_recipe(tagged: Tagged, match: Match) -> bool:
    """ "When I find *healthy muffin recipes*": which recipes are sought, and no dish is called so."""
    return said_at(tagged, max(match.end, match.subject[1] if match.subject else 0)) in _RECIPES


def _harmed(tagged: Tagged, match: Match) -> bool:
    """ "*No sugar was harmed* in the making": a turn of speech."""
    then = [item.words for item in tagged.items[match.end : match.end + 2]]
    return len(then) == 2 and then[0] in ("was", "were") and then[1] in ("harmed", "hurt", "injured")


def _there_are(tagged: Tagged, match: Match) -> bool:
    """ "*There are some foods* that should not be given": what comes next says which."""
    if match.subject is None or tagged.find(_DISHES):
        return False
    return _THERE_ARE.match(fold(tagged.text)) is not None


def _peel(tagged: Tagged, match: Match) -> bool:
    """ "*The skin has* more fibre": a fruit's, since it holds it."""
    if match.object is None or tagged.items[match.object[1] - 1].words not in ("skin", "skins"):
        return False
    return bool(tagged.find(_HOLDING, match.object[1], match.object[1] + 1))


def _does_something_else(tagged: Tagged, match: Match) -> bool:
    """ "Peas and beans, *and vitamin C helps* take it up": the vitamin is not said to be in them."""
    return match.object is not None and acts_alone(tagged, match.object[0])


BYSTANDERS: Mapping[str, tuple[Ask, ...]] = {
    "until-they-turn": (_as_hot,),
    "ill-until": (_asked_about, _was_no_help),
    "told-beside": (_asked_about, _was_no_help),
    "disease-and-food": (_was_no_help, _by_contact),
    "food-and-disease": (_by_contact,),
    "for-disease": (_was_no_help,),
    "nutrient-and-body": (_edible_bones,),
    "helps-an-organ": (_edible_bones,),
    "free-of": (_what_it_means, _manages, _harmed, _till_an_age, _needs_none),
    "free-of-list": (_what_it_means, _manages, _till_an_age),
    "sugar-free": (_what_it_means, _by_the_way),
    "free-from": (_what_it_means, _by_the_way),
    "low-in": (_by_the_way,),
    "low-fat": (_by_the_way, _manages),
    "low-calorie": (_by_the_way,),
    "is-source": (_aimed_at,),
    "is": (_aimed_at,),
    "is-a-function": (_of_another,),
    "health-good": (_somebodys_health, _for_doing_it),
    "body-and-nutrient": (_peel,),
    "both": (_stirred_in, _by_the_way, _does_something_else),
    "healthy-dish": (_in_quotes, _kind_of_recipe),
    "is-healthy": (_in_quotes,),
    "its-healthy": (_in_quotes,),
    "makes-healthy": (_in_quotes,),
    "loose-word": (_in_quotes,),
    "loose-dish": (_in_quotes, _kind_of_recipe),
    "superfood": (_in_quotes,),
    "not-for-babies": (_for_her_portion, _there_are),
}
"""Rule name and what to ask of its matches."""
