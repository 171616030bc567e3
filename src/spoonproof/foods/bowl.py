"""The sums of one bowl: amounts with their range and coverage, for the batch and for 100 g."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import fsum, inf

from spoonproof.foods.ingredient import Content, Ingredient
from spoonproof.foods.weigh import Grams
from spoonproof.model.food import NUTRIENT_UNITS, NutrientValue
from spoonproof.model.numbers import Estimate


@dataclass(frozen=True, slots=True)
class BowlFacts:
    """``grams`` of the finished bowl, ``computed`` what the yields make of it (the same unless it was weighed),
    ``raw_grams`` what went in; ``batch`` and ``per_100g`` by nutrient key. A key is absent where no food of the bowl
    has a value: not known is not zero."""

    grams: Grams
    raw_grams: Grams
    computed: Grams
    batch: Mapping[str, Estimate]
    per_100g: Mapping[str, Estimate]


def bowl_facts(parts: Sequence[Ingredient], weighed: Grams | None = None) -> BowlFacts:
    """The sums over ``parts``; ``weighed`` is what the finished bowl weighed on the scale, where it was weighed."""
    counted = [part for part in parts if part.raw.mid > 0 and not part.left_out]
    open_ended = [part for part in parts if part.why and not part.left_out]
    raw = (
        Grams(*(fsum(column) for column in zip(*(p.raw for p in counted), strict=True))) if counted else Grams(0, 0, 0)
    )
    cooked = Grams(*(fsum(c) for c in zip(*(p.cooked for p in counted), strict=True))) if counted else Grams(0, 0, 0)
    final = weighed or cooked
    batch: dict[str, Estimate] = {}
    per_100g: dict[str, Estimate] = {}
    for nutrient, unit in NUTRIENT_UNITS.items():
        total = _sum(counted, nutrient, raw.mid)
        if total is None:
            continue
        terms, coverage, sources = total
        amount = Grams(fsum(t.mid for t in terms), fsum(t.low for t in terms), fsum(t.high for t in terms))
        if nutrient == "water_g":
            amount = _water(amount, raw, final)
        at_least = coverage < 1 or any(_may_bring(part, nutrient) for part in open_ended)
        high = inf if at_least else amount.high
        batch[nutrient] = Estimate(amount.mid, min(amount.low, amount.mid), high, unit, coverage, sources)
        if final.mid > 0:
            per_100g[nutrient] = _per_100g(batch[nutrient], amount, final, counted, nutrient, weighed is not None)
    return BowlFacts(final, raw, cooked, batch, per_100g)


def _sum(parts: Sequence[Ingredient], nutrient: str, total: float) -> tuple[list[Grams], float, tuple[str, ...]] | None:
    terms: list[Grams] = []
    covered: list[float] = []
    missing = False
    sources: dict[str, None] = {}
    for part in parts:
        value = _value(part, nutrient)
        if value is None:
            missing = True
            continue
        share = part.kept.shares.get(nutrient, 1.0) / 100
        terms.append(
            Grams(
                part.raw.mid * value.amount * share,
                part.raw.low * value.low * share,
                part.raw.high * value.high * share,
            )
        )
        rests_on = value.coverage if isinstance(value, Content) else 1.0
        missing = missing or rests_on < 1
        covered.append(part.raw.mid * rests_on)
        sources.update(dict.fromkeys(part.sources))
        if isinstance(value, NutrientValue) and value.source:
            sources[value.source] = None
    if not terms:
        return None
    coverage = min(1.0, fsum(covered) / total) if missing and total else 1.0
    return terms, coverage, tuple(sorted(sources))


def _value(part: Ingredient, nutrient: str) -> NutrientValue | Content | None:
    return part.values.get(nutrient) if part.values is not None else None


def _may_bring(part: Ingredient, nutrient: str) -> bool:
    """Whether a line with no known weight could add to a nutrient: yes unless its food has a zero there."""
    value = _value(part, nutrient)
    return value is None or value.amount > 0 or value.high > 0


def _water(amount: Grams, raw: Grams, final: Grams) -> Grams:
    """Cooking changes the weight by water: what is gained or lost is water."""
    change = final.mid - raw.mid
    mid = max(0.0, amount.mid + change)
    return Grams(mid, max(0.0, min(mid, amount.low + change)), max(mid, amount.high + change))


def _per_100g(
    batch: Estimate, amount: Grams, final: Grams, parts: Sequence[Ingredient], nutrient: str, weighed: bool
) -> Estimate:
    mid = min(batch.amount / final.mid * 100, inf)
    if weighed:
        low, high = amount.low / final.high * 100, amount.high / final.low * 100
    elif nutrient == "water_g":
        low, high = _water_bounds(parts)
    else:
        low, high = _bounds(parts, nutrient)
    if nutrient == "water_g":
        mid, high = min(mid, 100.0), min(high, 100.0)
    return Estimate(
        mid,
        min(low, mid),
        inf if batch.high == inf else max(high, mid),
        batch.unit,
        batch.coverage,
        batch.sources,
    )


def _bounds(parts: Sequence[Ingredient], nutrient: str) -> tuple[float, float]:
    """The exact least and most of a nutrient in 100 g when each food's weight may lie anywhere in its range.

    (A doubt about how much pear there is does not make a pear purée richer or poorer: weights stand above and
    below the line together.)
    """
    least: list[tuple[float, float, float, float]] = []
    most: list[tuple[float, float, float, float]] = []
    for part in parts:
        value = _value(part, nutrient)
        share = part.kept.shares.get(nutrient, 1.0)
        low, high = (value.low * share, value.high * share) if value is not None else (0.0, 0.0)
        shrinks, grows = part.cooked.low / part.raw.low, part.cooked.high / part.raw.high
        least.append((part.raw.low, part.raw.high, low, grows))
        most.append((part.raw.low, part.raw.high, high, shrinks))
    return max(0.0, -_extreme((low, high, -a, y) for low, high, a, y in least)), _extreme(most)


def _water_bounds(parts: Sequence[Ingredient]) -> tuple[float, float]:
    """Least and most water in 100 g: what is not dry matter, which cooking leaves as it is."""
    least: list[tuple[float, float, float, float]] = []
    most: list[tuple[float, float, float, float]] = []
    for part in parts:
        value = _value(part, "water_g")
        dry = 100 - value.amount if value is not None else 50.0
        least.append((part.raw.low, part.raw.high, dry, part.cooked.low / part.raw.low))
        most.append((part.raw.low, part.raw.high, -dry, part.cooked.high / part.raw.high))
    return max(0.0, 100 - _extreme(least)), 100 + _extreme(most)


def _extreme(items: Iterable[tuple[float, float, float, float]]) -> float:
    """The largest sum(g x a) / sum(g x y) with every g between its bounds: richest foods at their most first."""
    ordered = sorted(items, key=lambda item: -item[2] / item[3])
    top = fsum(low * a for low, _, a, _ in ordered)
    under = fsum(low * y for low, _, _, y in ordered)
    best = top / under
    for low, high, a, y in ordered:
        top += (high - low) * a
        under += (high - low) * y
        best = max(best, top / under)
    return best
