"""Two dishes side by side, one dish with another food in it, and trials over time."""

from __future__ import annotations

from spoonproof.foods.facts import Facts
from spoonproof.foods.show import rows
from spoonproof.foods.table import FoodTable
from spoonproof.model.recipe import FoodLine, Recipe
from spoonproof.model.record import replace


def side_by_side(facts: Facts, other: Facts, titles: tuple[str, str]) -> str:
    """Both dishes in a table, by portion where both say how many they make, else by 100 g. Without colour."""
    by_portion = facts.per_portion is not None and other.per_portion is not None
    basis = "a portion" if by_portion else "100 g"
    lines = [f"{'':18}{titles[0][:28]:<30}{titles[1][:28]}", f"{'':18}{basis}"]
    for left, right in zip(rows(facts, None), rows(other, None), strict=True):
        a, b = (left.portion, right.portion) if by_portion else (left.per_100g, right.per_100g)
        if a == b == "not known":
            continue
        lines.append(f"{left.name:<18}{_cell(a, left.unit):<30}{_cell(b, right.unit)}".rstrip())
    return "\n".join(lines) + "\n"


def _cell(text: str, unit: str) -> str:
    return text if text.startswith("not ") else f"{text} {unit}"


def swapped(recipe: Recipe, words: str, table: FoodTable) -> tuple[Recipe, FoodLine, FoodLine] | None:
    """The recipe with another food in it, the line that went and the line that came; None when it can't be told.

    ``words`` name a food of an ``or:`` of the recipe, and that choice comes in; any other food takes the place, and
    the amount, of the line it is nearest to: one of its own group.
    """
    match = table.match(words)
    if match is None:
        return None
    for i, line in enumerate(recipe.foods):
        for choice in line.choices:
            if choice.food == match.food:
                return _with(recipe, i, choice), line, choice
    wanted = table.get(match.food)
    if wanted is None:
        return None
    for i, line in enumerate(recipe.foods):
        food = table.get(line.food) if line.food else None
        if food is not None and food.group == wanted.group and food.id != wanted.id:
            new = replace(line, food=wanted.id, name=wanted.name, choices=())
            return _with(recipe, i, new), line, new
    return None


def _with(recipe: Recipe, index: int, line: FoodLine) -> Recipe:
    return replace(recipe, foods=(*recipe.foods[:index], line, *recipe.foods[index + 1 :]))


def trials(recipe: Recipe) -> str:
    """What the weighed trials say over time; "" when nothing was weighed."""
    weighed = sorted((trial.on, trial.grams) for trial in recipe.trials if trial.grams and trial.grams > 0)
    if not weighed:
        return ""
    (first, grams), (last, newest) = weighed[0], weighed[-1]
    low, high = min(grams for _, grams in weighed), max(grams for _, grams in weighed)
    told = (
        f"Weighed once, {first}: {grams:.0f} g."
        if len(weighed) == 1
        else f"Weighed {len(weighed)} times from {first} to {last}: {low:.0f} to {high:.0f} g, last {newest:.0f} g."
    )
    makes = recipe.makes
    stated = makes.whole_grams if makes is not None else None
    # A family pot may weigh more than the baby's portions; otherwise a spoonful either way is the pan's.
    least = 0.0 if makes is not None and makes.family else low * 0.9
    if stated and not least <= stated <= high * 1.1:
        told += f" It no longer fits the {stated:.0f} g that the recipe makes."
    return told
