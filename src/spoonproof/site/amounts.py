"""Amounts of a food line as shown: as written, metric, or in American measures, at four scales.

Weights go to weights and volumes to volumes exactly, then are rounded to what a kitchen can measure.
A weight never becomes a cup: that would need the food's density, and a wrong one is worse than none.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache

from spoonproof.claims.inflect import plural
from spoonproof.model.recipe import Amount
from spoonproof.site.view import Choice, Shown

SYSTEMS = (Choice("written", "as written"), Choice("metric", "metric"), Choice("us", "American"))
"""Measure systems that can be shown."""

SCALES = (Choice("half", "half"), Choice("1", "as written"), Choice("2", "double"), Choice("3", "triple"))
"""How much of a recipe can be shown."""

FACTORS = {"half": Fraction(1, 2), "1": Fraction(1), "2": Fraction(2), "3": Fraction(3)}

_SIGNS = {
    Fraction(1, 2): "½", Fraction(1, 3): "⅓", Fraction(2, 3): "⅔", Fraction(1, 4): "¼", Fraction(3, 4): "¾",
    Fraction(1, 8): "⅛", Fraction(3, 8): "⅜", Fraction(5, 8): "⅝", Fraction(7, 8): "⅞", Fraction(1, 5): "⅕",
    Fraction(1, 6): "⅙",
}  # fmt: skip

_PLAIN = frozenset({"g", "kg", "mg", "ml", "cl", "dl", "l", "oz", "lb", "tsp", "dsp", "tbsp", "fl-oz"})
_METRIC = frozenset({"g", "kg", "mg", "ml", "cl", "dl", "l"})
_SHOWN = {"fl-oz": "fl oz", "cm-piece": "cm piece"}

Contents = Callable[[str], tuple[str, Fraction] | None]
"""What one unit holds: ("g" or "ml", how many), None for counts and pinches."""


def number(value: Fraction) -> str:
    """A number as cooks write it: "1½", "300", "2.7"."""
    whole, rest = divmod(value, 1)
    if rest == 0:
        return str(whole)
    if rest in _SIGNS:
        return f"{whole or ''}{_SIGNS[rest]}"
    return f"{float(value):.3g}" if value < 100 else str(round(value))


def _decimal(value: Fraction) -> str:
    """A number on a scale or jug, which know no halves and fifths: "1.2", "7.5"."""
    return f"{float(value):.3g}" if value < 1000 else str(round(value))


def _round_to(value: Fraction, step: Fraction) -> Fraction:
    return step * max(1, round(value / step))


def _weighable(grams: Fraction) -> Fraction:
    for limit, step in ((10, Fraction(1, 2)), (100, Fraction(1)), (1000, Fraction(5))):
        if grams < limit:
            return _round_to(grams, step)
    return _round_to(grams, Fraction(10))


@lru_cache(maxsize=4096)
def metric(kind: str, amount: Fraction) -> str:
    """Grams or millilitres for a kitchen scale or jug."""
    value = _weighable(amount)
    if value >= 1000:
        return f"{_decimal(value / 1000)} {'kg' if kind == 'g' else 'l'}"
    return f"{_decimal(value)} {kind}"


@lru_cache(maxsize=4096)
def american(kind: str, amount: Fraction) -> str:
    """Ounces and pounds, or US spoons and cups."""
    if kind == "g":
        ounces = amount / Fraction("28.349523125")
        if ounces >= 16:
            pounds, rest = divmod(_round_to(ounces, Fraction(1, 2)), 16)
            return f"{pounds} lb" + (f" {number(rest)} oz" if rest else "")
        return f"{number(_round_to(ounces, Fraction(1, 4) if ounces >= 1 else Fraction(1, 8)))} oz"
    cup = Fraction("236.5882365")
    if amount >= cup / 4:
        quarters = _round_to(amount / cup, Fraction(1, 4))
        thirds = _round_to(amount / cup, Fraction(1, 3))
        best = min((quarters, thirds), key=lambda v: (abs(v - amount / cup), v))
        return f"{number(best)} cup{'s' if best > 1 else ''}"
    spoon = cup / 16
    if amount >= spoon:
        return f"{number(_round_to(amount / spoon, Fraction(1, 2)))} tbsp"
    return f"{number(_round_to(amount * 3 / spoon, Fraction(1, 4)))} tsp"


def written(amount: Amount, factor: Fraction) -> str:
    """The author's own amount, times ``factor``."""
    low = amount.low * factor
    high = low if amount.high == amount.low else amount.high * factor
    shown = _decimal if amount.unit in _METRIC else number
    text = shown(low) if low == high else f"{shown(low)}–{shown(high)}"
    if amount.each is not None:
        text += f" × {number(amount.each.low)} {_unit(amount.each.unit, Fraction(1))}"
    if amount.size:
        text += f" {amount.size}"
    if amount.unit not in ("piece", "", "each"):
        text += f" {_unit(amount.unit, high)}"
    return f"about {text}" if amount.about else text


def _unit(unit: str, count: Fraction) -> str:
    word = _SHOWN.get(unit, unit.replace("-", " "))
    if unit in _PLAIN or count <= 1:
        return word
    return plural(word)


def shown(amount: Amount | None, contents: Contents) -> tuple[Shown, ...]:
    """Every way the amount can be shown. "to taste" and missing amounts give one empty text."""
    if amount is None or amount.to_taste:
        text = "to taste" if amount is not None else ""
        return tuple(Shown(system.id, scale.id, text) for system in SYSTEMS for scale in SCALES) if text else ()
    out = []
    holds = contents(amount.unit) if amount.each is None else None
    for scale in SCALES:
        factor = FACTORS[scale.id]
        own = written(amount, factor)
        out.append(Shown("written", scale.id, own))
        if holds is None:
            out += (Shown(system, scale.id, own) for system in ("metric", "us"))
            continue
        kind, one = holds
        least = amount.low * one * factor
        most = least if amount.high == amount.low else amount.high * one * factor
        for system, words in (("metric", metric), ("us", american)):
            low = words(kind, least)
            high = low if most == least else words(kind, most)
            text = low if low == high else f"{low} to {high}"
            out.append(Shown(system, scale.id, f"about {text}" if amount.about else text))
    return tuple(out)
