"""What words that give a food from an age leave open of how it is served: "celery is a fine finger food from six
months" gives a hard food, and says nothing of cooking it soft.

The hazard tables judge a food as the words have it. What they tell clears a row or shows it ("steamed", "cubes"); what
they leave open counts as open, and never as cleared.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from spoonproof.feeding.handed import ANY_FORM
from spoonproof.feeding.hers_first import hers_first
from spoonproof.feeding.named import likened
from spoonproof.feeding.served import FACTS
from spoonproof.feeding.step_words import WORD_FACTS
from spoonproof.feeding.tables import FeedingTables, HazardRow
from spoonproof.feeding.wording import sentence
from spoonproof.feeding.words import Found, keys
from spoonproof.feeding.words import words as words_of
from spoonproof.model.danger import Danger
from spoonproof.model.finding import LEVELS

_IN_PIECES = re.compile(
    r"\b(?:finger[- ]foods?|snack\w*|chew\w*|gnaw\w*|nibbl\w*|munch\w*|crunch\w*|bit(?:e|es|ing)|teeth\w*|hand[- ]?held"
    r"|self[- ]feed\w*|baby[- ]led|lunch ?box\w*|(?:to|can|baby|hand) (?:hold|grab|grip|pick up))\b",
    re.I,
)
"""Words by which a food is given in pieces, to be held and bitten off."""
_FIRST_FOOD = re.compile(r"\bfirst (?:ever )?(?:foods?|tastes?|spoonfuls?|solids?)\b|\bwean\w*", re.I)
"""Words that name the stage of spoonfuls: what is given so is smooth or mashed unless it is said to come in pieces."""
_FINGER_FOOD = re.compile(r"\bfinger[- ]foods?\b", re.I)
"""No cut into fingers is told by it: cubes of cheese are called so as well."""
_DENIED = re.compile(r"\b(?:never|not|nor|without|no need (?:to|of|for)|\w+n['’]t)(?: \w+){1,3}", re.I)
"""A state that is denied tells nothing: "never whole" shows no danger, "no need to quarter them" clears none."""
_SOFT = re.compile(
    r"\b(?:soft\w*|tender|squash(?:es|ed|able)|squishy|mushy|falls? apart|falling apart|melts?|slow[- ]cooked)\b", re.I
)
_COOKED = re.compile(
    r"\b(?:(?<!un)(?<!under)cook(?:ed|ing)?|steam(?:ed|ing)?|boil(?:ed|ing)?|bak(?:ed?|ing)|roast(?:ed|ing)?"
    r"|stew(?:s|ed|ing)?|poach(?:ed|ing)?|brais(?:ed?|ing)|simmer(?:ed|ing)?|microwaved?|casseroles?|curry|curries"
    r"|risottos?|muffins?|pancakes?|fritters?|patty|patties|loaf|bakes?|omelettes?|frittatas?)\b",
    re.I,
)
_MASHED = re.compile(r"\b(?:mash(?:es|ed|ing)?|pur[eé]ed?|blend(?:ed|ing|s)?|blitz(?:ed)?|liquidis\w+)\b", re.I)
_SMOOTH_DISH = re.compile(
    r"\b(?:pur[eé]es|soups?|porridges?|smoothies?|dips?|sauces?|spreads?|dh?al|daal|hummus|houmous|compotes?|congee"
    r"|khichdi)\b",
    re.I,
)
_BESIDE = re.compile(r"\b(?:on|over|with|in|into|onto|through) (?:(?:an?|the|your|her|his|their) )?(?:\w+ )?$", re.I)
"""Words before a dish that something lies on or in: chopped nuts on porridge are no porridge."""
_IN_A_DISH = re.compile(
    r"\bin(?:to)? (?:an?|the|his|her|their|your)? ?(?:\w+ )?(?:soups?|porridges?|sauces?|dh?al|daal|congee)\b", re.I
)
_SET = re.compile(r"\b(?:muffins?|pancakes?|fritters?|patty|patties|loaf|bakes?|omelettes?|frittatas?)\b", re.I)
_UNCUT = re.compile(r"\b(?:whole|uncut|in one piece|as (?:it|they) comes?)\b", re.I)
_FINE = re.compile(
    r"\b(?:finely|grat(?:e|ed|ing)|shred(?:ded|ding)?|minc(?:e|ed|ing)|flak(?:e|ed|ing)|ground|grind(?:ing)?)\b", re.I
)
_CHOPPED = re.compile(r"\bchop(?:ped|ping)?\b", re.I)
_SLICED = re.compile(r"\b(?:slices?|sliced|slicing)\b", re.I)
_QUARTERED = re.compile(r"\bquarter(?:s|ed|ing)?\b|\bin four\b", re.I)
_SQUASHED = re.compile(r"\b(?:squash|flatten|squish)(?:ed|es|ing)?\b(?! (?:mash|puree|purée|soup))", re.I)
_RAW = re.compile(r"\b(?:raw|uncooked)\b", re.I)

_CUTS = frozenset("halved quartered coin slice dice chunk stick wedge floret chopped torn fine thin small".split())
_CLEARING = (_CUTS - {"fine"}) | {"lengthways", "squashed", "mixed", "stoned"}
_CLEARED_SOFT = frozenset("soft mashed blended".split())
_ROUND = frozenset("small-round berry large-berry cheese-ball coin-shape sausage dried-fruit".split())
"""Kinds that are no safer for being soft: it is their shape."""
_UNCUT_SHAPES = frozenset("whole chunk halved slice quartered chopped".split())
_HARD_OR_ROUND = frozenset(
    "hard-raw hard-raw-unless-ripe firm-raw small-round berry cheese-ball cranberry dried-fruit".split()
)
"""Kinds that any giving of is open about, in pieces or not: "apple is fine from six months"."""
_JUDGED_ELSEWHERE = frozenset("peel-fruit bones-maybe hard-object root-spice skewer rice whole-grain pip-fruit".split())
"""Kinds whose rows ask for what a recipe's steps tell."""
_KNOWN_BY_NAME = frozenset({"nut", "nut-butter", "egg"})
"""Kinds of which the register knows more than a table does, as long as the words show no danger."""
_CALLED_SO = re.compile(
    r"([\w' -]{2,60}?)\b(?:is|are|as|makes?|can be|(?:is|are) served as|for)(?: \w+){0,4} finger[- ]foods?\b", re.I
)
_OF_SUCH_TALK = frozenset(
    """finger food foods solid meal first next new soft softer cooked ripe good great best favourite easy some any
    all most many other more these those this that they them it she he we you i a an the of and or to at in from for
    with about around by on if when once after until baby babie child children toddler little one your her his their
    our my month year old six seven eight nine ten twelve half shape size strip stick baton piece fruit vegetable veg
    homemade home made what which how is are was can may have give given giving offer offered offering introduce
    start serve served try ready solids""".split()
)
"""Folded words in talk of finger food that name no food."""
_HELD_AGAINST = re.compile(r"\b(?:than|unlike|like|not) (?:\w+ ){0,2}$", re.I)
_PARTS = re.compile(r"[,;]|\b(?:but|while|whereas)\b|\b(?:and|or)\b(?=[^,;]*\b(?:months?|years?|birthday)\b)", re.I)
_STONE = frozenset({"stone-fruit", "stone-dried"})
_JOINED = re.compile(r"\s*(?:,|and|or|&|,\s*and|,\s*or|-)?\s*", re.I)
_NEXT = re.compile(r"(?:,\s*)?\b(?:and|or|but|with|while)\b|[,;]", re.I)


def danger_in(
    said: str,
    within: tuple[int, int],
    months: int,
    tables: FeedingTables,
    policies: Mapping[str, str],
    markets: Sequence[str],
    behind: str = "",
    known: frozenset[str] = frozenset(),
) -> Danger | None:
    """The gravest danger at ``months`` of the foods that the sentence ``said`` gives, None where the tables know none;
    without a ``row`` where it gives in pieces what no table knows ("gobstoppers are finger food").

    The foods are those within the claim's own place ``within``, or of the whole sentence where that names none.
    ``behind``: words after the sentence that tell more of the same food. ``known``: folded names of foods whose serving
    is judged elsewhere; what is open of them is not asked again.
    """
    named = (hit for hit in tables.phrases.find(said) if not likened(said, hit))
    hits = [hit for hit in named if not _HELD_AGAINST.search(said[: hit.start])]
    if hers_first(said):  # "I salt the batter, but only after I have fried hers"
        hits = [hit for hit in hits if not tables.kinds[hit.value] & ANY_FORM]
    first, last = _part(said, within)
    own = [hit for hit in hits if hit.start < last and first < hit.end] or hits
    pieces = _IN_PIECES.search(said) is not None
    if pieces and not hits and (unknown := _unknown(said)):
        return Danger("", unknown, False, "warning", "", "", ())
    spooned = not pieces and _FIRST_FOOD.search(said) is not None
    rows = [row for row in tables.hazards if row.level != "note" and tables.counts(row, policies, markets)]
    rows.sort(key=lambda row: row.kind != "choking")  # of equals, what chokes is told before what is sweet
    found: list[Danger] = []
    for group, words in _groups(said, hits):
        told = _facts(f"{words} {behind}")
        for hit in (one for one in group if one in own):
            kinds = tables.kinds[hit.value] - _JUDGED_ELSEWHERE
            open_too = not spooned and not known & set(hit.phrase)
            found += _dangers(rows, kinds, told, months, said[hit.start : hit.end], pieces=pieces, open_too=open_too)
    return min(found, key=lambda one: (not one.told, LEVELS.index(one.level)), default=None)


def _unknown(said: str) -> str:
    """The words for what is called finger food, where they are none that such talk is made of; else ""."""
    match = _CALLED_SO.search(said)
    name = match[1].strip() if match else ""
    return name if any(word.key not in _OF_SUCH_TALK for word in words_of(name)) else ""


def _part(said: str, within: tuple[int, int]) -> tuple[int, int]:
    """The part of the sentence that the claim stands in, to the next comma or "but", or "and" before another age."""
    cuts = [match.start() for match in _PARTS.finditer(said)]
    before = max((cut for cut in cuts if cut <= within[0]), default=0)
    return before, min((cut for cut in cuts if cut >= within[1]), default=len(said))


def _dangers(
    rows: Sequence[HazardRow],
    kinds: frozenset[str],
    told: frozenset[str],
    months: int,
    food: str,
    *,
    pieces: bool,
    open_too: bool,
) -> Iterator[Danger]:
    for row in rows:
        meant = kinds & row.classes if "*" not in row.classes else kinds
        if months >= row.until or not meant or any(group <= told for group in row.unless):
            continue
        shown = any(group <= told for group in row.when) if row.when else _in_any_form(row)
        shown = shown or (not row.when and "whole" in told)
        if shown or (open_too and row.kind == "choking" and _open(row, meant, told, pieces=pieces)):
            yield Danger(row.id, food, shown, row.level, sentence(food, row.problem), row.remedy, row.sources)


def _in_any_form(row: HazardRow) -> bool:
    """Whether a row without a state holds for the food as anybody would serve it: no cutting or thinning clears it."""
    return row.kind == "not-yet" or not any(group & _CLEARING for group in row.unless)


def _open(row: HazardRow, kinds: frozenset[str], told: frozenset[str], *, pieces: bool) -> bool:
    """Whether the words leave open what the row asks for."""
    if kinds <= _KNOWN_BY_NAME or (not pieces and (not kinds & _HARD_OR_ROUND or row.level != "error")):
        return False
    if told & _CLEARED_SOFT and not kinds & _ROUND:
        return False
    if kinds <= _STONE and told & _CUTS:
        return False  # "peach slices": the stone is out
    cooked = told & {"cooked", "soft", "ripe", "tinned", "soaked"}
    openly = frozenset() if cooked else {"raw"}
    if not told & _CUTS:
        openly |= _UNCUT_SHAPES
    return not row.when or any(group <= told | openly and (pieces or group <= {"raw"}) for group in row.when)


def _groups(said: str, hits: Sequence[Found]) -> Iterator[tuple[list[Found], str]]:
    """Foods that stand in one row ("carrot and parsnip batons"), each row with the words that tell of it."""
    rows: list[list[Found]] = []
    for hit in hits:
        if rows and _JOINED.fullmatch(said[rows[-1][-1].end : hit.start]):
            rows[-1].append(hit)
        else:
            rows.append([hit])
    start = 0
    for at, row in enumerate(rows):
        last = at == len(rows) - 1
        between = len(said) if last else rows[at + 1][0].start
        parted = None if last else _NEXT.search(said, row[-1].end, between)
        end = parted.start() if parted else between
        yield row, said[start:end]
        start = end


def _facts(words: str) -> frozenset[str]:
    """What the words tell of how a food is served, as the tables' closed words."""
    words = _DENIED.sub(" ", _FINGER_FOOD.sub(" ", words))
    facts = {fact for key in keys(words) if key != "can" and (fact := WORD_FACTS.get(key, ""))}
    told = (
        (_IN_A_DISH, ("cooked",)), (_SOFT, ("soft", "cooked")), (_COOKED, ("cooked",)),
        (_MASHED, ("mashed", "blended", "cooked")), (_SET, ("set",)), (_UNCUT, ("whole",)), (_FINE, ("fine",)),
        (_CHOPPED, ("chopped",)), (_SLICED, ("slice",)), (_QUARTERED, ("quartered",)), (_SQUASHED, ("squashed",)),
    )  # fmt: skip
    for pattern, more in told:
        if pattern.search(words):
            facts.update(more)
    if any(not _BESIDE.search(words[: dish.start()]) for dish in _SMOOTH_DISH.finditer(words)):
        facts |= {"mashed", "blended", "cooked"}
    if _RAW.search(words):
        facts.add("raw")
        facts -= {"cooked", "soft", "mashed", "blended", "set"}
    if facts & {"quartered", "fine", "blended", "mashed", "squashed"}:
        facts.discard("whole")
    return frozenset(facts & FACTS)
