"""Verbs of the kitchen, and the small protocols by which the rooms know each other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, Protocol

from spoonproof.model.food import Food, NameMatch
from spoonproof.model.record import NamedTuple, dataclass

Medium = Literal["none", "steam", "water", "oven", "fat", "pan", "microwave", "pressure", "cold"]


@dataclass(frozen=True, slots=True)
class Verb:
    """One row of the closed table of kitchen verbs.

    ``forms`` are the words as written (steam, steamed, steaming); ``medium`` how heat gets in ("none" for
    unheated work); ``texture`` the texture word it makes or "" when it leaves texture alone;
    ``water`` kept, drained, driven-off, absorbed or none; ``retention`` the method word that chooses the
    retention code; ``hands`` share of the time that needs a pair of hands, 0 to 1; ``tool`` ring, oven,
    microwave, blender, steamer or "". ``role``: heat, join (add, stir in), blend, cut, season, cool, serve,
    split, soak, chill or other.
    """

    id: str
    forms: tuple[str, ...]
    role: str
    medium: Medium = "none"
    texture: str = ""
    water: str = "none"
    retention: str = ""
    hands: float = 1.0
    tool: str = ""
    minutes: float = 1.0  # assumed when the step gives no time
    source: str = "common-practice"


class VerbMatch(NamedTuple):
    """``text[start:end]`` is a form of ``verb`` (an id)."""

    start: int
    end: int
    verb: str


class Verbs(Protocol):
    """The verb table as the step reader sees it."""

    def find(self, text: str) -> Sequence[VerbMatch]:
        """All verb forms in ``text``, left to right, longest first, not overlapping."""

    def get(self, verb: str) -> Verb:
        """The row of a verb id; KeyError when there is none."""


class Foods(Protocol):
    """The food table as the rooms beside it see it."""

    def get(self, food: str) -> Food | None:
        """The record of a food id."""

    def match(self, words: str) -> NameMatch | None:
        """The food that ``words`` (a food line without its amount) names: the longest known name that
        reads naturally there, plurals and spellings included; None when there is none."""

    def find(self, text: str) -> Sequence[NameMatch]:
        """Every food name in running text, left to right, longest first, not overlapping."""

    def nearest(self, words: str, most: int = 3) -> Sequence[str]:
        """Names that ``words`` may have meant, best first."""

    def variant(self, food: str, state: str) -> str:
        """The id of the same food in another state ("canned", "dried"); the id itself when there is none."""
