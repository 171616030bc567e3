"""What a sentence shows of how a food in it is: which of its dangers the words tell, and in what state they leave it.

"Grape" alone is no danger, "whole grapes" is; honey is one in any form. What the words say is done to the food ("squash
each one") makes the facts that the hazard tables are asked with.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from spoonproof.feeding.any_form import HANDFUL, HIDDEN, Told, around
from spoonproof.feeding.clauses import clause_of
from spoonproof.feeding.done_first import done_to
from spoonproof.feeding.handed import ANY_FORM, MILKS
from spoonproof.feeding.recipients import GIVE, ONE_CHILD, UNCUT
from spoonproof.feeding.runny import runny
from spoonproof.feeding.step_words import WORD_FACTS
from spoonproof.feeding.words import Found, keys

_RAW_SEA = re.compile(r"\boysters?\b|\braw\b", re.I)
"""Shellfish that is eaten raw where nothing is said."""
_TO_SUCK = re.compile(r"\b(?:to|can|may|lets? (?:her|him)) (?:suck|chew|gnaw)\b", re.I)
_RAW_HARD = frozenset({"hard-raw", "firm-raw", "crisp-raw", "hard-raw-unless-ripe"})
_IN_THE_POD = re.compile(r"\bpods? (?:on|and all)\b|\bcrunch\w*\b", re.I)
_UNCOOKED = re.compile(
    r"\b(?:cold|chilled|frozen|icy|crisp|fridge-cold"
    r"|(?:straight|fresh) from the (?:fridge|freezer|crisper|tree|garden))\b",
    re.I,
)
_VESSEL = re.compile(r"\b(?:bottle|cup|beaker|sip|drink|glass|mug)\w*\b", re.I)
_CRUNCH = re.compile(
    r"\b(?:gnaw|crunch|teeth|munch|chew)\w*\b|\b(?:hard(?! boiled|-boiled|[- ]cooked| yolk| egg)|whittl\w*"
    r"|crisp|rock[- ]hard|skin and all|peel and all|with a snap|snappy|unpeeled|uncooked"
    r"|as it is|as it comes|with the (?:peel|skin)|(?:skin|peel) on)\b",
    re.I,
)
_HERS_WHOLE = re.compile(r"\b(?:hers|his|theirs)(?: are| is| stay| go)? (?:whole|uncut)\b", re.I)
_WHOLE_LATER = re.compile(  # "he pops them in whole"
    r"\b(?:them|it|each|one)(?: \w+){0,2} whole\b|\b(?:them|these)(?: \w+){0,3} (?:one by one|one at a time)\b"
    rf"|{_HERS_WHOLE.pattern}|\b(?:leave|left|keep) (?:it|them) round\b|\bas they c[ao]me\b|\buncut\b|\bin one piece\b"
    r"|\b(?:\w+ )?ones? whole\b|\bwhole ones?\b|\b(?:from|out of) (?:the|their|its) pods?\b",
    re.I,
)
_GUMS = re.compile(
    r"\b(?:gums?|teeth|teething|teether|tooth|fist|hands)\b|\b(?:stick|wedge|spear|baton|chunk)s? of\b", re.I
)
_STONE_IN = re.compile(
    r"\b(?:stones?|pits?)(?: (?:still|left|are|is))* (?:in|inside|and all)\b|\bwith (?:the|its|their) (?:stones?"
    r"|pits?)\b|\b(?:spits?|spat) (?:out )?(?:it|them|the (?:stones?|pits?))(?: out)?\b|\b(?:round|around|off) (?:its"
    r"|the) stone\b|\bnever stone\b|\bwithout stoning\b",
    re.I,
)
_ON_STONE = re.compile(r"\bwhole\b[^.;]{0,40}\bto (?:suck|gnaw|chew)\b", re.I)
_CUT_SAID = re.compile(r"\b(?:cubes?|chunks?|lumps?|dice)\b", re.I)
_CHUNKY = re.compile(r"\b(?:cubes?|cubed|chunk\w*|lumps?|diced?)\b", re.I)
_TENDER = re.compile(
    r"\b(?:slow|stew|soft|tender|fall\w*|fell|shred|minc|mash|blend|pur[ée]+|flak|tiny|small|fine|braise"
    r"|casserole|pull)\w*",
    re.I,
)
_ROUNDS = re.compile(r"\b(?:slices?|rounds?|coins?|bits?|chunks?|pieces?|whole)\b", re.I)
_NOT_IN = re.compile(
    r"\b(?:never|not|no|without|rather than|instead of) (?:\w+ ){0,4}(?:slices?|rounds?|coins?|chunks?)\b", re.I
)
_THICKENS = re.compile(r" (?:thickens?|binds?|holds) (?:her|his|the|it)\b", re.I)
_SPOONED = re.compile(
    r"\b(?:tea)?spoon(?:ful)?s?\b|\bfinger\b(?! food)|\b(?:with|off|from) (?:her|his|my|your|their) fingers\b"
    r"|\bdessertspoon\b|\bknife\b|\b(?:from|out of) the jar\b"
    r"|\b(?:balls?|lumps?|blobs?|globs?|chunks?)\b|\bthick (?:layer|spread|smear)\b|\bthickly\b"
    r"|\bno need to thin\b|\bspread thick\b|\bthick on\b",
    re.I,
)
_SPAT = re.compile(r"\bsp[ia]ts? (?:out )?(?:the |his |her |their )?(?:\w+ )?(?:stones|pits|pips|seeds)\b", re.I)
_USUAL_MILK = re.compile(
    r"\b(?:besides?|apart from|other than|as well as|in addition to|along(?:side| with)|next to|except)"
    r" (?:(?:the|their|her|his|your|usual|normal|breast) ){0,2}$",
    re.I,
)
"""Words before the milk that a baby has anyway: "water is all they need besides milk"."""
_HOME_MADE = re.compile(r"\b(?:home ?-?made|my own|our own|from scratch)\b", re.I)
_INTO_DISH = re.compile(
    r" (?:(?:stirred|swirled|melted|mixed|whisked|beaten|loosened) )?(?:in|into|through)(?: (?:her|his|their|the|some"
    r"|warm|hot|plain|breakfast|baby))* (?:porridge|yog\w+|mash|pur[eé]e|oats|soup|sauce|batter|cereal|smoothie|dal"
    r"|congee|pancakes?|omelette|eggs?|custard|pudding|rice|muffins?|potato(?:es)?|semolina|bak(?:e|ing)|cooking)\b",
    re.I,
)
"""What stands behind a spread or a milk that goes into a dish: "a spoon of it in her porridge"."""
_LET_DOWN = re.compile(r" (?:is |are )?(?:let|watered|slackened) (?:down|out)? ?(?:with|in)\b", re.I)
_ONE_IN_MOUTH = re.compile(
    r"\b(?:an?|one|each) \w+(?:,? \w+){0,7}? (?:in|into|to|between|against|on)(?: \w+)? (?:mouth|cheek|gums)\b", re.I
)
_BY_HAND = re.compile(
    r"\b(?:roll|toss|throw|catch|slip|post|sneak|nick|pinch|steal|pass|feed)\w* (?:\w+ ){0,4}(?:to|for)"
    r" (?:her|him|the baby)\b|\bin (?:her|his) (?:mouth|cheek|fist)\b",
    re.I,
)
"""How round food is handed over as it is: nobody rolls a quarter of a grape."""
_TIPPED_OUT = re.compile(
    r"\b(?:tip|scatter|pour|toss|roll|spill|throw|shake|empt)\w* (?:out )?(?:an?|the|some|her|his) "
    r"[^.;]*\bon(?:to)? (?:her|his|their|the baby['’]s) (?:\w+ )?(?:tray|plate|mat|table)\b",
    re.I,
)
_CUT_UP = re.compile(r"\b(?:cut|quarter|halv|squash|squish|flatten|chop|slic|mash|sliver|thin)\w*\b", re.I)
_SQUASHED = re.compile(r"\b(?:squash|flatten|squish)\w* (?:\w+ )?(?:them|it|each|every|one|flat)\b", re.I)
_IN_HALVES = re.compile(r"\b(?:halve[sd]?|halving|in half|in two|in halves)\b(?! (?:length|and))", re.I)
_MADE_SAFE = re.compile(
    r"\b(?:cook|steam|boil|bak|roast|stew|poach|soft|toast|soak|finer|dice|mash|blend|purée|puree|grat|ground"
    r"|grind|squash|quarter|flatten|halv|thin(?!g|k)|shred|stoned|pitted|chop|crush|smooth|powder|flour|flak"
    r"|tray)\w*\b",
    re.I,
)

_ALLERGY_TO = re.compile(r"[ -](?:allerg|intoleran|sensitiv|free\b)", re.I)
_FLESH = frozenset({"meat", "fine-meat", "fish"})
_RAW_BEFORE = re.compile(r"\braw (?:\w+ )?$", re.I)
_RARE_BEFORE = re.compile(
    r"\b(?:rare(?! (?:treat|occasion))|bloody|underdone|undercooked|half[- ]cooked) (?:\w+ )?$", re.I
)
_UNBAKED = ("dough", "batter", "mix")
_STAYS_RAW = re.compile(
    r"\b(?:it|they|that|is|are) (?:(?:stays?|is|are|left|keeps?|still) ){1,2}(?:\w+ ){0,2}raw\b", re.I
)


def endangering(kinds: frozenset[str], said: str, hit: Found, kind: str, *, by_shape: bool) -> frozenset[str]:
    """The kinds of the food whose danger the words show; ``by_shape``: only such as its shape or state makes one."""
    if _ALLERGY_TO.match(said, hit.end):
        return frozenset()  # "a kid with a peanut allergy" is handed none
    classes = _shown(Told(said, hit, kinds, kind == "speech"))
    if by_shape:
        classes -= ANY_FORM | MILKS
    # "Then it's milk and bed": the milk she always has.
    if hit.phrase == ("milk",) and (kind == "speech" or _USUAL_MILK.search(said[: hit.start])):
        classes -= MILKS
    return classes


_FROZEN = re.compile(r"\b(?:frozen|icy|ice[- ]cold|straight from the freezer),? (?:\w+ )?$", re.I)
_IN_A_DISH = re.compile(
    r"\b(?:porridge|smoothie|sauce|batter|muffins?|pancakes?|pur[eé]e|crumble|pudding|pan|pot|oven|thaw\w*|defrost\w*)\b",
    re.I,
)


def _frozen_round(told: Told) -> bool:
    """Whether round food is handed over as it comes from the freezer, whole: "frozen grapes to suck"."""
    made = _MADE_SAFE.search(told.said.replace("tray", " ")) or _CUT_UP.search(told.said)
    return _FROZEN.search(told.before) is not None and not (made or _IN_A_DISH.search(told.said))


def _left_round(told: Told) -> bool:
    if HANDFUL.search(told.near) or told.behind(_WHOLE_LATER):
        return True
    if any(words.search(told.said) for words in (UNCUT, _ONE_IN_MOUTH, _SPAT)):
        return True
    if _TIPPED_OUT.search(told.said) and not _CUT_UP.search(told.said):
        return True
    return _BY_HAND.search(told.said) is not None and not _MADE_SAFE.search(told.said.replace("tray", " "))


_SOFT = re.compile(r"\b(?:soft|ripe|squashy|tender)(?:,| and)? (?:\w+ )?$", re.I)


def _hard_as_it_is(told: Told) -> bool:
    if told.name.endswith("squashes") or _SOFT.search(told.before):
        return False
    if "raw" in keys(told.near):
        return True
    bitten = _CRUNCH.search(told.said) or (_UNCOOKED.search(told.near) and _GUMS.search(told.said))
    return bitten is not None and not _MADE_SAFE.search(around(told.said, told.hit, 45, 60))


def _egg_not_set(told: Told) -> bool:
    if not keys(told.near).isdisjoint(("raw", "uncooked")) or told.behind(_STAYS_RAW):
        return True
    return runny(around(told.said, told.hit, 60, 60))


def _raw_from_the_sea(told: Told) -> bool:
    return ONE_CHILD.search(told.said) is not None and bool(_RAW_SEA.search(told.near) or runny(told.near))


def _in_lumps(told: Told) -> bool:
    chunky = _CHUNKY.search(told.near) is not None and ONE_CHILD.search(told.said) is not None
    return chunky and not _TENDER.search(told.said)


def _in_rounds(told: Told) -> bool:
    denied = _NOT_IN.sub(lambda match: " " * len(match[0]), told.said)
    return _ROUNDS.search(around(denied, told.hit)) is not None


def _sticky_cake(told: Told) -> bool:
    """A cake of sticky rice is one in any form; its flour is one where a lump of it is eaten."""
    if not told.name.endswith(("flour", "mochiko", "shiratamako")):
        return GIVE.search(told.said) is not None or _SPOONED.search(around(told.said, told.hit, after=60)) is not None
    return not told.at_once(_THICKENS) and _SPOONED.search(around(told.said, told.hit, after=60)) is not None


def _words_near(words: re.Pattern[str]) -> Callable[[Told], bool]:
    return lambda told: words.search(told.near) is not None


_SHOWN: tuple[tuple[frozenset[str], Callable[[Told], bool]], ...] = (
    (frozenset({"small-round", "berry", "cheese-ball", "big-bean"}), _left_round),
    (frozenset({"small-round"}), _words_near(_IN_HALVES)),
    (frozenset({"small-round"}), _frozen_round),
    (frozenset({"pea"}), lambda told: "raw" in keys(told.near) or _IN_THE_POD.search(told.near) is not None),
    (_RAW_HARD, _hard_as_it_is),
    (frozenset({"stone-fruit"}), lambda told: bool(_STONE_IN.search(told.said) or _ON_STONE.search(told.said))),
    (frozenset({"egg"}), _egg_not_set),
    (_FLESH, lambda told: _RAW_BEFORE.search(told.before) is not None),
    (_FLESH, lambda told: bool(_RARE_BEFORE.search(told.before) and ONE_CHILD.search(told.said))),
    (frozenset({"shellfish"}), _raw_from_the_sea),
    (frozenset({"hard-object"}), lambda told: told.behind(_TO_SUCK)),
    (frozenset({"raw-egg-product"}), _words_near(_HOME_MADE)),
    (
        frozenset({"raw-egg-product"}),
        lambda told: told.name.endswith(_UNBAKED) and _RAW_BEFORE.search(told.before) is not None,
    ),
    (frozenset({"sausage"}), _in_rounds),
    (frozenset({"meat"}), _in_lumps),
    (frozenset({"hard-cheese"}), _words_near(_CUT_SAID)),
    (frozenset({"nut-butter"}), lambda told: _SPOONED.search(around(told.said, told.hit, after=60)) is not None),
    (frozenset({"sticky-dough"}), _sticky_cake),
    (MILKS, lambda told: _in_vessel(told.said, told.hit)),
)
"""Kinds that are a danger by shape, state or use, and when the words show it."""


def _shown(told: Told) -> frozenset[str]:
    """The kinds of the food whose danger the words show."""
    shown = told.kinds & ANY_FORM
    for kinds, hides in HIDDEN:
        if shown & kinds and hides(told):
            shown -= kinds
    for kinds, shows in _SHOWN:
        if told.kinds & kinds and shows(told):
            shown |= told.kinds & kinds
    return shown


def _in_vessel(said: str, hit: Found) -> bool:
    """Whether the food's clause tells of a bottle, cup or sip, apart from the name: an oat drink may be cooked with."""
    if _INTO_DISH.match(said, hit.end):
        return False
    return _VESSEL.search(clause_of(said, (hit.start, hit.end)).replace(said[hit.start : hit.end], " ")) is not None


_CUT_SMALL = frozenset({"quartered", "halved", "squashed", "chopped"})


def facts_told(said: str, hit: Found) -> frozenset[str]:
    """How the words say that the food is served, as the tables' closed words; "whole" and "raw" where they don't."""
    near = keys(around(said, hit))
    facts = {fact for key in near if key != "can" and (fact := WORD_FACTS.get(key, ""))}
    done = done_to(said, hit)
    facts |= done
    if "cooked" in done:  # "steam raw carrot for her"
        facts.discard("raw")
    elif near & {"cooked", "steamed", "boiled", "baked", "roasted", "stewed", "poached"}:
        facts.add("cooked")
    else:
        facts.add("raw")
    facts |= {"drink"} if _in_vessel(said, hit) else set()
    facts |= {"squashed"} if _SQUASHED.search(around(said, hit, after=60)) else set()
    thin = near & {"thinned", "loosened", "swirled", "thinly"} or _LET_DOWN.match(said, hit.end)
    facts |= {"mixed"} if thin or _INTO_DISH.match(said, hit.end) else set()
    facts |= {"runny"} if runny(around(said, hit, 60, 60)) else set()
    facts |= {"glob"} if _SPOONED.search(around(said, hit, after=60)) and "mixed" not in facts else set()
    facts |= {"chunk"} if _CUT_SAID.search(around(said, hit)) else set()
    if _HERS_WHOLE.search(said, hit.end):
        facts -= _CUT_SMALL  # "quartered for his brother, and the baby has hers whole"
    if not facts & {"quartered", "fine", "blended", "mashed", "squashed", "halved", "chunk", "stick", "thin"}:
        facts.add("whole")
    return frozenset(facts)
