"""Spoons and cups as grams: by the food's own household portions, by its density, or by what its kind weighs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from spoonproof.foods.grams import Grams, Step
from spoonproof.model.food import Food
from spoonproof.model.recipe import FoodLine

# What the portions of the composition table were measured with: US customary measures, in ml.
TABLE_ML = {"cup": 236.5882365, "tbsp": 14.78676478125, "tsp": 4.92892159375, "fl-oz": 29.5735295625}
_METRIC = frozenset(("ml", "cl", "dl", "l"))
_PULPED = ("mashed", "puréed")
# Of the cups of mash in the composition table all but one weigh 0.85 to 1.04 g a ml; of leaves pressed into the cup
# no table says anything.
_PULP_G_PER_ML = (1.0, 0.85, 1.05)
_PACKED_LEAVES = (2.0, 1.0, 4.0)

# What a spoonful of such a food weighs where no table says: middle, low and high; common practice, no source.
_ASSUMED_G_PER_ML: Mapping[str, tuple[float, float, float]] = {
    "liquid": (1.0, 0.92, 1.1),
    "paste": (1.05, 0.9, 1.3),
    "powder": (0.55, 0.4, 0.8),
    "grain": (0.75, 0.6, 0.9),
}


def by_volume(line: FoodLine, count: Grams, ml: float, unit: str, food: Food) -> Step | None:
    """``count`` measures of ``ml`` each; None for pieces and leaves of which no table knows a cup."""
    found = list(_densities(line, food, unit))
    if not found:
        return _by_assumed_density(line, count, ml, unit, food)
    exact = [density for density in found if density[3]]
    if _pulped_before(line) and food.hardness in ("hard", "firm", "soft", "leaf") and not _has_pulp(food):
        density, low, high = _PULP_G_PER_ML
        note = f"{food.name}: {ml:g} ml a {unit} at {density:g} g/ml, {low:g} to {high:g} (assumed for a mash)"
        return Step(count.times(ml * density, ml * low, ml * high), True, (note,), ("common-practice",))
    low, high = min(d[0] for d in exact or found), max(d[0] for d in exact or found)
    density, how, source, _ = (exact or found)[0]
    if len(found) > 1 and not exact and f"{low:.2f}" != f"{high:.2f}":
        how = f"{how}; between {low:.2f} and {high:.2f} g/ml by the cut"
    elif exact:
        doubt = 0.01 if food.hardness == "liquid" else 0.07
        low, high = density * (1 - doubt), density * (1 + doubt)
    grams = count.times(ml * density, ml * low, ml * high)
    if food.hardness == "leaf" and line.has("packed"):
        grams = Grams(*(grams.mid * times for times in _PACKED_LEAVES))
        how = f"{how}; about twice that where leaves are packed in, assumed"
    note = f"{food.name}: {ml:g} ml a {unit} at {density:.2f} g/ml ({how})"
    plain = unit in _METRIC and food.hardness == "liquid"
    return Step(grams, True, () if plain else (note,), (source,))


def _pulped_before(line: FoodLine) -> bool:
    """Whether the cup was filled with the mash ("1 cup puréed pumpkin"), not with what is mashed afterwards."""
    return any(
        cut.shape in _PULPED
        and (cut.span.start < line.name_span.start or (cut.shape, cut.span.start) == ("puréed", line.name_span.end + 1))
        for cut in line.cuts
    )  # "puréed pumpkin", "garlic purée"


def _has_pulp(food: Food) -> bool:
    return any(portion.size in _PULPED for portion in food.portions)


def _by_assumed_density(line: FoodLine, count: Grams, ml: float, unit: str, food: Food) -> Step | None:
    """By what things of its kind weigh, with a range wide enough to be honest; None for pieces and leaves."""
    kind = "powder" if {cut.shape for cut in line.cuts} & {"ground", "grated"} else food.hardness
    if kind not in _ASSUMED_G_PER_ML:
        return None
    density, low, high = _ASSUMED_G_PER_ML[kind]
    note = f"{food.name}: {ml:g} ml a {unit} at {density:g} g/ml, {low:g} to {high:g} (assumed for a {kind})"
    return Step(count.times(ml * density, ml * low, ml * high), True, (note,), ("common-practice",))


def _densities(line: FoodLine, food: Food, unit: str) -> Iterator[tuple[float, str, str, bool]]:
    """Bulk densities (g/ml) that may hold for ``unit`` of this line, with whether they are those of its very cut."""
    shapes = {cut.shape for cut in line.cuts}
    words = {word for word, _ in line.prepared} | shapes | _CUT_AS.get(next(iter(shapes), ""), frozenset())
    named = words | {*line.name.lower().split()}  # a cup of orzo is not one of penne
    by_volume = [p for p in food.portions if p.unit in TABLE_ML]
    by_volume = [p for p in by_volume if p.unit == unit] or by_volume  # a cup of leaves is no heap of teaspoons
    by_volume.sort(key=lambda p: (bool(p.size), -TABLE_ML[p.unit]))
    for portion in by_volume:
        if portion.size and portion.size in named:
            yield portion.grams / TABLE_ML[portion.unit], f"{portion.unit}, {portion.size}", portion.source, True
    plain = [p for p in by_volume if not p.size]
    for portion in plain:
        # Powders and liquids have one density; of pieces the plain cup is one of several.
        sure = food.hardness in ("liquid", "powder", "paste", "grain") or not words
        yield portion.grams / TABLE_ML[portion.unit], portion.unit, portion.source, sure and portion is plain[0]
    if not plain:
        for portion in by_volume:
            yield portion.grams / TABLE_ML[portion.unit], f"{portion.unit}, {portion.size}", portion.source, False
    if not by_volume and food.density is not None:
        yield food.density, "density", food.source, True


_CUT_AS: dict[str, frozenset[str]] = {
    "dice": frozenset(("diced", "chopped")),
    "chopped": frozenset(("chopped", "diced")),
    "slice": frozenset(("sliced",)),
    "coin": frozenset(("sliced",)),
    "grated": frozenset(("grated", "shredded")),
    "shredded": frozenset(("shredded", "grated")),
    "mashed": frozenset(("mashed", "puréed")),
    "puréed": frozenset(("puréed", "mashed")),
    "crumbled": frozenset(("crumbled",)),
    "half": frozenset(("half",)),
    "chunk": frozenset(("chunk", "diced")),
    "strip": frozenset(("strip", "sliced")),
    "ground": frozenset(("ground",)),
    "floret": frozenset(("floret", "chopped")),
    "whole": frozenset(("whole",)),
}
