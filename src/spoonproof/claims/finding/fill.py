"""Fill a claim's fields from a match: who, what, how surely, to whom, how much."""

from __future__ import annotations

import re
from itertools import pairwise

from spoonproof.claims.finding.allergies import as_introduced
from spoonproof.claims.finding.draft import Draft, Match
from spoonproof.claims.finding.near import end_of, first_of, text_before
from spoonproof.claims.finding.number import quantity
from spoonproof.claims.finding.phrase import Subject
from spoonproof.claims.finding.relation import NUTRIENTS, relates_to
from spoonproof.claims.finding.subject import subject_of
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import Polarity, Strength

_NEGATION = frozenset({"negation", "needless"})
_DENIAL = _NEGATION | {"free"}
_NO_NEED = frozenset({"no-need-of"})
_HEDGE = frozenset({"hedge"})
_REFUTE = frozenset({"refute"})
_TURNS = frozenset({"but", "yet", "though", "although"})
_AUDIENCE = frozenset({"audience-baby", "audience-adult"})
_TAKING_BACK = _NEGATION | _REFUTE
_NAMING = frozenset({"food", "dish", "nutrient"})
_NONE = frozenset({"no", "without", "zero"})
_PARTICLES = frozenset({"away", "off", "worse"})  # "keeps colds *away*", "makes diarrhoea *worse*"
_BEFORE_QUOTE = 4  # items
_DENIED_FROM = 6  # items before what gives a claim away in which a "no" denies it
_BESIDE = 12  # items before a food in which its nutrient may be named
_EFFECT = (
    "effect",
    "effect-weak",
    "bodily",
    "feel-better",
    "disease",
    "disease-weak",
    "body",
    "armour",
    "sun-up",
    "ill-sign",
    "allergy",
    "allergy-weak",
    "food-allergy",
    "health",
    "loose",
    "loose-noun",
)
_STRENGTHS: tuple[Strength, ...] = ("contains", "mild", "plain", "strong", "absolute")
_ABSOLUTE = re.compile(r"\b(?:always|guaranteed?|all|every|100 ?%|completely|totally|never|best|most|only)\b")


def fill(tagged: Tagged, match: Match) -> Draft:
    """The draft of a match."""
    subject = subject_of(tagged, match)
    start, end = _extent(tagged, match, subject)
    polarity = _polarity(tagged, match, subject)
    number = quantity(tagged, match)
    effect = _effect(tagged, match)
    nutrients = _ids(tagged, NUTRIENTS, *(match.object or match.trigger))
    relates = relates_to(tagged, match, effect, nutrients)
    if match.rule.kind not in ("nutrient-content", "quantity", "comparative") and subject.range:
        # "The *vitamin C* in the broccoli helps": a nutrient beside the food is what it is about as well.
        beside = [
            nutrient
            for i in tagged.find(NUTRIENTS, max(0, subject.range[0] - _BESIDE), match.start + 1)
            if tagged.items[i].words in subject.texts
            for nutrient in _ids(tagged, NUTRIENTS, i, i + 1)
        ]
        nutrients = tuple(dict.fromkeys([*_ids(tagged, NUTRIENTS, *subject.range), *beside, *nutrients]))
    steps = (
        f"{match.rule.kind}: {match.rule.says} ({match.rule.name})",
        f"given away by “{tagged.words(*match.trigger)}”",
        f"about {subject.why}",
    )
    return Draft(
        rule=as_introduced(tagged, match.rule, effect, subject.range),
        start=tagged.items[start].start,
        end=tagged.items[end - 1].end,
        subjects=subject.texts,
        relates_to=relates,
        polarity=polarity,
        strength=_strength(tagged, match),
        audience=_audience(tagged),
        number=number,
        foods=subject.foods,
        nutrients=nutrients,
        effect=effect,
        level=_level(tagged, match),
        allergens=_allergens(tagged, match),
        of_dish=subject.of_dish,
        trigger=tagged.words(*match.trigger),
        pronoun=subject.pronoun,
        said=subject.said,
        steps=steps,
    )


def _extent(tagged: Tagged, match: Match, subject: Subject) -> tuple[int, int]:
    """The items a claim is quoted by: from its subject, or the word that denies it, to the end of what it says."""
    start, end = match.start, match.end
    if subject.range is not None and start - subject.range[1] <= 8 and subject.range[0] - end <= 4:
        said = first_of(match)
        if match.subject is not None and match.start == match.subject[0] and subject.range[1] <= said:
            start = subject.range[0]  # "cinnamon on top, because *cinnamon* keeps colds away"
        start, end = min(start, subject.range[0]), max(end, subject.range[1])
    if match.rule.name == "food-allergy":
        start = min([start, *tagged.find(_DOES, start - _VERB_REACH, start)])  # "*prevents* peanut allergy"
    if end < len(tagged.items) and tagged.items[end].words in _PARTICLES:
        end += 1
    return _denying(tagged, start), end


def _denying(tagged: Tagged, start: int) -> int:
    """Where a quote that begins at ``start`` begins with the "no" before it: "*no need to* wait", "*no* honey"."""
    for index in range(start - 1, max(-1, start - 1 - _BEFORE_QUOTE), -1):
        if tagged.is_any(index, _REFUTE) and tagged.items[index + 1].words == "and":
            break
        if tagged.is_any(index, _TAKING_BACK) or not _NONE.isdisjoint(tagged.items[index].words.split()):
            only = tagged.items[index + 1].words in ("only", "just")
            return start if only else index
        if tagged.symbols[index] in ",.?:()" or tagged.is_any(index, _NAMING):
            break
    return start


def _clause_start(tagged: Tagged, at: int) -> int:
    for index in range(at - 1, -1, -1):
        if tagged.symbols[index] in ".?":
            return index + 1
    return 0


def _polarity(tagged: Tagged, match: Match, subject: Subject) -> Polarity:
    begin = _clause_start(tagged, match.start)
    last = end_of(match)
    if match.rule.name == "not-for-them" and not _asked(tagged, subject):
        return "denies"
    if match.rule.name == "needs" and tagged.is_any(match.trigger[0], _NO_NEED):
        return "denies"
    denial = _NEGATION if match.rule.level else _DENIAL
    near = max(begin, match.trigger[0] - (1 if match.rule.tale else _DENIED_FROM))
    needed = match.subject[0] if match.rule.name == "needs" and match.subject else last  # "babies need *no* iron"
    for index in tagged.find(denial, near, max(last, needed)):
        after = tagged.items[index + 1].words if index + 1 < len(tagged.items) else ""
        if after in ("only", "just") or index in range(*match.trigger) or _is_over(tagged, index, match):
            continue
        if not _begins_anew(tagged, index + 1, match, subject):
            return "denies"
    if _asked(tagged, subject):
        return "asks"
    if tagged.find(_HEDGE, begin, last):
        return "hedges"
    return "asserts"


def _is_over(tagged: Tagged, denial: int, match: Match) -> bool:
    """Whether a denial is of something that is over before the match: "myth or *not*, ...", "no proof, *yet* ..."."""
    after = [item.words for item in tagged.items[denial + 1 : match.start]]
    return after[:1] == [","] or not _TURNS.isdisjoint(after)


def _begins_anew(tagged: Tagged, begin: int, match: Match, subject: Subject) -> bool:
    """Whether another clause opens between a denial and what is said: "no sugar in this one *and it* keeps ...", "she
    is no big eater *so avocado* helps ..."."""
    words = [item.words for item in tagged.items[begin : match.trigger[0]]]
    if any(pair in _ANEW for pair in pairwise(words)) or _goes_on(tagged, begin, match.trigger[0]):
        return True
    named = subject.range
    if named is None or not begin < named[0] <= match.trigger[0]:
        return False
    joints = [at for at in range(max(begin, named[0] - 2), named[0]) if tagged.items[at].words in _JOINTS]
    # "No carrots and peas" denies both.
    return any(tagged.items[at].words != "and" or not tagged.is_any(at - 1, _NAMING) for at in joints)


def _goes_on(tagged: Tagged, begin: int, at: int) -> bool:
    """Whether a sentence of its own follows the comma: "don't peel it, *the skin has* more fibre"."""
    if not tagged.is_any(at, _VERBS):
        return False
    joints = [index for index in range(max(begin, at - _SPLICED), at) if tagged.symbols[index] == ","]
    return any(tagged.items[index + 1].words in _OPENING and index + 1 < at for index in joints)


_SPLICED = 6  # items between the comma and the verb of what follows it
_VERBS = frozenset({"contain", "have", "benefit", "benefit-weak", "harm", "harm-weak"})
_OPENING = frozenset("the its it they this these their most".split())
_DOES = frozenset({"benefit", "benefit-weak", "harm", "harm-weak"})
_VERB_REACH = 2  # items
_ANEW = frozenset(
    (joint, it)
    for joint in ("and", "but", "so", "because", "since")
    for it in ("it", "they", "this", "these", "their", "that")
)
_JOINTS = frozenset(
    {"and", "but", "so", "anyway", "well", "though", "as", "because", "since"}
)  # what follows at once is told anew
_ASKING = frozenset("is are does do can could should will would did".split())


def _asked(tagged: Tagged, subject: Subject) -> bool:
    if tagged.text.rstrip("\"'”’) ").endswith("?"):
        return True
    if subject.range is not None and _ASKED_WHETHER.search(text_before(tagged, subject.range[0])) is not None:
        return True
    first = tagged.items[0].words if tagged.items else ""
    if first not in _ASKING or len(tagged.items) <= 2:
        return False
    # "Can you see how soft that is now popcorn is fine": what the listener is asked is over where the food is named.
    named = subject.range
    return named is None or named[0] < _ASKED_BEFORE or tagged.items[1].words not in _LISTENER


_ASKED_WHETHER = re.compile(r"\b(?:ask\w*|wonder\w*|want\w* to know) (?:\w+ )?(?:if|whether) (?:[\w-]+ ){0,3}$")
_LISTENER = frozenset({"you", "i", "we"})
_ASKED_BEFORE = 7  # items


def _strength(tagged: Tagged, match: Match) -> Strength:
    if match.rule.kind in ("nutrient-content", "quantity", "allergen", "safety-age"):
        return "contains"
    found: Strength = "plain"
    for index in range(match.start, match.end):
        term = tagged.items[index].term
        for sense in term.senses.values() if term is not None else ():
            if sense.cls in ("benefit", "benefit-weak", "harm", "loose", "loose-noun") and sense.value in _STRENGTHS:
                found = sense.value
                break
    if _ABSOLUTE.search(tagged.words(match.start, match.end).lower()) and found in ("plain", "strong"):
        return "absolute"
    return found


def _audience(tagged: Tagged) -> str | None:
    found = tagged.find(_AUDIENCE)
    babies = [i for i in found if tagged.has(i, "audience-baby")]
    chosen = (babies or found)[:1]
    return tagged.words(chosen[0], chosen[0] + 1) if chosen else None


def _ids(tagged: Tagged, classes: frozenset[str], start: int, end: int) -> tuple[str, ...]:
    found: dict[str, None] = {}
    for index in tagged.find(classes, start, end):
        term = tagged.items[index].term
        assert term is not None
        for cls in sorted(classes):
            if cls in term.senses and term.senses[cls].id:
                found.setdefault(term.senses[cls].id)
                break
    return tuple(found)


def _effect(tagged: Tagged, match: Match) -> str | None:
    if match.rule.effect:
        return match.rule.effect
    start, end = match.object or match.trigger
    for index in range(start, end):
        term = tagged.items[index].term
        for cls in _EFFECT:
            if term is not None and cls in term.senses and term.senses[cls].id:
                return term.senses[cls].id
    if match.rule.kind == "safety-age":
        return {"choking": "choking", "harmful": "harm", "safe": "safety"}.get(match.rule.name, "age")
    if match.rule.kind == "general-benefit":
        return "health"
    return None


def _level(tagged: Tagged, match: Match) -> str | None:
    level = match.rule.level
    words = tagged.words(*match.trigger).lower()
    if match.rule.kind == "comparative":
        return level or ("less" if tagged.find(frozenset({"less", "low"}), *match.trigger) else "more")
    if level == "source" and match.start > 0:
        before = tagged.words(max(0, match.start - 2), match.start + 1).lower()
        if re.search(
            r"\b(?:rich|excellent|great|fantastic|superb|brilliant|amazing|best|high)\b", before + " " + words
        ):
            return "high"
    if level in ("contains", "high", "source") and match.object is not None:
        if re.search(
            r"\b(?:complete|full|all (?:nine|the essential)) ", tagged.words(match.start, match.object[1]).lower()
        ):
            return "complete" if "protein_g" in _ids(tagged, NUTRIENTS, *match.object) else level
        if tagged.find(frozenset({"free"}), match.trigger[1], match.object[0]):
            return "none"
    return level


def _allergens(tagged: Tagged, match: Match) -> tuple[str, ...]:
    if match.rule.kind not in ("allergen", "safety-age"):
        return ()
    found: set[str] = set()
    for index in range(match.start, match.end):
        term = tagged.items[index].term
        for sense in term.senses.values() if term is not None else ():
            found.update(sense.allergens)
    return tuple(sorted(found))
