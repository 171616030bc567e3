"""Times, temperatures, lids and squash tests in a sentence of the method, and those of them that can't be meant.

A time that is not read is no time: timeline, softness and cook times would go on without it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from spoonproof.model.finding import Finding, Level
from spoonproof.model.recipe import Minutes
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document, Passage
from spoonproof.reading import limits
from spoonproof.reading.faults import fault
from spoonproof.reading.measures import Measures
from spoonproof.reading.numbers import Number, number_at, range_sign

_UNIT = re.compile(
    r"(?i)[ \t\u00a0]{0,9}[-‑]?[ \t]{0,9}(?P<unit>hours?|hrs?|h|minutes?|mins?|min|m|seconds?|secs?|sec|s|days?)\b\.?"
)
_MORE_BETWEEN = re.compile(r"(?i)[ \t]{1,9}(?:more|further|extra|additional|longer)(?=[ \t])")
_MORE_AFTER = re.compile(r"(?i)[ \t]{0,9}(?:more|longer|extra|further)\b")
_MORE_BEFORE = re.compile(r"(?i)\b(?:another|a further|a final|an extra|an additional|for a further)[ \t]{1,9}$")
_LAST = re.compile(r"(?i)\b(?:the )?(?:last|final)[ \t]{1,9}$")
_FOR_THE_LAST = re.compile(
    r"(?i)\b(?:for (?:the|its|their) (?:last|final)|(?:for |give \w+ )?(?:another|a further))[ \t]{1,9}$"
)
_BARE = re.compile(
    r"(?i)(?P<low>[0-9]{1,3})(?:[ \t]?[-–][ \t]?(?P<high>[0-9]{1,3}))?(?=[ \t]{0,3}(?:[,.;:)]|$|until\b|and\b))"
)
_BARE_MORE = re.compile(
    r"(?i)"
    r"(?P<low>[0-9]{1,3})(?:[ \t]?[-–][ \t]?(?P<high>[0-9]{1,3}))?(?=[ \t]more(?:[,.;:)]|$|[ \t](?:until|and|or)\b))"
)
_FOR = re.compile(r"(?i)\bfor (?:about |around )?$")
_UNIT_BEFORE = re.compile(r"(?i)[0-9][ \t]{0,3}min(?:ute)?s?\b")
_AFTER = re.compile(r"(?i)\bafter[ \t]{1,9}(?:about |around |the first |a further )?$")
_NOT_A_TIME = re.compile(
    r"(?i)\b(?:every|within|in under|keeps?(?: for)?|use (?:up )?in|eat in|(?:pack|packet|package|box|label"
    r"|instructions?|directions?|says?),?[ \t]{1,3}(?:plus|and|with))[ \t]{1,9}(?:about |an extra |another )?$"
)
_NOT_SO_LONG = re.compile(  # "2 minutes less than the packet says", "3 minutes past what the packet says"
    r"(?i)[ \t]{1,3}(?:(?:less|fewer|short(?:er)?|under|before)\b[ \t]{1,3}(?:than|of|the[ \t]{1,3}end)"
    r"|(?:longer|more)[ \t]{1,3}than\b|(?:past|over|beyond)[ \t]{1,3}(?:what|the[ \t]{1,3}time))"
)
_JOINT = re.compile(r"(?i)[ \t]{1,9}and[ \t]{1,9}|[ \t]*+")
_SIDES = re.compile(r"(?i)[ \t]{0,9}(?:on|per|for)?[ \t]{0,9}(?:each|a|per|every|either|both)?[ \t]{0,9}sides?\b")
_WORDS = re.compile(
    r"(?i)\b(?:(?P<overnight>overnight)|(?P<halfhour>half an hour|half-hour)|(?P<quarter>(?:a )?quarter of an hour)"
    r"|(?P<hourhalf>an hour and a half|one and a half hours)|(?P<minutetwo>a minute or (?:two|so))"
    r"|(?P<couple>(?:a )?couple (?:of )?(?:more )?minutes)|(?P<few>(?:a )?few (?:more )?minutes)|(?P<hour>(?:an|one"
    r"|another) (?:more )?hour)|(?P<minute>(?:a|one|another) (?:more )?minute)"
    r"|(?P<seconds>(?:a )?few (?:more )?seconds)|(?P<spelt>two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen"
    r"|twenty|thirty|forty)(?:(?: to |-| or )(?P<high>three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty"
    r"|thirty|forty))?[ -](?:more )?(?P<unit>minutes?|hours?|seconds?))\b"
)
_SPELT = {
    "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12,
    "fifteen": 15, "twenty": 20, "thirty": 30, "forty": 40,
}  # fmt: skip
_IN_MINUTES = {"h": Fraction(60), "m": Fraction(1), "s": Fraction(1, 60), "d": Fraction(1440)}
_PHRASES = {
    "overnight": (480, 720), "halfhour": (30, 30), "quarter": (15, 15), "hourhalf": (90, 90), "minutetwo": (1, 2),
    "couple": (2, 2), "few": (2, 5), "hour": (60, 60), "minute": (1, 1), "seconds": (Fraction(1, 20), Fraction(1, 6)),
}  # fmt: skip
_HEAT = re.compile(
    r"(?P<degrees>[0-9]{2,3})[ \t]?(?:°[ \t]?|º[ \t]?|˚[ \t]?|deg(?:rees?)?[ \t]?)?(?P<scale>C|F|Celsius|Fahrenheit"
    r"|celsius|fahrenheit)\b(?P<fan>[ \t]{0,9}\(?fan\b(?![ \t]{0,3}[0-9])\)?)?"
    r"|(?P<bare>[0-9]{2,3})[ \t]?(?:°|º|˚|degrees?\b)(?P<barefan>[ \t]{0,9}fan)?"
    r"|gas(?:[ \t]{1,9}mark)?[ \t]{0,9}(?P<gas>1/2|½|1/4|¼|[1-9])(?![0-9])|(?P<fanonly>[0-9]{3})[ \t]{0,9}fan\b"
)
_LID_ON = re.compile(
    r"(?i)\b(?:(?<!to )cover(?:ed)?(?!(?:[ \t]{1,3}(?!and\b|or\b)[\w-]{1,14}){0,4}[ \t]{1,3}(?:with|in|by)[ \t]{1,3}"
    r"(?:[\w-]{1,12}[ \t]{1,3}){0,3}(?:water|stock|milk|liquid|sauce|broth|cm|inch(?:es)?)\b)"
    r"|lid on|with (?:a|the|its) lid|put (?:a|the) lid (?:back )?on|lidded|put on (?:a|the) lid"
    r"|lid back on|lid (?:firmly|tightly) on)\b"
)
_LID_OFF = re.compile(
    r"(?i)\b(?:uncover(?:ed)?|without (?:a|the) lid|lid off|off the lid|no lid|remov(?:e|ing) the lid"
    r"|(?<!without )(?<!not )(?<!never )(?<!don't )(?<!don’t )(?<!avoid )lift(?:ing)? the lid"
    r"|lid (?:of the [\w-]+ )?(?:slightly |a little |just )?(?:ajar|open|tilted|half on|half off)|not covered"
    r"|(?:do not|don't|don’t) cover)\b"
)


class FoundTime(NamedTuple):
    """A time at ``[start:end]``: how it counts (more, the last minutes, after so long) is said by the flags."""

    start: int
    end: int
    time: Minutes
    more: bool = False
    last: bool = False
    after: bool = False


class FoundHeat(NamedTuple):
    """A temperature in °C at ``[start:end]``; ``fan`` when it is given for a fan oven."""

    start: int
    end: int
    celsius: float
    fan: bool


def find_times(text: str) -> list[FoundTime]:
    """All cooking times in ``text``, left to right. "Every 5 minutes" and "within 2 hours" are none."""
    return list(_times(text))


@lru_cache(maxsize=4096)
def _times(text: str) -> tuple[FoundTime, ...]:
    found: list[FoundTime] = []
    at = 0
    words = {m.start(): m for m in _WORDS.finditer(text)}
    while at < len(text):
        one: FoundTime | None = None
        boundary = at == 0 or not (text[at - 1].isalnum() or text[at - 1] in ".,/⁄")
        if boundary and at in words:
            one = _spelt(words[at])
        elif boundary and text[at].isnumeric():
            one = _time_at(text, at) or _last_minutes(text, at)
        if one is None:
            at += 1
            continue
        at = one.end
        if not _NOT_A_TIME.search(text[max(0, one.start - 36) : one.start]) and not _NOT_SO_LONG.match(text, one.end):
            found.append(_counted(text, one))
    return tuple(found)


def _spelt(match: re.Match[str]) -> FoundTime:
    if match["spelt"]:
        scale = _IN_MINUTES[match["unit"][0].lower()]
        low = _SPELT[match["spelt"].lower()]
        high = _SPELT[match["high"].lower()] if match["high"] else low
        time = Minutes(float(low * scale), float(max(low, high) * scale))
    else:
        first, last = _PHRASES[match.lastgroup or ""]
        time = Minutes(float(first), float(last))
    return FoundTime(match.start(), match.end(), time, more=" more " in match[0] or match[0][:7].lower() == "another")


def _time_at(text: str, at: int) -> FoundTime | None:
    first = _amount(text, at)
    if first is None:
        return None
    low, end, scale, more = first
    sign = range_sign(text, end)
    second = _amount(text, sign) if sign is not None else None
    if second is not None and (second[2] is not None):
        high_value, end, high_scale, more_too = second
        more = more or more_too
        assert high_scale is not None
        low_minutes, high_minutes = low * (scale or high_scale), high_value * high_scale
        if high_minutes < low_minutes:
            return None
    else:
        if scale is None:
            return None
        low_minutes = high_minutes = low * scale
        joint = _JOINT.match(text, end)  # "1 hour 20 minutes", "1 hour and 20 minutes"
        rest = _amount(text, joint.end()) if joint else None
        if rest is not None and rest[2] is not None and rest[2] < scale:
            low_minutes += rest[0] * rest[2]
            high_minutes += rest[0] * rest[2]
            end = rest[1]
    return FoundTime(at, end, Minutes(float(low_minutes), float(high_minutes)), more=more)


def _last_minutes(text: str, at: int) -> FoundTime | None:
    """ "Steam for 20 minutes, adding the pear for the last 8": the unit is that of the time before."""
    bare, said = _BARE.match(text, at), _FOR_THE_LAST
    if bare is None:  # "for 5 more"
        bare, said = _BARE_MORE.match(text, at), _FOR
    told = bare is not None and said.search(text[max(0, at - 32) : at])
    if bare is None or not told or not _UNIT_BEFORE.search(text[max(0, at - 160) : at]):
        return None
    low, high = float(bare["low"]), float(bare["high"] or bare["low"])
    return FoundTime(at, bare.end(), Minutes(low, max(low, high)))


def _amount(text: str, at: int) -> tuple[Fraction, int, Fraction | None, bool] | None:
    """Number, end, minutes per unit (None: no unit of time follows), and whether "more" stands between."""
    number = number_at(text, at)
    if number is None or number.value is None:
        return None
    unit = unit_at(text, number.end)
    if unit is None:
        return number.value, number.end, None, False
    return number.value, *unit, _MORE_BETWEEN.match(text, number.end) is not None


def unit_at(text: str, at: int) -> tuple[int, Fraction] | None:
    """Where a unit of time after a number that ends at ``at`` ends, and its minutes; None when none stands there."""
    more = _MORE_BETWEEN.match(text, at)
    unit = _UNIT.match(text, more.end() if more else at)
    return None if unit is None else (unit.end(), _IN_MINUTES[unit["unit"][0].lower()])


def _counted(text: str, one: FoundTime) -> FoundTime:
    before = text[max(0, one.start - 32) : one.start]
    sides = _SIDES.match(text, one.end)
    time, end = one.time, one.end
    if sides is not None:
        time, end = Minutes(time.low * 2, time.high * 2), sides.end()
    after_more = _MORE_AFTER.match(text, end)
    more = one.more or after_more is not None or _MORE_BEFORE.search(before) is not None
    last, after = (said.search(before) is not None for said in (_LAST, _AFTER))
    return FoundTime(one.start, after_more.end() if after_more else end, time, more, last, after)


def find_heat(text: str, measures: Measures) -> list[FoundHeat]:
    """Temperatures in ``text`` in °C: 180 °C, 350°F, gas mark 4 (by the table of measures), 160 fan."""
    found: list[FoundHeat] = []
    for match in _HEAT.finditer(text):
        before = text[max(0, match.start() - 5) : match.start()].lower().rstrip(" (:")  # "180C/fan 160C"
        fan = bool(match["fan"] or match["barefan"] or match["fanonly"] or before.endswith("fan"))
        if match["gas"]:
            celsius = measures.gas_mark({"½": "1/2", "¼": "1/4"}.get(match["gas"], match["gas"]))
            if celsius is None:
                continue
        else:
            degrees = float(match["degrees"] or match["bare"] or match["fanonly"])
            fahrenheit = match["scale"] in ("F", "Fahrenheit", "fahrenheit")
            celsius = round((degrees - 32) * 5 / 9, 1) if fahrenheit else degrees
        found.append(FoundHeat(match.start(), match.end(), celsius, fan))
    return found


def lid(text: str) -> bool | None:
    """Whether the pan is covered by the words of ``text``; None when they don't say."""
    off = [m.start() for m in _LID_OFF.finditer(text)]
    on = [m.start() for m in _LID_ON.finditer(text) if not any(o <= m.start() <= o + 12 for o in off)]
    return on[-1:] > off[-1:] if on or off else None


SQUASH = re.compile(
    r"(?:squash|squish|crush|mash|smush|squeeze|press|flatten|collapse|break|fall|give)\w*\b[^.;]{0,50}?\b(?:between"
    r"|finger|fingers|thumb|tongue|roof of (?:the|your) mouth|gums|(?:with|under) (?:a |the (?:back"
    r"|side) of a )?(?:fork|spoon)|against the)|\b(?:squash|crush|mash)(?:es|ed)? (?:easily|flat|with no effort"
    r"|without effort)|\bsquash test|\bsquish(?:es|y)? (?:easily|between)|\b(?:break|crush|squash|flatten|give)(?:s"
    r"|es)?(?: up| apart| way)?(?: easily)? (?:when|if|as)(?: it is| they are| you)? (?:gently )?(?:press|pinch"
    r"|squeeze|poke)d?(?:ed)?\b|\b(?:pull|come|fall)s? apart\b|\bfalling apart\b|\bcollapses?\b",
    re.I,
)


RULE = "time-not-meant"
_BEGINS = re.compile(r"(?<![\w.,/⁄'·])(?:\.[0-9]|[0-9½⅓⅔¼¾⅛])")
_MANY = ("quantity-out-of-range", "quantity-not-finite")


class WrongTime(NamedTuple):
    """A time at ``text[start:end]`` that can't be meant: why, and what to do."""

    start: int
    end: int
    message: str
    remedy: str
    level: Level


def time_faults(passage: Passage, document: Document) -> list[Finding]:
    """A finding for each time of a step that can't be meant."""
    return [
        fault(RULE, document, passage.span(start, end), message, remedy, level=level)
        for start, end, message, remedy, level in wrong_times(passage.text)
    ]


def wrong_times(text: str) -> Iterator[WrongTime]:
    """The times of ``text``, left to right, that can't be meant. Linear in its length."""
    at = 0
    while (start := _BEGINS.search(text, at)) is not None:
        number = number_at(text, start.start())
        if number is None:
            at = start.end()
            continue
        at = max(number.end, start.end())
        unit = unit_at(text, number.end)
        if unit is not None:
            end, minutes = unit
            words = text[number.start : end].rstrip(".")
            wrong = _wrong(words, number, float(minutes))
            if wrong is not None:
                yield WrongTime(number.start, number.start + len(words), *wrong)
            at = end


def _wrong(words: str, number: Number, minutes: float) -> tuple[str, str, Level] | None:
    shown = words if len(words) <= 40 else f"{words[:18]}…{words[-16:]}"
    if number.value is None and number.rule == "quantity-not-positive":
        return f"“{shown}” is no time at all.", "Write how long it takes, or leave the time out.", "warning"
    if number.value is None and number.rule not in _MANY:
        message = f"In “{shown}” the time can't be read: {number.message}."
        return message, number.remedy or "Write it in plain figures, like 1.5.", "error"
    if number.value is None or float(number.value) * minutes > limits.STEP_DAYS * 1440:
        message = f"“{shown}” is no time that anybody cooks by: steps of up to {limits.STEP_DAYS} days are read."
        return message, "Check the digits, and the unit: seconds, minutes, hours or days.", "error"
    return None


_BOILING = 100.0
_UNTIL = re.compile(r"(?i)\b(?:until|till|to)\b")


def temperature_faults(passage: Passage, document: Document, measures: Measures) -> list[Finding]:
    """180 °C beside 450°F: one of them is wrong. A fan oven runs about 20 °C lower."""
    findings: list[Finding] = []
    for one, two in pairwise(find_heat(passage.text, measures)):
        near = two.start - one.end < 12 and not (
            two.celsius < _BOILING and _UNTIL.search(passage.text, one.end, two.start)  # "at 190 °C until 75 °C inside"
        )
        even = [h.celsius + (20 if h.fan else 0) for h in (one, two)]
        if near and abs(even[0] - even[1]) > 15:
            words = passage.text[one.start : two.end]
            span = passage.span(one.start, two.end)
            message = f"“{words}” names two temperatures that are not the same."
            remedy = f"The first one is {even[0]:g} °C, the second {even[1]:g} °C in an oven without a fan."
            findings.append(fault("temperatures-disagree", document, span, message, remedy))
    return findings
