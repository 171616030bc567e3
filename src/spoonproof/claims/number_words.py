"""The values of numbers written in words or digits."""

from __future__ import annotations

_WORDS = {
    "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0, "seven": 7.0, "eight": 8.0,
    "nine": 9.0, "ten": 10.0, "eleven": 11.0, "twelve": 12.0, "thirteen": 13.0, "fourteen": 14.0, "fifteen": 15.0,
    "sixteen": 16.0, "seventeen": 17.0, "eighteen": 18.0, "nineteen": 19.0, "twenty": 20.0, "sixty": 60.0,
    "seventy": 70.0, "eighty": 80.0, "ninety": 90.0,
    "thirty": 30.0, "forty": 40.0, "fifty": 50.0, "a hundred": 100.0, "hundred": 100.0, "half": 0.5, "third": 1 / 3,
    "a third": 1 / 3, "quarter": 0.25, "a quarter": 0.25, "thousand": 1000.0, "twice": 2.0, "a dozen": 12.0,
    "½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125,
}  # fmt: skip


def number_of(words: str) -> float | None:
    """The value of a number token or number word; a comma before three digits groups thousands."""
    if words in _WORDS:
        return _WORDS[words]
    plain = words.replace(",", "") if _grouped(words) else words.replace(",", ".")
    try:
        return float(plain)
    except ValueError:
        return None


def _grouped(words: str) -> bool:
    head, _, tail = words.rpartition(",")
    return bool(head.strip("0")) and len(tail.split(".")[0]) == 3
