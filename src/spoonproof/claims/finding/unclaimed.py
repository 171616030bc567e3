"""Matches that claim nothing of a food after all: it is wished for, picked by, counted out, soaked up in the pot."""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import pairwise

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.kitchen import ILLNESS, KITCHEN
from spoonproof.claims.finding.near import Ask, acts_alone, end_of, first_of, quoted, said_at, text_after, text_before
from spoonproof.claims.finding.phrase import widen
from spoonproof.claims.finding.spoken_of import SPOKEN_OF, bruised, ended_up, of_the_heart, teething_thing, to_die_for
from spoonproof.claims.scan import Tagged

_NOT_THE_SAME = r"(?:doesn't|does not|don't) (?:always )?mean|(?:isn't|is not) (?:always )?the same(?: thing)? as"
_MEANS = re.compile(rf"\W{{0,3}}(?:{_NOT_THE_SAME})\b")
_MEANT_BEFORE = re.compile(rf"\b(?:{_NOT_THE_SAME}) (?:that )?(?:it is |it's )?\W?$")
_AT_AN_AGE = re.compile(
    r"[^.;!?]{0,30}?\b(?:in (?:the|their|his|her|a baby's) first year|(?:before|until|till|under)"
    r" (?:one|two|1|2|12|twelve|the age|their|his|her|they|she|he|a year|the first))\b"
)
_CANNOT = re.compile(r"\b(?:can't|cannot|couldn't|can not|won't|don't|never) [^.,;:?!]{0,30}$")
_NO_HELP = re.compile(
    r"[^.;!?]{0,20}?(?:(?:didn't|did not|doesn't|don't|never|hasn't|haven't|has not|have not)(?: \w+)?"
    r" (?:helped|help|work|worked|changed?|cured?|touch|made? (?:any|a|the slightest) difference)"
    r"|(?:did|does|do|done) (?:absolutely )?nothing|(?:made|makes?) no difference|(?:had|has) no effect"
    r"|(?:was|were) no help)\b"
)
_ALLERGENS = frozenset({"allergen-word", "allergen-food"})
_WHAT = re.compile(r"(?<!is )(?<!are )(?<!was )(?<!'s )(?<!'re )\bwhat (?:exactly )?$")
_AGE = frozenset({"age", "age-unit", "number"})
_BOUND = frozenset({"bound"})
_ALSO_BOUND = frozenset({"avoid", "okay", "give", "introduce", "forbid"})
_OTHER_FOLK = re.compile(r"\b(?:different|other|many|our|all|various|across|some|most|asian|western|these|those) $")
_FRIGHTS = frozenset({"heart attack", "panic attack", "meltdown", "meltdowns", "breakdown", "tantrum", "tantrums"})
_HAD = re.compile(r"\b(?:have|had|having|has) (?:\w+ ){0,2}$")
_WHICH_ARE = re.compile(r"\b(?:which|what) (?:\w+ ){1,3}(?:are|is) [^.,;:?!]{0,30}$")
_EATEN = frozenset("food dish generic-food solids nutrient ambiguous-nutrient".split())
_SOMEBODY_IS = re.compile(r"\b(?:i|we|he|she)\b(?!'ve found| think| know)[^.;:?!]{0,90}$")
_THINGS = frozenset(
    "plant plants packs cutter cutters tin tins mould moulds mold molds theme themed costume party parties shop shops "
    "stores aisle aisles stall stand tree trees bush bushes patch patches seedling seedlings "
    "book books song songs game games toy toys shirt shirts box boxes carton cartons wrapper wrappers liner liners "
    "maker makers machine machines cooker cookers mill mills grinder grinders spoon spoons fork forks knife "
    "knives plate plates board boards tray trays rack racks van truck festival market counter deposits shaker shakers "
    "pen pens pistol pistols balloon balloons slide skillet pan pans emoji stickers sticker drawing picture "
    "pictures joke jokes pun puns meme memes debate debates police".split()
)
_FOODS = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient"})
_AFTER_A_VERB = frozenset("a an the in some plenty lots more all so such away down up".split())  # "milk *packs* a lot"
_NUTRIENTS = frozenset({"nutrient", "nutrient-weak", "energy"})
_TICKS = re.compile(r"\btick(?:s|ed|ing)? (?:the |that |your |every )?$")
_JOINS = frozenset("and but so while ,".split())  # not "she sleeps *when she* has had oats"
_DOERS = frozenset({"i", "we", "he", "she"})
_SERVED = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient", "pronoun"})
_AND = frozenset({"and", "or", "&", "plus"})
_WHEN = frozenset({"when-ill"})
_COPULA = frozenset({"copula"})
_LISTED = frozenset("food dish generic-food nutrient ambiguous-nutrient".split())
_DESCRIBING = frozenset(
    {"dietary", "more", "extra", "good", "some", "healthy", "the", "a"}
)  # "whole grains and *dietary* fibre"
_MADE_OF = frozenset({"made of", "composed of", "consists of", "consist of"})
_DIET = re.compile(r"(?:(?:or|and) )?(?:[\w-]+ )?diets?\b")
_CANNOT_COPE = frozenset({"cannot-cope"})
_ABOUT = frozenset({"of", "about", "with"})
_CHILD = frozenset({"audience-baby", "the-child"})
_GROWN_UP = re.compile(
    r"^(?:(?:my|our|his|her|their|the) )?(?:\w+ )?"
    r"(?:grand(?:father|mother|dad|ma|pa|parents)|granny|nan|husband|wife|uncle|auntie?|neighbours?)\b"
)
_ATE = frozenset("ate eats eating had has".split())
_OFFAL = frozenset({"kidney", "kidneys", "heart", "hearts", "brain", "brains", "tongue"})
_MEATS = re.compile(
    r"\b(?:offal|meats?|innards|organs?|(?:chicken|lamb|calf|ox|pig|beef)(?:'s)?|liver(?: and|,))\b[^.;!?]{0,24}$"
)
_OF_WHAT_IS_IN_IT = ("nutrient-content", "allergen", "comparative")
_FREE = ("none", "free")
_LOOK_FOR = re.compile(
    r"\b(?:choose|select|pick|look(?:s|ing)? for|buy|opt for|go for|check for) (?:an? |the |one |some )?$"
)
_MEETS = frozenset("meet meets meeting satisfy fulfil fulfill get".split())
_PEOPLE = frozenset({"audience-baby", "audience-adult"})
_ADDS = re.compile(r"\b(?:i|we|i'm|we're|i've|we've)(?: \w+){0,3} $")
_WITHOUT_IT = re.compile(r"\b(?:he|she|they|he's|she's|they're|child|baby|toddler)(?: is| are|'s|'re)? (?:\w+ )?not $")
_BY_SOMEBODY = {"add": _ADDS, "adding": _ADDS, "getting": _WITHOUT_IT, "eating": _WITHOUT_IT}
_COURSES = frozenset({"food", "dish"})
_TASTES = re.compile(r"\b(?:tast|look|smell|sound)(?:e|es|s|ed)? (?:even |much |far |so much |a lot |way |all the )?$")
_NOUNS_TOO = frozenset({"form", "forms", "work", "balance"})
_ARTICLE = re.compile(r"\b(?:a|an|the|this|that|in|any|each|some) $")
_YIELDS = re.compile(r"\b(?:yields?|makes?) (?:about |around |roughly |between |up to )?(?:[\w½¼¾-]+ (?:to|or|and) )?$")
_PICKED = re.compile(
    r"\b(?:choose|choosing|select|pick|look(?:s|ing)? for|buy|opt for|go for|^use)\b"
    r"[^.,;:?!]{0,60}\b(?:that|which|one|ones|with)\b[^.,;:?!]{0,24}$"
)


def claims_nothing(tagged: Tagged, match: Match) -> bool:
    """Whether a match says nothing of a food, though its words are those of a claim of its rule or kind."""
    begin, end = first_of(match), end_of(match)
    if quoted(tagged, begin, end) or quoted(tagged, *match.trigger) or _picked(tagged, match):
        return True
    asked = _BY_RULE.get(match.rule.name, ()) + KITCHEN.get(match.rule.name, ())
    asked += SPOKEN_OF.get(match.rule.name, ()) + _BY_KIND.get(match.rule.kind, ())
    return any(ask(tagged, match) for ask in asked)


def _picked(tagged: Tagged, match: Match) -> bool:
    """ "Choose a yoghurt *that contains* live cultures", "look for one *with* no sugar": a way to pick one, and nothing
    said of those picked."""
    of_a_thing = match.rule.name == "contaminant" and not tagged.find(_COURSES)
    if match.rule.kind not in _OF_WHAT_IS_IN_IT and not of_a_thing:
        return False
    before = text_before(tagged, first_of(match))
    free = (match.rule.level in _FREE or match.rule.name == "healthier") and _LOOK_FOR.search(before) is not None
    return free or _PICKED.search(text_before(tagged, match.trigger[0])) is not None


def _till_an_age(tagged: Tagged, match: Match) -> bool:
    """ "No honey, no salt *in the first year*": what a child goes without, and not what a dish does."""
    return _AT_AN_AGE.match(text_after(tagged, match.end)) is not None


def _what_it_means(tagged: Tagged, match: Match) -> bool:
    """ ""No added sugar" *doesn't mean* no sugar": how a label is read."""
    around = text_before(tagged, match.start), text_after(tagged, match.end)
    return _MEANT_BEFORE.search(around[0]) is not None or _MEANS.match(around[1]) is not None


def _never_without(tagged: Tagged, match: Match) -> bool:
    """ "You *can't* make this *without* egg": it is in there."""
    at = match.trigger[0]
    return said_at(tagged, at).startswith("without") and _CANNOT.search(text_before(tagged, at)) is not None


def _was_no_help(tagged: Tagged, match: Match) -> bool:
    """ "He had reflux, and sardines *didn't help* one bit"."""
    return _NO_HELP.match(text_after(tagged, match.end)) is not None


def _does_something_else(tagged: Tagged, match: Match) -> bool:
    """ "Peas and beans, *and vitamin C helps* take it up": the vitamin is not said to be in them."""
    return match.object is not None and acts_alone(tagged, match.object[0])


def _had_it(tagged: Tagged, match: Match) -> bool:
    """ "Olive *had* eczema": who had it is somebody."""
    beside = match.object is not None and match.object[0] - match.trigger[1] <= 1
    return beside and tagged.items[match.trigger[0]].words == "had"  # "eggs *had given her* hives" is no such thing


def _what_causes(tagged: Tagged, match: Match) -> bool:
    """ "Theories as to *what causes* allergies": not said; "sugar *is what causes* cavities" is."""
    return _WHAT.search(text_before(tagged, match.trigger[0])) is not None


def _about_it(tagged: Tagged, match: Match) -> bool:
    """ "The next lesson is *about* nutrition", "they only come if it's *for* sugar": what is talked of, or sought."""
    if match.object is None:
        return False
    if said_at(tagged, match.trigger[1]) == "for":
        return True
    return any(item.words.rpartition(" ")[2] == "about" for item in tagged.items[match.trigger[1] : match.object[0]])


def _its_protein(tagged: Tagged, match: Match) -> bool:
    """ "Anything with *walnut protein*": what somebody is allergic to, and no food is said to hold it."""
    if match.object is None or said_at(tagged, match.object[0]) not in ("protein", "proteins"):
        return False
    return bool(tagged.find(_ALLERGENS, match.object[0] - 1, match.object[0]))


def _is_gluten(tagged: Tagged, match: Match) -> bool:
    """ "*Gluten (from wheat flour)* forms a web": what holds a dough together feeds nobody."""
    return match.object is not None and said_at(tagged, match.object[0]) == "gluten"


def _cultures(tagged: Tagged, match: Match) -> bool:
    """ "In *other cultures*": people, and none that live in yoghurt."""
    if match.object is None or said_at(tagged, match.object[0]) not in ("cultures", "culture"):
        return False
    return _OTHER_FOLK.search(text_before(tagged, match.object[0])) is not None


def _bounds_no_age(tagged: Tagged, match: Match) -> bool:
    """ "At two she needs a brush, and milk *before* bed ...": the word after the age bounds something else."""
    if match.object is None or match.trigger[0] < match.object[1]:
        return False
    at = match.trigger[0]
    return tagged.is_any(at, _BOUND) and not tagged.is_any(at, _ALSO_BOUND) and not tagged.find(_AGE, at + 1, at + 4)


def _had_a_fright(tagged: Tagged, match: Match) -> bool:
    """ "I nearly *had a heart attack*": a turn of speech."""
    if match.object is None or said_at(tagged, match.object[0]) not in _FRIGHTS:
        return False
    return _HAD.search(text_before(tagged, match.object[0])) is not None


def _which_are(tagged: Tagged, match: Match) -> bool:
    """ "You find out *which* sweets *are* always nut-free": not said."""
    return _WHICH_ARE.search(text_before(tagged, first_of(match))) is not None


def _somebody_is(tagged: Tagged, match: Match) -> bool:
    """ "We get wiser and *healthier*": somebody does, and nothing to eat is named."""
    return not tagged.find(_EATEN) and _SOMEBODY_IS.search(text_before(tagged, match.trigger[0])) is not None


def _names_a_thing(tagged: Tagged, match: Match) -> bool:
    """ "The *ice packs* are slim", "mineral *deposits*": the food or nutrient only says which thing."""
    if match.object is not None and tagged.is_any(match.object[1] - 1, _NUTRIENTS) and _thing(tagged, match.object[1]):
        return _TICKS.search(text_before(tagged, match.object[0])) is None  # "ticks the *iron box*" has it
    if match.subject is None or not _thing(tagged, match.subject[1]):
        return False
    own = range(*match.subject)
    return all(at in own for at in tagged.find(_FOODS, 0, end_of(match)))


def _thing(tagged: Tagged, at: int) -> bool:
    return said_at(tagged, at) in _THINGS and said_at(tagged, at + 1) not in _AFTER_A_VERB


def _another_clause(tagged: Tagged, match: Match) -> bool:
    """ "He is a *string bean* and *I* don't worry about *calories*": somebody else's doing stands between."""
    if not match.rule.loose or match.subject is None or match.object is None:
        return False
    first, second = sorted((match.subject, match.object))
    between = tagged.items[first[1] : second[0]]
    return any(a.words in _JOINS and b.words.partition("'")[0] in _DOERS for a, b in pairwise(between))


def _side_by_side(tagged: Tagged, match: Match) -> bool:
    """ "Whole grains *and* fibre", "protein *or* greens": a food beside a nutrient in a list holds none of it."""
    if match.subject is None or match.object is None:
        return False
    first, second = sorted((match.subject, match.object))
    if tagged.is_any(0, _WHEN) and tagged.find(_COPULA, second[1], second[1] + 1):
        return False  # "*when it comes to* vitamin C, guava *is* the queen"
    between = [item.words for item in tagged.items[first[1] : second[0]]]
    if "nor" in between[-3:]:
        return True
    listed = range(first[1], second[0])
    if tagged.symbols.count(",") and all(
        tagged.items[i].words in (",", *_AND) or tagged.is_any(i, _LISTED) for i in listed
    ):
        return any(tagged.symbols[i] == "," or tagged.items[i].words in _AND for i in listed)
    return between[:1] != [] and between[0] in _AND and all(word in _DESCRIBING for word in between[1:])


def _made_of(tagged: Tagged, match: Match) -> bool:
    """ "Protein is *made of* amino acids": chemistry, where nothing to eat is named."""
    at = match.trigger[0]
    return tagged.items[at].words in _MADE_OF and not tagged.find(_SERVED, 0, at)


def _needed_of(tagged: Tagged, match: Match) -> bool:
    """ "Understanding the properties *of* oats is crucial": what is needed is no food."""
    if not match.rule.loose or match.subject is None:
        return False
    begin = widen(tagged, match.subject[0])
    return begin > 1 and tagged.items[begin - 1].words in _ABOUT


def _a_diet(tagged: Tagged, match: Match) -> bool:
    """ "On a *low fat* or meatless diet": the name of a diet, and nothing said of what a food holds."""
    return _DIET.match(text_after(tagged, end_of(match))) is not None


def _not_borne(tagged: Tagged, match: Match) -> bool:
    """ "Kidneys *can't cope* with high salt levels": so much of it is too much, and no food is said to hold it."""
    at = match.trigger[0]
    return bool(tagged.find(_CANNOT_COPE, at - 2, at)) and not tagged.find(_SERVED, end_of(match), end_of(match) + 1)


def _is_offal(tagged: Tagged, match: Match) -> bool:
    """ "Organ meats like *kidneys* are good sources", "liver and *heart*": eaten, and not what it does good to."""
    at = (match.object or match.trigger)[0]
    return said_at(tagged, at) in _OFFAL and _MEATS.search(text_before(tagged, at)) is not None


def _growing(tagged: Tagged, match: Match) -> bool:
    """ "*Growing babies* like new foods": who eats, where the sentence opens with it, and nothing that food does."""
    at = (match.object or match.trigger)[0]
    return at == 0 and tagged.items[at].words.startswith("growing ")


def _grown_up_ate(tagged: Tagged, match: Match) -> bool:
    """ "*My grandfather* sat in his chair and *ate his* popcorn": he did, and no child is named before."""
    at = match.trigger[0]
    if said_at(tagged, at) not in _ATE or tagged.find(_CHILD, 0, at):
        return False
    return _GROWN_UP.match(text_before(tagged, at).lstrip()) is not None


def _to_the_senses(tagged: Tagged, match: Match) -> bool:
    """ "It *tastes even better* if you have no cold"."""
    return _TASTES.search(text_before(tagged, match.trigger[0])) is not None


def _is_one_itself(tagged: Tagged, match: Match) -> bool:
    """ "Folate *is one of the vitamins*": what it is, and no food is said to hold it."""
    at = match.trigger[0]
    needed = match.object is not None and "for" in [item.words for item in tagged.items[at : match.object[0]]]
    return not needed and bool(tagged.find(_NUTRIENTS, 0, at)) and not tagged.find(_SERVED, 0, at)


def _a_noun(tagged: Tagged, match: Match) -> bool:
    """ "In *a form* that suits their development": a noun, though food may form something too."""
    at = match.trigger[0]
    return said_at(tagged, at) in _NOUNS_TOO and _ARTICLE.search(text_before(tagged, at)) is not None


def _met_by_somebody(tagged: Tagged, match: Match) -> bool:
    """ "For a child *to meet* their calcium needs": who eats does, and no food is said to."""
    at = match.trigger[0]
    return (
        said_at(tagged, at) in _MEETS
        and bool(tagged.find(_PEOPLE, max(0, at - 4), at))
        and not tagged.find(_EATEN, 0, at)
    )


def _somebody_puts_it_in(tagged: Tagged, match: Match) -> bool:
    """ "*I'm trying to add* nutrients to his food", "she's *not getting* the vitamins she needs"."""
    at = match.trigger[0]
    ways = _BY_SOMEBODY.get(said_at(tagged, at))
    return ways is not None and ways.search(text_before(tagged, at)) is not None


def _done_by_a_child(tagged: Tagged, match: Match) -> bool:
    """ "Let *kids remove* the pits": who helps in the kitchen."""
    return tagged.is_any(match.trigger[0] - 1, _CHILD)


def _as_it_comes_out(tagged: Tagged, match: Match) -> bool:
    """ "One avocado *yields* six ounces of puree": what a recipe makes."""
    return _YIELDS.search(text_before(tagged, match.trigger[0])) is not None


_BY_KIND: Mapping[str, tuple[Ask, ...]] = {
    "function": (_names_a_thing, _another_clause, _is_offal, _to_the_senses, teething_thing, ended_up, of_the_heart),
    "disease": (*ILLNESS, teething_thing, _another_clause, _to_the_senses, to_die_for, bruised),
    "nutrient-content": (_another_clause, _names_a_thing),
    "general-benefit": (_names_a_thing,),
}
_BY_RULE: Mapping[str, tuple[Ask, ...]] = {
    "handed-over": (_grown_up_ate,),
    "told-to-give": (_grown_up_ate,),
    "told-beside": (_had_a_fright,),
    "disease-and-food": (_was_no_help,),
    "for-disease": (_was_no_help,),
    "free-of": (_what_it_means, _till_an_age),
    "sugar-free": (_what_it_means,),
    "free-from": (_what_it_means, _never_without),
    "both": (_does_something_else, _its_protein, _side_by_side, _is_gluten),
    "gives-disease": (_had_it,),
    "brings-disease": (_what_causes,),
    "bones-out": (_done_by_a_child,),
    "has": (_somebody_puts_it_in,),
    "contains": (_met_by_somebody,),
    "meets-needs": (_met_by_somebody,),
    "helps-a-function": (_a_noun,),
    "is-so-much": (_as_it_comes_out,),
    "is-source": (_about_it, _is_one_itself),
    "age-and-food": (_bounds_no_age,),
    "nutrients-and-food": (_cultures,),
    "food-and-nutrients": (_cultures, _side_by_side),
    "safe": (_which_are,),
    "healthier": (_somebody_is,),
    "source-of": (_made_of,),
    "is-needed": (_needed_of,),
    "function-and-food": (_growing,),
    "low-fat": (_a_diet,),
    "high-fibre": (_not_borne,),
}
