"""A claim while it is being put together: indices into a tagged sentence."""

from __future__ import annotations

from spoonproof.claims.grammar import Rule
from spoonproof.model.claim import Polarity, Quantity, Strength
from spoonproof.model.record import dataclass


@dataclass(frozen=True, slots=True)
class Draft:
    """One claim of a sentence; ``start``/``end`` are offsets into the sentence.

    ``pronoun`` is True where the sentence alone does not say what the claim is about.
    """

    rule: Rule
    start: int
    end: int
    subjects: tuple[str, ...]
    relates_to: str | None
    polarity: Polarity
    strength: Strength
    audience: str | None
    number: Quantity | None
    foods: tuple[str, ...]
    nutrients: tuple[str, ...]
    effect: str | None
    level: str | None
    allergens: tuple[str, ...]
    of_dish: bool
    trigger: str
    pronoun: bool
    said: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Match:
    """Where a rule matched: item ranges of the whole, the trigger, the object and the subject (or None)."""

    rule: Rule
    start: int
    end: int
    trigger: tuple[int, int]
    object: tuple[int, int] | None
    subject: tuple[int, int] | None
