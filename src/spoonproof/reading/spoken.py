"""Words as they are spoken: "350 °F" is five words, "1½" three; and the seconds they take."""

from __future__ import annotations

import re
from functools import lru_cache

from spoonproof.model.record import NamedTuple

_ONES = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
    "sixteen seventeen eighteen nineteen"
).split()
_TENS = "zero ten twenty thirty forty fifty sixty seventy eighty ninety".split()
_FRACTIONS = {
    "½": "a half", "¼": "a quarter", "¾": "three quarters", "⅓": "a third", "⅔": "two thirds",
    "⅕": "a fifth", "⅖": "two fifths",
    "⅛": "an eighth", "⅜": "three eighths", "⅝": "five eighths", "⅞": "seven eighths",
}  # fmt: skip
_UNITS = {
    "°c": "degrees Celsius", "°f": "degrees Fahrenheit", "g": "grams", "kg": "kilograms", "mg": "milligrams",
    "µg": "micrograms", "ml": "millilitres", "l": "litres", "cm": "centimetres", "mm": "millimetres",
    "tsp": "teaspoons", "tbsp": "tablespoons", "min": "minutes", "h": "hours", "s": "seconds", "%": "per cent",
    "oz": "ounces", "lb": "pounds", "kcal": "kilocalories", "in": "inches",
}  # fmt: skip
_SINGULAR = {"feet": "foot", "inches": "inch"}
_NUMBER = re.compile(
    r"(?P<number>\d+(?:\.\d+)?)?\s?(?P<fraction>[½¼¾⅓⅔⅕⅖⅛⅜⅝⅞])?"
    r"(?:\s?(?P<unit>°\s?[CcFf]|kcal|kg|mg|µg|ml|cm|mm|tsp|tbsp|min|oz|lb|in|[glhs%])(?![\w°]))?"
)
_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
_TOKEN = re.compile(rf"(?=[\d½¼¾⅓⅔⅕⅖⅛⅜⅝⅞]){_NUMBER.pattern}(?<!\s)\S*|\S+")
_SENTENCE_END = re.compile(r"[.!?…](?=\s|$)|[:;—](?=\s)")

PAUSE_SECONDS = 0.35  # between sentences; common practice, no source
BREATH_SECONDS = 0.15  # before a line is begun; common practice, no source


def number_words(value: int) -> str:
    """A whole number from 0 to 999 999 in words: 350 is "three hundred fifty"."""
    if value < 20:
        return _ONES[value]
    if value < 100:
        tens, ones = divmod(value, 10)
        return _TENS[tens] + (f" {_ONES[ones]}" if ones else "")
    if value < 1000:
        hundreds, rest = divmod(value, 100)
        return f"{_ONES[hundreds]} hundred" + (f" {number_words(rest)}" if rest else "")
    if value < 1_000_000:
        thousands, rest = divmod(value, 1000)
        return f"{number_words(thousands)} thousand" + (f" {number_words(rest)}" if rest else "")
    return " ".join(_ONES[int(digit)] for digit in str(value))


@lru_cache(maxsize=4096)
def as_spoken(text: str) -> str:
    """``text`` with figures, fractions and units written out as a presenter says them."""
    text = re.sub(r"(?<=[\d½¼¾])\s?[–-]\s?(?=\d)", " to ", text)
    text = text.replace("&", " and ").replace(" × ", " times ").replace(" x ", " times ")
    return re.sub(r"[ \t]{2,}", " ", _NUMBER.sub(_say, text)).strip()


def _say(match: re.Match[str]) -> str:
    number, fraction, unit = match["number"], match["fraction"], match["unit"]
    if number is None and fraction is None:
        return match[0]
    words = []
    if number is not None:
        whole, _, decimals = number.partition(".")
        words.append(number_words(int(whole)))
        if decimals:
            words.append("point " + " ".join(_ONES[int(digit)] for digit in decimals))
    if fraction is not None:
        words.append(("and " if number is not None else "") + _FRACTIONS[fraction])
    if unit:
        words.append(_unit_words(unit, number, fraction))
    lead = " " if match[0][:1].isspace() else ""
    return lead + " ".join(words) + " "


def _unit_words(unit: str, number: str | None, fraction: str | None) -> str:
    words = _UNITS[unit.lower().replace(" ", "")]
    if number in (None, "1") and (fraction is None) == (number is not None):
        first, _, rest = words.partition(" ")
        single = _SINGULAR.get(first, first.removesuffix("s"))
        single = f"of a {single}" if fraction else single
        return f"{single} {rest}".strip()
    return words


@lru_cache(maxsize=4096)
def word_count(text: str) -> int:
    """How many words a presenter says."""
    return len(_WORD.findall(as_spoken(text)))


class Token(NamedTuple):
    """A piece of text as it stands ("16-20", "350 °F", "mash,") from ``start`` to ``end``, and the words it is said in,
    in small letters and without marks; none for a dash that stands alone."""

    text: str
    start: int
    end: int
    words: tuple[str, ...]


def tokens(text: str) -> list[Token]:
    """The pieces of a text in order; a figure and its unit are one."""
    found = []
    for match in _TOKEN.finditer(text):
        said = as_spoken(match[0]).lower().replace("’", "'")
        found.append(Token(match[0], match.start(), match.end(), tuple(_WORD.findall(said))))
    return found


def seconds(text: str, words_a_minute: float) -> float:
    """Seconds to say ``text`` at a rate, with a short pause at every sentence end but the last."""
    words = word_count(text)
    if not words:
        return 0.0
    return words * 60.0 / words_a_minute + pauses(text) * PAUSE_SECONDS + BREATH_SECONDS


def pauses(text: str) -> int:
    """How often a speaker pauses inside ``text``: at every sentence end but the last."""
    return max(0, len(_SENTENCE_END.findall(text)) - 1)
