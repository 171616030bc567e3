"""Matches that claim nothing of a food after all: it is wished for, picked by, counted out, soaked up in the pot."""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import chain

from spoonproof.claims.finding.allergies import ALLERGIES
from spoonproof.claims.finding.bystanders import BYSTANDERS
from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.family import FAMILY
from spoonproof.claims.finding.moments import MOMENTS
from spoonproof.claims.finding.near import Ask, end_of, text_after, text_before
from spoonproof.claims.finding.people import PEOPLE
from spoonproof.claims.finding.phrase import widen
from spoonproof.claims.finding.tales import TALES, in_mind
from spoonproof.claims.finding.things import KINDS, THINGS
from spoonproof.claims.scan import Tagged

_EATEN = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient", "pronoun"})
_ABSORBS = frozenset({"absorb", "absorbs", "absorbing", "absorbed"})
_SOAKED = frozenset(
    "liquid stock broth oil flavour flavours flavor flavors sauce dressing syrup marinade spices".split()
)
_COLD_WATER = re.compile(r"\b(?:hot|boiling|boiled|warm)\b.{0,80}\b(?:with|in) the cold$")
_COLD_AND = re.compile(
    r"(?:,|and) \w+ (?:treat|drink|snack|meal|dessert|day|morning|night|plate|bowl|glass|lunch|summer)"
    r"|(?:home-?made|cooked|leftover|sliced|plain|roast|raw|dry)\b"
)
_AND = frozenset({"and", "or", "&", "plus"})
_WHEN = frozenset({"when-ill"})
_COPULA = frozenset({"copula"})
_LISTED = frozenset("food dish generic-food nutrient ambiguous-nutrient".split())
_DESCRIBING = frozenset(
    {"dietary", "more", "extra", "good", "some", "healthy", "the", "a"}
)  # "whole grains and *dietary* fibre"
_MINDING = frozenset("know learn watch check limit avoid remember find look think understand worry read see".split())
_MADE_OF = frozenset({"made of", "composed of", "consists of", "consist of"})
_MAKES = frozenset("yield yields yielded makes make made serves".split())
_OPEN = frozenset("depends depend depending".split())
_COLD_THINGS = _EATEN - {"pronoun"} | {"household"}
_COLD_WORDS = frozenset("tap pan oven plate drink bowl spoon weather day days winter morning flannel ring".split())
_STICKS = re.compile(r"\b(?:stuck|lodged|caught|sticks?|lodges?) in (?:\S+ ){0,3}$")
_DIET = re.compile(r"(?:(?:or|and) )?(?:[\w-]+ )?diets?\b")
_CANNOT_COPE = frozenset({"cannot-cope"})
_MAY_CHOKE = frozenset("food dish generic-food hazard-food hazard-food-weak eating solids benefit harm".split())
_ITS_BEST = re.compile(r"it(?:'s| is| was) (?:\w+ ){0,2}(?:wise|best|better|important|sensible|safest|good|vital) to\b")
_MEANWHILE = frozenset("while until till when once before as".split())
_SHARES = frozenset({"half", "third", "quarter", "a third", "a quarter"})
_MEASURED = frozenset({"percent", "unit", "household"})
_FEW = frozenset({"few", "couple of"})
_ABOUT = frozenset({"of", "about", "with"})
_OWN = frozenset("the your his her their our my its for healthy and".split())
_SEEN_TO = re.compile(
    r"\b(?:make sure|be sure|ensure|check)(?: that)? (?!you )\w+(?: \w+){0,3} $"
    r"|\b(?:i|we)(?:'m|'re| am| are)? (?:\w+ )?(?:try|trying|tried|aim|aiming|like) (?:and|to) "
    r"(?:incorporate|include|fit|sneak|get|add|hide|slip|pack)\b[^.,]{0,80}$"
    r"|\b(?:try|trying|tried) (?:and|to) (?:give|offer|serve|feed|cook|buy)\b[^.,;:]{0,30} "
    r"(?:foods?|meals?|snacks?|things?|something) that\b[^.,;:]{0,40}$"
)
_PICKED = re.compile(
    r"\b(?:choose|choosing|select|pick|look for|buy|opt for|go for)\b[^.,;:?!]{0,60}\b(?:that|which|one|ones)\b"
    r"[^.,;:?!]{0,24}$"
)
_WISHED = re.compile(
    r"\b(?:want|wants|wanted|hope|hoped|wish|wished|would like|would love)\b[^.,;:?!]{0,40}\bto be\b[^.,;:?!]{0,24}$"
    r"|\b(?:(?:making|make) sure|ensur(?:e|es|ed|ing))\b[^.,;:?!]{0,60}$"
    r"|\bneeds? (?:\w+ )?to (?:be|stay|grow up|keep) (?:\w+ )?$"
    r"|\b(?:had|have|got|must) (?:to )?be (?:\w+ )?$"
    r"|\b(?:want|wanted|wanting|hope|hoped|hoping|need|needed|try|tried|trying) to find\b[^.,;:?!]{0,50}$"
    r"|\b(?:quest|search|searching|searched|hunt|hunting|looking) for\b[^.;:?!]{0,50}$"
    r"|\bsome (?:sort|kind|type) of \w+ that (?:\w+ )?$"
    r"|\b(?:i|we) (?:\w+ )?aim(?:ed)? for\b[^.;:?!]{0,60}$"
    r"|\b(?:try|trying|tried|aim|aiming|want|wanted) (?:and|to) (?:give|feed|offer|serve|cook|make|buy|eat)\b"
    r"[^.,;:?!]{0,30} (?:foods?|meals?|dinners?|suppers?|snacks?|things?|something) that\b[^.,;:?!]{0,30}$"
    r"|\b(?:for|with|cook|make|eat|find|fancied|want|wanted|need|needed) (?:something|anything)\b[^.,;:?!]{0,30}$"
)


def claims_nothing(tagged: Tagged, match: Match) -> bool:
    """Whether a match says nothing of a food, though its words are those of a claim of its rule or kind."""
    asked = _ASKED.get(match.rule.name, ()) + _OF_KIND.get(match.rule.kind, ())
    return any(ask(tagged, match) for ask in asked)


def _wished(tagged: Tagged, match: Match) -> bool:
    """ "We want her lunch *to be* healthy", "in the mood for *something* nourishing": nothing is said to be so."""
    return _WISHED.search(text_before(tagged, match.trigger[0])) is not None


def _seen_to(tagged: Tagged, match: Match) -> bool:
    """ "*Make sure* lunch contains protein", "we *try to include* iron": what somebody means to see to."""
    if match.rule.level != "contains":
        return False
    return any(_SEEN_TO.search(text_before(tagged, at)) for at in (match.start, (match.object or match.trigger)[0]))


def _picked(tagged: Tagged, match: Match) -> bool:
    """ "Choose a yoghurt *that contains* live cultures": a way to pick one, and nothing said of those picked."""
    return _PICKED.search(text_before(tagged, match.trigger[0])) is not None


def _depends(tagged: Tagged, match: Match) -> bool:
    """ "What nutrients a broth holds *depends* on the bones": not settled, so not claimed."""
    end = max(match.end, match.trigger[1])
    return any(item.words.partition(" ")[0] in _OPEN for item in tagged.items[end : end + 4])


def _soaks_up(tagged: Tagged, match: Match) -> bool:
    """ "Rice absorbs the stock": what a food takes up in the pot is no matter of the body."""
    if match.object is None or match.subject is None:
        return False
    at = match.object[0]
    if tagged.items[at].words not in _ABSORBS:
        return False
    return at - match.subject[1] <= 1 or any(item.words in _SOAKED for item in tagged.items[at + 1 : at + 6])


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
    return tagged.items[at].words in _MADE_OF and not tagged.find(_EATEN, 0, at)


def _comes_to(tagged: Tagged, match: Match) -> bool:
    """ "One squash *yields* 300 g of purée": how much a recipe makes."""
    at = match.trigger[0]
    return any(item.words in _MAKES for item in tagged.items[max(0, at - 4) : at])


def _counts_out(tagged: Tagged, match: Match) -> bool:
    """ "One *of* the few sources of iron", "five essential vitamins": a count of kinds is no share of a food."""
    if match.object is None:
        return False
    said = tagged.items[match.trigger[0]].words
    return said not in _SHARES and not tagged.find(_MEASURED, match.trigger[1], match.object[0])


def _few(tagged: Tagged, match: Match) -> bool:
    """ "Holds *few* calories" is little of it, and no number."""
    return tagged.items[match.trigger[0]].words in _FEW


def _needs_to_do(tagged: Tagged, match: Match) -> bool:
    """ "You need *to know* where sodium hides": what is needed is to do something, no nutrient."""
    then = [item.words for item in tagged.items[match.trigger[1] : match.trigger[1] + 2]]
    return then[:1] == ["to"] and then[1:] != [] and then[1] in _MINDING


def _needed_of(tagged: Tagged, match: Match) -> bool:
    """ "Understanding the properties *of* oats is crucial": what is needed is no food."""
    if not match.rule.loose or match.subject is None:
        return False
    begin = widen(tagged, match.subject[0])
    return begin > 1 and tagged.items[begin - 1].words in _ABOUT


def _about(tagged: Tagged, match: Match) -> bool:
    """ "It isn't just *about* fibre": what matters, and nothing that holds any."""
    between = tagged.items[match.trigger[1] : (match.object or match.trigger)[0]]
    return any(item.words == "about" for item in between)


def _meat(tagged: Tagged, match: Match) -> bool:
    """ "Iron-rich mash of *liver*": an organ that is eaten here, and nobody's own."""
    if match.object is None or not all(tagged.has(i, "food") for i in range(*match.object)):
        return False
    begin = match.object[0]
    return begin == 0 or not (tagged.items[begin - 1].words in _OWN or tagged.items[begin - 1].words.endswith("'s"))


def _until_seen(tagged: Tagged, match: Match) -> bool:
    """ "Stop *while* you can still see the pear": the cook sees, and nothing helps anybody to."""
    end = (match.object or match.trigger)[0]
    return any(item.words in _MEANWHILE for item in tagged.items[match.trigger[0] : end])


def _cold_thing(tagged: Tagged, match: Match) -> bool:
    """ "Adding *the cold* water", "the cold butter": no illness, where a thing that is cold follows; nor in "melt it in
    the hot water and top up *with the cold*"."""
    start, end = match.object or match.trigger
    spans = [(start, end), match.trigger]
    colds = [last for _, last in spans if tagged.items[last - 1].words.rpartition(" ")[2] == "cold"]
    if any(_COLD_WATER.search(text_before(tagged, last - 1) + tagged.items[last - 1].words) for last in colds):
        return True
    if any(_COLD_AND.match(text_after(tagged, last)) for last in colds):
        return True
    return any(
        last < len(tagged.items) and (tagged.is_any(last, _COLD_THINGS) or tagged.items[last].words in _COLD_WORDS)
        for last in colds
    )


def _stuck(tagged: Tagged, match: Match) -> bool:
    """ "A grape stuck in his *throat*": a throat that something sticks in is not ill."""
    at = (match.object or match.trigger)[0]
    return tagged.items[at].words == "throat" and _STICKS.search(text_before(tagged, at)) is not None


def _nothing_chokes(tagged: Tagged, match: Match) -> bool:
    """ "Where there's a risk of choking, *it's* best to ...": nobody eats and nothing is named, or pointed at."""
    if tagged.find(_MAY_CHOKE) or match.object is None:
        return False
    pointing = [i for i in range(len(tagged.items)) if tagged.has(i, "pronoun")]
    return bool(pointing) and all(_ITS_BEST.match(text_after(tagged, i)) for i in pointing)


def _a_diet(tagged: Tagged, match: Match) -> bool:
    """ "On a *low fat* or meatless diet": the name of a diet, and nothing said of what a food holds."""
    return _DIET.match(text_after(tagged, end_of(match))) is not None


def _not_borne(tagged: Tagged, match: Match) -> bool:
    """ "Kidneys *can't cope* with high salt levels": so much of it is too much, and no food is said to hold it."""
    at = match.trigger[0]
    return bool(tagged.find(_CANNOT_COPE, at - 2, at)) and not tagged.find(_EATEN, end_of(match), end_of(match) + 1)


def _growing(tagged: Tagged, match: Match) -> bool:
    """ "*Growing babies* like new foods": who eats, where the sentence opens with it, and nothing that food does."""
    at = (match.object or match.trigger)[0]
    return at == 0 and tagged.items[at].words.startswith("growing ")


_BY_KIND: Mapping[str, tuple[Ask, ...]] = {
    "function": (in_mind,),
    "disease": (_cold_thing, _stuck),
    "general-benefit": (_wished,),
    "nutrient-content": (_picked, _depends, _seen_to),
}
_BY_RULE: Mapping[str, tuple[Ask, ...]] = {
    "nutrient-and-body": (_meat,),
    "food-and-weak-function": (_meat,),
    "body-and-nutrient": (_meat,),
    "digests": (_soaks_up,),
    "helps-someone": (_until_seen,),
    "both": (_side_by_side,),
    "food-and-nutrients": (_side_by_side,),
    "source-of": (_made_of,),
    "a-third-sugar": (_counts_out,),
    "calories": (_few,),
    "is-so-much": (_comes_to,),
    "grams-of-sugar": (_comes_to,),
    "needs": (_needs_to_do,),
    "is": (_about,),
    "is-needed": (_needs_to_do, _needed_of),
    "they-need": (_needs_to_do,),
    "choking": (_nothing_chokes,),
    "function-and-food": (_growing,),
    "low-fat": (_a_diet, _not_borne),
    "high-fibre": (_not_borne,),
    "safe": (_wished,),
}


def _together(*tables: Mapping[str, tuple[Ask, ...]]) -> Mapping[str, tuple[Ask, ...]]:
    return {name: tuple(ask for table in tables for ask in table.get(name, ())) for name in {*chain(*tables)}}


_OF_KIND = _together(_BY_KIND, KINDS)
_ASKED = _together(_BY_RULE, BYSTANDERS, PEOPLE, ALLERGIES, FAMILY, TALES, THINGS, MOMENTS)
"""What to ask of a rule's matches, of all the tables at once."""
