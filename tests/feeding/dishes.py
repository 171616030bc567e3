"""Dishes in a few words: ages, texture, food lines, steps, and the ids of the hazards (notes left out) they hold."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
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


def small_dishes() -> list[Small]:
    """The dishes of ``dishes.txt``. A line of another form, or one before any dish, is a ``ValueError``."""
    lines = Path(__file__).with_name("dishes.txt").read_text(encoding="utf-8").split("\n")
    start = next(at for at, line in enumerate(lines) if line.startswith("= "))
    dishes: list[Small] = []
    foods: list[str] = []
    steps: list[str] = []
    for number, line in enumerate(lines[start:], start + 1):
        mark, _, said = line.partition(" ")
        match mark:
            case "=":
                name, ages, texture = (*said.split(" | "), "")[:3]
                foods, steps = [], []
                dishes.append(Small(name, ages, foods, steps, frozenset(), texture))
            case "-":
                foods.append(said)
            case ">":
                steps.append(said)
            case "!":
                dishes[-1] = dishes[-1]._replace(hazards=frozenset(said.split()))
            case "":
                pass
            case _:
                raise ValueError(f"dishes.txt:{number}: {line!r} is no dish, food, step or hazard")
    return dishes
