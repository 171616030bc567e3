"""What a claim is about: the food, nutrient or dish among the words around its trigger."""

from __future__ import annotations

from dataclasses import dataclass

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.scan import Tagged

_FOOD = frozenset({"food", "dish"})
_NAMED = frozenset({"food", "dish", "nutrient", "ambiguous-nutrient"})
_LOOSE = frozenset({"generic-food"})
_PRONOUN = frozenset({"pronoun"})
_OURS = frozenset({"this", "these", "my", "our", "that", "those"})
_JOIN = frozenset({"and", "or", "&", "plus", ","})
_REACH = 16


@dataclass(frozen=True, slots=True)
class Subject:
    """``range`` of items, their texts, the foods' ids, and how it was settled in words."""

    range: tuple[int, int] | None
    texts: tuple[str, ...]
    foods: tuple[str, ...]
    of_dish: bool
    pronoun: bool
    why: str


def subject_of(tagged: Tagged, match: Match) -> Subject:
    """The subject of a match; ``pronoun`` is set where the sentence does not name one."""
    wanted = _FOOD if match.rule.kind in ("nutrient-content", "quantity", "allergen", "safety-age") else _NAMED
    taken = range(*match.object) if match.object else range(0)
    if match.rule.kind in ("allergen", "safety-age", "process") and match.rule.name != "free-from":
        taken = range(0)
    if match.subject is not None and tagged.find(wanted, *match.subject):
        return _named(tagged, match.subject[0], taken)
    at = match.trigger[0] if match.object is None else min(match.trigger[0], match.object[0])
    before = [i for i in tagged.find(wanted, _begin(tagged, at), at) if i not in taken]
    pronoun = _pronoun(tagged, _begin(tagged, at), at)
    if before and (pronoun is None or pronoun < before[-1] or _begin(tagged, at) < before[0]):
        return _named(tagged, before[-1], taken)
    inside = [i for i in tagged.find(wanted, at, match.end) if i not in taken]
    if inside and pronoun is None:
        return _named(tagged, inside[0], taken)
    if pronoun is None:
        after = [i for i in tagged.find(wanted, match.end, match.end + _REACH) if i not in taken]
        if after:
            return _named(tagged, after[0], taken)
    anywhere = [i for i in tagged.find(wanted) if i not in taken and i < at]
    if anywhere:
        return _named(tagged, anywhere[-1], taken)
    loose = [i for i in tagged.find(_LOOSE) if i not in taken]
    if loose:
        return _named(tagged, loose[0], taken)
    if wanted is _FOOD and (other := [i for i in tagged.find(_NAMED, 0, at) if i not in taken]):
        return _named(tagged, other[-1], taken)
    words = tagged.words(pronoun, pronoun + 1) if pronoun is not None else ""
    return Subject(None, (), (), False, True, f"“{words}”, said before" if words else "what was said before")


def _begin(tagged: Tagged, at: int) -> int:
    for index in range(at - 1, max(-1, at - _REACH), -1):
        if tagged.symbols[index] in ".?":
            return index + 1
    return max(0, at - _REACH)


def _pronoun(tagged: Tagged, begin: int, at: int) -> int | None:
    found = [
        i
        for i in tagged.find(_PRONOUN, begin, at)
        if tagged.items[i].words
        in (
            "it",
            "they",
            "them",
            "this",
            "these",
            "both",
            "which",
            "both of them",
            "the two",
            "all of them",
            "its",
            "their",
        )
    ]
    return found[-1] if found else None


def _named(tagged: Tagged, at: int, taken: range) -> Subject:
    """The noun phrase around a named item, with its list to the left and right."""
    first = last = at
    kinds = frozenset(
        {"food", "dish"} if tagged.find(_FOOD, at, at + 1) else {"nutrient", "ambiguous-nutrient", "generic-food"}
    )
    while (left := _previous(tagged, first, kinds)) is not None and left not in taken:
        first = left
    while (right := _next(tagged, last, kinds)) is not None and right not in taken:
        last = right
    texts: list[str] = []
    foods: list[str] = []
    for index in tagged.find(kinds, first, last + 1):
        begin = _widen(tagged, index)
        texts.append(tagged.words(begin, index + 1))
        term = tagged.items[index].term
        if term is not None and "food" in term.senses:
            foods.append(term.senses["food"].id)
    before = tagged.items[_widen(tagged, first) - 1].words if _widen(tagged, first) > 0 else ""
    own = tagged.items[first].term
    dishlike = own is not None and not {"food", "nutrient", "ambiguous-nutrient"} & own.senses.keys()
    of_dish = before in _OURS and (dishlike or before in ("this", "my", "our")) and not tagged.has(first, "nutrient")
    begin = _widen(tagged, first)
    return Subject((begin, last + 1), tuple(dict.fromkeys(texts)), tuple(dict.fromkeys(foods)), of_dish, False,
                   "“" + "”, “".join(dict.fromkeys(texts)) + "”")  # fmt: skip


def _widen(tagged: Tagged, at: int) -> int:
    """The start of the noun phrase that ends at ``at``: process words and one plain adjective before it."""
    begin = at
    while begin > 0 and (
        tagged.has(begin - 1, "process") or tagged.has(begin - 1, "food") or tagged.has(begin - 1, "avoid")
    ):
        begin -= 1
    return begin


def _previous(tagged: Tagged, at: int, kinds: frozenset[str]) -> int | None:
    index = _widen(tagged, at) - 1
    joined = False
    while index >= 0 and at - index <= 5:
        words = tagged.items[index].words
        if words in _JOIN or tagged.symbols[index] == ",":
            joined = True
        elif tagged.find(kinds, index, index + 1):
            return index if joined else None
        elif tagged.symbols[index] != "_" or not joined:
            return None
        index -= 1
    return None


def _next(tagged: Tagged, at: int, kinds: frozenset[str]) -> int | None:
    index, joined = at + 1, False
    while index < len(tagged.items) and index - at <= 4:
        words = tagged.items[index].words
        if words in _JOIN or tagged.symbols[index] == ",":
            joined = True
        elif tagged.find(kinds, index, index + 1):
            return index if joined else None
        elif not joined:
            return None
        index += 1
    return None
