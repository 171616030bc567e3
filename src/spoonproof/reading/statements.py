"""Statements: what the audience reads, hears or is shown, as passages that map back to the file."""

from __future__ import annotations

from spoonproof.model.record import dataclass
from spoonproof.model.text import Document, Passage, Piece, Text
from spoonproof.model.tree import Mapped, Node, Scalar
from spoonproof.reading.typed import Key, Reader, Sink, node_text, read_keys

_BREAKS = str.maketrans("\n\r\t\u0085\u2028\u2029\x0b\x0c", "        ")


@dataclass(frozen=True, slots=True)
class Statement:
    """A text of the head; ``leave`` is the reason not to judge it, where it was marked."""

    node: Scalar
    leave: Scalar | None = None

    @property
    def text(self) -> Text:
        """The words, with where they stand."""
        return Text(self.node.value.strip(), self.node.span)


TEXT = Key("text", node_text(), "The words.", needed=True)
LEAVE = Key("leave", node_text("a reason"), "Why these words should not be judged (a myth that is being refuted).")


def statement(words: str = "a text") -> Reader[Statement]:
    """A text, or a mapping with ``text`` and ``leave``."""
    plain = node_text(words)

    def read(node: Node, sink: Sink) -> Statement | None:
        if isinstance(node, Mapped) and node.get("text") is not None:
            values = read_keys(node, (TEXT, LEAVE), sink, "a statement")
            written = values.get(TEXT)
            return None if written is None else Statement(written, values.get(LEAVE))
        scalar = plain.read(node, sink)
        return None if scalar is None else Statement(scalar)

    mapping = {
        "type": "object",
        "properties": {"text": {"type": "string"}, "leave": {"type": "string"}},
        "required": ["text"],
        "additionalProperties": False,
    }
    return Reader(f"{words}, or a mapping with text and leave", {"anyOf": [plain.schema, mapping]}, read)


def passage_of(node: Scalar, document: Document, kind: str, where: str, leave: Scalar | None = None) -> Passage:
    """The passage of a value of the head. Line breaks and tabs become blanks, one for one, so the map holds."""
    whole = (Piece(0, node.span.start, max(1, node.span.end - node.span.start)),)
    pieces = tuple(Piece(*piece) for piece in node.pieces) or whole
    words, why = node.value.translate(_BREAKS).rstrip(), leave.value.strip() if leave is not None else None
    return Passage(words, document, pieces, kind, where, leave=why)
