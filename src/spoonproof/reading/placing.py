"""From offsets in a value back to the document, through folds and escapes."""

from __future__ import annotations

from spoonproof.model.kitchen import Foods
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document, Passage, Piece
from spoonproof.model.tree import Scalar
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
