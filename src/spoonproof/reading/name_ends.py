"""Where the name of a food may end on its line: at a comma, a bracket, a dash, an amount, a preposition."""

from __future__ import annotations

import re

_BREAK = re.compile(
    r"(?i)[,;()\[\]–—+]|[ \t]-[ \t]|[ \t][x×](?=[ \t]?[0-9½⅓⅔¼¾])"  # "carrots x 2"
    r"|(?<=[^\W\d_])-[ \t]+(?=[0-9½⅓⅔¼¾]|an?[ \t])|\.(?=[ \t]|$)|:(?=[ \t])"
    r"|(?<=[^\W\d_])(?<!\band)[ \t]?/[ \t]?(?=[^\W\d_])"
    r"|(?<=[^\W\d_])(?<!\bor)(?<!\band)(?<!\bplus)(?<!\bwith)(?<!\babout)[ \t]{1,3}"
    r"(?=[0-9½⅓⅔¼¾][0-9/.½⅓⅔¼¾–-]{0,5}[ \t]?"  # "milk 200 ml"
    r"(?:k?g|gms?|grams?|m?l|tsp|tbsp|cups?|(?:tea|table)spoons?|katoris?)\b)"
    r"|(?<=[^\W\d_]{3})[ \t]{1,3}(?=[0-9]{1,2}[ \t]?(?:-|–|to)[ \t]?[0-9]"
    r"|[0-9]{1,2}(?:[ \t](?:pods?|leaf|leaves|cloves?|nos?)\b|[ \t]{0,3}(?:$|[,(]))"
    r"|an? (?:[a-z]{3,8} )?(?:pinch|handful|dash|drop)\b|pinch$)"  # "almonds 10-13", "saffron a pinch"
    r"|(?<=[^\W\d_])-[ \t]+(?=pinch\b)"
    r"|(?<=[a-z])[ \t](?=(?:very )?(?:lightly|gently|finely|thinly|roughly|coarsely|freshly|well|thickly)[ \t]"  # "eggs
    r"(?:[a-z]{3,12}ed|beaten|ground|cut)[ \t]*(?:$|[,;()]|and\b|in\b|into\b|with\b))",  # lightly beaten"
    re.I,
)
PREPOSITION = re.compile(
    r"(?i)"
    r"[ \t](?:"
    r"(?:(?:made[ \t])?(?:in|into|from|with|without)|for|cut|on|plus|to|or|and|about|per|like|such|ideally|preferably)"
    r"(?=[ \t/])"
    r"|e\.?g(?=[ \t.]|$)|[a-z]{2,16}ed(?=[ \t]+(?:with|in|into|together|until|by|to|over|overnight)\b|[ \t]*$))"
)


def parts_of(text: str) -> list[tuple[int, int]]:
    """The parts of the line between commas, brackets and dashes."""
    parts: list[tuple[int, int]] = []
    start = 0
    for found in _BREAK.finditer(text):
        parts.append((start, found.start()))
        start = found.end()
    parts.append((start, len(text)))
    return [(a, b) for a, b in parts if text[a:b].strip()]
