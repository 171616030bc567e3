"""Foods: a record per food with figures per 100 g edible, and what else the kitchen must know."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from spoonproof.model.record import NamedTuple, dataclass, field

NUTRIENT_UNITS: Mapping[str, str] = {
    "energy_kcal": "kcal",
    "protein_g": "g",
    "fat_g": "g",
    "carbohydrate_g": "g",
    "sugars_g": "g",
    "fibre_g": "g",
    "water_g": "g",
    "sodium_mg": "mg",
    "potassium_mg": "mg",
    "calcium_mg": "mg",
    "iron_mg": "mg",
    "zinc_mg": "mg",
    "magnesium_mg": "mg",
    "phosphorus_mg": "mg",
    "selenium_ug": "µg",
    "iodine_ug": "µg",
    "vitamin_a_rae_ug": "µg",
    "retinol_ug": "µg",
    "vitamin_c_mg": "mg",
    "vitamin_d_ug": "µg",
    "vitamin_e_mg": "mg",
    "vitamin_k_ug": "µg",
    "thiamin_mg": "mg",
    "riboflavin_mg": "mg",
    "niacin_mg": "mg",
    "vitamin_b6_mg": "mg",
    "folate_ug": "µg",
    "vitamin_b12_ug": "µg",
    "dha_mg": "mg",
    "ala_g": "g",
    "saturated_fat_g": "g",
}
"""Every nutrient key of the contract with its unit (and saturated fat, which claims need)."""

PART_OF: Mapping[str, str] = {
    "saturated_fat_g": "fat_g",
    "ala_g": "fat_g",
    "sugars_g": "carbohydrate_g",
    "retinol_ug": "vitamin_a_rae_ug",
}
"""Nutrients that are part of another one in the same unit, which is at least as much."""

Hardness = Literal["hard", "firm", "soft", "leaf", "grain", "liquid", "powder", "paste", "none"]


class NutrientValue(NamedTuple):
    """An amount per 100 g edible. ``low``/``high``: the range the table allows (equal when unknown).

    ``kind``: measured, calculated, assumed-zero or trace; only a published zero is a zero. ``source`` is the source
    id where it is not the one of the food's record.
    """

    amount: float
    low: float
    high: float
    kind: str = "measured"
    source: str = ""


class Portion(NamedTuple):
    """Grams of one ``unit`` of a food ("piece", "tbsp", "cup", "slice", "bunch" ...), by size word."""

    unit: str
    size: str
    grams: float
    source: str


@dataclass(frozen=True, slots=True)
class Food:
    """A food with a record.

    ``id`` is our slug, ``record`` the published record ("usda:11298"), ``state`` raw, cooked, dried,
    canned, frozen or prepared. ``refuse_pct`` is the percent of the weight as bought that is not eaten.
    ``density`` is g per ml. ``traits`` are closed words that hazards and claims look at (``has-peel``,
    ``has-stone``, ``has-pips``, ``round``, ``stringy``, ``sticky``, ``leafy``, ``honey``, ``added-salt``,
    ``free-sugar``, ``nut-whole`` ...); the list with meanings is ``shared/traits.csv``.
    ``retention`` is the food group word of the retention table; ``softens_as`` the id in the cook-time table.
    """

    id: str
    record: str
    name: str
    names: tuple[str, ...]
    group: str
    state: str = "raw"
    scientific: str = ""
    source: str = "usda-sr28"
    per_100g: Mapping[str, NutrientValue] = field(default_factory=dict)
    portions: tuple[Portion, ...] = ()
    refuse_pct: float = 0.0
    density: float | None = None
    hardness: Hardness = "none"
    allergens: frozenset[str] = frozenset()
    traits: frozenset[str] = frozenset()
    retention: str = ""
    softens_as: str = ""
    parent: str = ""  # the id of the plain food this is a state of ("spinach" for "spinach-boiled")
    refuse: tuple[str, ...] = ()  # what the refuse is: peel, core, stone, pips, stalk, tops, ends, shell, pod ...
    note: str = ""  # what stands behind the figures and is worth saying ("record of enriched American bread")


@dataclass(frozen=True, slots=True)
class NameMatch:
    """A food name found in a text: ``text[start:end]`` names the food ``food`` (an id)."""

    start: int
    end: int
    food: str
