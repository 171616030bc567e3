"""Dishes in a few words: ages, texture, food lines, steps, and the ids of the hazards (notes left out) they hold."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from spoonproof.dish import Dish
from tests import kitchen


class Small(NamedTuple):
    """A dish and the hazards at warning or above that it must give, no more and no fewer."""

    name: str
    ages: str
    foods: Sequence[str]
    steps: Sequence[str]
    hazards: frozenset[str]
    texture: str = ""


def text_of(ages: str, foods: Sequence[str], steps: Sequence[str], texture: str = "") -> str:
    """A recipe head."""
    lines = [f"ages: {ages} months"]
    if texture:
        lines.append(f"texture: {texture}")
    lines += ["foods:", *(f"  - {food}" for food in foods), "steps:", *(f"  - {step}" for step in steps)]
    return "\n".join(lines) + "\n"


def dish(ages: str, foods: Sequence[str], steps: Sequence[str], texture: str = "", channel: str = "") -> Dish:
    """The dish of these pieces."""
    return kitchen.dish(text_of(ages, foods, steps, texture), channel)


def hazard_ids(made: Dish, *, notes: bool = False) -> set[str]:
    """Ids of the hazards of a dish."""
    return {hazard.id for hazard in made.hazards if notes or hazard.level != "note"}
