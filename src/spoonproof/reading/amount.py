"""How much: an amount in a cook's words, read exactly or refused with the reason.

Arithmetic is ``Fraction``; nothing here knows what a unit weighs for a food.
"""

from __future__ import annotations

import re
from fractions import Fraction

from spoonproof.model.recipe import Amount
from spoonproof.model.record import NamedTuple, replace
from spoonproof.model.text import Span
from spoonproof.reading.amount_again import SLASH, Problem, compare, measure_at, past_same, run_on
from spoonproof.reading.amount_sums import is_count, share_of, sum_of
from spoonproof.reading.amount_words import (
    AMBIGUOUS,
    FILLER,
    HEDGE,
    LOOSE_COUNTS,
    MASS_OR_VOLUME,
    UNIT_HYPHEN,
    container_at,
    quantity_at,
    size_at,
    skip,
    unit_at,
    unit_then_range,
)
from spoonproof.reading.measures import Measures
from spoonproof.reading.numbers import Number, number_at, range_sign, show

_SPOONS = frozenset(("tsp", "tbsp", "dsp"))
_LOOSE = frozenset(("a level", "level"))
_SOME = re.compile(
    r"(?i)(?:just )?(?:a (?:very )?little(?: bit)?|a (?:tiny |little |small )?bit|a touch|a hint|a few drops"
    r"|some)(?![\w-])(?: more)?(?: of)?"
)
_TIMES = re.compile(r"(?i)[ \t]{0,9}(?:[x×✕*]|times)[ \t]{0,9}(?=[0-9.½⅓⅔¼¾⅛⅜⅝⅞])")
_OF = re.compile(r"(?i)[ \t]{1,9}(?:of(?:[ \t]{1,9}(?:the|a|an))?(?![\w-])|d[eio](?![\w-])|d['’](?=\w))")
_DANGLING = re.compile(r"[ \t]{0,9}[-‐‑‒–—−][ \t]{0,9}(?=$|[,;)]|[^\W\d_]|[ \t])")
_OPEN, _CLOSE = (
    re.compile(r"[ \t]{0,9}[(\[][ \t]{0,9}"),
    re.compile(
        r"(?i)[ \t]{0,9}(each|in total|total|(?:(?:when|once|after|before)[ \t]{1,3})?(?:un)?(?:drained|peel(?:ed|ing)"
        r"|prepared|trimm(?:ed|ing)|weighed|cook(?:ed|ing)|raw|dry|stoned|pitted|cored|grated|chopped|diced|cubed"
        r"|sliced|mashed)(?:[ \t]weight)?|(?:net[ \t])?weight)?[ \t]{0,9}[)\]]"
    ),
)
_OR_SO = re.compile(r"(?i)[ \t]{1,9}or[ \t]{1,9}so(?![\w-])")
_OR_ELSE = re.compile(r"(?i)[ \t]{1,9}or[ \t]{1,9}(?=[0-9½⅓⅔¼¾]|(?:two|three|four)\b)")
_PLUS = re.compile(r"(?i)[ \t]{0,9}(?:\+|\bplus\b)[ \t]{0,9}(?=[0-9½⅓⅔¼¾]|an? )")
_CONTAINERS = frozenset(
    (
        "tin", "jar", "pack", "bag", "pouch", "tub", "carton", "bottle", "block", "ball", "bunch", "sheet", "nest",
        "loaf",
    )
)  # fmt: skip


class Reading(NamedTuple):
    """``amount`` stands at ``text[start:end]``; None with problems when it was refused."""

    amount: Amount | None
    start: int
    end: int
    problems: tuple[Problem, ...] = ()


def moved(amount: Amount, place: object) -> Amount:
    """The amount with each span put through ``place(start, end) -> Span``."""
    assert callable(place)
    each = moved(amount.each, place) if amount.each is not None else None
    return replace(amount, span=place(amount.span.start, amount.span.end), each=each)


def amount_at(text: str, at: int, measures: Measures, *, whole: bool = True) -> Reading | None:
    """The amount that starts at ``at``; None when none does. Never raises.

    ``whole``: with what may follow it (a weight in brackets, a second amount to add); False for such a part itself.
    """
    start = at = skip(text, at)
    some = _SOME.match(text, at)
    if some is not None and not unit_at(text, skip(text, some.end()), measures):
        return Reading(Amount(Fraction(0), Fraction(0), "", Span(start, some.end()), to_taste=True), start, some.end())
    about = False
    while (hedge := HEDGE.match(text, at)) and hedge.end() > at:
        about = about or hedge[0].strip().lower() not in _LOOSE
        at = skip(text, hedge.end())
    at_number = at
    first = quantity_at(text, at)
    if first is None:
        return _no_number(text, start, at, measures, about, whole)
    number, hedged = first
    at = number.end
    if number.value is None:
        return _refused(text, start, number, measures)
    about = about or hedged
    low_value = high_value = number.value
    if number.rule == "range":  # "a few": the message field carries nothing, the range is in the table
        low_value, high_value = LOOSE_COUNTS[number.message]
    unit_between, after_unit = unit_then_range(text, at, measures)
    sign = range_sign(text, after_unit)
    if sign is not None and _counts_containers(text, sign, measures):
        return _with_unit(text, start, sign - 1, low_value, high_value, about, measures, whole)
    if sign is not None:
        second = number_at(text, sign)
        if second is not None and second.value is None:
            return _refused(text, start, second, measures)
        if second is not None and second.value is not None:
            if second.value < low_value:
                return _reversed(text, start, at_number, second, low_value, measures)
            high_value, at = second.value, second.end
    elif unit_between is None and (dangling := _DANGLING.match(text, at)) and not UNIT_HYPHEN.match(text, at):
        end = len(text[: dangling.end()].rstrip())
        message = f"“{text[at_number:end]}” starts a range and does not end it"
        problem = Problem("range-not-closed", message, at_number, end, "Write both ends, as in 2-3, or one number.")
        unit = unit_at(text, skip(text, dangling.end()), measures)
        return Reading(None, start, unit[1] if unit else dangling.end(), (problem,))
    return _with_unit(text, start, at, low_value, high_value, about, measures, whole)


def _counts_containers(text: str, at: int, measures: Measures) -> bool:
    """ "1 - 24 oz jar", "2 – 400 g tins": no range, but so many of that size."""
    each = measure_at(text, at, measures) if text[at - 1] in " \t" else None
    return each is not None and each[0].low == each[0].high and container_at(text, each[1], measures) is not None


def _with_unit(
    text: str, start: int, at: int, low: Fraction, high: Fraction, about: bool, measures: Measures, whole: bool
) -> Reading:
    size = ""
    each: Amount | None = None
    end = at
    times = _TIMES.match(text, at)
    inner_at = times.end() if times else skip(text, at)
    if times or (inner_at > at and text[inner_at : inner_at + 1].isnumeric()):
        inner = measure_at(text, inner_at, measures)
        if inner is not None:
            each, at = inner
            end = at
            if (hyphen := UNIT_HYPHEN.match(text, at)) is not None:
                at = hyphen.end()
        elif times:
            second = number_at(text, inner_at)
            if second is not None and second.value is None:
                return _refused(text, start, second, measures)
    bracket = bracket_at(text, at, measures) if each is None else None
    if bracket is not None and container_at(text, bracket[1], measures):
        each, end = bracket[0], bracket[1]
        at = end
    unit_id, at, end, size = _unit_after(text, at, end, size, measures)
    if unit_id in ("T", "t", "Mg", "MG"):
        readings, remedy = AMBIGUOUS[unit_id]
        written = text[end - len(unit_id) : end]
        problem = Problem("ambiguous-unit", f"“{written}” can mean {readings}", end - len(unit_id), end, remedy)
        return Reading(None, start, end, (problem,))
    if each is None and measures.kind(unit_id) in MASS_OR_VOLUME:
        # "a 400 g tin" and "400 g tin of": the mass is of one container
        container = container_at(text, at, measures)
        if container is not None and low == high and container[0] in _CONTAINERS:
            each = Amount(low, high, unit_id, Span(start, end), about=about)
            low = high = Fraction(1)
            about = False
            unit_id, end = container
            at = end
    if not unit_id:
        unit_id = "piece"
    amount = Amount(low, high, unit_id, Span(start, end), size=size, each=each, about=about)
    return _after_unit(text, start, amount, measures, whole)


def _after_unit(text: str, start: int, amount: Amount, measures: Measures, whole: bool) -> Reading:
    """What may follow: a weight in brackets, the same in another unit, a second amount to add, "of"."""
    problems: list[Problem] = []
    if not whole:
        return Reading(amount, start, amount.span.end)
    amount, end = _or_else(text, amount, measures)
    measure = measures.get(amount.unit)
    exact = measures.kind(amount.unit) in MASS_OR_VOLUME
    if exact and (whole_of := run_on(text, end, amount, measures)) is not None:
        amount, end = whole_of
    while exact and (slash := SLASH.match(text, end)) is not None:  # "50 g/2 oz/1/3 cup"
        other = measure_at(text, slash.end(), measures)
        if other is None:
            break
        whole_of = run_on(text, other[1], other[0], measures)  # "650 g/1 lb 7 oz"
        said, end = whole_of or other
        problems += compare(amount, said, measures)
    plus = _PLUS.match(text, end)
    if plus is not None:
        more = amount_at(text, plus.end(), measures, whole=False)
        if more is not None and more.amount is not None:
            summed = sum_of(amount, more.amount, measures)
            if summed is None:
                message = f"“{text[start : more.end].strip()}” adds two amounts that can't be summed"
                problem = Problem("two-amounts", message, start, more.end, "Write one amount, or two lines.")
                return Reading(None, start, more.end, (*problems, problem))
            amount, end = replace(summed, span=Span(start, more.end)), more.end
    bracket = bracket_at(text, end, measures)
    if bracket is not None:
        inner, after, each_word = bracket
        if exact and not is_count(inner, measures):
            inner_measure = measures.get(inner.unit)
            if inner_measure is not None and measure is not None and inner_measure.per == measure.per:
                problems += compare(amount, inner, measures)
            elif amount.each is None and inner_measure is not None and inner_measure.per == "g":
                amount = share_of(amount, inner, each_word)
        elif amount.each is None and not is_count(inner, measures):
            amount = share_of(amount, inner, each_word)
        end = after
    amount = replace(amount, span=Span(start, end))
    of = _OF.match(text, end)
    return Reading(amount, start, of.end() if of else end, tuple(problems))


def _or_else(text: str, amount: Amount, measures: Measures) -> tuple[Amount, int]:
    """ "A handful or two" is a range; of "1 large or 2 medium" and "2 tbsp or 30 g" the first is taken."""
    end = amount.span.end
    so = _OR_SO.match(text, end)
    if so is not None:
        return replace(amount, about=True), so.end()
    other = _OR_ELSE.match(text, end)
    more = amount_at(text, other.end(), measures, whole=False) if other is not None else None
    if more is None or more.amount is None:
        return amount, end
    if more.amount.unit == "piece" != amount.unit and not more.amount.size and more.amount.low > amount.high:
        amount = replace(amount, high=more.amount.low)
    return amount, more.amount.span.end


def _no_number(text: str, start: int, at: int, measures: Measures, about: bool, whole: bool) -> Reading | None:
    """ "Small handful of", "pinch of", "thumb-sized piece of": one of the unit that is named."""
    size, after = size_at(text, at)
    unit = unit_at(text, after, measures)
    if unit is None or unit[0] in AMBIGUOUS:
        return None
    kind = measures.kind(unit[0])
    one = text[start:at].lower().startswith("a ")  # "a scant tablespoon": the hedge has taken the article
    spoon = unit[0] in _SPOONS and not text[after : unit[1]].rstrip(".").endswith("s")  # "Teaspoon salt"
    if not kind or (kind not in ("about", "count") and not one and not spoon) or unit[0] == "piece":
        return None
    of = _OF.match(text, unit[1])
    if of is None and not one and not spoon and kind != "about" and not (unit[0] == "bunch" or size):
        return None
    if kind == "count" and not one and text[after : unit[1]].endswith("s"):
        return None  # "cubes of swede": how many is not said
    amount = Amount(Fraction(1), Fraction(1), unit[0], Span(start, unit[1]), size=size, about=about)
    return _after_unit(text, start, amount, measures, whole)


def _unit_after(text: str, at: int, end: int, size: str, measures: Measures) -> tuple[str, int, int, str]:
    """Size words and a unit after a number: (unit id or "", where to go on, end of the amount, size)."""
    hyphen = UNIT_HYPHEN.match(text, at)
    position = hyphen.end() if hyphen else skip(text, at)
    found_size, position = size_at(text, position)
    size = found_size or size
    if found_size:
        end = len(text[:position].rstrip())
    filler = FILLER.match(text, position)
    unit = unit_at(text, filler.end() if filler else position, measures) or unit_at(text, position, measures)
    if unit is None:
        return "", end, end, size
    return unit[0], unit[1], unit[1], size


def bracket_at(text: str, at: int, measures: Measures) -> tuple[Amount, int, bool] | None:
    """A measure in brackets at ``at``: the measure, where the bracket ends, whether it says "each"."""
    opened = _OPEN.match(text, at)
    if opened is None or opened.end() == at:
        return None
    inner = measure_at(text, opened.end(), measures)
    if inner is None:
        deeper = text[opened.end() : opened.end() + 1] in "(["  # also where the text ends
        reading = None if deeper else amount_at(text, opened.end(), measures, whole=False)
        if reading is None or reading.amount is None:
            return None
        if (one := reading.amount.each) is not None:  # "2 tins (2 x 400 g)"
            low, high = reading.amount.low * one.low, reading.amount.high * one.high
            inner = replace(one, low=low, high=high, span=reading.amount.span), reading.end
        elif is_count(reading.amount, measures):
            inner = reading.amount, reading.amount.span.end
        else:
            return None
    close = _CLOSE.match(text, past_same(text, inner[1], measures))
    return (inner[0], close.end(), (close[1] or "").lower() == "each") if close else None


def _refused(text: str, start: int, number: Number, measures: Measures) -> Reading:
    """A number that was refused: its unit is stepped over, so that the food can still be read."""
    unit = unit_at(text, skip(text, number.end), measures)
    end = unit[1] if unit else number.end
    of = _OF.match(text, end)
    problem = Problem(number.rule, number.message, number.start, number.end, number.remedy)
    return Reading(None, start, of.end() if of else end, (problem,))


def _reversed(text: str, start: int, at: int, second: Number, low: Fraction, measures: Measures) -> Reading:
    assert second.value is not None
    written = text[at : second.end]
    hint = f"Write {show(second.value)}-{show(low)}"
    if second.value < 1 < low + 1 and low.denominator == 1:
        hint += f", or {show(low)} {show(second.value)} if {show(low + second.value)} is meant"
    problem = Problem("range-reversed", f"“{written}” runs backwards", at, second.end, hint + ".")
    unit = unit_at(text, skip(text, second.end), measures)
    return Reading(None, start, unit[1] if unit else second.end, (problem,))
