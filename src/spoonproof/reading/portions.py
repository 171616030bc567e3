"""What a recipe makes, as cooks say it: "9 x 60 g", "serves 4", "3-4 portions", "900 ml", "about 3 cups", "400 g"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.model.recipe import Makes
from spoonproof.model.text import Span
from spoonproof.model.tree import Scalar
from spoonproof.reading.numbers import number_at
from spoonproof.reading.typed import Reader, Sink, scalar, short, shown, wrong

_LEAD = (
    r"(?:(?:it\s{1,4})?(?:makes|serves|feeds|yields?|gives|enough\s{1,4}for|for|about|around|roughly|approx\.?"
    r"|approximately|up\s{1,4}to|at\s{1,4}least)\s{0,2}[:~]?\s{1,4}){0,3}"
)
_UNIT = (
    r"(?:(?:k?g|kilos?|grams?|oz|ounces?|lbs?|pounds?)"
    r"|(?P<volume>ml|millilit(?:re|er)s?|cl|dl|l|lit(?:re|er)s?|cups?|fl\.?[ \t]?oz|fluid[ \t]ounces?))\b"
)
_MEASURED = r"(?:k?g|grams?|kilos?|ml|cl|dl|l|cups?|lit(?:re|er)s?|pints?|oz|ounces?|fl|fluid|lbs?|pounds?)\b"
_PORTIONS = re.compile(
    rf"(?i){_LEAD}(?P<count>[0-9]{{1,4}})(?:\s{{0,4}}(?:-|–|—|to|or)\s{{0,4}}(?P<most>[0-9]{{1,4}}))?"
    rf"(?:(?:(?:\s{{1,4}}|-)(?!(?:of|at|x|each|or|to|and)\b|{_MEASURED})[^\W\d_]{{2,20}}){{1,4}}(?=\W|$))?"
    r"(?:\s{0,4}(?:x|×|\*|\bof|\bat|à|,|\()\s{0,4}(?:about\s{1,4})?"
    rf"(?P<grams>[0-9]{{1,6}}(?:\.[0-9]{{1,3}})?)[\s-]{{0,4}}(?P<unit>{_UNIT}))?(?:\s{{1,4}}each)?\)?"
)
_ALL = re.compile(
    rf"(?i){_LEAD}(?=[0-9½⅓⅔¼¾])(?P<number>[0-9./½⅓⅔¼¾ ]{{1,14}})\s{{0,4}}(?P<unit>{_UNIT})"
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
    return all(_bounds(made))


def _bounds(made: Makes) -> Iterator[bool]:
    yield 0 < made.count <= (made.most or 1000) <= 1000
    yield made.grams is None or 0 < made.grams <= 20_000
    for whole in (made.ml, made.all_grams):
        yield whole is None or 0 < whole <= 100_000
