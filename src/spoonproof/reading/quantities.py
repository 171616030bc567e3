"""Readers of the quantities in a head: whole numbers, grams, times, dates, ages, and what a recipe makes."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable

from spoonproof.model.recipe import Makes
from spoonproof.model.text import Span
from spoonproof.model.tree import Scalar
from spoonproof.reading.numbers import number_at
from spoonproof.reading.typed import Reader, Sink, scalar, short, shown, wrong

_PLAIN = re.compile(r"[+-]?[0-9]{1,18}(\.[0-9]{1,18})?")
_ODD = re.compile(r"\A[+-]?(0[0-9]+|0[oOxXbB][0-9a-fA-F]+|[0-9][0-9_]*_[0-9_]*|[0-9.]*[0-9],[0-9.,]*)")
_DATE = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_CLOCK = re.compile(r"([01]?[0-9]|2[0-4]):([0-5][0-9])")
_DASH = r"\s{0,4}(?:-|–|—|to|until|till)\s{0,4}"
_AGE = re.compile(
    r"(?i)(?:from|ab)?\s{0,4}(?P<low>[0-9]{1,4})\s{0,4}(?P<plus>\+)?\s{0,4}(?P<lunit>months?|mo|m|years?|y)?"
    rf"(?:{_DASH}(?P<high>[0-9]{{1,4}})\s{{0,4}}(?P<hunit>months?|mo|m|years?|y))?"
    r"\s{0,4}(?P<up>\+|and up|and older|onwards?|or older)?"
)
_PART = re.compile(r"([0-9]{1,6}(?:\.[0-9]{1,6})?)\s{0,4}([a-zA-Zµ]{1,12})\.?\s{0,4}")
_SECONDS = {
    **dict.fromkeys(("s", "sec", "secs", "second", "seconds"), 1.0),
    **dict.fromkeys(("m", "min", "mins", "minute", "minutes"), 60.0),
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), 3600.0),
    **dict.fromkeys(("d", "day", "days"), 86_400.0),
    **dict.fromkeys(("week", "weeks"), 7 * 86_400.0),
    **dict.fromkeys(("month", "months"), 30 * 86_400.0),
}
_GRAMS = {"g": 1.0, "gram": 1.0, "grams": 1.0, "kg": 1000.0, "mg": 0.001}
_COLON = re.compile(r"([0-9]{1,3}):([0-5][0-9])(?::([0-5][0-9]))?")
_MOST_MONTHS = 18 * 12


def number_in(node: Scalar, sink: Sink, words: str) -> float | None:
    """The plain number a text is, or a finding that says what else it could be."""
    written = node.value.strip()
    if _ODD.fullmatch(written):
        sink.add("ambiguous-number", short(node.span), f"{shown(node)} {_readings(written)}")
        return None
    if not written.isascii() and any(char.isdigit() for char in written):
        sink.add("ambiguous-number", short(node.span), f"{shown(node)} is not written with the digits 0 to 9.")
        return None
    if not _PLAIN.fullmatch(written):
        wrong(node, sink, words)
        return None
    return float(written)


def _readings(written: str) -> str:
    """Both ways to read an ambiguous number."""
    if "," in written and "." not in written and written.count(",") == 1:
        whole, _, part = written.partition(",")
        if part:
            return f"may mean {whole}.{part} or {whole}{part}. Use a point for decimals and nothing for thousands."
    if "_" in written:
        return f"has an underscore in it; write {written.replace('_', '')}."
    if written.lstrip("+-").isdigit():
        return f"starts with a zero; some programs read that in eights. Write {written.lstrip('+-0') or '0'}."
    return "can be read in more than one way. Use a point for decimals and nothing for thousands."


def whole(low: int, high: int) -> Reader[int]:
    """A whole number between ``low`` and ``high``."""
    words = f"a whole number from {low} to {high}"

    def parse(node: Scalar, sink: Sink) -> int | None:
        value = number_in(node, sink, words)
        if value is None:
            return None
        if value != int(value) or "." in node.value:
            sink.add("wrong-type", short(node.span), f"{shown(node)} should be a whole number: write {round(value)}.")
            return None
        if low <= value <= high:
            return int(value)
        sink.add("number-out-of-range", short(node.span), f"{shown(node)} should be from {low} to {high}.")
        return None

    return scalar(words, {"type": ["integer", "string"], "minimum": low, "maximum": high}, parse)


def with_unit(words: str, units: dict[str, float], least: float, most: float, example: str) -> Reader[float]:
    """An amount like "90 s" or "1 h 30 min", given in the unit whose factor is 1."""

    def parse(node: Scalar, sink: Sink) -> float | None:
        written = node.value.strip()
        total, at = 0.0, 0
        while at < len(written):
            part = _PART.match(written, at)
            factor = units.get(part[2].lower() if part[2] not in units else part[2]) if part is not None else None
            if part is None or factor is None:
                rule, why = "wrong-type", f"can't be read as {words}, like {example}"
                if _PLAIN.fullmatch(written):
                    why = f"has no unit. Write for example {example}"
                elif re.match(r"[0-9]+,[0-9]", written):
                    rule, why = "ambiguous-number", "has a comma: use a point for decimals"
                sink.add(rule, short(node.span), f"{shown(node)} {why}.")
                return None
            total += float(part[1]) * factor
            at = part.end()
        if not written or not least <= total <= most:
            sink.add("number-out-of-range", short(node.span), f"{shown(node)} is too small or too large to be meant.")
            return None
        return total

    return scalar(words, {"type": "string", "examples": [example]}, parse)


def grams(most: float = 100_000.0) -> Reader[float]:
    """A weight in grams: "545 g", "1.2 kg"."""
    return with_unit("a weight", _GRAMS, 0.001, most, "60 g")


def seconds(most: float = 86_400.0) -> Reader[float]:
    """A time in seconds: "90 s", "2 minutes", "1 min 30 s"; also 1:30."""
    reader = with_unit("a time", _SECONDS, 0.1, most, "90 s")

    def parse(node: Scalar, sink: Sink) -> float | None:
        colon = _COLON.fullmatch(node.value.strip())
        if colon is None:
            return reader.read(node, sink)
        first, second, third = int(colon[1]), int(colon[2]), colon[3]
        return float(first * 60 + second) if third is None else float(first * 3600 + second * 60 + int(third))

    return scalar(reader.words, reader.schema, parse)


def words_a_minute() -> Reader[float]:
    """A pace of speech: "145 words a minute"; the number alone does as well."""
    pattern = re.compile(r"(?i)([0-9]{1,4}(?:\.[0-9]{1,3})?)\s{0,4}(?:words?\s{1,4}(?:a|per)\s{1,4}minute|wpm)?")

    def parse(node: Scalar, sink: Sink) -> float | None:
        match = pattern.fullmatch(node.value.strip())
        if match is None:
            wrong(node, sink, "a pace, like 145 words a minute")
            return None
        value = float(match[1])
        if not 40 <= value <= 400:
            message = f"{shown(node)} is no pace anybody speaks at (40 to 400)."
            sink.add("number-out-of-range", short(node.span), message)
            return None
        return value

    return scalar("a pace of speech", {"type": ["string", "number"], "examples": ["145 words a minute"]}, parse)


def date() -> Reader[str]:
    """A day, written year-month-day; given as that text."""

    def parse(node: Scalar, sink: Sink) -> str | None:
        match = _DATE.fullmatch(node.value.strip())
        try:
            if match is not None and 1900 <= int(match[1]) <= 2200:
                return datetime.date(int(match[1]), int(match[2]), int(match[3])).isoformat()
            why = "is not a date from 1900 to 2200 written like 2026-11-02"
        except ValueError:
            why = "is a day that does not exist"
        sink.add("not-a-date", short(node.span), f"{shown(node)} {why}.")
        return None

    return scalar("a date like 2026-11-02", {"type": "string", "format": "date"}, parse)


def clock(node: Scalar, sink: Sink) -> int | None:
    """A time of day in minutes from midnight."""
    match = _CLOCK.fullmatch(node.value.strip())
    minutes = int(match[1]) * 60 + int(match[2]) if match is not None else -1
    if not 0 <= minutes <= 1440:
        wrong(node, sink, "a time of day like 09:30")
        return None
    return minutes


def time_of_day() -> Reader[int]:
    """A time of day like 09:30, in minutes from midnight."""
    return scalar("a time of day", {"type": "string", "examples": ["09:30"]}, clock)


def ages(open_words: bool = True) -> Reader[tuple[int, int | None]]:
    """Months from birth: "7-9 months", "from 7 months", "6 months to 2 years"; one age means from that age on."""
    example = "7-9 months or from 7 months" if open_words else "9 months"

    def parse(node: Scalar, sink: Sink) -> tuple[int, int | None] | None:
        match = _AGE.fullmatch(node.value.strip())
        unit = None if match is None else (match["lunit"] or match["hunit"])
        if match is None or unit is None:
            hint = " Say months or years." if match is not None else ""
            sink.add("wrong-type", short(node.span), f"{shown(node)} can't be read as an age like {example}.{hint}")
            return None
        low = int(match["low"]) * _months(match["lunit"] or match["hunit"])
        high = int(match["high"]) * _months(match["hunit"]) if match["high"] else None
        if max(low, high or 0) > _MOST_MONTHS:
            sink.add("number-out-of-range", short(node.span), f"{shown(node)} is above {_MOST_MONTHS} months.")
            return None
        if high is not None and high < low:
            sink.add("reversed-range", short(node.span), f"{shown(node)} runs backwards. Write the younger age first.")
            return None
        return low, None if match["up"] else high

    return scalar(f"an age, like {example}", {"type": "string", "examples": [example]}, parse)


def month() -> Reader[int]:
    """One age in months: "9 months"."""
    reader = ages(open_words=False)

    def parse(node: Scalar, sink: Sink) -> int | None:
        value = reader.read(node, sink)
        return None if value is None else value[0]

    return scalar(reader.words, reader.schema, parse)


def _months(unit: str) -> int:
    return 12 if unit.lower().startswith("y") else 1


def matched(words: str, pattern: re.Pattern[str], make: Callable[[re.Match[str]], str | None]) -> Reader[str]:
    """A text that ``pattern`` matches as a whole; ``make`` gives the value or None when it is not good after all."""

    def parse(node: Scalar, sink: Sink) -> str | None:
        match = pattern.fullmatch(node.value.strip())
        value = make(match) if match is not None else None
        if value is None:
            wrong(node, sink, words)
        return value

    return scalar(words, {"type": "string"}, parse)


_LEAD = (
    r"(?:(?:it\s{1,4})?(?:makes|serves|feeds|yields?|gives|enough\s{1,4}for|for|about|around|roughly|approx\.?"
    r"|approximately|up\s{1,4}to|at\s{1,4}least)\s{0,2}[:~]?\s{1,4}){0,3}"
)
_MEASURE_WORD = (
    r"(?:(?:k?g|kilos?|grams?|oz|ounces?|lbs?|pounds?)"
    r"|(?P<volume>ml|millilit(?:re|er)s?|cl|dl|l|lit(?:re|er)s?|cups?|fl\.?[ \t]?oz|fluid[ \t]ounces?))\b"
)
_MEASURED = r"(?:k?g|grams?|kilos?|ml|cl|dl|l|cups?|lit(?:re|er)s?|pints?|oz|ounces?|fl|fluid|lbs?|pounds?)\b"
_PORTIONS = re.compile(
    rf"(?i){_LEAD}(?P<count>[0-9]{{1,4}})(?:\s{{0,4}}(?:-|–|—|to|or)\s{{0,4}}(?P<most>[0-9]{{1,4}}))?"
    rf"(?:(?:(?:\s{{1,4}}|-)(?!(?:of|at|x|each|or|to|and)\b|{_MEASURED})[^\W\d_]{{2,20}}){{1,4}}(?=\W|$))?"
    r"(?:\s{0,4}(?:x|×|\*|\bof|\bat|à|,|\()\s{0,4}(?:about\s{1,4})?"
    rf"(?P<grams>[0-9]{{1,6}}(?:\.[0-9]{{1,3}})?)[\s-]{{0,4}}(?P<unit>{_MEASURE_WORD}))?(?:\s{{1,4}}each)?\)?"
)
_ALL = re.compile(
    rf"(?i){_LEAD}(?=[0-9½⅓⅔¼¾])(?P<number>[0-9./½⅓⅔¼¾ ]{{1,14}})\s{{0,4}}(?P<unit>{_MEASURE_WORD})"
    r"(?:\s{1,4}(?:in\s{1,4}all|in\s{1,4}total|altogether|of\s{1,4}[^\W\d_]{2,20}))?"
)
# Grams or millilitres by how a unit begins, a longer beginning first; a cup lies between 237 and 250 ml, a fluid ounce
# between 28.4 and 29.6 (measures.csv).
_WORTH = {
    "cup": 240.0, "fl": 29.0, "lb": 453.59237, "po": 453.59237, "o": 28.349523125, "k": 1000.0, "g": 1.0,
    "m": 1.0, "c": 10.0, "d": 100.0, "l": 1000.0,
}  # fmt: skip
_SPLIT = re.compile(r"(?i)\s{0,4}(?:,|;|\(|\)|=|\bor\b)\s{0,4}")
_LITTLE = re.compile(r"(?i)\b(?:bab(?:y|ies)|little|small|tiny|toddlers?|child(?:ren)?|weaning)\b")
# "1 ice-cube tray", "2 jars": how much goes into one, and how many eat of it, is not said.
_WHOLES = re.compile(r"(?i)\b(?:trays?|jars?|jugs?|tubs?|tins?|loa(?:f|ves)|batch(?:es)?|pans?|pots?|pies?)\b")
_WORDS = "what it makes, like 9 x 60 g, or 900 ml"


def makes() -> Reader[Makes]:
    """What the recipe makes. Said in two ways ("4 adult portions or 8 little ones", "1 litre, 8 x 120 ml"), the
    baby's portions count first, then portions that are weighed."""

    def parse(node: Scalar, sink: Sink) -> Makes | None:
        made = made_of(node.value, node.span)
        if made is None:
            wrong(node, sink, _WORDS)
            return None
        if not _likely(made):
            sink.add("number-out-of-range", short(node.span), f"{shown(node)} is too small or too large to be meant.")
            return None
        return made

    schema = {"type": ["string", "integer"], "examples": ["9 x 60 g", "900 ml"]}
    return scalar("what it makes, like 9 x 60 g", schema, parse)


def made_of(written: str, span: Span) -> Makes | None:
    """What ``written`` says that a recipe makes; None where it can't be read."""
    text = written.strip()[:200]
    whole = _one(text, span)
    if whole is not None:
        return whole
    parts = [(part, made) for part in _SPLIT.split(text) if (made := _one(part.strip(), span)) is not None]
    parts.sort(key=lambda part: (not _LITTLE.search(part[0]), part[1].grams is None))
    return parts[0][1] if parts else None


def _one(text: str, span: Span) -> Makes | None:
    found = _ALL.fullmatch(text)
    if found is not None:
        number = number_at(found["number"], 0)
        if number is None or number.value is None or found["number"][number.end :].strip():
            return None
        amount = float(number.value) * _worth(found["unit"])
        return Makes(1, None, span, ml=amount) if found["volume"] else Makes(1, None, span, all_grams=amount)
    found = _PORTIONS.fullmatch(text)
    if found is None or (found["grams"] is None and _WHOLES.search(text)):
        return None
    each = round(float(found["grams"]) * _worth(found["unit"]), 1) if found["grams"] else None
    return Makes(int(found["count"]), each, span, most=int(found["most"]) if found["most"] else None)


def _worth(unit: str) -> float:
    return next(worth for begins, worth in _WORTH.items() if unit.lower().startswith(begins))


def _likely(made: Makes) -> bool:
    """Whether it is not too little or too much to be meant."""
    each = made.grams is None or 0 < made.grams <= 20_000
    whole = all(amount is None or 0 < amount <= 100_000 for amount in (made.ml, made.all_grams))
    return each and whole and 0 < made.count <= (made.most or 1000) <= 1000
