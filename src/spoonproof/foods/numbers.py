"""What claims may ask of the kitchen's numbers: of the dish in the baby's bowl, or of a food in the table."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import inf

from spoonproof.foods.facts import Facts, of_grams
from spoonproof.foods.grams import Grams
from spoonproof.foods.ingredient import Content, Ingredient
from spoonproof.foods.table import FoodTable
from spoonproof.foods.weigh import Units
from spoonproof.model.food import NUTRIENT_UNITS, Food, NutrientValue
from spoonproof.model.numbers import Estimate, Per
from spoonproof.model.record import replace


class KitchenNumbers:
    """``model.numbers.Numbers`` over the facts of a dish and the food table, or over the table alone."""

    def __init__(
        self,
        table: FoodTable,
        facts: Facts | None = None,
        units: Units | None = None,
        may_contain: tuple[str, ...] = (),
    ) -> None:
        """``facts``: None where there is no dish (a line of a transcript, say). ``units``: for spoons and cups.
        ``may_contain``: allergens from label words, kept apart from those that are in the dish for certain."""
        self._table = table
        self._facts = facts
        self._units = units
        self.may_contain = may_contain
        self._brought: dict[tuple[str, str], Estimate | None] = {}  # several claims ask the same of a dish

    def dish(self, nutrient: str, per: Per) -> Estimate | None:
        """``nutrient`` of the dish as eaten (the baby's bowl)."""
        facts = self._facts
        if facts is None:
            return None
        if per == "100kcal":
            return _per_100_kcal(facts.per_100g, nutrient)
        values = {"batch": facts.per_batch, "portion": facts.per_portion, "100g": facts.per_100g}[per]
        found = values.get(nutrient) if values is not None else None
        return replace(found, assumed=facts.assumed) if found is not None else None

    def portion_grams(self) -> Estimate | None:
        """Grams of one portion of the dish."""
        portion = self._facts.portion if self._facts is not None else None
        return Estimate(portion.mid, portion.low, portion.high, "g") if portion is not None else None

    def food(self, food: str, nutrient: str, per: Per) -> Estimate | None:
        """``nutrient`` of a food by id as the table has it; ``portion`` and ``batch`` mean nothing for a food."""
        asked = food, nutrient, per  # recipes ask the same of the same foods
        known = self._table.estimates
        return known[asked] if asked in known else known.keep(asked, _of_table(self._table, food, nutrient, per))

    def food_in_portion(self, food: str, nutrient: str) -> Estimate | None:
        """What ``food`` (in whatever state it stands in the recipe) brings of ``nutrient`` to one portion of the
        dish; None when it is not in it, or not weighed, or the portion is not known."""
        asked = food, nutrient
        if asked not in self._brought:
            self._brought[asked] = self._bring(food, nutrient)
        return self._brought[asked]

    def _bring(self, food: str, nutrient: str) -> Estimate | None:
        facts = self._facts
        if facts is None or facts.portion is None or not facts.bowl.grams.mid:
            return None
        parts = [part for part in self._in_bowl() if self._is(part, food)]
        if not parts or any(part.why for part in parts):
            return None
        terms = [term for part in parts if (term := _brought(part, nutrient)) is not None]
        if len(terms) < len(parts):
            return None
        bowl = facts.bowl.grams
        share = facts.portion
        return Estimate(
            sum(t.mid for t in terms) * share.mid / bowl.mid,
            sum(t.low for t in terms) * share.low / bowl.high,
            sum(t.high for t in terms) * share.high / bowl.low if bowl.low else inf,
            NUTRIENT_UNITS[nutrient],
            sources=tuple(sorted({source for part in parts for source in part.sources})),
        )

    def unit_grams(self, food: str, unit: str) -> Estimate | None:
        """Grams of one ``unit`` ("piece", "tbsp", "spoonful" ...) of a food, or of the dish for ""."""
        if not food:
            return self._dish_unit(unit)
        record = self._table.get(food)
        if record is None:
            return None
        sized = [p for p in record.portions if p.unit == unit and p.size in ("", "small", "medium", "large")]
        if sized:
            middle = next((p for p in sized if p.size in ("medium", "")), sized[0])
            low, high = min(p.grams for p in sized), max(p.grams for p in sized)
            return Estimate(middle.grams, low, high, "g", sources=(middle.source,))
        ml = self._units.ml(unit) if self._units is not None else None
        if ml is None or record.density is None:
            return None
        grams = float(ml) * record.density
        return Estimate(grams, grams, grams, "g", sources=(record.source,))

    def _dish_unit(self, unit: str) -> Estimate | None:
        if unit in ("portion", "serving", "bowl"):
            return self.portion_grams()
        if self._units is None or self._facts is None:
            return None
        ml = self._units.ml(unit)
        if ml is None:
            return None
        # A purée weighs about what water does: 0.9 to 1.1 g a ml.
        return Estimate(float(ml), float(ml) * 0.9, float(ml) * 1.1, "g", sources=("common-practice",))

    def dish_foods(self) -> tuple[str, ...]:
        """Ids of the foods in the baby's bowl, or allowed there by ``or:``, each with the food it is a state of."""
        found: dict[str, None] = {}
        for food in self._eaten():
            if food.id:
                found[food.id] = None
                if food.parent:
                    found[food.parent] = None
        return tuple(found)

    @property
    def unknown_foods(self) -> tuple[str, ...]:
        """Names of the lines in the baby's bowl whose food is in no table."""
        return tuple(
            part.name for part in self._in_bowl() if part.food is None and part.recipe is None and not part.left_out
        )

    def dish_allergens(self) -> Mapping[str, tuple[str, ...]]:
        """Allergens of the dish, each with the ids of the foods that bring it, in both bowls' common pot."""
        found: dict[str, dict[str, None]] = {}
        for food in self._eaten():
            for allergen in sorted(food.allergens):
                found.setdefault(allergen, {})[food.id] = None
        return {allergen: tuple(found[allergen]) for allergen in sorted(found)}

    @property
    def family_foods(self) -> tuple[str, ...]:
        """Ids of the foods that go into the family's bowl alone."""
        parts = self._facts.all_ingredients if self._facts else ()
        return tuple(part.food.id for part in parts if part.bowl == "family" and part.food and part.food.id)

    @property
    def family_allergens(self) -> frozenset[str]:
        """Allergens that the family's bowl alone brings, which a label of the whole dish names as well."""
        parts = self._facts.all_ingredients if self._facts is not None else ()
        return frozenset(a for part in parts if part.bowl == "family" and part.food for a in part.food.allergens)

    def _eaten(self) -> Iterator[Food]:
        for part in self._in_bowl():
            if part.food is not None:
                yield part.food
            yield from part.instead

    def _in_bowl(self) -> tuple[Ingredient, ...]:
        if self._facts is None:
            return ()
        return tuple(part for part in self._facts.all_ingredients if part.bowl != "family")

    def _is(self, part: Ingredient, food: str) -> bool:
        return part.food is not None and food in (part.food.id, part.food.parent)


def _of_table(table: FoodTable, food: str, nutrient: str, per: Per) -> Estimate | None:
    record = table.get(food)
    if record is None or per in ("batch", "portion"):
        return None
    per_100g = {
        key: Estimate(
            value.amount, value.low, value.high, NUTRIENT_UNITS[key], sources=(value.source or record.source,)
        )
        for key in ((nutrient, "energy_kcal") if per == "100kcal" else (nutrient,))
        if (value := record.per_100g.get(key)) is not None and key in NUTRIENT_UNITS
    }
    if per == "100kcal":
        return _per_100_kcal(per_100g, nutrient)
    found = per_100g.get(nutrient)
    return replace(found, assumed=(record.note,)) if found is not None and record.note else found


def _brought(part: Ingredient, nutrient: str) -> Grams | None:
    value: NutrientValue | Content | None = part.values.get(nutrient) if part.values is not None else None
    if value is None:
        return None
    if part.left_out:
        return Grams(0, 0, 0)
    share = part.kept.shares.get(nutrient, 1.0) / 100
    return Grams(
        part.raw.mid * value.amount * share, part.raw.low * value.low * share, part.raw.high * value.high * share
    )


def _per_100_kcal(per_100g: Mapping[str, Estimate], nutrient: str) -> Estimate | None:
    amount, energy = per_100g.get(nutrient), per_100g.get("energy_kcal")
    if amount is None or energy is None or not energy.amount > 0:
        return None
    return replace(
        amount,
        amount=amount.amount * 100 / energy.amount,
        low=amount.low * 100 / energy.high if energy.high < inf else 0.0,
        high=amount.high * 100 / energy.low if energy.low > 0 else inf,
        coverage=min(amount.coverage, energy.coverage),
    )


__all__ = ["KitchenNumbers", "of_grams"]
