"""The food table with patience for a file's first unknown names only."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.model.food import Food, NameMatch
from spoonproof.model.kitchen import Foods
from spoonproof.reading import limits


class FewHints:
    """``foods`` for one file: once many names were unknown, further ones get no hint.

    Looking for near names is the one slow question of reading, and a file with hundreds of unknown foods
    (another language, a slip in the indentation) would wait seconds for hints nobody reads.
    """

    def __init__(self, foods: Foods) -> None:
        self._foods = foods
        self._left = limits.NAME_HINTS
        self.asked = 0  # how often a near name was asked for
        self._known: dict[str, Sequence[str]] = {}

    def get(self, food: str) -> Food | None:
        """The record of a food id."""
        return self._foods.get(food)

    def match(self, words: str) -> NameMatch | None:
        """The food that ``words`` name."""
        return self._foods.match(words)

    def find(self, text: str) -> Sequence[NameMatch]:
        """Every food name in running text."""
        return self._foods.find(text)

    def nearest(self, words: str, most: int = 3) -> Sequence[str]:
        """Names that ``words`` may have meant; none once the file had its share of hints."""
        self.asked += 1
        if words not in self._known:
            if self._left == 0:
                return ()
            self._left -= 1
            self._known[words] = self._foods.nearest(words, most)
        return self._known[words]

    def variant(self, food: str, state: str) -> str:
        """The id of the same food in another state."""
        return self._foods.variant(food, state)
