"""How much: an amount in a cook's words, read exactly or refused with the reason.

Arithmetic is ``Fraction``; nothing here knows what a unit weighs for a food.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

from spoonproof.model.recipe import Amount
from spoonproof.model.record import NamedTuple, dataclass, replace
from spoonproof.model.text import Span
from spoonproof.reading.amount_again import (
    SLASH,
    Problem,
    compare,
    is_count,
    measure_at,
    past_same,
    run_on,
    share_of,
    sum_of,
)
from spoonproof.reading.amount_words import (
    AMBIGUOUS,
    FILLER,
    HEDGE,
    LOOSE_COUNTS,
    MASS_OR_VOLUME,
    UNIT_HYPHEN,
    container_at,
    past_hyphen,
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
_OPEN = re.compile(r"[ \t]{0,9}[(\[][ \t]{0,9}")
_CLOSE = re.compile(
    r"(?i)[ \t]{0,9}(each|in total|total|(?:(?:when|once|after|before)[ \t]{1,3})?(?:un)?(?:drained|peel(?:ed|ing)"
    r"|prepared|trimm(?:ed|ing)|weighed|cook(?:ed|ing)|raw|dry|stoned|pitted|cored|grated|chopped|diced|cubed"
    r"|sliced|mashed)(?:[ \t]weight)?|(?:net[ \t])?weight)?[ \t]{0,9}[)\]]"
)
_OR_SO = re.compile(r"(?i)[ \t]{1,9}or[ \t]{1,9}so(?![\w-])")
_OR_ELSE = re.compile(r"(?i)[ \t]{1,9}or[ \t]{1,9}(?=[0-9½⅓⅔¼¾]|(?:two|three|four)\b)")
_PLUS = re.compile(r"(?i)[ \t]{0,9}(?:\+|\bplus\b)[ \t]{0,9}(?=[0-9½⅓⅔¼¾]|an? )")
_CONTAINERS = frozenset("tin jar pack bag pouch tub carton bottle block ball bunch sheet nest loaf".split())


class Reading(NamedTuple):
    """``amount`` stands at ``text[start:end]``; None with problems when it was refused."""

    amount: Amount | None
    start: int
    end: int
    problems: tuple[Problem, ...] = ()


def moved(amount: Amount, place: Callable[[int, int], Span]) -> Amount:
    """The amount with each span put through ``place(start, end)``."""
    each = moved(amount.each, place) if amount.each is not None else None
    return replace(amount, span=place(amount.span.start, amount.span.end), each=each)


def amount_at(text: str, at: int, measures: Measures, *, whole: bool = True) -> Reading | None:
    """The amount that starts at ``at``; None when none does. Never raises.

    ``whole``: with what may follow it (a weight in brackets, a second amount to add); False for such a part itself.
    """
    return _Reader(text, skip(text, at), measures, whole).read()


@dataclass(slots=True)
class _Reader:
    """One amount on its way; offsets are into ``text``."""

    text: str
    start: int
    measures: Measures
    whole: bool
    about: bool = False

    def read(self) -> Reading | None:
        text, measures = self.text, self.measures
        some = _SOME.match(text, self.start)
        if some is not None and not unit_at(text, skip(text, some.end()), measures):
            span = Span(self.start, some.end())
            return Reading(Amount(Fraction(0), Fraction(0), "", span, to_taste=True), *span)
        at = self.start
        while (hedge := HEDGE.match(text, at)) and hedge.end() > at:
            self.about = self.about or hedge[0].strip().lower() not in _LOOSE
            at = skip(text, hedge.end())
        first = quantity_at(text, at)
        if first is None:
            return self._no_number(at)
        number, hedged = first
        if number.value is None:
            return self._refused(number)
        self.about = self.about or hedged
        low = high = number.value
        if number.rule == "range":  # "a few": the message field carries nothing, the range is in the table
            low, high = LOOSE_COUNTS[number.message]
        return self._range(at, number.end, low, high)

    def _range(self, begin: int, at: int, low: Fraction, high: Fraction) -> Reading:
        """The amount whose first number stands from ``begin`` to ``at``."""
        text, measures = self.text, self.measures
        unit_between, after_unit = unit_then_range(text, at, measures)
        sign = range_sign(text, after_unit)
        if sign is not None and self._counts_containers(sign):
            return self._with_unit(sign - 1, low, high)
        second = number_at(text, sign) if sign is not None else None
        if second is not None:
            if second.value is None:
                return self._refused(second)
            if second.value < low:
                return self._reversed(begin, second, low)
            return self._with_unit(second.end, low, second.value)
        dangling = _DANGLING.match(text, at) if sign is None and unit_between is None else None
        if dangling is None or UNIT_HYPHEN.match(text, at):
            return self._with_unit(at, low, high)
        end = len(text[: dangling.end()].rstrip())
        message = f"“{text[begin:end]}” starts a range and does not end it"
        problem = Problem("range-not-closed", message, begin, end, "Write both ends, as in 2-3, or one number.")
        unit = unit_at(text, skip(text, dangling.end()), measures)
        return Reading(None, self.start, unit[1] if unit else dangling.end(), (problem,))

    def _counts_containers(self, at: int) -> bool:
        """ "1 - 24 oz jar", "2 – 400 g tins": no range, but so many of that size."""
        each = measure_at(self.text, at, self.measures) if self.text[at - 1] in " \t" else None
        if each is None or each[0].low != each[0].high:
            return False
        return container_at(self.text, each[1], self.measures) is not None

    def _with_unit(self, at: int, low: Fraction, high: Fraction) -> Reading:
        text, measures = self.text, self.measures
        each: Amount | None = None
        end = at
        times = _TIMES.match(text, at)
        inner_at = times.end() if times else skip(text, at)
        if times or (inner_at > at and text[inner_at : inner_at + 1].isnumeric()):
            inner = measure_at(text, inner_at, measures)
            second = number_at(text, inner_at) if inner is None and times else None
            if second is not None and second.value is None:
                return self._refused(second)
            if inner is not None:
                each, at = inner
                end = at
                hyphen = UNIT_HYPHEN.match(text, at)
                at = hyphen.end() if hyphen is not None else at
        bracket = bracket_at(text, at, measures) if each is None else None
        if bracket is not None and container_at(text, bracket[1], measures):
            each, at = bracket[0], bracket[1]
            end = at
        unit_id, at, end, size = _unit_after(text, at, end, measures)
        if unit_id in AMBIGUOUS:
            readings, remedy = AMBIGUOUS[unit_id]
            message = f"“{text[end - len(unit_id) : end]}” can mean {readings}"
            problem = Problem("ambiguous-unit", message, end - len(unit_id), end, remedy)
            return Reading(None, self.start, end, (problem,))
        about = self.about
        if each is None and measures.kind(unit_id) in MASS_OR_VOLUME:
            # "a 400 g tin" and "400 g tin of": the mass is of one container
            container = container_at(text, at, measures)
            if container is not None and low == high and container[0] in _CONTAINERS:
                each = Amount(low, high, unit_id, Span(self.start, end), about=about)
                low = high = Fraction(1)
                about = False
                unit_id, end = container
        span = Span(self.start, end)
        return self._after_unit(Amount(low, high, unit_id or "piece", span, size=size, each=each, about=about))

    def _after_unit(self, amount: Amount) -> Reading:
        """What may follow: a weight in brackets, the same in another unit, a second amount to add, "of"."""
        if not self.whole:
            return Reading(amount, self.start, amount.span.end)
        text, measures = self.text, self.measures
        amount, end = _or_else(text, amount, measures)
        exact = measures.kind(amount.unit) in MASS_OR_VOLUME
        if exact:
            amount, end = run_on(text, end, amount, measures) or (amount, end)
        end, problems = _in_other_units(text, end, amount, measures) if exact else (end, [])
        plus = _PLUS.match(text, end)
        more = amount_at(text, plus.end(), measures, whole=False) if plus is not None else None
        if more is not None and more.amount is not None:
            summed = sum_of(amount, more.amount, measures)
            if summed is None:
                message = f"“{text[self.start : more.end].strip()}” adds two amounts that can't be summed"
                problem = Problem("two-amounts", message, self.start, more.end, "Write one amount, or two lines.")
                return Reading(None, self.start, more.end, (*problems, problem))
            amount, end = replace(summed, span=Span(self.start, more.end)), more.end
        bracket = bracket_at(text, end, measures)
        if bracket is not None:
            inner, end, each = bracket
            if not is_count(inner, measures):
                if exact and measures.ratio(inner.unit, amount.unit) is not None:
                    problems += compare(amount, inner, measures)
                elif amount.each is None and (not exact or measures.kind(inner.unit) == "mass"):
                    amount = share_of(amount, inner, each)
        return Reading(replace(amount, span=Span(self.start, end)), self.start, _past_of(text, end), tuple(problems))

    def _no_number(self, at: int) -> Reading | None:
        """ "Small handful of", "pinch of", "thumb-sized piece of": one of the unit that is named."""
        text, measures = self.text, self.measures
        size, after = size_at(text, at)
        unit = unit_at(text, after, measures)
        kind = measures.kind(unit[0]) if unit is not None and unit[0] not in AMBIGUOUS else ""
        if unit is None or not kind or unit[0] == "piece":
            return None
        unit_id, end = unit
        plural = text[after:end].rstrip(".").endswith("s")
        # "A scant tablespoon", whose article the hedge has taken; "Teaspoon salt".
        one = text[self.start : at].lower().startswith("a ") or (unit_id in _SPOONS and not plural)
        if not one and (
            kind not in ("about", "count")
            or (kind == "count" and text[after:end].endswith("s"))  # "cubes of swede": how many is not said
            or (_OF.match(text, end) is None and kind != "about" and not (unit_id == "bunch" or size))
        ):
            return None
        span = Span(self.start, end)
        return self._after_unit(Amount(Fraction(1), Fraction(1), unit_id, span, size=size, about=self.about))

    def _refused(self, number: Number) -> Reading:
        """A number that was refused: its unit is stepped over, so that the food can still be read."""
        unit = unit_at(self.text, skip(self.text, number.end), self.measures)
        problem = Problem(number.rule, number.message, number.start, number.end, number.remedy)
        return Reading(None, self.start, _past_of(self.text, unit[1] if unit else number.end), (problem,))

    def _reversed(self, at: int, second: Number, low: Fraction) -> Reading:
        assert second.value is not None
        hint = f"Write {show(second.value)}-{show(low)}"
        if second.value < 1 < low + 1 and low.denominator == 1:
            hint += f", or {show(low)} {show(second.value)} if {show(low + second.value)} is meant"
        message = f"“{self.text[at : second.end]}” runs backwards"
        unit = unit_at(self.text, skip(self.text, second.end), self.measures)
        problem = Problem("range-reversed", message, at, second.end, hint + ".")
        return Reading(None, self.start, unit[1] if unit else second.end, (problem,))


def _past_of(text: str, at: int) -> int:
    """Where the food's words begin, behind an "of"."""
    of = _OF.match(text, at)
    return of.end() if of else at


def _in_other_units(text: str, at: int, amount: Amount, measures: Measures) -> tuple[int, list[Problem]]:
    """Where "50 g/2 oz/1/3 cup" ends, and what of it is another amount than the first."""
    problems: list[Problem] = []
    while (slash := SLASH.match(text, at)) is not None:
        other = measure_at(text, slash.end(), measures)
        if other is None:
            break
        said, at = run_on(text, other[1], other[0], measures) or other  # "650 g/1 lb 7 oz"
        problems += compare(amount, said, measures)
    return at, problems


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


def _unit_after(text: str, at: int, end: int, measures: Measures) -> tuple[str, int, int, str]:
    """Size words and a unit after a number: (unit id or "", where to go on, end of the amount, size)."""
    size, position = size_at(text, past_hyphen(text, at))
    if size:
        end = len(text[:position].rstrip())
    filler = FILLER.match(text, position)
    unit = unit_at(text, filler.end() if filler else position, measures) or unit_at(text, position, measures)
    return (unit[0], unit[1], unit[1], size) if unit is not None else ("", end, end, size)


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
