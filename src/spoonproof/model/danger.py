"""A danger of a food at an age, as one room tells another of it."""

from __future__ import annotations

from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import dataclass


@dataclass(frozen=True, slots=True)
class Danger:
    """What the hazard tables hold against a food that words give a baby.

    ``row`` is the id of the table's row, ``food`` the food as it was said. ``told``: the words themselves show the
    danger ("cubes of cheddar"); False where they leave open what would clear it ("cheddar is finger food").
    ``why`` says what is wrong with it, ``remedy`` how it is served instead, both as sentences.
    """

    row: str
    food: str
    told: bool
    level: Level
    why: str
    remedy: str
    sources: tuple[SourceRef, ...]
