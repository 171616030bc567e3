"""Matches of what happens on the table and in the pot: what is cold, hot, soaked up, peeled, counted or stuck there."""

from __future__ import annotations

import re
from collections.abc import Mapping

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.near import Ask, end_of, said_at, text_after, text_before
from spoonproof.claims.scan import Tagged

_ROUND_THE_MOUTH = re.compile(
    r"(?:just |only )?(?:a?round|on|near) (?:the|their|his|her|a baby's) (?:mouth|lips|chin)\b"
)
_OLDEST = 36
_FISH_BONES = re.compile(
    r"\b(?:eat(?:ing|en|s)?|crush\w*|mash\w*|(?:check|look|feel|watch|sift|pick) (?:\w+ )?for|remov\w+|tak\w+ "
    r"out|soft|tiny|fine|edible|larger?|little|fish|salmon|sardines?|with) (?:(?:the|their|its|any|all|out|soft"
    r"|tiny|fine|small) ){0,3}$"
)
_HOLDING = frozenset({"have", "contain"})
_SERVED = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient", "pronoun"})
_ABSORBS = frozenset({"absorb", "absorbs", "absorbing", "absorbed"})
_SOAKED = frozenset(
    "liquid stock broth oil flavour flavours flavor flavors sauce dressing syrup marinade spices".split()
)
_ROOM = re.compile(
    r"tak(?:e|es|en|ing) up (?:\w+ ){0,2}(?:half|third|quarter|most|much|more|less|room|space|place|time"
    r"|(?:\w+est )?(?:part|share|bit|corner))\b"
)
_COLD_WATER = re.compile(r"\b(?:hot|boiling|boiled|warm)\b.{0,80}\b(?:with|in) the cold$")
_COLD_AND = re.compile(
    r"(?:,|and) \w+ (?:treat|drink|snack|meal|dessert|day|morning|night|plate|bowl|glass|lunch|summer)"
)
_COLD_THINGS = _SERVED - {"pronoun"} | {"household"}
_COLD_WORDS = frozenset("tap pan oven plate drink bowl spoon weather day days winter morning flannel ring".split())
_STICKS = re.compile(r"\b(?:stuck|lodged|caught|sticks?|lodges?) in (?:\S+ ){0,3}$")
_MEANWHILE = frozenset("while until till when once before as".split())
_SHARES = frozenset({"half", "third", "quarter", "a third", "a quarter"})
_MEASURED = frozenset({"percent", "unit", "household"})
_ILL = frozenset({"ill", "sick", "poorly", "unwell"})
_WHO = re.compile(r"(?:bab(?:y|ies)|child|children|toddlers?|kids?|people|person|tumm(?:y|ies)|little ones?)\b")
_RIND = re.compile(r"(?:[\w-]+ )*(?:skins?|blemish(?:es)?)$", re.IGNORECASE)
_CHOOSE = re.compile(
    r"(?:^|[.!?;:–—] ?|\b(?:and|then|always|to|should|i|we|you) )(?:select|choose|pick(?: out)?|look for|buy|go for"
    r"|find|opt for) (?:(?!(?:for|to|your|our|his|her|their|helps?|gives?|keeps?|it|its|they|this|which|because|since"
    r"|as|clears|heals?|improves?)\b)[\w'’/,?-]+ ){0,14}$",
    re.IGNORECASE,
)
"""Words of one who picks out a fruit, up to what it looks like; not so in "choose avocado for clear skin"."""
_FEW = frozenset({"few", "couple of"})
_OWN = frozenset("the your his her their our my its for healthy and".split())


def _soaks_up(tagged: Tagged, match: Match) -> bool:
    """ "Rice absorbs the stock": what a food takes up in the pot is no matter of the body."""
    if match.object is None or match.subject is None:
        return False
    at = match.object[0]
    if tagged.items[at].words not in _ABSORBS:
        return False
    return at - match.subject[1] <= 1 or any(item.words in _SOAKED for item in tagged.items[at + 1 : at + 6])


def _takes_room(tagged: Tagged, match: Match) -> bool:
    """ "Carrots *take up half* the plate": room, and nothing of the body."""
    return match.object is not None and _ROOM.match(text_after(tagged, match.object[0])) is not None


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


def _until_seen(tagged: Tagged, match: Match) -> bool:
    """ "Stop *while* you can still see the pear": the cook sees, and nothing helps anybody to."""
    end = (match.object or match.trigger)[0]
    return any(item.words in _MEANWHILE for item in tagged.items[match.trigger[0] : end])


def _as_hot(tagged: Tagged, match: Match) -> bool:
    """ "Until they reach *165*": how hot a thing is, and nobody's age."""
    said = "" if match.object is None else said_at(tagged, match.object[1] - 1)
    return said.isdigit() and int(said) > _OLDEST


def _edible_bones(tagged: Tagged, match: Match) -> bool:
    """ "Rich in calcium because you *eat the soft bones*": a fish's bones, not a child's."""
    if match.object is None or "bones" not in said_at(tagged, match.object[1] - 1):
        return False
    return _FISH_BONES.search(text_before(tagged, match.object[0])) is not None


def _peel(tagged: Tagged, match: Match) -> bool:
    """ "*The skin has* more fibre": a fruit's, since it holds it."""
    if match.object is None or tagged.items[match.object[1] - 1].words not in ("skin", "skins"):
        return False
    return bool(tagged.find(_HOLDING, match.object[1], match.object[1] + 1))


def _meat(tagged: Tagged, match: Match) -> bool:
    """ "Iron-rich mash of *liver*": an organ that is eaten here, and nobody's own."""
    if match.object is None or not all(tagged.has(i, "food") for i in range(*match.object)):
        return False
    begin = match.object[0]
    return begin == 0 or not (tagged.items[begin - 1].words in _OWN or tagged.items[begin - 1].words.endswith("'s"))


def _stuck(tagged: Tagged, match: Match) -> bool:
    """ "A grape stuck in his *throat*": a throat that something sticks in is not ill."""
    at = (match.object or match.trigger)[0]
    return tagged.items[at].words == "throat" and _STICKS.search(text_before(tagged, at)) is not None


def _by_contact(tagged: Tagged, match: Match) -> bool:
    """ "A rash *round the mouth* from strawberries": of the acid, and no illness."""
    return _ROUND_THE_MOUTH.match(text_after(tagged, end_of(match))) is not None


def _counts_out(tagged: Tagged, match: Match) -> bool:
    """ "One *of* the few sources of iron", "five essential vitamins": a count of kinds is no share of a food."""
    if match.object is None:
        return False
    said = tagged.items[match.trigger[0]].words
    return said not in _SHARES and not tagged.find(_MEASURED, match.trigger[1], match.object[0])


def _few(tagged: Tagged, match: Match) -> bool:
    """ "Holds *few* calories" is little of it, and no number."""
    return tagged.items[match.trigger[0]].words in _FEW


def _sick_one(tagged: Tagged, match: Match) -> bool:
    """ "Makes a *sick child* smile": who is ill already is made so by nothing."""
    end = end_of(match)
    return said_at(tagged, end - 1) in _ILL and _WHO.match(text_after(tagged, end)) is not None


def _at_market(tagged: Tagged, match: Match) -> bool:
    """ "*Choose beets with* smooth, blemish-free skins": a fruit's skin, by which it is chosen, and nobody's own."""
    start, end = match.object or match.trigger
    if not any(_RIND.match(said_at(tagged, at)) for at in range(start, end)):
        return False
    return _CHOOSE.search(text_before(tagged, start)) is not None


KITCHEN: Mapping[str, tuple[Ask, ...]] = {
    "age-and-food": (_as_hot,),
    "food-and-disease": (_by_contact,),
    "nutrient-and-body": (_edible_bones, _meat),
    "for-a-function": (_edible_bones,),
    "helps-a-function": (_at_market,),
    "food-and-function": (_at_market,),
    "body-and-nutrient": (_peel, _meat),
    "food-and-weak-function": (_meat,),
    "digests": (_soaks_up, _takes_room),
    "helps-someone": (_until_seen,),
    "a-third-sugar": (_counts_out,),
    "calories": (_few,),
}
"""Rule name and what to ask of its matches."""
ILLNESS: tuple[Ask, ...] = (_cold_thing, _stuck, _at_market, _sick_one)
"""What to ask of whatever is said of an illness."""
