"""Run the grammar over a tagged sentence and settle which matches stand."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.finding.evidence import has_evidence, promises_no_illness
from spoonproof.claims.finding.ordinary import advises, is_ours, is_story
from spoonproof.claims.finding.phrase import lack
from spoonproof.claims.finding.ranking import names_both
from spoonproof.claims.finding.settle import outdoes, says_again
from spoonproof.claims.finding.vetoes import spoken_against, talks_of_else
from spoonproof.claims.grammar import CompiledRule
from spoonproof.claims.scan import Tagged

# What may follow an object in a list: "calcium, iron and zinc", "skin, hair and nails".
FAMILIES: tuple[frozenset[str], ...] = (
    frozenset({"nutrient", "nutrient-weak", "ambiguous-nutrient", "energy", "additive", "vitamin-letter"}),
    frozenset({"effect", "effect-weak", "body"}),
    frozenset({"disease", "disease-weak", "allergy", "allergy-weak"}),
    frozenset({"food", "dish"}),
)
_JOIN = frozenset({"and", "or", "&", "plus", "as", "well", "also", "even", "some", "including", "the", "your", "like",
                   "his", "her", "their", "such", "especially", "particularly", "namely", "called", "known", "known as",
                   "a", "an"})  # fmt: skip
_GOOD_STATE = frozenset({"healthy", "strong"})  # "including a *healthy* nervous system"


_NAMED = frozenset({"food", "dish", "nutrient", "ambiguous-nutrient", "contaminant", "additive"})
_OF_NOTHING = ("superfood", "healthiest")  # claims even where no food is named
_HOLDERS = frozenset({"food", "dish", "generic-food", "ambiguous-nutrient"})
_UNKNOWN_RULES = ("helps-a-function", "against-disease", "has-effect", "contains", "high-in", "source-of")
_PEOPLE = frozenset("i he she we you who my his her our your someone doctors doctor parents everybody nobody i've i'm "
                    "we've we're he's she's there here what".split())  # fmt: skip
_STRONG = frozenset({"effect", "disease", "nutrient"})
_UNDER_A_HEAD = 24  # items: "nerve function: essential for maintaining ..."
_NOURISHING = frozenset({"nutrient-weak"})
_AUDIENCE = frozenset({"audience-baby", "audience-adult", "disease", "disease-weak"})
_GENERIC = frozenset({"generic-food"})
_POINTING = frozenset({"it", "they", "this", "these", "that", "which", "those", "both", "them"})

# "..., it will help", "because they are", "its benefits"
_SAYING = frozenset({"it", "they"})
_BESIDES = ("in addition to ", "besides ", "apart from ", "as well as ", "along with ")
_THIS = frozenset({"this", "these", "that", "those"})
_AND_THEN = frozenset({"but", "and", "so", "because"})
_DOES = frozenset({"benefit", "benefit-weak", "harm", "goodfor", "badfor"})
_BEFORE = frozenset({"than", "of", "like", "for", "and", "with"})
_JOINING = frozenset({"that", "which"})  # inside a sentence these join clauses: "experts say that ..."
_AND = frozenset({"and", "or", "&", "plus"})
_ONE = frozenset({"a", "an"})
_PREDICATES = frozenset(
    {"benefit", "benefit-weak", "harm", "contain", "copula", "keep", "can-ask", "question", "have", "has"}
)
_FED = frozenset({"give", "introduce", "include", "have"})  # "give it", but "give them a bath"
_OFFERED = _FED - {"have"}
_NOT_EATEN = frozenset({"body", "effect", "disease", "allergy", "drug", "inner-body"})  # "when the gut ..., it"
_OWNED = frozenset({"its", "their"})
_SAID_OF_IT = frozenset("said thought known believed reputed reported claimed supposed proven clinically".split())
# "*This routine* helps him sleep": no food is pointed at.
_NO_FOOD = frozenset(
    "process routine machine method plan step guide post article approach habit skill book time way week day month "
    "year trip place school video series schedule system gadget device chair tool trick game stage phase allergy "
    "allergies illness condition diagnosis infection".split()
)
_GOOD = frozenset({"health", "health-weak", "nutrient", "nutrient-weak", "effect", "loose", "loose-weak"})


def matches(
    tagged: Tagged, rules: Sequence[CompiledRule], present: frozenset[str], of_dish: bool = False
) -> list[Match]:
    """The matches that stand: per kind the surest rule first, no second one on the same object.

    ``present`` are the classes of the sentence; ``of_dish`` says that it speaks of a dish without naming it.
    """
    # The caller has passed over the rules whose classes are not there; most of the others match nothing either.
    matched = [(compiled, found) for compiled in rules for found in compiled.expression.finditer(tagged.symbols)]
    if not matched:
        return []
    kept: list[Match] = []
    against: list[Match] = []
    tale = any("story" in compiled.rule.veto for compiled, _ in matched)
    told = tale and is_story(tagged.low)
    ours = tale and is_ours(tagged.low, present)
    points = _points(tagged, present) or (of_dish and "nonfood" not in present)
    about = points or not present.isdisjoint(_NAMED)
    # A nutrient holds no nutrient: what holds it must be there.
    held = points or not present.isdisjoint(_HOLDERS)
    for compiled, found in matched:
        match = _match(compiled, found, tagged)
        story = told or (ours and compiled.rule.kind == "safety-age")
        if story and "story" in compiled.rule.veto and not advises(tagged, match):
            continue
        if talks_of_else(tagged, match, present) or not (about or _says_something(tagged, match)):
            continue
        if compiled.rule.named and not (
            (held if compiled.rule.kind == "nutrient-content" else about)
            or _eaten(compiled, present)
            or _opens(tagged, match, present)
            or _unknown(tagged, match)
            or promises_no_illness(tagged, match)
            or (match.rule.kind in ("function", "disease") and _without_a_food(tagged, match))
        ):
            continue
        if not has_evidence(tagged, match, points) or spoken_against(tagged, match, points):
            against.append(match)
            continue
        if match.rule.loose and any(says_again(match, other) for other in against):
            continue  # what is no claim by a surer rule is none by a looser one
        if not any(says_again(match, other) for other in kept):
            kept = [other for other in kept if not outdoes(match, other)]
            kept.append(match)
    kept.sort(key=lambda m: (m.start, m.end, m.rule.kind))
    return kept


def _without_a_food(tagged: Tagged, match: Match) -> bool:
    """Nutrients in general, or the lack of one, do something too: "*extra vitamins* boost his immune system"."""
    at = match.trigger[0]
    return lack(tagged, at) is not None or (not match.rule.loose and bool(tagged.find(_NOURISHING, 0, at)))


def _says_something(tagged: Tagged, match: Match) -> bool:
    """Whether a claim about no food in particular says enough: "foods that are safe" and "a healthy diet" don't."""
    if (match.rule.kind == "general-benefit" and match.rule.name not in _OF_NOTHING) or match.rule.name in (
        "safe",
        "fine-for-babies",
    ):
        return match.trigger[0] <= 2 and len(tagged.items) <= 14
    return True


def _eaten(compiled: CompiledRule, present: frozenset[str]) -> bool:
    """Of food in general much may be said too: "a good breakfast helps ...", "variety protects against allergies"."""
    if compiled.rule.kind == "allergen" and "food-allergy" in present:
        return True  # "an egg allergy" says of what
    said = compiled.rule.kind in ("function", "disease", "allergen") and not compiled.rule.loose
    return said and "generic-food" in present and "nonfood" not in present


def _points(tagged: Tagged, present: frozenset[str]) -> bool:
    """Whether the sentence opens with a pronoun, or points: "these snacks"."""
    if "nonfood" in present:
        return False
    for index, item in enumerate(tagged.items):
        first = item.words.split(" ", 1)[0]
        if first in _POINTING and not (first in _THIS and _says(tagged, index + 1) in _NO_FOOD):
            if not _is_empty(tagged, index) and _points_from(tagged, index):
                return True
        elif first in _OWNED and tagged.find(_GOOD, index + 1, index + 4):
            return True
    return False


def _says(tagged: Tagged, index: int) -> str:
    return tagged.items[index].words if index < len(tagged.items) else ""


def _points_from(tagged: Tagged, index: int) -> bool:
    """Whether the pointing word at ``index`` stands for what the sentence is about."""
    words = tagged.items[index].words
    if (words == "which" and index == 0) or names_both(tagged, index):
        return False  # a question: "which foods are safe"; "both babies and adults"
    if index < 4 and (index == 0 or words not in _JOINING or tagged.items[index - 1].words in _BEFORE):
        return True
    if index and words in _SAYING and tagged.symbols[index - 1] == "," and tagged.low.startswith(_BESIDES):
        return True  # "*in addition to* easing colic, they ..."
    if words != "which" and tagged.find(_GENERIC, index + 1, index + 3):
        return True
    if words in _SAYING and tagged.find(_PREDICATES, index + 1, index + 3) and not tagged.find(_NOT_EATEN, 0, index):
        return True
    if (
        index
        and words in _THIS
        and tagged.items[index - 1].words in _AND_THEN
        and tagged.find(_DOES, index + 1, index + 3)
    ):
        return True  # "I'm no expert, *but this* really helped"
    return words in ("it", "them") and tagged.is_any(index - 1, _FED if words == "it" else _OFFERED)


def _is_empty(tagged: Tagged, index: int) -> bool:
    """ "It is important to note that ..." points at nothing ("it is important to the gut" does)."""
    words = [item.words for item in tagged.items[index : index + 5]]
    if words[0] != "it" or words[1:2] not in (["is"], ["was"], ["'s"]):
        return False
    words = words[1:]
    if words[1:2] and words[1] in _SAID_OF_IT:
        return False  # "it is known to cure everything"
    then = any(word.rpartition(" ")[2] in ("to", "that", "if", "when") for word in words[1:4])
    return then and not tagged.find(_GOOD, index, index + 4)


def _opens(tagged: Tagged, match: Match, present: frozenset[str]) -> bool:
    """A fragment: the trigger comes first, and nobody else is named ("Boosts immunity", "Good for the eyes")."""
    at = match.trigger[0]
    headed = 0 < at <= 3 and tagged.symbols[at - 1] == ":" and len(tagged.items) <= _UNDER_A_HEAD
    short = ((at <= 2 and len(tagged.items) <= 14) or headed) and present.isdisjoint({"nonfood", "drug"})
    return short and not tagged.find(_AUDIENCE, 0, match.trigger[0])


def _unknown(tagged: Tagged, match: Match) -> bool:
    """A subject the lexicon does not know, said to help something it does: "Nightshades ease ..."."""
    if match.rule.name not in _UNKNOWN_RULES or not 0 < match.trigger[0] <= 4:
        return False
    strong = match.object is not None and bool(tagged.find(_STRONG, *match.object))
    before = range(match.trigger[0])
    return strong and all(
        tagged.items[i].term is None and tagged.symbols[i] == "_" and tagged.items[i].words not in _PEOPLE
        for i in before
    )


def _match(compiled: CompiledRule, found: re.Match[str], tagged: Tagged) -> Match:
    groups = {name: found.span(number) for name, number in found.re.groupindex.items() if found[number]}
    target = groups.get("O")
    if target is not None:
        told = groups.get("T", target)
        first = list_begin(tagged, target[0], told[1] if told[0] <= target[0] else 0)
        target = first, list_end(tagged, target[1] - 1)
    trigger = groups.get("T") or target or found.span()
    end = max(found.end(), target[1] if target else 0)
    return Match(compiled.rule, found.start(), end, trigger, target, groups.get("S"))


def list_begin(tagged: Tagged, first: int, floor: int) -> int:
    """The first item of the list that ``first`` is in, of nutrients or of the body, none before ``floor``: "*vitamins*,
    protein", "the *heart* and blood vessels"."""
    at, family = first, FAMILIES[1] if tagged.is_any(first, FAMILIES[1]) else FAMILIES[0]
    while tagged.is_any(at, family):
        first, at = at, at - 1
        if at > floor + 1 and tagged.items[at].words in _ONE and tagged.symbols[at - 1] == ",":
            at -= 1  # "*choline*, a nutrient found in eggs"
        while at > floor and first - at <= 3 and (tagged.symbols[at] == "," or tagged.items[at].words in _AND):
            at -= 1
        if at < floor or at == first - 1:
            break
    return first


def list_end(tagged: Tagged, last: int) -> int:
    """One past the last item of the list that begins at ``last``: "calcium, iron and zinc"."""
    family = next((f for f in FAMILIES if tagged.is_any(last, f)), None)
    if family is None:
        return last + 1
    at, gap, of = last + 1, 0, "effect" in family  # "the development *of* bones and teeth"
    end = at
    while at < len(tagged.items) and gap <= 3:
        if tagged.is_any(at, family):
            if any(tagged.items[at].words == tagged.items[known].words for known in range(last, end)):
                break  # "gives you calcium, *and calcium* builds bones"
            end, gap = at + 1, 0
        elif tagged.symbols[at] in ",()" or tagged.items[at].words in _JOIN or (of and tagged.items[at].words == "of"):
            gap += 0 if tagged.symbols[at] == "," else 1
        elif (of and gap and tagged.is_any(at, _GOOD_STATE)) or (
            tagged.items[at].term is None and tagged.symbols[at] == "_" and gap < 2 and _joined(tagged, at)
        ):
            gap += 1
        else:
            break
        at += 1
    return end


def _joined(tagged: Tagged, at: int) -> bool:
    """Whether the item before ``at`` is a comma or joining word ("symptoms of" too)."""
    before = tagged.items[at - 1].words
    return tagged.symbols[at - 1] in ",(" or before in _JOIN or before.endswith(" of")
