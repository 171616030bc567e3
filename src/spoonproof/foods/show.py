"""Facts for people and programs: JSON as the contract has it, and a table with bars for the terminal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import floor, inf, log10

from spoonproof.foods.facts import Facts
from spoonproof.foods.grams import Grams
from spoonproof.foods.intakes import Intake, Reference
from spoonproof.model.food import NUTRIENT_UNITS, PART_OF
from spoonproof.model.numbers import Estimate
from spoonproof.model.record import NamedTuple, replace

NAMES: Mapping[str, str] = {
    "energy_kcal": "energy",
    "protein_g": "protein",
    "fat_g": "fat",
    "saturated_fat_g": "of which saturated",
    "carbohydrate_g": "carbohydrate",
    "sugars_g": "of which sugars",
    "fibre_g": "fibre",
    "water_g": "water",
    "iron_mg": "iron",
    "zinc_mg": "zinc",
    "calcium_mg": "calcium",
    "iodine_ug": "iodine",
    "magnesium_mg": "magnesium",
    "phosphorus_mg": "phosphorus",
    "potassium_mg": "potassium",
    "selenium_ug": "selenium",
    "sodium_mg": "sodium",
    "vitamin_a_rae_ug": "vitamin A",
    "retinol_ug": "of which retinol",
    "vitamin_c_mg": "vitamin C",
    "vitamin_d_ug": "vitamin D",
    "vitamin_e_mg": "vitamin E",
    "vitamin_k_ug": "vitamin K",
    "thiamin_mg": "thiamin (B1)",
    "riboflavin_mg": "riboflavin (B2)",
    "niacin_mg": "niacin (B3)",
    "vitamin_b6_mg": "vitamin B6",
    "folate_ug": "folate",
    "vitamin_b12_ug": "vitamin B12",
    "ala_g": "omega-3 ALA",
    "dha_mg": "omega-3 DHA",
}
"""Nutrient keys in the order they are shown, with their names."""
_BAR = 20


class ShownRow(NamedTuple):
    """One line of a table: ``portion``, ``per_100g`` and ``batch`` are ready to print; ``share`` (0 to 1 and beyond)
    with ``low`` and ``high`` where the authority has a value for the age."""

    nutrient: str
    name: str
    unit: str
    portion: str
    per_100g: str
    batch: str
    share: float | None
    low: float
    high: float
    intake: Intake | None
    coverage: float


def number(amount: float) -> str:
    """A figure with as many digits as it deserves: three at most. "0" only for nothing at all."""
    if amount == inf:
        return "more"
    if amount <= 0:
        return "0"
    if amount < 0.005:
        return "<0.01"
    digits = max(0, 1 - floor(log10(amount))) if amount < 100 else 0
    return f"{amount:.{min(digits, 2)}f}" if amount < 1000 else f"{amount:,.0f}".replace(",", " ")


def told(values: Mapping[str, Estimate], nutrient: str) -> str:
    """``with_range`` of a nutrient, a part of a whole never above it: where of the whole only a least amount is known,
    so is it of the part."""
    part, whole = values.get(nutrient), values.get(PART_OF.get(nutrient, ""))
    if part is not None and whole is not None and whole.high == inf:
        part = replace(part, high=inf)
    return with_range(part)


def with_range(value: Estimate | None) -> str:
    """ "0.31 (0.25–0.40)"; "at least 0.31" where inputs are missing, "not fully known" where the others have none;
    "not known" where all are missing."""
    if value is None:
        return "not known"
    if value.high == inf:
        return f"at least {number(value.low)}" if value.low > 0 else "not fully known"
    mid, low, high = number(value.amount), number(value.low), number(value.high)
    return mid if low == high or (low == mid == high) else f"{mid} ({low}–{high})"


def rows(facts: Facts, reference: Reference | None) -> list[ShownRow]:
    """A row for every nutrient of the contract, those not known included."""
    found: list[ShownRow] = []
    for nutrient, name in NAMES.items():
        portion = facts.per_portion.get(nutrient) if facts.per_portion is not None else None
        share = reference.share(nutrient, portion) if reference is not None and portion is not None else None
        per_100g = facts.per_100g.get(nutrient)
        found.append(
            ShownRow(
                nutrient,
                name,
                NUTRIENT_UNITS[nutrient],
                told(facts.per_portion, nutrient) if facts.per_portion is not None else "",
                told(facts.per_100g, nutrient),
                told(facts.per_batch, nutrient),
                share.share if share else None,
                share.low if share else 0.0,
                share.high if share else 0.0,
                share.intake if share else None,
                per_100g.coverage if per_100g is not None else 0.0,
            )
        )
    return found


def as_json(facts: Facts, reference: Reference | None = None, energy: Intake | None = None) -> dict[str, object]:
    """Facts as ``nutrients --format json`` gives them. An upper end that is not known is null; a nutrient that is
    not known at all is left out. ``energy``: what WHO expects from foods beside breast milk at this age."""
    out: dict[str, object] = {
        "grams": round(facts.grams.mid, 1),
        "portions": facts.portions,
        "portion_grams": _grams(facts.portion) if facts.portion is not None else None,
        "bowls": {
            bowl: {"grams": _grams(found.grams), "per_100g": _values(found.per_100g)}
            for bowl, found in facts.bowls.items()
        },
        "per_batch": _values(facts.per_batch),
        "per_portion": _values(facts.per_portion) if facts.per_portion is not None else None,
        "per_100g": _values(facts.per_100g),
        "reference": _reference(facts, reference),
        "assumed": list(facts.assumed),
    }
    portion = facts.per_portion.get("energy_kcal") if facts.per_portion is not None else None
    if energy is not None:
        out["energy_from_foods"] = {
            "authority": "WHO",
            "value": energy.value,
            "unit": energy.unit,
            "share": _round(portion.amount / energy.value) if portion is not None else None,
            "note": energy.note,
        }
    return out


def _reference(facts: Facts, reference: Reference | None) -> dict[str, object] | None:
    if reference is None:
        return None
    nutrients: dict[str, object] = {}
    for nutrient, intake in reference.nutrients.items():
        portion = facts.per_portion.get(nutrient) if facts.per_portion is not None else None
        share = reference.share(nutrient, portion) if portion is not None else None
        nutrients[nutrient] = {
            "kind": intake.kind,
            "value": intake.value,
            "unit": intake.unit,
            "share": _round(share.share) if share is not None else None,
            "counted_in": intake.counted_in,
            "source": intake.source,
            "note": intake.note,
        }
    said = list(reference.leaves_out)
    if facts.per_portion is None:
        said.append("the recipe does not say how many portions it makes, so no share of a day can be worked out")
    return {
        "authority": reference.authority,
        "age_band": reference.age_band,
        "nutrients": nutrients,
        "leaves_out": said,
    }


def _values(values: Mapping[str, Estimate]) -> dict[str, dict[str, object]]:
    return {
        key: {
            "amount": _round(e.amount),
            "low": _round(e.low),
            "high": None if e.high == inf else _round(e.high),
            "unit": e.unit,
            "coverage": round(e.coverage, 4),
        }
        for key in NUTRIENT_UNITS
        if (e := values.get(key)) is not None
    }


def _grams(grams: Grams) -> dict[str, float]:
    return {"amount": round(grams.mid, 1), "low": round(grams.low, 1), "high": round(grams.high, 1)}


def _round(amount: float) -> float:
    """Six digits: more than any source has, and the same on every machine."""
    return float(f"{amount:.6g}")


def bar(row: ShownRow, width: int = _BAR) -> str:
    """A share of the day as a bar: full up to the low end, light up to the high end, "›" where it runs on."""
    if row.share is None:
        return ""
    low, high = min(1.0, row.low), min(1.0, row.high)
    solid = round(low * width)
    light = max(round(high * width), solid + (1 if high > low else 0)) - solid
    drawn = "█" * solid + "░" * min(light, width - solid)
    return drawn.ljust(width, "·") + ("›" if row.high > 1 else " ")


def as_text(facts: Facts, reference: Reference | None, title: str, width: int = 96) -> str:
    """The table for a terminal, ``width`` columns wide at most (narrow ones lose the bars), without colour."""
    return "\n".join(line.rstrip() for line in _lines(facts, reference, title, max(40, width))) + "\n"


def _lines(facts: Facts, reference: Reference | None, title: str, width: int) -> Iterator[str]:
    yield title
    yield _amounts(facts)
    shown = [row for row in rows(facts, reference) if row.per_100g != "not known"]
    unknown = [row.name for row in rows(facts, reference) if row.per_100g == "not known"]
    amount = "a portion" if facts.portion is not None else "the batch"
    bars = width >= 84 and any(row.share is not None for row in shown)
    if reference is not None and bars:
        yield f"{'':19}{amount:<22}{'100 g':<22}of a day's reference, {reference.authority}, {reference.age_band}"
    else:
        yield f"{'':19}{amount:<22}{'100 g'}"
    for row in shown:
        cell = row.portion or row.batch
        line = f"{row.name:<19}{_cell(cell, row.unit):<22}{_cell(row.per_100g, row.unit):<22}"
        if bars and row.share is not None and row.intake is not None and (row.high < inf or row.low > 0):
            mark = " †" if row.intake.source == "from-memory" else ""
            line += f"{bar(row)}{_percent(row)} of {row.intake.kind} {number(row.intake.value)}{mark}"
        yield line
    if unknown:
        yield f"Not known: {', '.join(unknown)}."
    gaps = [f"{row.name} {row.coverage * 100:.0f} %" for row in shown if row.coverage < 0.995]
    if gaps:
        yield f"Known for part of the weight only: {', '.join(gaps)}."
    if reference is not None:
        for said in reference.leaves_out:
            yield f"· {said[0].upper()}{said[1:]}."
    if facts.assumed:
        yield "Assumed:"
        for said in facts.assumed:
            yield f"  {said}"


def _amounts(facts: Facts) -> str:
    grams = f"{facts.grams.mid:.0f} g"
    if facts.grams.low != facts.grams.high:
        grams += f" ({facts.grams.low:.0f}–{facts.grams.high:.0f})"
    if facts.portion is None or facts.portions is None:
        return grams
    return f"{grams}, {facts.portions} portions of {facts.portion.mid:.0f} g"


def _cell(text: str, unit: str) -> str:
    return f"{text} {unit}" if text and not text.startswith("not ") else text


def _percent(row: ShownRow) -> str:
    low = f"{row.low * 100:.0f}"
    if row.high == inf:
        return f"{low} % or more"
    if 0 < row.high < 0.005:
        return "<1 %"
    high = f"{row.high * 100:.0f}"
    return f"{low}–{high} %" if low != high else f"{low} %"
