"""A condition of the register in words: what a food must be before a statement holds, and what a statement must say."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.claims.conditions import CLAIMED, Absent, Basis, Condition, Group, Present, ReducedBy, Threshold
from spoonproof.claims.entries import Interval
from spoonproof.claims.wording import nutrient_name

_PER: dict[Basis, str] = {"100g": "in 100 g", "100kcal": "in 100 kcal", "portion": "in a portion"}
_UNITS = {"kcal": "kcal", "mg": "mg", "ug": "µg", "g": "g"}


def in_words(condition: Condition) -> str:
    """ "at least 15 % of the EU NRV of calcium in 100 g"; several parts are joined by "and" or "or"."""
    match condition:
        case Group(op, parts):
            told = [f"({in_words(part)})" if isinstance(part, Group) else in_words(part) for part in parts]
            return (", and " if op == "all" else ", or ").join(told)
        case Absent(what):
            return f"no {' or '.join(what)} in it"
        case Present(what):
            return f"{' or '.join(what)} in it"
        case ReducedBy(nutrient, percent):
            return f"at least {percent:g} % less {_name(nutrient)} than the food it is compared with"
        case Threshold():
            return _threshold(condition)


def _threshold(condition: Threshold) -> str:
    name = _name(condition.nutrient)
    if condition.basis == "energy":
        # The amount is itself a percentage: of the food's energy.
        return f"{condition.op} {condition.amount or 0:g} % of its energy from {name}"
    if condition.share is not None:
        wanted = f"{condition.share:g} % of the {condition.reference} of {name}"
    else:
        unit = _UNITS.get(condition.nutrient.rsplit("_", 1)[-1], "")
        amount = f"{condition.amount or 0:g} {unit}".rstrip()
        wanted = amount if unit == "kcal" else f"{amount} of {name}"
    return f"{condition.op} {wanted} {_PER[condition.basis]}"


def _name(nutrient: str) -> str:
    """The nutrient's name; thresholds for salt are counted in sodium, and say so."""
    if nutrient == CLAIMED:
        return "the nutrient named"
    return "sodium" if nutrient == "sodium_mg" else nutrient_name(nutrient)


def words_in_words(phrases: Sequence[str]) -> str:
    """ "“lumps”, “lump…”": the words that an entry looks for; the dots stand for any ending."""
    return ", ".join(f"“{phrase.replace('*', '…')}”" for phrase in phrases)


def age_in_words(ages: Interval) -> str:
    """ "under 12 months", "6 to 11 months", "from 6 months"; "" for any age."""
    low, high = ages
    if high is None:
        return f"from {low} months" if low else ""
    return f"{low} to {high} months" if low else f"under {high + 1} months"
