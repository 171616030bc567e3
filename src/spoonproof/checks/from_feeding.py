"""Hazards and texture faults of a dish as the faults that rules yield."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.feeding.bowl import in_baby_bowl, treatment_of
from spoonproof.feeding.hazards import Hazard
from spoonproof.feeding.texture import Issue
from spoonproof.model.finding import LEVELS, Level, Remedy
from spoonproof.model.record import replace
from spoonproof.model.text import Span

SALT_ROWS = frozenset({"added-salt", "added-salt-toddler"})
_SALTY = frozenset({"salt", "stock-cube", "stock", "salty-sauce", "salty-food", "salty"})
SUGAR_ROWS = frozenset({"added-sugar", "added-sugar-toddler", "sugary-food", "date-sweetener", "date-blended"})


def of_hazards(dish: Dish, wanted: Callable[[Hazard], bool]) -> Iterator[Fault]:
    """A fault for each hazard of the dish that is ``wanted``."""
    for hazard in dish.hazards:
        if wanted(hazard):
            share, told = _share_of_the_days_salt(dish, hazard)
            treatment = treatment_of(hazard.line, dish.treatments) if hazard.line is not None else None
            soaked = treatment is not None and treatment.soaked_minutes > 0  # its water takes salt along
            yield Fault(
                hazard.span,
                hazard.message + told,
                min(hazard.level, salt_level(0.0 if soaked else share), key=LEVELS.index),
                bowl=hazard.bowl,
                remedy=hazard.remedy,
                sources=hazard.sources,
            )


_MUCH = 0.75  # of the day's most salt in one portion: from there it is a warning (common practice)


def salt_level(share: float) -> Level:
    """How grave it is that one portion brings this ``share`` of the day's most salt: all of it is an error."""
    return "error" if share >= 1 else "warning" if share >= _MUCH else "note"


# Grams of salt a day in all: UK Food Standards Agency, up to 12 months and from one to three years.
_DAY_SALT_G = ((12, 1.0), (36, 2.0))
_SALT_PER_SODIUM = 2.5  # the factor of the EU's food information law: salt = sodium x 2.5


def _share_of_the_days_salt(dish: Dish, hazard: Hazard) -> tuple[float, str]:
    """What a salty food brings to one portion, as a share of the most a baby should have in a day, and in words."""
    if hazard.line is None or not hazard.classes & _SALTY or hazard.line >= len(dish.recipe.foods):
        return 0.0, ""
    dish, food = _with_the_choice(dish, hazard.line, hazard.span)
    found = salt_in_portion(dish, food) if food is not None else None
    if found is None:
        return 0.0, ""
    salt, most = found
    return salt / most, (
        f" It brings {salt:.2g} g of salt to a portion: a share of {100 * salt / most:.0f} % "
        f"of the {most:g} g that is the most for a whole day."
    )


def _with_the_choice(dish: Dish, at: int, span: Span) -> tuple[Dish, str | None]:
    """The dish with the ``or:`` choice that ``span`` lies in put in the place of its line, and the food's id there."""
    foods = dish.recipe.foods
    choice = next((one for one in foods[at].choices if one.span.start <= span.start < one.span.end), None)
    if choice is None:
        return dish, foods[at].food
    other = replace(dish.recipe, foods=(*foods[:at], choice, *foods[at + 1 :]))
    return Dish(other, dish.channel, dish.knowledge, dish.others), choice.food


def salt_in_portion(dish: Dish, food: str) -> tuple[float, float] | None:
    """Grams of salt that a food brings to one portion, and the most for a day at the youngest age; None: not known."""
    most = next((grams for months, grams in _DAY_SALT_G if dish.recipe.youngest < months), None)
    sodium = dish.numbers.food_in_portion(food, "sodium_mg") if most is not None else None
    if most is None or sodium is None or sodium.coverage < 1:
        return None
    return sodium.amount * _part_that_there_is(dish) * _SALT_PER_SODIUM / 1000, most


def _part_that_there_is(dish: Dish) -> float:
    """How much of a portion as written the bowl has for it, 0 to 1: less where more is said to be made than goes in."""
    facts = dish.facts
    if facts.portion is None or not facts.portions:
        return 1.0
    there_is = facts.bowl.grams.high / facts.portions
    return min(1.0, there_is / facts.portion.mid)


def told_as_salty(dish: Dish) -> frozenset[int]:
    """The lines that are told of as salt or salty, are in no bowl of the baby's, or are cooked where the table knows
    the food dried alone: its salt went into the water."""
    salty = {hazard.line for hazard in dish.hazards if hazard.line is not None and hazard.classes & _SALTY}
    family = {i for i in range(len(dish.recipe.foods)) if not in_baby_bowl(i, dish.recipe, dish.treatments)}
    foods = dish.knowledge.foods
    records = [foods.get(line.food) if line.food else None for line in dish.recipe.foods]
    lines = zip(dish.recipe.foods, records, strict=True)
    dried = {i for i, (line, food) in enumerate(lines) if line.state == "cooked" and food and food.state == "dried"}
    return frozenset(salty | family | dried)


def of_texture(dish: Dish, issue: Issue) -> Iterator[Fault]:
    """A fault for each texture fault of this kind."""
    for fault in dish.texture.faults:
        if fault.issue == issue:
            yield Fault(
                fault.span, fault.message, fault.level, bowl="baby", remedy=Remedy(fault.remedy), sources=fault.sources
            )
