"""The file that is read with its tables, and the way from offsets in a value back to it."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.model.kitchen import Foods
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document, Passage, Piece
from spoonproof.model.tree import Scalar
from spoonproof.reading import limits
from spoonproof.reading.measures import Measures


class Page(NamedTuple):
    """The file that a food line stands in, and the tables it is read with."""

    document: Document
    foods: Foods
    measures: Measures


def passage_of(scalar: Scalar, document: Document, kind: str = "step", where: str = "") -> Passage:
    """The scalar's text with its map to the document; spans of it always lie inside the document."""
    if scalar.pieces:
        pieces = tuple(Piece(*piece) for piece in scalar.pieces)
    else:
        raw = document.at(scalar.span)
        inside = max(0, raw.find(scalar.value)) if scalar.value else 0
        length = max(1, min(len(scalar.value), len(raw) - inside))
        pieces = (Piece(0, scalar.span.start + inside, length),)
    return Passage(scalar.value, document, pieces, kind, where)


class FewHints:
    """``foods`` for one file: once many names were unknown, further ones get no hint.

    Looking for near names is the one slow question of reading, and a file with hundreds of unknown foods
    (another language, a slip in the indentation) would wait seconds for hints nobody reads.
    """

    def __init__(self, foods: Foods) -> None:
        self.get, self.match, self.find, self.variant = foods.get, foods.match, foods.find, foods.variant
        self._nearest = foods.nearest
        self._left = limits.NAME_HINTS
        self.asked = 0  # how often a near name was asked for
        self._known: dict[str, Sequence[str]] = {}

    def nearest(self, words: str, most: int = 3) -> Sequence[str]:
        """Names that ``words`` may have meant; none once the file had its share of hints."""
        self.asked += 1
        if words not in self._known:
            if self._left == 0:
                return ()
            self._left -= 1
            self._known[words] = self._nearest(words, most)
        return self._known[words]
