"""Amounts put together: the same one said twice ("650 g / 1 lb 7 oz"), one in two units ("1 lb 2 oz"), two added, the
share of one in many."""

from __future__ import annotations

import re

from spoonproof.model.recipe import Amount
from spoonproof.model.record import NamedTuple, replace
from spoonproof.model.text import Span
from spoonproof.reading.amount_words import (
    AMBIGUOUS,
    FILLER,
    HEDGE,
    MASS_OR_VOLUME,
    past_hyphen,
    show_amount,
    skip,
    unit_at,
)
from spoonproof.reading.measures import Measures
from spoonproof.reading.numbers import number_at, range_sign

SLASH = re.compile(r"[ \t]{0,9}/[ \t]{0,9}(?=[0-9½⅓⅔¼¾])")
_AGAIN = re.compile(r"(?i)[ \t]{0,9}(?:[/=,]|\bor\b)[ \t]{0,9}(?=(?:about |approx\.? |[~≈] ?)?[0-9½⅓⅔¼¾])")


class Problem(NamedTuple):
    """What is wrong with an amount at ``[start:end]`` of the text, and how to put it right."""

    rule: str
    message: str
    start: int
    end: int
    remedy: str = ""


def measure_at(text: str, at: int, measures: Measures) -> tuple[Amount, int] | None:
    """A number (or range) with a unit of mass or volume, nothing else: "400 g", "100-120ml", "2 packed cups"."""
    hedge = HEDGE.match(text, at)
    begin = skip(text, hedge.end()) if hedge else at
    first = number_at(text, begin)
    if first is None or first.value is None:
        return None
    high, end = first.value, first.end
    sign = range_sign(text, end)
    if sign is not None:
        second = number_at(text, sign)
        if second is not None and second.value is not None and second.value >= high:
            high, end = second.value, second.end
    position = past_hyphen(text, end)
    filler = FILLER.match(text, position)
    unit = unit_at(text, filler.end() if filler else position, measures)
    if unit is None or unit[0] in AMBIGUOUS or measures.kind(unit[0]) not in MASS_OR_VOLUME:
        return None
    return Amount(first.value, high, unit[0], Span(at, unit[1]), about=hedge is not None), unit[1]


def run_on(text: str, at: int, amount: Amount, measures: Measures) -> tuple[Amount, int] | None:
    """ "1 lb 2 oz" is one amount in two units; of "200 g 7 oz", the same said twice, the first is taken."""
    begin = skip(text, at)
    more = measure_at(text, begin, measures) if text[begin : begin + 1].isnumeric() else None
    if more is None:
        return None
    inner, end = more
    share = measures.ratio(inner.unit, amount.unit)
    if share is None:
        return None
    if not compare(amount, inner, measures):
        return amount, end
    if inner.high * share >= 1:
        return None
    low, high = amount.low + inner.low * share, amount.high + inner.high * share
    return replace(amount, low=low, high=high, span=Span(amount.span.start, end)), end


def compare(amount: Amount, other: Amount, measures: Measures) -> list[Problem]:
    share = measures.ratio(other.unit, amount.unit)
    if share is None or abs(amount.high - other.high * share) * 100 <= 12 * max(amount.high, other.high * share):
        return []
    message = f"{show_amount(amount)} and {show_amount(other)} are not the same amount"
    remedy = "Correct one of the two; the first one is used."
    return [Problem("amounts-disagree", message, *other.span, remedy)]


def past_same(text: str, at: int, measures: Measures) -> int:
    """Where the same measure ends that is said once more: "3 kg / 6 lb 8 oz", "10.5 oz / ~298 g"."""
    while (again := _AGAIN.match(text, at)) is not None and (other := measure_at(text, again.end(), measures)):
        begin = skip(text, other[1])
        further = measure_at(text, begin, measures) if text[begin : begin + 1].isnumeric() else None
        at = (further or other)[1]
    return at


def is_count(amount: Amount, measures: Measures) -> bool:
    """Whether it is so many pieces, tins or bunches, and not a weight or a volume."""
    return measures.kind(amount.unit) == "count"


def share_of(amount: Amount, inner: Amount, each: bool) -> Amount:
    """``amount`` with the measure that stands in brackets somewhere after it: of one ("each"), or of all."""
    if each or amount.low == amount.high == 1:
        return replace(amount, each=inner)
    if amount.low == amount.high:
        return replace(amount, each=replace(inner, low=inner.low / amount.low, high=inner.high / amount.high))
    # A range of pieces with one weight for all of them: the weight is the better amount.
    return replace(inner, span=amount.span, about=True)


def sum_of(one: Amount, two: Amount, measures: Measures) -> Amount | None:
    """The two amounts as one; None where their units can't be summed."""
    if one.unit == two.unit and one.each is None and two.each is None:
        return replace(one, low=one.low + two.low, high=one.high + two.high)
    for per in ("ml", "g"):
        a, b = measures.ratio(one.unit, per), measures.ratio(two.unit, per)
        if a and b:
            low, high = one.low * a + two.low * b, one.high * a + two.high * b
            return replace(one, low=low, high=high, unit=per, about=one.about or two.about, size="")
    return None
