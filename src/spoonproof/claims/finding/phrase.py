"""Noun phrases of a tagged sentence: a noun with its words before it, and the list it stands in."""

from __future__ import annotations

from spoonproof.claims.finding.near import acts_alone, said_at
from spoonproof.claims.scan import Tagged
from spoonproof.model.record import dataclass

FOOD = frozenset({"food", "dish"})
NUTRIENT = frozenset({"nutrient", "ambiguous-nutrient", "contaminant", "additive"})
NAMED = FOOD | NUTRIENT
NO_FOOD = frozenset({"nonfood", "effect", "hygiene", "bottle"})
HELD = NUTRIENT | {"nutrient-weak"}
EATEN = FOOD | {"ambiguous-nutrient", "hazard-food", "hazard-food-weak", "solids"}
GENERIC = frozenset({"generic-food"})
NOUNS = NAMED | GENERIC
_IN_NAME = frozenset({"underdone", "process", "process-weak", "adjectival", "food"})  # "sprouted *wheat flour*"
_OURS = frozenset({"this", "these", "my", "our", "that", "those"})
_JOIN = frozenset(
    {"and", "or", "nor", "&", "plus", "well", "along", "with", "including", "like", "such", "in", "into", "to"}
)
_THAN = frozenset({"than"})
_ILLS = frozenset({"disease", "disease-weak"})
_LOW = frozenset({"prefix-low"})
_HAD = (" level", " levels", " status", " stores")
_LACKING = (" deficiency", " deficient", " deficiencies")
_HOW_MUCH = frozenset({"intake", "intakes", "consumption"})
_OTHER = frozenset({"other", "similar", "another"})
_MEASURING = frozenset({"household", "number", "unit", "amount"})  # "ghee and *a few cloves* of garlic"
_NO_ADJECTIVE = frozenset(
    "because that if when since so but while then than who which where on at up out i we you he she they it my there "
    "before after until though although also just even only too very not".split()
)
_ONE_DOES = frozenset("is has 's isn't hasn't contains helps gives".split())
_DOES = frozenset({"copula", "contain", "have", "benefit", "benefit-weak", "harm", "keep", "make"})
_ACTS = frozenset({"contain", "benefit", "harm", "through-it", "introduce", "avoid"})
_VESSELS = frozenset("bowl bowls plate plates dish pot pots tray jar mug".split())
_SOMEBODY = frozenset("i we you he she they it there which who".split())
ARTICLES = frozenset({"a", "an", "the", "some", "your", "other", "even", "any", "such", "as"})


@dataclass(frozen=True, slots=True)
class Subject:
    """``range`` of items, their texts, the foods' ids, and how it was settled in words. ``pronoun``: it is what was
    named before; ``said``: by which word."""

    range: tuple[int, int] | None
    texts: tuple[str, ...]
    foods: tuple[str, ...]
    of_dish: bool
    pronoun: bool
    why: str
    said: str = ""


def named(tagged: Tagged, at: int, taken: range, *, mixed_from: int | None = None) -> Subject:
    """The noun phrase around a named item, with its list on both sides. ``mixed_from``: foods and what they hold
    stand in one list ("cola or any kind of additive is harmful"), which begins at that item at the earliest."""
    if tagged.items[at].words in _HOW_MUCH and tagged.is_any(at - 1, NAMED):
        at -= 1  # "too much *salt* intake"
    at = _served(tagged, at)
    kinds = next((k for k in (EATEN, NUTRIENT, GENERIC) if tagged.is_any(at, k)), NAMED)
    if mixed_from is not None and kinds is not GENERIC:
        kinds = EATEN | NAMED
    if kinds is GENERIC and at > 0 and tagged.items[at - 1].words in _OTHER:
        kinds = GENERIC | EATEN  # "nuts, grapes and *other* foods": the list says which
    first = last = at
    while (left := previous(tagged, first, kinds)) is not None and left not in taken and left >= (mixed_from or 0):
        first = left
    while (right := _next(tagged, last, kinds)) is not None and right not in taken:
        last = right
    begin = widen(tagged, first)
    texts: list[str] = []
    foods: list[str] = []
    for index in tagged.find(kinds, first, last + 1):
        texts.append(noun(tagged, index, kinds))
        term = tagged.items[index].term
        if term is not None and "food" in term.senses:
            foods.append(term.senses["food"].id)
    distinct = tuple(dict.fromkeys(texts))
    before = tagged.items[begin - 1].words if begin > 0 else ""
    dishlike = not tagged.is_any(first, NUTRIENT)
    of_dish = before in _OURS and dishlike and (before in ("this", "my", "our") or not tagged.has(first, "food"))
    why = "“" + "”, “".join(distinct) + "”" + (", the dish itself" if of_dish else "")
    return Subject((begin, last + 1), distinct, tuple(dict.fromkeys(foods)), of_dish, False, why)


def _served(tagged: Tagged, at: int) -> int:
    """What is in a vessel: "a bowl of *porridge*"."""
    if tagged.items[at].words not in _VESSELS or at + 1 >= len(tagged.items) or tagged.items[at + 1].words != "of":
        return at
    return next(iter(tagged.find(FOOD, at + 2, at + 5)), at)


def noun(tagged: Tagged, at: int, kinds: frozenset[str]) -> str:
    """The words of a noun phrase, its noun as the lexicon writes it: "sprouted broken wheat", "egg"."""
    term = tagged.items[at].term
    base = next((s.base for c, s in term.senses.items() if c in kinds and s.base), "") if term is not None else ""
    begin = widen(tagged, at)
    said = tagged.words(begin, at + 1).lower()
    before = tagged.words(begin, at).lower()
    # Another spelling stays as it is said ("yoghurt" and "yogurt" each find their own).
    last = said.removeprefix(before).strip()
    return said if not base or not last.startswith(base[: max(2, len(base) - 2)]) else f"{before} {base}".strip()


def lack(tagged: Tagged, end: int) -> int | None:
    """A lack named before the item ``end``: "*iron deficiency* can lead to tiredness"."""
    for index in tagged.find(_ILLS, 0, end):
        said = tagged.items[index].words
        if " " in said and (said.endswith(_LACKING) or said.startswith("low ")):
            return index
    low = tagged.find(_LOW, 0, end)
    return next((index for index in low if said_at(tagged, index + 1).endswith(_HAD)), None)


def both(holder: Subject, held: Subject) -> Subject:
    """A food and what it holds or is called: both are what the claim is about."""
    texts = tuple(dict.fromkeys((*holder.texts, *held.texts)))
    foods = tuple(dict.fromkeys((*holder.foods, *held.foods)))
    return Subject(holder.range, texts, foods, holder.of_dish, False, "“" + "”, “".join(texts) + "”")


def _named_anew(tagged: Tagged, mark: int, at: int) -> bool:
    """Whether the noun before a comma is the one after it once more: "toast with butter, *unsalted butter* has"; in
    one list they *have*."""
    if mark < 1 or tagged.symbols[mark] != "," or said_at(tagged, at + 1) not in _ONE_DOES:
        return False
    return tagged.items[mark - 1].words.rpartition(" ")[2] == tagged.items[at].words.rpartition(" ")[2]


def _gives_a_reason(tagged: Tagged, joint: int, at: int) -> bool:
    """Whether a clause of its own follows the comma: "no chilli, *as* hing *reduces* wind"."""
    reason = tagged.items[joint].words == "as" and tagged.symbols[joint - 1] == ","
    return reason and tagged.is_any(at + 1, _DOES) and not tagged.is_any(at + 1, NAMED)


def is_plural(tagged: Tagged, at: int) -> bool:
    """Whether "they" may stand for the noun at ``at``: "ground almonds", the last of "rice and peas"."""
    last = tagged.items[at].words.rpartition(" ")[2]
    listed = said_at(tagged, widen(tagged, at) - 1) in ("and", "&") and previous(tagged, at, FOOD) is not None
    return listed or last == "feet" or (last.endswith("s") and not last.endswith(("ss", "us", "is")))


def widen(tagged: Tagged, at: int) -> int:
    """The start of the noun phrase that ends at ``at``: kitchen words and foods before it."""
    begin, symbols, wanted = at, tagged.symbols, tagged.lexicon.sets[_IN_NAME]
    while begin > 0 and at - begin < 4 and symbols[begin - 1] in wanted:
        begin -= 1
    return begin


def previous(tagged: Tagged, at: int, kinds: frozenset[str]) -> int | None:
    """The item of ``kinds`` before the one at ``at`` in its list; None where it is the first."""
    if acts_alone(tagged, at):
        return None
    index = widen(tagged, at) - 1
    if index > 0 and _gives_a_reason(tagged, index, at):
        return None
    if index >= 0 and _named_anew(tagged, index, at):
        return None
    joined, described, after = False, 0, 0
    items, symbols, sets = tagged.items, tagged.symbols, tagged.lexicon.sets
    wanted, generic, measuring = sets[kinds], sets[GENERIC], sets[_MEASURING]
    while index >= 0 and at - index <= 7:
        words, symbol = items[index].words, symbols[index]
        if words in _JOIN or symbol == ",":
            joined = True
        elif symbol in wanted:
            return index if joined and not _set_against(tagged, index, at) else None
        elif symbol in measuring or (joined and symbol in generic):
            pass  # "a cup of", "beans and *other foods* like lentils"
        elif words not in ARTICLES and words != "of":
            described += 1  # "*tough* meats", "*hard* candies"
            plain = items[index].term is None and words not in _NO_ADJECTIVE and described == 1
            after += joined  # "yoghurt *stirred through* and lentils": no list
            if symbol != "_" or not (joined or plain) or after > 1:
                return None
        index -= 1
    return None


def _set_against(tagged: Tagged, at: int, subject: int) -> bool:
    """Whether the foods that end at ``at`` are only what the next is set against: "unlike *milk and cheese*, kale"."""
    if not tagged.find(_THAN, 0, at) or "," not in tagged.symbols[at:subject]:
        return False
    first = at
    while (left := previous(tagged, first, NAMED)) is not None:
        first = left
    before = widen(tagged, first) - 1
    return tagged.is_any(before - (said_at(tagged, before) in ARTICLES), _THAN)


def _next(tagged: Tagged, at: int, kinds: frozenset[str]) -> int | None:
    index, joined = at + 1, False
    while index < len(tagged.items) and index - at <= 5:
        words = tagged.items[index].words
        if words in _SOMEBODY or tagged.is_any(index, _ACTS):
            return None  # "whole milk and *I stir in* ground almonds"
        if words in _JOIN or tagged.symbols[index] in ",()":
            joined = True
        elif tagged.is_any(index, kinds):
            return index if joined or (index == at + 1 and tagged.has(index, "food")) else None  # "pepper *soup*"
        elif not joined:
            return None
        index += 1
    return None
