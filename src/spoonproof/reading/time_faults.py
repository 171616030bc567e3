"""Times in the method that nobody can cook by, and temperatures written twice that are not one heat.

A time that is not read is no time: timeline, softness and cook times would go on without it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from spoonproof.model.finding import Finding, Level
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document, Passage
from spoonproof.reading import limits
from spoonproof.reading.faults import fault
from spoonproof.reading.measures import Measures
from spoonproof.reading.numbers import Number, number_at
from spoonproof.reading.times import find_heat, unit_at

RULE = "time-not-meant"
_NUMBER = re.compile(r"(?<![\w.,/⁄'·])(?:\.[0-9]|[0-9½⅓⅔¼¾⅛])")
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
    while (start := _NUMBER.search(text, at)) is not None:
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


def temperature_faults(passage: Passage, document: Document, measures: Measures) -> list[Finding]:
    """180 °C beside 450°F: one of them is wrong. A fan oven runs about 20 °C lower."""
    findings: list[Finding] = []
    for one, two in pairwise(find_heat(passage.text, measures)):
        near = two.start - one.end < 12
        even = [h.celsius + (20 if h.fan else 0) for h in (one, two)]
        if near and abs(even[0] - even[1]) > 15:
            words = passage.text[one.start : two.end]
            span = passage.span(one.start, two.end)
            message = f"“{words}” names two temperatures that are not the same."
            remedy = f"The first one is {even[0]:g} °C, the second {even[1]:g} °C in an oven without a fan."
            findings.append(fault("temperatures-disagree", document, span, message, remedy))
    return findings
