"""Figures that cannot be right: a food whose parts weigh more than it does, or whose energy is not that of its
parts; a recipe that makes more, or far less, than goes in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from spoonproof.foods.facts import Facts
from spoonproof.foods.grams import Grams
from spoonproof.model.food import Food
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import NamedTuple

# Energy a gram may bring, least and most, over the kinds of protein, fat and carbohydrate that foods have
# (general factors 4, 9, 4; the specific ones reach from 2.4 to 4.4, 8.3 to 9.0 and 2.7 to 4.2); fibre 0 to 4.
_LEAST = (2.0, 8.3, 2.5)
_MOST = (4.4, 9.1, 4.2)
# Not counted among the parts: alcohol, acids, and sweeteners that count as carbohydrate and bring nothing.
_OTHER_ENERGY = ("alcohol", "sweetener")


def odd_figures(food: Food) -> Iterator[str]:
    """What does not add up in a food's figures, in words; nothing where they do, or where they are too few."""
    amounts = {key: value.amount for key, value in food.per_100g.items()}
    parts = [key for key in ("protein_g", "fat_g", "carbohydrate_g", "water_g") if key in amounts]
    total = sum(amounts[key] for key in parts)
    if total > 102:
        yield f"its protein, fat, carbohydrate and water weigh {total:.0f} g in 100 g"
    for part, whole in (("sugars_g", "carbohydrate_g"), ("fibre_g", "carbohydrate_g"), ("saturated_fat_g", "fat_g")):
        if part in amounts and whole in amounts and amounts[part] > amounts[whole] * 1.05 + 1:
            yield f"{amounts[part]:g} g of {part} is more than its {amounts[whole]:g} g of {whole}"
    energy = amounts.get("energy_kcal")
    if energy is None or not {"protein_g", "fat_g", "carbohydrate_g"} <= amounts.keys():
        return
    if set(food.traits) & set(_OTHER_ENERGY) or "vinegar" in food.id or food.group == "other":
        return
    protein, fat, carbohydrate = (amounts[key] for key in ("protein_g", "fat_g", "carbohydrate_g"))
    least = protein * _LEAST[0] + fat * _LEAST[1] + (carbohydrate - amounts.get("fibre_g", 0.0)) * _LEAST[2]
    most = protein * _MOST[0] + fat * _MOST[1] + carbohydrate * _MOST[2]
    if not least * 0.9 - 6 <= energy <= most * 1.05 + 6:
        yield f"{energy:.0f} kcal is not the energy of its parts, which is between {least:.0f} and {most:.0f} kcal"


class Mismatch(NamedTuple):
    """What the recipe says it makes against what goes in (grams).

    ``kind``: "more" than can come of it, "less" than comes of it, or "trial": the weighed trial is not what the
    foods can give. ``stated`` is ``makes`` (the last trial for "trial"), ``expected`` what the foods give.
    """

    kind: Literal["more", "less", "trial"]
    stated: float
    expected: Grams


_MARGIN = 1.1  # a scale, a spoonful left in the pan
_LEFT_OVER = 0.7  # less may be served than is made, but a third gone missing is a mistake


def mismatch(recipe: Recipe, facts: Facts) -> Mismatch | None:
    """Whether ``makes`` and the weighed trial fit what goes in; None where they do or nothing is stated.

    A family pot may leave any amount to the family: there only "more" than the whole pot is wrong.
    """
    bowl = facts.bowl
    incomplete = bool(facts.uncounted) or not bowl.computed.mid
    if facts.weighed is not None and not incomplete and not _within(facts.weighed.mid, bowl.computed):
        return Mismatch("trial", facts.weighed.mid, bowl.computed)
    makes = recipe.makes
    if makes is None or makes.count <= 0 or (makes.in_portions and makes.grams is None):
        return None
    stated = makes.whole_grams or makes.ml or 0.0
    # What is cooked with water weighs from 0.9 g a ml (with fat or air in it) to 1.15 g (thick with starch or sugar).
    lightest, heaviest = (1.0, 1.0) if makes.ml is None else (0.9, 1.15)
    expected = bowl.grams
    if stated * lightest > expected.high * _MARGIN and not incomplete:
        return Mismatch("more", stated, expected)
    shared = "family" in facts.bowls or bool(makes.family)
    if stated * heaviest < expected.low * _LEFT_OVER and not shared:
        return Mismatch("less", stated, expected)
    return None


def _within(grams: float, expected: Grams) -> bool:
    return expected.low * 0.8 <= grams <= expected.high * 1.2
