"""Words of a method that look like a food and name none: a tool, a verb, the juices of the pan, what is not so."""

from __future__ import annotations

import re

_TOOL = re.compile(
    r"(?i)[ \t-]{1,9}(?:masher|cooker|press|peeler|knife|mill|pan|dish|trays?|bowls?|cups?|grater|ricer|grinder|spinner"
    r"|squeezer|blocks?|packs?|jar|bag|towel|spoons?|bath|brush|cutter|corer|steamer|pot|basket|thermometer|tins?|moulds?"
    r"|scoops?|scoopers?|ballers?|strainers?|sieves?|net|pin|cases?|board|timer|slicer|shaker|maker|shop|aisle|packet"
    r"|size|sized|shaped|colou?red|scented)\b"
)
_OWN_JUICES = re.compile(r"(?i)(?:\b(?:its|their|own|cooking|pan|meat|any) juices?|\bjuices)\Z")  # no lemon's
_IS_NOT = re.compile(
    r"(?i)(?:[ \t]{1,9}\w+){0,2}[ \t]{1,9}(?:is|are|should|must|can|has|have)(?:[ \t]{1,9}(?:not|no)\b|n['’]t\b|not\b)"
)
_IS_VERB = re.compile(r"(?i)squash[ \t]{1,9}(?:each|everything|every|together|any|the|them|it|all|one)\b")
_DOES_SQUASH = re.compile(r"(?i)[^\W\d_]{2,30}[ \t]{1,9}squashes")  # "until the fruit squashes"
_THEY_SQUASH = re.compile(
    r"(?i)\b(?:until|till|once|when|so that)\b[^.;]{0,60}[a-z]{3,}s[ \t]{1,9}$|\b(?:that|which|must|should)[ \t]{1,9}$"
)  # "the bits squash"
_THEY_SPROUT = re.compile(
    r"(?i)\b(?:to|it|they|them|until|till|will|should|must|starts?|begins?|grains?|seeds?|beans)[ \t]$"
)


def no_food(text: str, at: int, end: int, *, listed: bool) -> bool:
    """Whether ``text[at:end]`` names no food after all; ``listed``: a line of the list is called so."""
    squashes = text[at:end] == "squash" and _THEY_SQUASH.search(text[:at])
    is_verb = _IS_VERB.match(text, at) or _DOES_SQUASH.fullmatch(text, at, end) or squashes
    is_verb = is_verb or (text[at:end] in ("sprout", "sprouts") and _THEY_SPROUT.search(text, 0, at))
    if not listed and (_IS_NOT.match(text, end) or is_verb):
        return True
    return bool(_OWN_JUICES.search(text, max(0, at - 12), end) or _TOOL.match(text, end))
