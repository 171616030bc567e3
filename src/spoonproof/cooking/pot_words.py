"""Words of a step that say which pot is meant, and what goes into it or stays out of it."""

from __future__ import annotations

import re

APART = re.compile(
    r"\b(?:meanwhile|in the meantime|separately|at the same time)\b"
    r"|\b(?:in|into|to|fill) (?:an? (?:separate |second |small |large |clean |heavy |dry |wide |little |deep |shallow "
    r"|greased |(?:greased )?(?:oven|baking|ovenproof|roasting) )?|another |a )"
    r"(?:bowl|pan|saucepan|frying pan|pot|jug|dish|tin|tray|mug|steamer)\b",
    re.IGNORECASE,
)
ALL = re.compile(r"\b(?:everything|all of it|it all|all the|all together|the lot|together)\b", re.IGNORECASE)
LET_ALL = re.compile(r"\b(?:let|leave) (?:it all|everything|all of it|the lot|them all|both) (?:to )?$", re.IGNORECASE)
POT_ALONE = re.compile(r"\b(?:all of it|it all|all of them|them all)\b", re.IGNORECASE)  # no more goes in with it
BOTH_DONE = re.compile(
    r"\b(?:until|till|once|when) (?:they(?: are|'re)? )?(?:both|all|everything|each)\b", re.IGNORECASE
)
BOTH = re.compile(  # "stir both together", "combine the two pans", "beat the first into the second"
    r"\b(?:both|the two(?: (?:pans|pots|bowls|mixtures|lots))?)(?: together)?"
    r"(?=\s*(?:[,.;]|$|(?:and|until|till|to|with|in|into|for)\b))"
    r"|\b(?:one|the first)(?: pan| pot| bowl)? (?:in|into|over|onto) the (?:other|second)\b",
    re.IGNORECASE,
)
_SHARE = (
    r"(?:about |roughly )?(?:half|(?:a|one|two) (?:third|quarter)s?|thirds|some|part"
    r"|an? (?:few |little )?(?:ladle|cup|bowl|part)\w*)(?: of (?:it|this|the (?!baby)[a-z-]+))?"
)
A_PART_OF_POT = re.compile(  # "blend half of the soup", "tip a third into the blender and whizz": the rest is as it was
    rf"^\w+(?: up)? {_SHARE}\b(?! the )(?!-)|\b{_SHARE} (?:in|into|to) (?:a|the|your) (?:blender|food processor|jug)\b",
    re.IGNORECASE,
)
OVER_POT = re.compile(r"\bover (?:them|it|the)\b", re.IGNORECASE)  # "steam the cabbage over them"
OVER_ALL = re.compile(
    r"\bpour (?:it |this |that |them )?over(?=\s*(?:[,.;]|and\b|$))|^combine(?=\s*(?:[,.;]|and\b|$))", re.IGNORECASE
)
THEM_IN = re.compile(r"^\w+(?: in)? (?:them|it|these|those)\b", re.IGNORECASE)
REST_IN_PIECES = re.compile(  # "mash half, and leave the rest in chunks"
    r"\b(?:leav|keep|fold|stir|add)\w*\b[^.;]{0,30}\b(?:rest|remainder|others?|other half|some)\b[^.;]{0,20}"
    r"\b(?:whole|in (?:chunks|cubes|pieces|dice|strips)|as (?:it is|they are)|chunky)\b",
    re.IGNORECASE,
)
THE_REST = re.compile(r"\bthe rest\b(?! of)", re.IGNORECASE)
IN_AGAIN = re.compile(
    r"\b(?:(?:stir|mix|fold|beat|whisk|swirl)(?: (?:it|this|that|them))? (?:in|through)|add(?: it| this| that| them)?)"
    r"(?=\s*(?:[,.;]|and\b|$))",
    re.IGNORECASE,
)
THE_MASH = re.compile(r"\b(?:the|with) (?:mash|mashed|pur[ée]e|topping|blended|blitzed|whizzed|pur[ée]ed)\b", re.I)
INTO = re.compile(r"\b(?:to|into|over|onto) the\b", re.IGNORECASE)
INTO_POT = re.compile(
    r"\b(?:in|into|onto|over|to) (?:the |a |your )?(?:[a-z-]+ ){0,2}?(?:pot|pan|saucepan|bowl|dish|tin|jug|soup|sauce"
    r"|stew|mix|mixture|batter|dough|porridge|curry|dal|dhal|mash|rice|pasta|water|stock|milk|broth)s?\b"
    r"|\b(?:grate|crumble|flake|shred|tear|chop|slice|snip|break|dice) in\b",
    re.IGNORECASE,
)
LAST = re.compile(r"\b(?:last|final)\b", re.IGNORECASE)
LAST_AHEAD = re.compile(r"\b(?:last|final)\b[^.;]{0,30}$", re.IGNORECASE)
FLESH = re.compile(r"\b(?:flesh|insides|pulp)\b", re.IGNORECASE)
IN_FAT = re.compile(r"\b(?:in|with)\b[^.;,]{0,40}\b(?:oil|butter|ghee|fat|lard|dripping)\b", re.IGNORECASE)
ONTO = re.compile(r"\b(?:over|on|onto|top)\b", re.IGNORECASE)
WITH = re.compile(r"\W{0,9}(?:\w{1,20}ly\W{1,9})?(?:with|in)\b", re.IGNORECASE)
_VERB = re.compile(r"\W{0,9}[^\W\d_]{1,40}(?:-[^\W\d_]{1,40})?")
# "bring a large pan of water to the boil", "fill a pot with water": not "over a pan of simmering water"
PAN_OF_WATER = re.compile(
    r"\b(?:bring|fill|put|heat|get|boil|have|set|take)(?: up)? an? (?:\w+ ){0,2}(?:pan|pot|saucepan|stockpot|kettle)"
    r" (?:of|with|full of) (?:\w+ ){0,2}water\b",
    re.IGNORECASE,
)
KEEP_WATER = re.compile(
    r"\b(?:keep|keeping|reserve|reserving|save|saving)\b|\b(?:strain|siev)\w*\b[^.;]{0,30}\binto\b", re.IGNORECASE
)
BROTH = re.compile(
    r"\b(?:strain|siev)\w*(?: off)? (?:the |this |your )?(?:broth|stock|infusion"
    r"|(?P<milk>milk|cream|oil|ghee|butter))\b|\b(?:strain|siev)\w* out (?!the (?:water|liquid))",
    re.I,
)
THROWN = re.compile(r"\b(?:discard|throw|bin|fish out|remove|pick out)", re.IGNORECASE)
PRESSURE = re.compile(r"\bwhistles?\b|\b(?:in|using|with) (?:an?|the|your) pressure (?:cooker|pan)\b", re.I)

_A_PART = re.compile(
    r"\b(?:rest|left|remainder|remaining|half|some|most|more|third|quarter|splash|little|spoonfuls?|ladle(?:ful)?s?|knob"
    r"|drizzle|dash|bit|drop|tablespoons?|teaspoons?|tbsp|tsp|ml)(?: (?:of|from))?"
    r"(?: (?:the|your))?(?: [a-z]{3,10})? $",
    re.I,
)


def takes_a_part(words: str, name: str) -> bool:
    """Whether ``words`` take a part of ``name`` alone: "the rest of the milk", "a third of the butter"."""
    last = name.lower().rpartition(" ")[2]
    at = words.lower().find(last) if len(last) > 2 else -1
    return at >= 0 and _A_PART.search(words[:at]) is not None


def with_first(text: str) -> bool:
    """Whether behind the verb that ``text`` begins with stands "with ..." or "in ...": "mash with the oil"."""
    word = _VERB.match(text)
    return word is not None and WITH.match(text, word.end()) is not None
