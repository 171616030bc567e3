"""What the judging tests share: the real register, made-up numbers, and claims in one line."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml

from spoonproof.claims.judge import Context, judge
from spoonproof.claims.register import Register
from spoonproof.model.claim import Claim, JudgedClaim, Quantity
from spoonproof.model.finding import Finding
from spoonproof.model.numbers import Estimate, Per
from spoonproof.model.table import Row
from spoonproof.model.text import Document, Passage, Piece
from spoonproof.model.tree import Mapped
from spoonproof.reading.yaml_tree import read_yaml

ROOT = Path(__file__).resolve().parents[2]
TODAY = "2026-11-27"


def rows(path: Path) -> list[Row]:
    """A table's rows."""
    with path.open(encoding="utf-8", newline="") as file:
        return [
            Row({k: v.strip() for k, v in cells.items()}, path.name, line)
            for line, cells in enumerate(csv.DictReader(file), 2)
        ]


def read_register(*texts: str, **more: Any) -> tuple[Register, list[Finding]]:
    """A register out of YAML texts."""
    files = []
    for number, text in enumerate(texts):
        document = Document(f"claims/{number}.yaml", text)
        node, findings = read_yaml(document)
        assert not findings, findings
        assert isinstance(node, Mapped)
        files.append((document, node))
    return Register.from_nodes(
        files,
        more.pop("authorised", rows(ROOT / "claims/authorised.csv")),
        reference_rows=rows(ROOT / "shared/claim_references.csv"),
        allergen_rows=rows(ROOT / "shared/allergen_lists.csv"),
        **more,
    )


@lru_cache(maxsize=1)
def source_ids() -> frozenset[str]:
    """Every id that shared/sources defines."""
    found: set[str] = set()
    for path in sorted((ROOT / "shared/sources").glob("*.yaml")):
        found |= {item["id"] for item in yaml.safe_load(path.read_text(encoding="utf-8"))}
    return frozenset(found)


@lru_cache(maxsize=1)
def the_register() -> tuple[Register, tuple[Finding, ...]]:
    """The register as it stands in claims/."""
    texts = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "claims").glob("*.yaml"))]
    register, findings = read_register(*texts, source_ids=source_ids(), today=TODAY)
    return register, tuple(findings)


def exact(amount: float, unit: str = "mg", high: float | None = None, coverage: float = 1.0) -> Estimate:
    """An estimate, exact unless ``high`` is given."""
    return Estimate(amount, amount, amount if high is None else high, unit, coverage, ("usda-sr28",))


@dataclass
class Kitchen:
    """Numbers made up for a test: tables per 100 g, a dish, what foods bring to a portion of it."""

    foods: Mapping[str, Mapping[str, Estimate]] = field(default_factory=dict)
    dish_100g: Mapping[str, Estimate] = field(default_factory=dict)
    grams: Estimate | None = None
    in_portion: Mapping[tuple[str, str], Estimate] = field(default_factory=dict)
    units: Mapping[tuple[str, str], Estimate] = field(default_factory=dict)
    bowl: tuple[str, ...] = ()
    allergens: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def _per(self, values: Mapping[str, Estimate], nutrient: str, per: Per) -> Estimate | None:
        found = values.get(nutrient)
        if found is None or per == "100g":
            return found
        if per == "portion":
            return None if self.grams is None else _times(found, self.grams.amount / 100)
        energy = values.get("energy_kcal")
        return None if energy is None or not energy.amount else _times(found, 100 / energy.amount)

    def dish(self, nutrient: str, per: Per) -> Estimate | None:
        return self._per(self.dish_100g, nutrient, per)

    def portion_grams(self) -> Estimate | None:
        return self.grams

    def food(self, food: str, nutrient: str, per: Per) -> Estimate | None:
        return self._per(self.foods.get(food, {}), nutrient, per)

    def food_in_portion(self, food: str, nutrient: str) -> Estimate | None:
        return self.in_portion.get((food, nutrient))

    def unit_grams(self, food: str, unit: str) -> Estimate | None:
        return self.units.get((food, unit))

    def dish_foods(self) -> tuple[str, ...]:
        return self.bowl

    def dish_allergens(self) -> Mapping[str, tuple[str, ...]]:
        return self.allergens


def _times(found: Estimate, by: float) -> Estimate:
    return Estimate(found.amount * by, found.low * by, found.high * by, found.unit, found.coverage, found.sources)


def claim(text: str, kind: Any, **more: Any) -> Claim:
    """A claim that is the whole of ``text``."""
    document = Document("recipes/test.md", text)
    passage = Passage(text, document, (Piece(0, 0, len(text)),))
    number = more.pop("number", None)
    if isinstance(number, tuple):
        value, unit, *basis = number
        number = Quantity(value, value, unit, basis[0] if basis else "")
    return Claim(passage, 0, len(text), kind, number=number, **more)


def judged(
    text: str, kind: str, numbers: Kitchen | None = None, context: Context | None = None, **more: Any
) -> JudgedClaim:
    """A claim judged by the real register."""
    return judge(claim(text, kind, **more), the_register()[0], numbers, context or Context(today=TODAY))
