"""Numbers with their doubt: what is in a dish or a food, how sure, in what basis."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, Protocol

from spoonproof.model.record import dataclass

Per = Literal["batch", "portion", "100g", "100kcal"]


@dataclass(frozen=True, slots=True)
class Estimate:
    """An amount between ``low`` and ``high``, in ``unit``.

    ``coverage`` 0 to 1: the share of the dish's weight whose inputs have a published value. Where it is
    below 1, ``amount`` and ``low`` are "at least" and ``high`` is infinite unless a bound is known.
    ``sources`` are source ids; ``assumed`` says in words what had to be assumed.
    """

    amount: float
    low: float
    high: float
    unit: str
    coverage: float = 1.0
    sources: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()


class Numbers(Protocol):
    """What claims may ask of the kitchen's numbers; None means not known, never zero."""

    def dish(self, nutrient: str, per: Per) -> Estimate | None:
        """``nutrient`` of the dish as eaten (the baby's bowl)."""

    def portion_grams(self) -> Estimate | None:
        """Grams of one portion of the dish."""

    def food(self, food: str, nutrient: str, per: Per) -> Estimate | None:
        """``nutrient`` of a food by id as the table has it (raw unless the record is cooked)."""

    def food_in_portion(self, food: str, nutrient: str) -> Estimate | None:
        """What ``food`` brings of ``nutrient`` to one portion of the dish; None when it is not in it."""

    def unit_grams(self, food: str, unit: str) -> Estimate | None:
        """Grams of one ``unit`` ("piece", "tbsp", "spoonful" ...) of a food, or of the dish for ""."""

    def dish_foods(self) -> tuple[str, ...]:
        """Ids of the foods in the baby's bowl."""

    def dish_allergens(self) -> Mapping[str, tuple[str, ...]]:
        """Allergens of the dish, each with the ids of the foods that bring it."""
