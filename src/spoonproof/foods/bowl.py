"""The sums of one bowl: amounts with their range and coverage, for the batch and for 100 g."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import fsum, inf

from spoonproof.foods.grams import Grams
from spoonproof.foods.ingredient import Content, Ingredient
from spoonproof.foods.values import Values
from spoonproof.model.food import NUTRIENT_UNITS, PART_OF, NutrientValue
from spoonproof.model.numbers import Estimate
from spoonproof.model.record import NamedTuple, dataclass, replace


@dataclass(frozen=True, slots=True)
class BowlFacts:
    """``grams`` of the finished bowl, ``computed`` what the yields make of it (the same unless it was weighed);
    ``batch`` and ``per_100g`` by nutrient key. A key is absent where no food of the bowl
    has a value: not known is not zero."""

    grams: Grams
    computed: Grams
    batch: Mapping[str, Estimate]
    per_100g: Mapping[str, Estimate]


def bowl_facts(parts: Sequence[Ingredient], weighed: Grams | None = None) -> BowlFacts:
    """The sums over ``parts``; ``weighed`` is what the finished bowl weighed on the scale, where it was weighed."""
    counted = [_counted(part) for part in parts if part.raw.mid > 0 and not part.left_out]
    open_ended = [part for part in parts if part.why and not part.left_out]
    raw, cooked = _total([part.raw for part in counted]), _total([part.cooked for part in counted])
    final = weighed or cooked
    every_source = _sources(counted)
    batch: dict[str, Estimate] = {}
    per_100g: dict[str, Estimate] = {}
    for nutrient, unit in NUTRIENT_UNITS.items():
        values = [part.values.get(nutrient) for part in counted]
        known = [(part, value) for part, value in zip(counted, values, strict=True) if value is not None]
        if not known:
            continue
        amount = _amount(known, nutrient)
        coverage, sources = _rests_on(known, len(counted), raw.mid, every_source)
        if nutrient == "water_g":
            amount = _water(amount, raw, final)
        at_least = coverage < 1 or any(_may_bring(part, nutrient) for part in open_ended)
        high = inf if at_least else amount.high
        batch[nutrient] = whole = Estimate(amount.mid, min(amount.low, amount.mid), high, unit, coverage, sources)
        if final.mid > 0:
            low, most = _range_per_100g(counted, values, nutrient, amount, final, weighed is not None)
            mid = amount.mid / final.mid * 100
            if nutrient == "water_g":
                mid, most = min(mid, 100.0), min(most, 100.0)
            per_100g[nutrient] = Estimate(
                mid, min(low, mid), inf if whole.high == inf else max(most, mid), unit, coverage, sources
            )
    return BowlFacts(final, cooked, _wholes_hold_parts(batch), _wholes_hold_parts(per_100g))


def _wholes_hold_parts(values: Mapping[str, Estimate]) -> Mapping[str, Estimate]:
    """``values`` with every whole at least its part: the two were measured apart (sugars) or worked out by difference
    (carbohydrate), and a food may have a value for its retinol alone."""
    raised = dict(values)
    for name, whole_name in PART_OF.items():
        part, whole = values.get(name), raised.get(whole_name)
        if part is None or whole is None:
            continue
        amount, low = max(whole.amount, part.amount), max(whole.low, part.low)
        high = whole.high if part.high == inf else max(whole.high, part.high)
        raised[whole_name] = replace(whole, amount=amount, low=low, high=max(high, amount))
    return raised


class _Part(NamedTuple):
    """A counted ingredient with what the sums need at hand."""

    raw: Grams
    cooked: Grams
    shrinks: float  # cooked weight for 1 g raw: least ...
    grows: float  # ... and most
    values: Mapping[str, NutrientValue | Content]
    kept: Mapping[str, float]
    sources: tuple[str, ...]


def _counted(part: Ingredient) -> _Part:
    values = part.values or {}
    return _Part(
        part.raw,
        part.cooked,
        part.cooked.low / part.raw.low,
        part.cooked.high / part.raw.high,
        values.all() if isinstance(values, Values) else values,
        part.kept.shares,
        part.sources,
    )


def _total(weights: Sequence[Grams]) -> Grams:
    return Grams(fsum(w.mid for w in weights), fsum(w.low for w in weights), fsum(w.high for w in weights))


def _amount(known: Sequence[tuple[_Part, NutrientValue | Content]], nutrient: str) -> Grams:
    mid: list[float] = []
    low: list[float] = []
    high: list[float] = []
    for part, value in known:
        share = part.kept.get(nutrient, 1.0) / 100
        mid.append(part.raw.mid * value.amount * share)
        low.append(part.raw.low * value.low * share)
        high.append(part.raw.high * value.high * share)
    return Grams(fsum(mid), fsum(low), fsum(high))


def _rests_on(
    known: Sequence[tuple[_Part, NutrientValue | Content]], count: int, total: float, every_source: tuple[str, ...]
) -> tuple[float, tuple[str, ...]]:
    """The share of the weight whose foods have a value, and the sources of those foods and values."""
    others = {value.source for _, value in known if isinstance(value, NutrientValue) and value.source}
    partly = any(value.coverage < 1 for _, value in known if isinstance(value, Content))
    if len(known) == count and not partly:
        return 1.0, tuple(sorted({*every_source, *others})) if others else every_source
    weights = [part.raw.mid * (value.coverage if isinstance(value, Content) else 1.0) for part, value in known]
    coverage = min(1.0, fsum(weights) / total) if total else 1.0
    return coverage, tuple(sorted({*_sources([part for part, _ in known]), *others}))


def _sources(parts: Sequence[_Part]) -> tuple[str, ...]:
    return tuple(sorted({source for part in parts for source in part.sources}))


def _may_bring(part: Ingredient, nutrient: str) -> bool:
    """Whether a line with no known weight could add to a nutrient: yes unless its food has a zero there."""
    value = part.values.get(nutrient) if part.values is not None else None
    return value is None or value.amount > 0 or value.high > 0


def _water(amount: Grams, raw: Grams, final: Grams) -> Grams:
    """Cooking changes the weight by water: what is gained or lost is water."""
    change = final.mid - raw.mid
    mid = max(0.0, amount.mid + change)
    return Grams(mid, max(0.0, min(mid, amount.low + change)), max(mid, amount.high + change))


def _range_per_100g(
    parts: Sequence[_Part],
    values: Sequence[NutrientValue | Content | None],
    nutrient: str,
    amount: Grams,
    final: Grams,
    weighed: bool,
) -> tuple[float, float]:
    """The exact least and most of a nutrient in 100 g when each food's weight may lie anywhere in its range.

    (A doubt about how much pear there is does not make a pear purée richer or poorer: weights stand above and
    below the line together.)
    """
    if weighed:
        return amount.low / final.high * 100, amount.high / final.low * 100
    if nutrient == "water_g":
        # Water is what is not dry matter, and dry matter is what cooking leaves as it is.
        dry = [100 - value.amount if value is not None else 50.0 for value in values]
        least = 100 - _richest([(p.raw, a, p.shrinks) for p, a in zip(parts, dry, strict=True)])
        return max(0.0, least), 100 + _richest([(p.raw, -a, p.grows) for p, a in zip(parts, dry, strict=True)])
    if not amount.high:
        return 0.0, 0.0
    low: list[tuple[Grams, float, float]] = []
    high: list[tuple[Grams, float, float]] = []
    for part, value in zip(parts, values, strict=True):
        share = part.kept.get(nutrient, 1.0)
        low.append((part.raw, -value.low * share if value is not None else 0.0, part.grows))
        high.append((part.raw, value.high * share if value is not None else 0.0, part.shrinks))
    return max(0.0, -_richest(low)), _richest(high)


def _richest(items: Sequence[tuple[Grams, float, float]]) -> float:
    """The largest sum(g x a) / sum(g x y), every g between its low and high: the richest foods at their most.

    ``items`` are weight, amount ``a`` per 100 g raw, and cooked weight ``y`` for 1 g raw.
    """
    top = fsum([grams.low * a for grams, a, _ in items])
    under = fsum([grams.low * y for grams, _, y in items])
    best = top / under
    loose = [
        (a / y, (grams.high - grams.low) * a, (grams.high - grams.low) * y)
        for grams, a, y in items
        if grams.high > grams.low
    ]
    loose.sort(reverse=True)
    for richness, more, weight in loose:
        if richness <= best:
            break  # what is poorer than the mix can only thin it
        top += more
        under += weight
        best = top / under
    return best
