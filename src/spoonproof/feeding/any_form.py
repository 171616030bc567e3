"""Foods that are a danger in any form, and when words show that this one is none: a colour, or unsalted."""

from __future__ import annotations

import re
from collections.abc import Callable

from spoonproof.feeding.handed import ANY_FORM
from spoonproof.feeding.named import in_everyday_sense
from spoonproof.feeding.recipients import GIVE, TO_BABY
from spoonproof.feeding.words import Found, keys
from spoonproof.model.record import NamedTuple

# "wets her dummy in his stout": said of a drink, not of a stout pot
_DIPPED = re.compile(r"\b(?:dip|dunk|wet|rub|smear|dab|moisten)\w*\b[^.;]{0,40}\b(?:in|with) (?:\w+ ){0,2}$", re.I)
_ONE_NUT = re.compile(r"\b(?:an?|one|odd|each|every)(?: \w+)? $", re.I)
_TRIED = re.compile(
    r"\b(?:tr(?:y|ied|ying)|swap\w*|switch\w*|us(?:e|ed|ing)|start\w*|add\w*|need)\b[^.;,]{0,30}$", re.I
)
_SNACKED = re.compile(
    r"\b(?:snack|nibbl|chew|munch|gnaw|suck|pocket|pack(?:et|ed)?|box|bag|by hand|finger food)\w*\b", re.I
)
_OFF_BONE = re.compile(r"\b(?:meat|flesh) (?:off|from) (?:(?:an?|the|his|her|each|one) )?(?:\w+ )?$", re.I)
_MEAT_OF = re.compile(r" (?:meat|flesh)\b", re.I)
_CARED_FOR = re.compile(r"\b(?:low[- ]salt|unsalted|corner of)\b", re.I)
_CUT_SAUSAGE = re.compile(r"\b(?:length(?:ways|wise)|strips?|skinless|quarter\w*)\b", re.I)
_SALTED = re.compile(r"\b(?:salt(?:ed|y)|cheese crackers?|handfuls?|whole|packets?|(?:every|each) day|daily)\b", re.I)
_ITS_OWN = re.compile(r"\b(?:its|their)(?: own)? $", re.I)
_MEASURE = re.compile(
    r"\b(?:sips?|cups?|bottles?|beakers?|mugs?|drops?|tastes?|bit|cubes?|splash|dash|(?:tea|table)?spoon(?:ful)?s?"
    r"|shots?|thimbles?) of (?:\w+ ){0,2}$"
    r"|\b(?:cup|beaker|bottle|mug|glass) (?:up )?with (?:\w+ ){0,2}$",
    re.I,
)
_MORSEL = re.compile(
    r"\b(?:squares?|pieces?|cubes?|lumps?|slices?|slivers?|chunks?|nibbles?|licks?|dabs?|spoon(?:ful)?s?|bites?|bags?"
    r"|handfuls?|corners?|sticks?|blobs?|dots?|smears?) of (?:\w+ ){0,2}$|\b(?:suck|chew|gnaw)(?:s|ed|ing)? (?:on )?"
    r"(?:an?|some|the|his|her) (?:\w+ )?$|\bwhole $",
    re.I,
)
"""Words before a food by which it is eaten: "a square of toffee", and not the colour."""
_GETS = re.compile(r"\b(?:gets?|got|ha[sd]|have|eats?|ate|with) (?:(?:some|an?|the) )?$", re.I)
_SWEETS = frozenset("icing frosting toffee fudge candy jelly cake cupcake toffees caramels".split())
_BREWED = re.compile(r"\b(?:milky|weak|sweet|black|iced|cold|strong|stewed|builder['’]?s) $", re.I)
_IS_GIVEN = re.compile(r" (?:is|was|are|were|can be|may be) (?:given|fed|offered|served) to\b", re.I)
_INTO_CUP = re.compile(
    r" (?:in|into|from|out of) (?:the|a|an|her|his|their|my) (?:\w+(?:['’]s)? )?(?:beaker|cup|bottle|mug"
    r"|saucer|spoon)\b",
    re.I,
)
_FROZEN_AT_HOME = re.compile(
    r"\b(?:home ?-?made|mak(?:e|ing)|made|fr(?:eeze|oze|ozen)|mould|mold|breast|milk|formula|pur[eé]e|fruit|yog\w+)\b",
    re.I,
)
HANDFUL = re.compile(
    r"\b(?:whole|handfuls?|fistfuls?|bunch|punnet|few(?! (?:\w+ )?(?:slices|strips|quarters|slivers))"
    r"|off the (?:stalk|vine|stem|bunch)|uncut|intact|in one piece"
    r"|(?:just )?as (?:they|it) (?:are|is|were|was|comes?|came)|(?:stones?|pits?|pips|skins?) and all"
    r"|one by one|one at a time|one after (?:another|the other)"
    r"|straight (?:on|onto|in|into) (?:the|her|his|their) (?:tray|mouths?)"
    r"|(?:not|no|never|without|no need (?:of|to)) (?:cut|cutting|halv|quarter|fuss|fiddl|faff)\w*)\b",
    re.I,
)


def around(said: str, hit: Found, before: int = 30, after: int = 34) -> str:
    """The words around the food's name."""
    return said[max(0, hit.start - before) : hit.end + after]


class Told(NamedTuple):
    """A food of these kinds as a sentence tells of it."""

    said: str
    hit: Found
    kinds: frozenset[str]
    speech: bool

    @property
    def name(self) -> str:
        return self.said[self.hit.start : self.hit.end].lower()

    @property
    def before(self) -> str:
        return self.said[max(0, self.hit.start - 60) : self.hit.start]

    @property
    def near(self) -> str:
        return around(self.said, self.hit)

    def behind(self, words: re.Pattern[str]) -> bool:
        """Whether ``words`` stand anywhere behind the name."""
        return words.search(self.said, self.hit.end) is not None

    def at_once(self, words: re.Pattern[str]) -> bool:
        """Whether ``words`` follow the name at once."""
        return words.match(self.said, self.hit.end) is not None


def _only_its_name(told: Told) -> bool:
    """A colour, a person or a turn of phrase that bears the food's name."""
    if not in_everyday_sense(told.hit, told.said):
        return False
    eaten = (told.name in _SWEETS and (told.name.endswith("s") or _GETS.search(told.before))) or any(
        words.search(told.before) for words in (_MEASURE, _DIPPED, _BREWED, _MORSEL)
    )
    return not (eaten or told.at_once(_INTO_CUP) or told.at_once(_IS_GIVEN))


def _salty_as_it_is(told: Told) -> bool:
    """ "Cut the skinless sausage lengthways", "a cracker": the table asks how much of a day's salt it is, and no words
    of a film tell; one that is salted, or eaten by the handful, is told by them."""
    plain = told.name.endswith(("cracker", "crackers")) or _CARED_FOR.search(told.near) is not None
    cut = _CUT_SAUSAGE.search(around(told.said, told.hit, after=60)) is not None
    plain = plain or ("sausage" in told.kinds and cut)
    return (told.speech or told.name.endswith(("cracker", "crackers"))) and plain and not _SALTED.search(told.near)


def _off_the_bone(told: Told) -> bool:
    """ "Chicken wing meat"; and a bone by itself is on no bone: what says that it is gnawed tells of that."""
    if told.name.rstrip("s").endswith("bone") or told.name.endswith("carcass"):
        return True
    return told.at_once(_MEAT_OF) or _OFF_BONE.search(told.before) is not None


def _pasteurised(told: Told) -> bool:
    """ "It smells good, but he has pasteurised"."""
    return " pasteuri" in told.said and "pasteuri" not in told.name


def _the_allergen(told: Told) -> bool:
    """ "If peanut is new to your baby": the allergen, not a nut left whole."""
    if told.name.endswith("s") or "whole" in keys(told.near):
        return False
    return not (_ONE_NUT.search(told.said[: told.hit.start]) or TO_BABY.search(told.said[told.hit.end :]))


def _perhaps_blended(told: Told) -> bool:
    """ "We tried prunes": who says no more may well have blended them."""
    named_only = _TRIED.search(told.before) or not GIVE.search(told.said)
    if "dried-large" not in told.kinds or not named_only:
        return False
    return not (HANDFUL.search(told.near) or _SNACKED.search(told.said))


def _made_at_home(told: Told) -> bool:
    """ "Breast milk ice lollies": what is in it is told."""
    return "lolly" in told.name.replace("lollies", "lolly") and _FROZEN_AT_HOME.search(told.near) is not None


def _of_the_pan(told: Told) -> bool:
    """ "Mince it in its gravy": what ran out of the meat."""
    return told.name == "gravy" and _ITS_OWN.search(told.before) is not None


HIDDEN: tuple[tuple[frozenset[str], Callable[[Told], bool]], ...] = (
    (ANY_FORM, _only_its_name),
    (frozenset({"bone-in"}), _off_the_bone),
    (frozenset({"raw-milk", "raw-milk-cheese"}), _pasteurised),
    (frozenset({"nut"}), _the_allergen),
    (frozenset({"salty-food"}), _salty_as_it_is),
    (frozenset({"dried-fruit"}), _perhaps_blended),
    (frozenset({"sugary"}), _made_at_home),
    (frozenset({"stock-cube"}), _of_the_pan),
)
"""Kinds that are a danger in any form, and when the words show that this one is none."""
