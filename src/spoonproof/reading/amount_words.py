"""The words of an amount: numbers in words, sizes, hedges and units, each read at one place of a text."""

from __future__ import annotations

import re
from fractions import Fraction

from spoonproof.model.recipe import Amount
from spoonproof.reading.measures import Measures
from spoonproof.reading.numbers import Number, number_at, range_sign, show

_SPACE = re.compile(r"[ \t\u00a0\u2009\u202f\r\n]{0,9}")
HEDGE = re.compile(
    r"(?i)"
    r"(?:[~≈]|(?:about|approximately|approx\.?|roughly|around|circa|ca?\.|nearly|almost|just over|just under|a generous"
    r"|a scant|generous|scant|up to|at least|a good|a heaped|heaped|heaping|a rounded|rounded|a level|level"
    r")(?![\w]))[ \t]{0,9}"
)
_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "fifteen": 15, "twenty": 20, "dozen": 12,
}  # fmt: skip
_PHRASE = re.compile(
    r"(?i)(?P<threequarter>three[- ]quarters?(?: of)?(?: an?)?|¾ of an?)|(?P<halfdozen>half a dozen)"
    r"|(?P<half>(?:a )?half(?: of)?(?: an?| the)?)|(?P<third>a third(?: of)?(?: an?)?)"
    r"|(?P<quarter>(?:a )?quarter(?: of)?(?: an?)?)|(?P<couple>a couple(?: of)?)|(?P<few>(?:a )?few)"
    r"|(?P<several>several)|(?P<adozen>a dozen)|(?P<a>an?|another)"
)
_PHRASES = {
    "threequarter": Fraction(3, 4), "halfdozen": Fraction(6), "half": Fraction(1, 2), "third": Fraction(1, 3),
    "quarter": Fraction(1, 4), "couple": Fraction(2), "adozen": Fraction(12),
}  # fmt: skip
_NUMBER_WORD = re.compile(r"(?P<word>" + "|".join(_WORDS) + r")(?P<half> and a half)?(?![\w-])", re.I)
_OF_A = re.compile(r"(?i)[ \t]{1,9}(?:of )?an?(?![\w-])")
_SHARE = re.compile(r"(?i)(?:half|quarter|third)(?![\w-])")
_AND_A_HALF = re.compile(r"(?i)[ \t]{1,9}and a half(?![\w-])")
_SIZE = re.compile(
    r"(?i)(?:(?P<l>extra[- ]large|largish|large|big|fat|jumbo|generous|heaped|good)|(?P<m>medium(?:[- ]sized?)?"
    r"|average(?:-sized)?)|(?P<s>smallish|small|little|tiny|wee|mini|scant))(?:[- ]sized)?(?![\w-])"
)
FILLER = re.compile(
    r"(?i)"
    r"(?:x|×|heaped|heaping|rounded|level|scant|generous|flat|packed|loosely packed|firmly packed|thin|thick|fat|ripe"
    r"|whole)[ \t]{1,9}"
)
_LETTERS = r"[^\W\d_]{1,40}(?![^\W\d_])"  # a whole word; no unit is longer
_WORD = re.compile(rf"{_LETTERS}\.?(?:[-‑]{_LETTERS}){{0,4}}")
_TWO_WORDS = re.compile(rf"{_LETTERS}(?:\.?[ \t]|\.){_LETTERS}\.?")
_THREE_WORDS = re.compile(rf"{_LETTERS}(?:\.?[- ]{_LETTERS}){{2}}\.?")
UNIT_HYPHEN = re.compile(r"[-‑](?=[^\W\d_])")
AMBIGUOUS = {
    "T": ("tablespoon or, in small letters, teaspoon", "Write tbsp or tsp."),
    "t": ("teaspoon or, as a capital, tablespoon", "Write tsp or tbsp."),
    "Mg": ("milligram or megagram, a tonne", "Write mg."),
    "MG": ("milligram or megagram, a tonne", "Write mg."),
}
MASS_OR_VOLUME = ("mass", "volume")
LOOSE_COUNTS = {"few": (Fraction(2), Fraction(4)), "several": (Fraction(3), Fraction(5))}


def quantity_at(text: str, at: int) -> tuple[Number, bool] | None:
    """A number in digits or words at ``at``, and whether the words hedge."""
    number = number_at(text, at)
    if number is not None:
        if number.value is not None and number.value.denominator == 1 and (half := _AND_A_HALF.match(text, number.end)):
            number = number._replace(value=number.value + Fraction(1, 2), end=half.end())
        elif number.value is not None and number.value < 1:
            of_a = _OF_A.match(text, number.end)
            number = number._replace(end=of_a.end()) if of_a else number
        return number, False
    word = _NUMBER_WORD.match(text, at)
    if word is not None and not _PHRASE.match(text, at):
        value = Fraction(_WORDS[word["word"].lower()]) + (Fraction(1, 2) if word["half"] else 0)
        return Number(value, at, word.end()), False
    phrase = _PHRASE.match(text, at)
    if phrase is None or text[phrase.end() : phrase.end() + 1].isalnum() or text.startswith("-", phrase.end()):
        return None
    kind = phrase.lastgroup or ""
    if kind == "a":
        after = skip(text, phrase.end())
        inner = number_at(text, after)  # "a 400 g tin"
        if inner is not None and inner.value is not None and _a_unit_follows(text, inner.end):
            return Number(inner.value, at, inner.end), False
        if _SHARE.match(text, after):
            return None
        return Number(Fraction(1), at, phrase.end()), False
    if kind in LOOSE_COUNTS:
        return Number(Fraction(3), at, phrase.end(), "range", kind), True
    return Number(_PHRASES[kind], at, phrase.end()), kind == "couple"


def _a_unit_follows(text: str, at: int) -> bool:
    return _WORD.match(text, skip(text, at)) is not None or UNIT_HYPHEN.match(text, at) is not None


def size_at(text: str, at: int) -> tuple[str, int]:
    """A size word at ``at`` (of two, "medium to large", the first counts) and where the next word starts."""
    found = _SIZE.match(text, at)
    if found is None:
        return "", at
    size = "large" if found["l"] else "medium" if found["m"] else "small"
    return size, skip(text, found.end())


def unit_at(text: str, at: int, measures: Measures) -> tuple[str, int] | None:
    """The unit word at ``at`` (longest first) and its end. Ambiguous ones come back as they were written."""
    for pattern in (_THREE_WORDS, _TWO_WORDS, _WORD):
        found = pattern.match(text, at)
        if found is None:
            continue
        written = found[0]
        plain = written.rstrip(".")
        if plain in AMBIGUOUS:
            return plain, at + len(plain)
        unit = measures.unit(plain) or measures.unit(plain.replace("-", " ")) or measures.unit(plain.replace(".", ""))
        if unit is None and pattern is _WORD and "-" in plain:
            head = plain.split("-")[0]  # "400 g-tin"
            unit = measures.unit(head)
            if unit is not None and measures.kind(unit) in MASS_OR_VOLUME:
                return unit, at + len(head)
            continue
        if unit is not None and not unit.startswith("gas-"):
            if unit == "inch" and plain == "in":
                return None  # "4 in a bag": lengths are the cuts' matter unless spelt out
            if measures.kind(unit):
                return unit, at + len(written if written.endswith(".") else plain)
    return None


def skip(text: str, at: int) -> int:
    found = _SPACE.match(text, at)
    return found.end() if found else at


def past_hyphen(text: str, at: int) -> int:
    """Where the word after a number starts, behind a hyphen ("400-g") or blanks."""
    hyphen = UNIT_HYPHEN.match(text, at)
    return hyphen.end() if hyphen else skip(text, at)


def show_amount(amount: Amount) -> str:
    """An amount in words that read back as the same amount."""
    if amount.to_taste:
        return "to taste"
    number = show(amount.low) if amount.low == amount.high else f"{show(amount.low)}-{show(amount.high)}"
    words = ["about"] * amount.about + [number]
    words += [f"({show_amount(amount.each)})"] if amount.each is not None else []
    words += [amount.size] if amount.size else []
    if amount.unit != "piece" or amount.each is not None:
        words.append(amount.unit.replace("fl-oz", "fl oz").replace("weaning-spoon", "weaning spoon"))
    return " ".join(words)


def container_at(text: str, at: int, measures: Measures) -> tuple[str, int] | None:
    """A unit that is counted (tin, bunch, sheet ...) at ``at``, after its size word."""
    unit = unit_at(text, size_at(text, past_hyphen(text, at))[1], measures)
    return unit if unit is not None and measures.kind(unit[0]) == "count" else None


def unit_then_range(text: str, at: int, measures: Measures) -> tuple[str | None, int]:
    """ "1 tsp to 2 tsp" and "100g-120g": a unit that stands before the range sign is stepped over when the
    same unit comes again after the second number."""
    unit = unit_at(text, skip(text, at), measures)
    if unit is None:
        return None, at
    sign = range_sign(text, unit[1])
    second = number_at(text, sign) if sign is not None else None
    if second is None:
        return None, at
    again = unit_at(text, skip(text, second.end), measures)
    return (unit[0], unit[1]) if again is not None and again[0] == unit[0] else (None, at)
