"""Words as they are set on a page: curled quotation marks, and numbers that stay with their unit.

People write straight marks; a page sets them as a printer would. Only marks and spaces change, never a word.
"""

from __future__ import annotations

import re

from spoonproof.model import durations

NO_BREAK = "\u00a0"
_JOINED = "\u2060"
_UNITS = "g|kg|mg|µg|ml|l|cm|mm|kcal|kJ|h|min|minutes?|hours?|months?|days?|weeks?|tsp|tbsp|cups?|oz|lb|°C|%"
_MEASURE = re.compile(rf"(?<=[0-9½⅓⅔¼¾⅛]) (?=(?:{_UNITS})(?![\w]))")
_SPAN = re.compile(r"(?<![\w.-])(\d{1,3}(?:\.\d{1,2})?)[-–](?=\d{1,3}(?:\.\d{1,2})?(?![\d-]))")
_OPENS = re.compile(r"(?:(?<=[\s(\[–—/])|^)([\"'])(?=\w)")
_CURLED = {'"': ("“", "”"), "'": ("‘", "’")}


def typeset(text: str) -> str:
    """English text with curled marks, a dash in "25-30" that ends no line, and no break between number and unit."""
    text = _MEASURE.sub(NO_BREAK, _SPAN.sub(rf"\1–{_JOINED}", text))
    if '"' not in text and "'" not in text:
        return text
    text = _OPENS.sub(lambda found: _CURLED[found[1]][0], text)
    return text.replace('"', "”").replace("'", "’")


def lasting(minutes: int) -> str:
    """Minutes as people say them, each number with its unit."""
    return typeset(durations.lasting(minutes))
