"""What is in a recipe: per batch, per portion and per 100 g, for each bowl, with range, coverage and assumptions."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property

from spoonproof.foods.bowl import BowlFacts, bowl_facts
from spoonproof.foods.changes import NO_FACTOR, Changes
from spoonproof.foods.grams import Grams
from spoonproof.foods.ingredient import Content, Ingredient, ingredients
from spoonproof.foods.table import FoodTable
from spoonproof.foods.weigh import Units
from spoonproof.model.numbers import Estimate
from spoonproof.model.recipe import FoodLine, Recipe
from spoonproof.model.record import dataclass, field, replace
from spoonproof.model.treatment import Treatment

DEEPEST = 12
"""How many recipes may stand one inside another."""

Treat = Callable[[Recipe], Sequence[Treatment]]


@dataclass(frozen=True)
class Facts:
    """The numbers of one recipe.

    ``bowls`` has "baby" (the dish as a baby eats it) and, where the pot is split, "family". ``portions`` and
    ``portion`` (grams) come from ``makes``; None where it is not written. ``ingredients`` are the lines as counted.
    ``chain`` names the recipes of a circle or of a chain that is too deep, () when there is none.
    """

    recipe: str
    bowls: Mapping[str, BowlFacts]
    ingredients: tuple[Ingredient, ...]
    portions: int | None
    portion: Grams | None
    weighed: Grams | None
    chain: tuple[str, ...] = ()
    inner: Mapping[str, Facts] = field(default_factory=dict)

    @cached_property
    def all_ingredients(self) -> tuple[Ingredient, ...]:
        """The foods of the dish, those inside recipes used as foods included, at the weights used here."""
        found: list[Ingredient] = []
        for part in self.ingredients:
            used = self.inner.get(part.recipe or "")
            if used is None or not used.bowl.grams.mid:
                found.append(part)
                continue
            share = part.raw.mid / used.bowl.grams.mid
            for food in used.all_ingredients:
                if food.bowl != "family":
                    raw, cooked = food.raw.times(share), food.cooked.times(share)
                    found.append(replace(food, line=part.line, bowl=part.bowl, raw=raw, cooked=cooked))
        return tuple(found)

    @property
    def bowl(self) -> BowlFacts:
        """The baby's bowl."""
        return self.bowls["baby"]

    @property
    def grams(self) -> Grams:
        """Grams of the batch in the baby's bowl: all of it, or the portions made where the pot is split."""
        if "family" in self.bowls and self.portion is not None and self.portions:
            return self.portion.times(self.portions)
        return self.bowl.grams

    @property
    def per_100g(self) -> Mapping[str, Estimate]:
        """Of the baby's bowl, by nutrient key."""
        return self.bowl.per_100g

    @cached_property
    def per_batch(self) -> Mapping[str, Estimate]:
        """Of all that the baby's bowl is filled with."""
        if self.grams == self.bowl.grams:
            return self.bowl.batch
        return of_grams(self.per_100g, self.grams)

    @cached_property
    def per_portion(self) -> Mapping[str, Estimate] | None:
        """Of one portion; None where the recipe does not say how many it makes."""
        return of_grams(self.per_100g, self.portion) if self.portion is not None else None

    @property
    def uncounted(self) -> tuple[tuple[str, str], ...]:
        """Lines of which nothing could be counted: name and why."""
        return tuple((part.name, part.why) for part in self.ingredients if part.why)

    @cached_property
    def assumed(self) -> tuple[str, ...]:
        """All that had to be assumed, each once."""
        said: dict[str, None] = {}
        for part in self.ingredients:
            said.update(dict.fromkeys(part.assumed))
            if part.why:
                said[f"{part.why}: totals are “at least”"] = None
            if part.left_out:
                said[f"{part.name} is drained or lifted out and counts in nobody's bowl"] = None
        if any(part.kept.methods for part in self.ingredients):
            names = "selenium and vitamins D, E and K"
            said[f"no factors are published for protein, fat, fibre, {names}: all counted as kept"] = None
        if self.weighed is not None:
            said["the finished weight is that of the weighed trial"] = None
        return tuple(said)


def of_grams(per_100g: Mapping[str, Estimate], grams: Grams) -> Mapping[str, Estimate]:
    """Figures per 100 g as figures of ``grams``."""
    mid, low, high = grams.mid / 100, grams.low / 100, grams.high / 100
    return {
        key: Estimate(e.amount * mid, e.low * low, e.high * high, e.unit, e.coverage, e.sources, e.assumed)
        for key, e in per_100g.items()
    }


def facts(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    table: FoodTable,
    units: Units,
    changes: Changes,
    *,
    recipes: Mapping[str, Recipe] | None = None,
    treat: Treat | None = None,
) -> Facts:
    """The numbers of ``recipe``, whose food lines went through ``treatments``.

    ``recipes`` and ``treat`` (a recipe to its treatments) serve recipes that are foods of this one; a circle of
    recipes, or more than ``DEEPEST`` one inside another, leaves that line uncounted and is named in ``chain``.
    """
    return _Counting(table, units, changes, recipes or {}, treat).facts(recipe, treatments, ())


@dataclass
class _Counting:
    table: FoodTable
    units: Units
    changes: Changes
    recipes: Mapping[str, Recipe]
    treat: Treat | None

    def __post_init__(self) -> None:
        self.done: dict[str, Facts] = {}

    def facts(self, recipe: Recipe, treatments: Sequence[Treatment], path: tuple[str, ...]) -> Facts:
        path = (*path, recipe.slug)
        parts = ingredients(recipe, treatments, self.table, self.units, self.changes)
        chain: tuple[str, ...] = ()
        for i, part in enumerate(parts):
            if part.recipe is not None:
                parts[i], circle = self._inner(recipe.foods[i], part, path)
                chain = chain or circle
        split = any(part.bowl == "family" for part in parts)
        weighed = _weighed(recipe)
        bowls = {"baby": bowl_facts([part for part in parts if part.bowl != "family"], weighed)}
        if split:
            bowls["family"] = bowl_facts([part for part in parts if part.bowl != "baby"])
        portions, portion = _portion(recipe, bowls["baby"].grams)
        used = {part.recipe: self.done[part.recipe] for part in parts if part.recipe in self.done}
        return Facts(recipe.slug, bowls, tuple(parts), portions, portion, weighed, chain, used)

    def _inner(self, line: FoodLine, part: Ingredient, path: tuple[str, ...]) -> tuple[Ingredient, tuple[str, ...]]:
        slug = part.recipe or ""
        if slug in path:
            circle = (*path[path.index(slug) :], slug)
            return replace(part, why=f"the recipe {slug} leads back to itself"), circle
        if len(path) >= DEEPEST:
            return replace(part, why=f"more than {DEEPEST} recipes stand one inside another"), (*path, slug)
        recipe = self.recipes.get(slug)
        if recipe is None:
            return replace(part, why=f"the recipe {slug} is not in this channel"), ()
        inner = self.done.get(slug)
        if inner is None:
            inner = self.facts(recipe, self.treat(recipe) if self.treat else (), path)
            self.done[slug] = inner  # a circle is told once; its figures are incomplete whoever asks
        grams = _of_recipe(line, inner, self.units)
        if grams is None:
            return replace(
                part, why=f"how much of {slug} is used is not said in g, ml, portions or batches"
            ), inner.chain
        values = {key: Content(e.amount, e.low, e.high, e.coverage) for key, e in inner.per_100g.items()}
        sources = tuple(sorted({source for p in inner.ingredients for source in p.sources}))
        filled = replace(
            part,
            bought=grams,
            raw=grams,
            cooked=grams,
            values=values,
            assumed=tuple(f"{slug}: {said}" for said in inner.assumed),
            sources=sources,
        )
        return filled, inner.chain


def _of_recipe(line: FoodLine, inner: Facts, units: Units) -> Grams | None:
    amount = line.amount
    if amount is None or amount.to_taste or not 0 < amount.low <= amount.high <= 1_000_000:
        return None
    low, high = float(amount.low), float(amount.high)
    count = Grams((low + high) / 2, low, high)
    if amount.unit in ("batch", "piece"):
        whole = inner.grams
        return Grams(count.mid * whole.mid, count.low * whole.low, count.high * whole.high)
    if amount.unit == "portion":
        return count.times(inner.portion.mid) if inner.portion is not None else None
    one = units.grams(amount.unit)
    if one is None and (ml := units.ml(amount.unit)) is not None:
        one = ml  # near enough 1 g a ml for what is cooked with water
    return count.times(float(one)) if one is not None else None


def _weighed(recipe: Recipe) -> Grams | None:
    """The last weighed trial, with the spread of all of them."""
    trials = sorted((trial.on, trial.grams) for trial in recipe.trials if trial.grams and trial.grams > 0)
    if not trials:
        return None
    weights = [grams for _, grams in trials]
    return Grams(trials[-1][1], min(weights), max(weights))


def _portion(recipe: Recipe, batch: Grams) -> tuple[int | None, Grams | None]:
    makes = recipe.makes
    if makes is None or makes.count <= 0 or not makes.in_portions:  # a batch by volume says no portion
        return None, None
    if makes.grams is not None and makes.grams > 0:
        return makes.count, Grams(makes.grams, makes.grams, makes.grams)
    least = 1 / (makes.most or makes.count)  # of "3-4 portions", a quarter to a third
    return makes.count, Grams(batch.mid / makes.count, batch.low * least, batch.high / makes.count)


__all__ = ["DEEPEST", "NO_FACTOR", "Facts", "facts", "of_grams"]
