"""The numbers of a dish as a reader meets them: rounded, with their doubt said."""

from __future__ import annotations

import math

from spoonproof.dish import Dish
from spoonproof.foods.intakes import Share
from spoonproof.model.food import NUTRIENT_UNITS
from spoonproof.model.numbers import Estimate
from spoonproof.site.sources import Numbered
from spoonproof.site.view import NutrientRow, Nutrients

NAMES = {
    "energy_kcal": "Energy",
    "protein_g": "Protein",
    "fat_g": "Fat",
    "saturated_fat_g": "of which saturated",
    "carbohydrate_g": "Carbohydrate",
    "sugars_g": "of which sugars",
    "fibre_g": "Fibre",
    "sodium_mg": "Sodium",
    "iron_mg": "Iron",
    "zinc_mg": "Zinc",
    "calcium_mg": "Calcium",
    "iodine_ug": "Iodine",
    "vitamin_a_rae_ug": "Vitamin A",
    "vitamin_c_mg": "Vitamin C",
    "vitamin_d_ug": "Vitamin D",
    "folate_ug": "Folate",
    "vitamin_b12_ug": "Vitamin B12",
}
"""What the page shows, in this order; the command line gives every nutrient."""

COVERED = 0.995


def figure(value: float) -> str:
    """A number with the digits a kitchen sum deserves: 0, 0.03, 1.4, 23, 310."""
    if not math.isfinite(value) or value < 0:
        return "–"
    if value == 0:
        return "0"
    if value < 0.095:
        return f"{value:.1g}" if value >= 0.001 else "under 0.001"
    if value < 9.95:
        return f"{value:.1f}"
    return f"{value:.0f}" if value < 995 else f"{round(value, -1):.0f}"


def nutrients(dish: Dish, cited: Numbered) -> Nutrients | None:
    """The portion against the reference intake; None where the recipe does not say what a portion is."""
    facts, reference = dish.facts, dish.reference
    portion = facts.per_portion
    if portion is None or facts.portion is None:
        return None
    known = {key: portion[key] for key in NAMES if key in portion and portion[key].coverage > 0}
    shares = {key: share for key, estimate in known.items() if (share := reference.share(key, estimate)) is not None}
    rows = tuple(_row(key, known.get(key), shares.get(key), facts.per_100g.get(key)) for key in NAMES)
    tables = sorted({source for part in facts.all_ingredients for source in part.sources})
    grams = facts.portion.mid
    marked = any("†" in row.share_text for row in rows)
    return Nutrients(
        f"a portion of {figure(grams)} g",
        rows,
        reference.authority,
        reference.age_band,
        cited.numbers([share.intake.source for share in shares.values()]),
        cited.numbers(tables),
        " ".join(f"{line[:1].upper()}{line[1:]}." for line in reference.leaves_out if marked or "†" not in line),
        tuple(f"{line[:1].upper()}{line[1:]}." for line in facts.assumed),
    )


def _row(key: str, estimate: Estimate | None, share: Share | None, in_100g: Estimate | None) -> NutrientRow:
    name = NAMES[key]
    if estimate is None:
        return NutrientRow(key, name, "not known", "", "no published value for these foods", coverage=0.0)
    return NutrientRow(
        key,
        name,
        figure(estimate.amount),
        NUTRIENT_UNITS[key],
        doubt(estimate),
        share.share if share else None,
        share_text(share.share, estimate.coverage, share.intake.kind, share.intake.source) if share else "",
        estimate.coverage,
        figure(in_100g.amount) if in_100g is not None else "–",
    )


def doubt(estimate: Estimate) -> str:
    """The range in words, "" where it is no wider than the rounding."""
    if estimate.coverage < COVERED:
        return "or more"
    low, high = figure(estimate.low), figure(estimate.high)
    if low == high or low == figure(estimate.amount) == high or not math.isfinite(estimate.high):
        return ""
    return f"{low} to {high}"


def share_text(share: float, coverage: float, kind: str, source: str = "") -> str:
    """A share as people read it; † where the reference value was recalled and not read in its source."""
    percent = share * 100
    if coverage < COVERED and percent < 1:
        return "too little known"
    if percent == 0:
        return "none"
    text = "over 100 %" if percent > 100 else f"{percent:.0f} %" if percent >= 1 else "under 1 %"
    text = f"at least {text}" if coverage < COVERED and percent <= 100 else text
    text = f"{text} (AI)" if kind == "AI" else text
    return f"{text} †" if source == "from-memory" else text
