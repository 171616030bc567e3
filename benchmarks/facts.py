"""How long the facts of 10,000 recipes take: ``python benchmarks/facts.py [RECIPES]``.

Recipes are made up of the bundled foods by a fixed seed: four to nine lines, half of them heated, some in spoons and
pieces. What is timed is weighing, cooking changes and all sums; reading and the steps are not. Prints seconds in all
and microseconds a recipe, with the time of a bare loop over ``fsum`` for comparison, since machines differ.
"""

from __future__ import annotations

import random
import sys
from fractions import Fraction
from math import fsum
from time import perf_counter

from spoonproof.foods.facts import facts
from spoonproof.knowledge import Knowledge
from spoonproof.model.recipe import AgeRange, Amount, FoodLine, Makes, Recipe
from spoonproof.model.text import NOWHERE, Document, Spanned
from spoonproof.model.treatment import Heat, Treatment

HEATS = (
    ("steamed", "steam", "none"),
    ("boiled", "water", "drained"),
    ("boiled", "water", "kept"),
    ("baked", "oven", "none"),
    ("fried", "fat", "none"),
)


def made_up(dice: random.Random, foods: list[str], number: int) -> tuple[Recipe, list[Treatment]]:
    """One recipe and its treatments."""
    lines: list[FoodLine] = []
    treatments: list[Treatment] = []
    for i in range(dice.randint(4, 9)):
        unit = dice.choice(("g", "g", "g", "g", "tbsp", "piece"))
        grams = Fraction(dice.randint(5, 400)) if unit == "g" else Fraction(dice.randint(1, 3))
        food = dice.choice(foods)
        lines.append(FoodLine(food, NOWHERE, food, NOWHERE, Amount(grams, grams, unit, NOWHERE), food))
        retention, medium, water = dice.choice(HEATS)
        heat = Heat(retention, medium, 0, None, water, retention)  # type: ignore[arg-type]  # words of closed sets, by table
        treatments.append(Treatment(i, 0, heats=(heat,) if dice.random() < 0.5 else ()))
    name = f"bowl-{number}"
    recipe = Recipe(
        Document(name, ""),
        name,
        Spanned(name, NOWHERE),
        AgeRange(7, 9, NOWHERE),
        tuple(lines),
        (),
        makes=Makes(6, 60, NOWHERE),
    )
    return recipe, treatments


def main(count: int) -> None:
    """Time ``count`` recipes."""
    known = Knowledge()
    started = perf_counter()
    table, units, changes = known.foods, known.measures("UK"), known.changes
    print(f"tables loaded in {perf_counter() - started:.3f} s")
    dice = random.Random(20261125)
    foods = [food.id for food in table if food.record]
    recipes = [made_up(dice, foods, number) for number in range(count)]
    started = perf_counter()
    for recipe, treatments in recipes:
        got = facts(recipe, treatments, table, units, changes)
        assert got.per_portion is not None
    seconds = perf_counter() - started
    started = perf_counter()
    for _ in range(100_000):
        fsum((1.0, 2.0, 3.0, 4.0, 5.0, 6.0))
    bare = (perf_counter() - started) / 100_000
    print(f"{count} recipes in {seconds:.2f} s, {seconds / count * 1e6:.0f} µs a recipe")
    print(f"that is {seconds / count / bare:.0f} sums of six numbers a recipe")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
