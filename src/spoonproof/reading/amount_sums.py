"""Amounts put together: the share of one in many, two amounts as one."""

from __future__ import annotations

from spoonproof.model.recipe import Amount
from spoonproof.model.record import replace
from spoonproof.reading.measures import Measures


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
