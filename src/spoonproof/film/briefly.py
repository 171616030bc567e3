"""A written step as it is said: read aloud, in fewer words, or as the name of a chapter."""

from __future__ import annotations

import re
from collections.abc import Sequence

_LEAD = re.compile(r"^(?:Meanwhile|Then|Now|Next|Finally|While that cooks)[ ,]{1,2}")
_BRACKETS = re.compile(r"\s?\([^()]{0,200}\)")
_ASIDES = re.compile(
    r",\s(?:uncovered|stirring(?: \w{1,20}){0,3})(?:,(?=\s(?:for|at|over)\b)|(?=[,.]|\s(?:for|until)))"
)
_GUARDS = re.compile(r"\b(?:no|not|nothing|none|never|without|whole|bones?|lumps?|pips?|stones?|skins?)\b|n't\b", re.I)
"""What a last clause may say that keeps the food safe: "so that no pea stays whole"."""
_WHO = re.compile(
    r"\b(?:adults?|grown|famil(?:y|ies)|parents?|bab(?:y|ies)|child|toddlers?|yours(?:elf)?|big ones)\b", re.I
)
_LAST_CLAUSE = re.compile(r",\s(?:or|so that|which)\s[^,]{1,200}\.$")
_RANGE = re.compile(r"(?<=\d)\s?[–-]\s?(?=\d)")
_SHORTENED = re.compile(
    r"(?:(?<=\d)\s?(?P<time>mins?|hrs?|secs?)\b(?:\.(?=,|\s[a-z]))?|(?<=\d\d)\s?°?\s?(?P<degrees>[CF])(?![\w-]))"
)
_OR = re.compile(r"(?<!\d)\s/\s|\s/\s(?!\d)|(?<=[CF°])/(?=\d)|(?<=\bfan)/(?=gas\b)")
"""A slash between two ways of doing it ("180C / 160C fan"), not a fraction's."""
_IN_FULL = {"min": "minutes", "hr": "hours", "sec": "seconds", "C": "degrees Celsius", "F": "degrees Fahrenheit"}
_CHAPTER_END = re.compile(r"(?:,|;|\.$|\.\s|\s(?:for|until|over|at|in|under|with|from|and|then|while)\s)")
LISTED_FOODS = 7  # more than this nobody keeps in mind (common practice, no source)
CHAPTER_CHARACTERS = 49
"""What a player shows of a chapter's name (common practice, no source)."""


def aloud(step: str) -> str:
    """A step as it is read out, to its full stop: "bake 16-20 mins at 200C" is "bake 16 to 20 minutes at 200 degrees
    Celsius.". What stands in brackets is heard between two pauses."""
    plain = _BRACKETS.sub(_between_pauses, " ".join(step.split()))
    return sentence(_SHORTENED.sub(_in_full, _RANGE.sub(" to ", _OR.sub(" or ", plain))))


def _between_pauses(match: re.Match[str]) -> str:
    """ " (180 °C)" as ", 180 °C", and with another comma where the sentence goes on."""
    inner = match[0].strip()[1:-1].strip(" ,.")
    goes_on = match.string[match.end() : match.end() + 1] == " "
    return f", {inner}{',' if goes_on else ''}" if inner else ""


def _in_full(match: re.Match[str]) -> str:
    """A shortened unit of time or warmth after a figure, as it is said: "1 min" is "1 minute"."""
    if match["degrees"]:
        return f" {_IN_FULL[match['degrees']]}"
    words = _IN_FULL[match["time"].rstrip("s")]
    alone = re.search(r"(?<![\d.])1$", match.string[: match.start()])
    return f" {words.removesuffix('s') if alone else words}"


def briefly(step: str) -> str:
    """A step in fewer words: without lead-in, brackets and asides, and without another way of doing it at its end.

    Lid, size, cut, end point and what must not be left in it stay: without them it does not come out soft and safe.
    """
    text = _LEAD.sub("", " ".join(step.split()))
    text = _ASIDES.sub("", _BRACKETS.sub("", text))
    last = _LAST_CLAUSE.search(text)
    if last is not None and "until" not in last[0] and last.start() > 20 and not _GUARDS.search(last[0]):
        text = text[: last.start()] + "."
    return text[:1].upper() + text[1:]


def chapter_of(step: str) -> str:
    """A step's name for the audience: what is done to what, no longer than a player shows."""
    text = briefly(step)
    name = text.rstrip(".")
    for match in _CHAPTER_END.finditer(text):
        if match.start() >= 8:
            name = text[: match.start()]
            break
    if len(name) <= CHAPTER_CHARACTERS:
        return name
    return f"{name[: CHAPTER_CHARACTERS - 1].rsplit(' ', 1)[0]}…"


def named(step: str) -> str:
    """A step by its name alone ("Add the peas."); "" where what that leaves out keeps it safe or says who eats."""
    name = chapter_of(step)
    left_out = briefly(step).removeprefix(name)
    return "" if name.endswith("…") or _GUARDS.search(left_out) or _WHO.search(left_out) else sentence(name)


def listed(items: Sequence[str]) -> str:
    """ "a, b and c"; the first five where there are more than ``LISTED_FOODS``, and that there are others."""
    if len(items) > LISTED_FOODS:
        return f"{', '.join(items[:5])}, and a few things more: the whole list is under the film"
    if len(items) <= 1:
        return "".join(items)
    return f"{', '.join(items[:-1])} and {items[-1]}"


def small_eaters(months: float) -> str:
    """Whom a dish from this age on is for."""
    return "babies" if months < 12 else "toddlers"


def sentence(text: str) -> str:
    """``text`` with a full stop, where it has no end of its own; "" stays ""."""
    text = " ".join(text.split())
    return f"{text}." if text and text[-1] not in ".!?…" else text
