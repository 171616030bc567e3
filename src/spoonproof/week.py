"""A week of recipes, served in turn, against what a baby needs from food: notes, never orders."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from spoonproof.model.record import dataclass

if TYPE_CHECKING:
    from spoonproof.dish import Dish
    from spoonproof.feeding.week import DishFigures, WeekNote
    from spoonproof.folder import ChannelFolder
    from spoonproof.model.recipe import Recipe

DAYS = 7


@dataclass(frozen=True, slots=True)
class Week:
    """``days``: the dishes of each day, none where nothing suits the age; ``months`` the age judged at; ``meals`` a
    day; ``for_later``: titles of dishes left out since they are for an older baby; ``notes`` in the order of the
    table."""

    days: tuple[tuple[str, ...], ...]
    months: int
    meals: int
    for_later: tuple[str, ...]
    notes: tuple[WeekNote, ...]


def meals_at(recipes: Sequence[Recipe], months: int) -> list[Recipe]:
    """Which of a channel's recipes are meals at this age or later: not outgrown, and no mere part of others."""
    parts = {line.recipe for recipe in recipes for line in recipe.foods}
    return [recipe for recipe in recipes if recipe.slug not in parts and months <= (recipe.ages.high or months)]


def week_of(folder: ChannelFolder, recipes: Sequence[Recipe], months: int, meals: int | None) -> Week:
    """The recipes in turn over seven days, those for an older baby left out.

    ``months``: the baby's age; ``meals`` a day (None: the least that is usual at that age). The figures are of one
    portion each; milk feeds are not counted.
    """
    from spoonproof.feeding.week import served, usual_meals, week_notes

    tables = folder.knowledge.feeding
    a_day = (usual_meals(months, tables) or 2) if meals is None else meals
    days = served([figures_of(folder.dish(recipe)) for recipe in recipes if recipe.youngest <= months], a_day, DAYS)
    return Week(
        tuple(tuple(dish.title for dish in dishes) for dishes in days),
        months,
        a_day,
        tuple(recipe.title.value for recipe in recipes if recipe.youngest > months),
        tuple(week_notes(days, months, tables)) if days else (),
    )


def figures_of(dish: Dish) -> DishFigures:
    """A dish's portion as the week asks for it; what is not known stays None."""
    from spoonproof.feeding.week import DishFigures

    return DishFigures(
        dish.recipe.title.value,
        dish.numbers.portion_grams(),
        dish.numbers.dish("energy_kcal", "portion"),
        dish.numbers.dish("iron_mg", "portion"),
        _brings_iron(dish),
        any(hazard.id == "liver" for hazard in dish.hazards),
    )


_BRINGS_IRON = frozenset({"meat", "poultry", "offal", "fish", "shellfish", "pulse"})
"""Food groups that the authorities name as sources of iron for babies (beside fortified cereals)."""


def _brings_iron(dish: Dish) -> bool:
    """Whether the baby's bowl holds meat, fish or pulses, recipes used as foods included, or iron enough."""
    from spoonproof.feeding.bowl import in_baby_bowl, nested

    foods = dish.knowledge.foods
    for index, line in enumerate(dish.recipe.foods):
        if not in_baby_bowl(index, dish.recipe, dish.treatments):
            continue
        if _only_a_taste(dish, index):
            continue
        for one in (line, *(inner.part.line for inner in nested(line, dish.others))):
            food = foods.get(one.food) if one.food else None
            if food is not None and food.group in _BRINGS_IRON:
                return True
    return dish.candidate.iron_rich


_TASTE_G = 5.0
"""Grams in a portion below which meat, fish or pulses season a dish and do not feed (common practice)."""


def _only_a_taste(dish: Dish, index: int) -> bool:
    """Whether a line is known to bring less than a mouthful to a portion: bonito flakes, an anchovy for six."""
    weighed = next((part for part in dish.facts.ingredients if part.line == index), None)
    portions = dish.facts.portions
    if weighed is None or weighed.why or not portions:
        return False
    return weighed.raw.high / portions < _TASTE_G


def as_text(week: Week) -> str:
    """The week as plain text: the days, then the notes with their sources."""
    lines = [
        f"A week at {week.months} months, {week.meals} meal{'s' if week.meals > 1 else ''} a day, one portion each; "
        "breast milk or formula comes on top and is not counted."
    ]
    lines += [f"Day {number}  {'; '.join(dishes)}" for number, dishes in enumerate(week.days, 1)]
    if not week.days:
        lines.append(f"None of these dishes is for a baby of {week.months} months.")
    if week.for_later:
        lines.append(f"Left out, not for {week.months} months yet: {', '.join(week.for_later)}.")
    lines += [f"- {note.text} [{note.source.id}]" for note in week.notes]
    lines.append(
        "- These are notes, not orders: appetite leads, and your health professional knows your baby. A baby born "
        "early, with an illness, an allergy or a feeding difficulty needs advice of their own."
    )
    return "\n".join(lines) + "\n"


def as_json(week: Week) -> dict[str, object]:
    """The week for programs."""
    notes = [{"id": note.id, "text": note.text, "source": note.source.id} for note in week.notes]
    return {
        "months": week.months,
        "meals": week.meals,
        "days": [list(dishes) for dishes in week.days],
        "for_later": list(week.for_later),
        "notes": notes,
    }
