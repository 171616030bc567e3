"""What one line brings to the bowl: its weight before and after cooking, its values, and what it keeps of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.foods.changes import Changes, Kept, Yield, cooking
from spoonproof.foods.grams import Grams
from spoonproof.foods.table import FoodTable
from spoonproof.foods.weigh import Units, Unweighed, Weight, weigh
from spoonproof.model.finding import Bowl
from spoonproof.model.food import Food, NutrientValue
from spoonproof.model.recipe import FoodLine, Recipe
from spoonproof.model.record import NamedTuple, dataclass, replace
from spoonproof.model.treatment import Treatment

NOTHING = Grams(0, 0, 0)
ALL_KEPT = Kept({})


class Content(NamedTuple):
    """An amount per 100 g with its range, and the share of that weight it rests on."""

    amount: float
    low: float
    high: float
    coverage: float = 1.0


@dataclass(frozen=True, slots=True)
class Ingredient:
    """One line as it counts. ``raw`` is the edible weight that goes in, ``cooked`` what is left of it; ``values``
    per 100 g raw (``kept`` still to be applied). ``why`` says why nothing could be counted, "" when it was.
    ``left_out``: drained away or lifted out, in nobody's bowl; ``instead``: what ``or:`` allows in its place."""

    line: int
    name: str
    food: Food | None = None
    recipe: str | None = None
    bought: Grams = NOTHING
    raw: Grams = NOTHING
    cooked: Grams = NOTHING
    values: Mapping[str, NutrientValue | Content] | None = None
    kept: Kept = ALL_KEPT
    bowl: Bowl | None = None
    left_out: bool = False
    why: str = ""
    assumed: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    instead: tuple[Food, ...] = ()


def ingredients(
    recipe: Recipe, treatments: Sequence[Treatment], table: FoodTable, units: Units, changes: Changes
) -> list[Ingredient]:
    """Every line of ``recipe`` that names a food, weighed and followed through the heat; lines that are recipes
    come back with only their name, for the caller to fill in."""
    by_line = {treatment.line: treatment for treatment in treatments}
    watery = [
        by_line[i]
        for i, line in enumerate(recipe.foods)
        if i in by_line and not by_line[i].left_out and line.food and _watery(table.get(line.food))
    ]
    counted = [
        _ingredient(i, line, by_line.get(i, Treatment(i, None)), watery, table, units, changes)
        for i, line in enumerate(recipe.foods)
    ]
    return [_with_choices(part, line, table) for part, line in zip(counted, recipe.foods, strict=True)]


def _with_choices(part: Ingredient, line: FoodLine, table: FoodTable) -> Ingredient:
    found = [table.get(choice.food) for choice in line.choices if choice.food]
    return replace(part, instead=tuple(food for food in found if food is not None)) if found else part


def _ingredient(
    index: int,
    line: FoodLine,
    treatment: Treatment,
    watery: Sequence[Treatment],
    table: FoodTable,
    units: Units,
    changes: Changes,
) -> Ingredient:
    food = table.get(line.food) if line.food else None
    bowl, left_out = treatment.bowl, treatment.left_out
    if line.recipe is not None:
        return Ingredient(index, line.recipe, recipe=line.recipe, bowl=bowl, left_out=left_out)
    if food is None:
        return _nameless(index, line, units, bowl, left_out)
    weight = weigh(line, food, units)
    if isinstance(weight, Unweighed):
        return Ingredient(index, food.name, food, bowl=bowl, left_out=left_out, why=weight.why, values=food.per_100g)
    food, weight, peeled = _peeled(line, food, weight, table)
    kept = changes.kept(food, treatment)
    cooked, said, sources = _cooked(food, weight, treatment, watery, changes)
    notes = (*weight.assumed, *peeled, *kept.assumed, *said, *((f"{food.name}: {food.note}",) if food.note else ()))
    return Ingredient(
        index,
        food.name,
        food,
        bought=weight.bought,
        raw=weight.edible,
        cooked=cooked,
        values=food.per_100g,
        kept=kept,
        bowl=bowl,
        left_out=left_out,
        assumed=notes,
        sources=(food.source, *weight.sources, *kept.sources, *sources),
    )


def _nameless(index: int, line: FoodLine, units: Units, bowl: Bowl | None, left_out: bool) -> Ingredient:
    """A line whose food is not known still weighs what it weighs: it counts in the coverage, not in the sums."""
    name = line.name or line.text
    why = f"“{name}” is not in the food table"
    weight = weigh(line, Food(id="", record="", name=name, names=(), group=""), units)
    if isinstance(weight, Unweighed):
        return Ingredient(index, name, bowl=bowl, left_out=left_out, why=why)
    return Ingredient(
        index, name, bought=weight.bought, raw=weight.edible, cooked=weight.edible, values={}, bowl=bowl,
        left_out=left_out, assumed=(f"{why}: its weight is counted, its nutrients are not known",),
    )  # fmt: skip


def _peeled(line: FoodLine, food: Food, weight: Weight, table: FoodTable) -> tuple[Food, Weight, tuple[str, ...]]:
    """The record without peel where the line says peeled and the table has one."""
    if not line.has("peeled", "skinned"):
        return food, weight, ()
    other = table.get(table.variant(food.id, "peeled"))
    if other is None or other is food:
        return food, weight, ()
    return other, weight, (f"{food.name}: figures without the peel",)


_SAID = {"boiled-kept": "cooked in liquid that is kept", "boiled-drained": "boiled and drained"}
_NO_WATER = ("oil", "fat", "sweet", "spice")


def _watery(food: Food | None) -> bool:
    if food is None or food.hardness != "liquid":
        return False
    water = food.per_100g.get("water_g")
    if water is None:  # no figures at all: a stock is water as a rule, a syrup or an oil is not
        return food.group not in _NO_WATER
    return water.amount > 60


def _cooked(
    food: Food, weight: Weight, treatment: Treatment, watery: Sequence[Treatment], changes: Changes
) -> tuple[Grams, tuple[str, ...], tuple[str, ...]]:
    """The weight after cooking: water lost or taken up, by a published yield or a stated assumption."""
    raw = weight.edible
    if _watery(food) and food.group != "oil":
        left = changes.liquid(treatment)
        if left is None:
            return raw, (), ()
        return _by_yield(raw, left, f"{food.name}, cooked in the pot")
    methods = cooking(treatment) or (("boiled-kept",) if treatment.soaked_minutes and food.hardness == "grain" else ())
    found = [(method, y) for method in methods if (y := changes.yields_of(food, method)) is not None]
    if not found:
        said = (f"{food.name}: no yield known, its weight counted as unchanged",) if methods and food.retention else ()
        return raw, said, ()
    method, change = max(found, key=lambda pair: abs(pair[1].factor - 1))
    if change.factor > 1.05 and _takes_up_listed(treatment, watery):
        return raw, (f"{food.name}: what it takes up is water that is on the list already",), ()
    return _by_yield(raw, change, f"{food.name}, {_SAID.get(method, method)}")


def _takes_up_listed(treatment: Treatment, watery: Sequence[Treatment]) -> bool:
    """Whether a liquid of the list is with a food while it swells: one that comes to drained pasta later is not."""
    steps = {heat.step for heat in treatment.heats} | {treatment.joined}
    drained = next((heat.step for heat in treatment.heats if heat.water == "drained"), None)
    if drained is not None:
        steps = {step for step in steps if step is not None and step <= drained}
    return any(steps & ({heat.step for heat in other.heats} | {other.joined}) for other in watery)


def _by_yield(raw: Grams, change: Yield, what: str) -> tuple[Grams, tuple[str, ...], tuple[str, ...]]:
    cooked = raw.times(change.factor, change.low, change.high)
    basis = "published yield" if change.source != "common-practice" else "assumed"
    low, mid, high = (f"{share * 100:.0f}" for share in (change.low, change.factor, change.high))
    span = "" if low == high else f", {low} to {high} %"
    return cooked, (f"{what}: {mid} % of its weight left{span} ({basis})",), (change.source,)
