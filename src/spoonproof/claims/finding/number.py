"""Numbers in claims: value, unit and basis; ages in months."""

from __future__ import annotations

from itertools import pairwise

from spoonproof.claims.finding.draft import Match
from spoonproof.claims.number_words import number_of
from spoonproof.claims.scan import Tagged
from spoonproof.model.claim import Quantity

_UNITS = {
    "g": "g", "gram": "g", "grams": "g", "gm": "g", "gms": "g", "mg": "mg", "milligram": "mg", "milligrams": "mg",
    "mcg": "ug", "µg": "ug", "ug": "ug", "microgram": "ug", "micrograms": "ug", "iu": "IU", "kg": "kg", "%": "%",
    "percent": "%", "per cent": "%", "ounce": "oz", "ounces": "oz", "calorie": "kcal", "calories": "kcal",
    "kcal": "kcal", "kj": "kJ", "kilojoules": "kJ", "cal": "kcal", "cals": "kcal",
}  # fmt: skip
_FRACTIONS = frozenset({"half", "third", "a third", "quarter", "a quarter", "½", "¼", "¾", "⅓", "⅔"})


def numbers_in(tagged: Tagged, start: int, end: int) -> list[tuple[int, float]]:
    """(index, value) of the numbers among items [start, end)."""
    found: list[tuple[int, float]] = []
    for index in range(max(0, start), min(end, len(tagged.items))):
        value = number_of(tagged.items[index].words)
        if value is not None:
            found.append((index, value))
    return found


def quantity(tagged: Tagged, match: Match) -> Quantity | None:
    """The number a claim states, None where it states none."""
    if match.rule.kind == "safety-age":
        age = age_months(tagged, match)
        return None if age is None else Quantity(age[0], age[1], "months", "age")
    if match.rule.kind not in ("quantity", "comparative"):
        return None
    found = numbers_in(tagged, match.start, match.end)
    if not found:
        return None
    at, value = found[0]
    high = value
    if len(found) > 1 and _whole_before(tagged, found[1][0]):
        at, value = found[1]
        high = value
    elif len(found) > 1 and found[1][0] - at <= 2 and tagged.words(at + 1, found[1][0]).strip() in ("", "to", "-", "–"):
        at, high = found[1]
    whole = _whole_before(tagged, at)
    value, high = value + whole, high + whole
    unit = _unit(tagged, at, match.end)
    if tagged.items[at].words in _FRACTIONS and not unit and not whole:
        value, high, unit = value * 100, high * 100, "%"
    return Quantity(value, high, unit or ("x" if match.rule.kind == "comparative" else ""), _basis(tagged))


def _whole_before(tagged: Tagged, at: int) -> float:
    """The whole number that a fraction goes with, 0 where it stands alone: "two and a half grams"."""
    if tagged.items[at].words not in _FRACTIONS:
        return 0.0
    before = at - 1
    while before >= 0 and before > at - 3 and tagged.items[before].words in ("and", "a"):
        before -= 1
    value = number_of(tagged.items[before].words) if before >= 0 else None
    return value if value is not None and value >= 1 and value == int(value) else 0.0


def _unit(tagged: Tagged, at: int, end: int) -> str:
    for index in range(at + 1, min(at + 3, len(tagged.items), end + 1)):
        unit = _UNITS.get(tagged.items[index].words)
        if unit:
            return unit
        if tagged.has(index, "household"):
            return tagged.items[index].words
        if tagged.has(index, "time-unit"):
            return "hours" if tagged.items[index].words.startswith("h") else "minutes"
    return ""


def _basis(tagged: Tagged) -> str:
    for index in range(len(tagged.items)):
        words = tagged.items[index].words
        if tagged.has(index, "per-day"):
            return "day" if words in ("per day", "a day", "each day", "every day", "daily", "in a day") else "reference"
        if tagged.has(index, "per-portion"):
            if "100" in words:
                return "100 ml" if "ml" in words else "100 g"
            for word in ("spoonful", "tablespoon", "cup", "slice", "piece", "egg", "banana", "bowl", "ounce", "glass"):
                if word in words:
                    return {"egg": "piece", "banana": "piece", "tablespoon": "tbsp"}.get(word, word)
            return "portion"
    return _household_basis(tagged)


_MEASURES = {"tablespoon": "tbsp", "tbsp": "tbsp", "teaspoon": "tsp", "tsp": "tsp", "teaspoonful": "tsp"}
_MEASURED = frozenset({"contain", "have", "copula"})


def _household_basis(tagged: Tagged) -> str:
    """ "One spoonful of this gives ...", "two tablespoons have ...": the measure that comes before the verb."""
    for index in tagged.find(frozenset({"household"})):
        verbs = tagged.find(_MEASURED, index + 1, index + 6)
        if verbs and numbers_in(tagged, verbs[0] + 1, len(tagged.items)):
            word = tagged.items[index].words.rstrip("s")
            return _MEASURES.get(word, word)
    return ""


_YEARS = (1, 2, 3, 4, 5)  # ages that are said without their unit: "not before one"
_AGE_WORDS = {
    "first birthday": 12.0, "first year": 12.0, "first year of life": 12.0, "second birthday": 24.0,
    "first six months": 6.0, "six month old": 6.0, "a year old": 12.0, "one year old": 12.0, "from birth": 0.0,
    "newborns": 0.0, "first few months": 6.0,
}  # fmt: skip


_MONTHS = {"y": 12.0, "m": 1.0, "w": 0.25}  # by the first letter of a unit


def age_months(tagged: Tagged, match: Match) -> tuple[float, float] | None:
    """The age a safety statement names, in months, low and high; None where it names none."""
    begin, end = (match.object or match.trigger)[0], match.end
    for index in range(begin, min(end + 3, len(tagged.items))):
        words = tagged.items[index].words
        if tagged.has(index, "age"):
            known = _AGE_WORDS.get(words)
            if known is None:
                last = words.rstrip("s").split()[-1] if words.split() else ""
                value = number_of({"fives": "five", "twos": "two", "ones": "one"}.get(words.split()[-1], last))
                known = None if value is None else value * 12
            known = known if known is not None else _months_said(words)
            if known is not None:
                return known, known
        if tagged.has(index, "age-unit"):
            found = numbers_in(tagged, index - 4, index)
            between = range(found[0][0] + 1, found[-1][0]) if found else ()
            if any(tagged.has(at, "bound") or tagged.items[at].words not in _RANGE for at in between):
                found = found[-1:]  # "over 25 degrees a two month old"
            if found:
                factor = _MONTHS.get(words[0], 1.0)
                return found[0][1] * factor, found[-1][1] * factor
    if match.object is not None:
        years = [value for _, value in numbers_in(tagged, *match.object) if value in _YEARS]
        return (years[0] * 12, years[0] * 12) if years else None
    return None


_RANGE = frozenset({"to", "-", "–", "or", "and", "until", "till", "through"})
"""Words between the two numbers of a range of ages."""


def _months_said(words: str) -> float | None:
    """The months of an age that is one phrase: "six months", "first 12 months", "two years"."""
    found = [(number_of(word), unit) for word, unit in pairwise(words.split())]
    said = [value * _MONTHS[unit[0]] for value, unit in found if value is not None and unit[0] in _MONTHS]
    return said[0] if said else None


def age_text(tagged: Tagged, match: Match) -> str | None:
    """The age in months, with the words that said it: "12 months (before the age of one)"."""
    age = age_months(tagged, match)
    if age is None:
        return None
    low, high = (f"{value:g}" for value in age)
    months = f"{low} months" if low == high else f"{low}-{high} months"
    years = f", {age[1] / 12:g} year{'s' * (age[1] > 12)}" if age[1] and age[1] % 12 == 0 else ""
    said = _age_words(tagged, match)
    return f"{months}{years} ({said})" if said not in ("", months) else months + years


def _age_words(tagged: Tagged, match: Match) -> str:
    found = tagged.find(frozenset({"age", "age-unit"}), match.start, match.end + 3)
    if match.object is not None and (match.rule.name == "before-one" or not found):
        return tagged.words(*match.object)
    if not found:
        return ""
    first = found[0]
    while first > 0 and number_of(tagged.items[first - 1].words) is not None:
        first -= 1
    return tagged.words(first, found[0] + 1)
