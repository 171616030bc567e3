"""Sums over parts: pure, exact in any order, with the share of the weight each sum rests on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import fsum, isfinite

from spoonproof.model.record import dataclass, field


@dataclass(frozen=True, slots=True)
class Part:
    """``grams`` of something with ``per_100g`` (nutrient key to amount) as it goes in.

    ``kept``: the share of a nutrient kept in cooking, 0 to 1 and 1 where absent. A nutrient that is absent from
    ``per_100g`` is not known, which is not zero.
    """

    grams: float
    per_100g: Mapping[str, float]
    kept: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Combined:
    """A whole batch: final ``grams``, ``amounts`` by nutrient, and ``coverage`` (0 to 1) by nutrient: the share of
    the weight that went in whose parts have a value. Where coverage is below 1 the amount is "at least"."""

    grams: float
    amounts: Mapping[str, float]
    coverage: Mapping[str, float]


def combine(parts: Iterable[Part], final_grams: float | None = None) -> Combined:
    """The sum of ``parts``; the same to the last digit in whatever order they come.

    ``final_grams``: what the batch weighs when done (water lost or gained), the sum of the parts when None. It does
    not change the amounts. A nutrient that no part knows has no amount at all.

    Raises ValueError for grams, values or shares that are negative or no finite numbers, and shares above 1.
    """
    all_parts = list(parts)
    terms: dict[str, list[float]] = {}
    known: dict[str, list[float]] = {}
    for part in all_parts:
        _check(part.grams, "grams")
        for nutrient, amount in part.per_100g.items():
            _check(amount, nutrient)
            kept = part.kept.get(nutrient, 1.0)
            if not 0 <= kept <= 1:
                raise ValueError(f"the share of {nutrient} that is kept should be from 0 to 1, not {kept!r}")
            terms.setdefault(nutrient, []).append(part.grams * amount * kept / 100)
            known.setdefault(nutrient, []).append(part.grams)
    total = fsum(part.grams for part in all_parts)
    if final_grams is not None:
        _check(final_grams, "final_grams")
    if not isfinite(total):
        raise ValueError("the parts are too heavy to add up")
    coverage = {key: min(1.0, fsum(grams) / total) if total else 0.0 for key, grams in known.items()}
    return Combined(
        total if final_grams is None else float(final_grams),
        {key: fsum(amounts) for key, amounts in sorted(terms.items())},
        {key: coverage[key] for key in sorted(coverage)},
    )


def _check(amount: float, what: str) -> None:
    if not isfinite(amount) or amount < 0:
        raise ValueError(f"{what} should be a number from 0 up, not {amount!r}")
