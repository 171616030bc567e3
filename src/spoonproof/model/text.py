"""Where things stand in a text: documents, spans and readable passages.

Offsets are code points from 0 into ``Document.text``; lines and columns are counted from 1
and only made when something is printed. A line ends at LF, CRLF or a lone CR, nowhere else.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from functools import cached_property
from typing import Generic, TypeVar

from spoonproof.model.record import NamedTuple, dataclass

_LINE_END = re.compile(r"\r\n|\r|\n")

T = TypeVar("T")


class Span(NamedTuple):
    """Two offsets into a document's text, ``end`` exclusive."""

    start: int
    end: int


NOWHERE = Span(0, 0)


class Place(NamedTuple):
    """Line and column as a person counts them: from 1, in code points, ``end`` exclusive."""

    line: int
    column: int
    end_line: int
    end_column: int


@dataclass(frozen=True, eq=False)
class Document:
    """One text file: ``path`` as shown to a person (relative to the channel), and its text.

    A byte order mark is dropped before the text comes here. Documents compare by identity.
    """

    path: str
    text: str

    @cached_property
    def line_starts(self) -> tuple[int, ...]:
        """Offset of the first character of every line."""
        return (0, *(m.end() for m in _LINE_END.finditer(self.text)))

    def position(self, offset: int) -> tuple[int, int]:
        """Line and column (from 1) of an offset; an offset past the end is the end."""
        offset = max(0, min(offset, len(self.text)))
        line = bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def place(self, span: Span) -> Place:
        """Line and column of both ends of ``span``."""
        return Place(*self.position(span.start), *self.position(span.end))

    def offset(self, line: int, column: int) -> int:
        """Offset of a line and column counted from 1; clamped to the document."""
        line = max(1, min(line, len(self.line_starts)))
        return min(self.line_starts[line - 1] + column - 1, len(self.text))

    def line_text(self, line: int) -> str:
        """The text of a line (from 1) without its line end."""
        start = self.line_starts[line - 1]
        end = self.line_starts[line] if line < len(self.line_starts) else len(self.text)
        return self.text[start:end].rstrip("\r\n")

    def at(self, span: Span) -> str:
        """The text that ``span`` covers."""
        return self.text[span.start : span.end]

    @property
    def whole(self) -> Span:
        """The span of the first character: where a finding about the whole file is shown."""
        return Span(0, min(1, len(self.text)))


@dataclass(frozen=True)  # no slots: calling the alias ``Text(...)`` must be able to try and set an attribute
class Spanned(Generic[T]):
    """A value and where it was written."""

    value: T
    span: Span


Text = Spanned[str]


class Piece(NamedTuple):
    """``length`` characters of a passage from ``at`` that stand in the document from ``offset``."""

    at: int
    offset: int
    length: int


class Cue(NamedTuple):
    """The part of a passage from ``at`` on was spoken or shown from ``start`` to ``end`` seconds, by ``voice``, ""
    where the file does not say who speaks."""

    at: int
    start: float
    end: float
    voice: str = ""


@dataclass(frozen=True, slots=True)
class Passage:
    """Readable text with a map back to the document it was written in.

    ``kind`` says what the audience meets: title, story, step, say, super, picture, shows,
    description, social, note or speech (captions, transcripts). ``where`` is a short label
    for people ("step 3"). ``leave`` is the author's reason not to judge it.
    """

    text: str
    document: Document
    pieces: tuple[Piece, ...]
    kind: str = "story"
    where: str = ""
    cues: tuple[Cue, ...] = ()
    leave: str | None = None

    def span(self, start: int, end: int) -> Span:
        """The document's span of ``text[start:end]``: from its first to its last character."""
        if end <= start:
            offset = self._offset(start)
            return Span(offset, offset)
        return Span(self._offset(start), self._offset(end - 1) + 1)

    def _offset(self, at: int) -> int:
        if not self.pieces:
            return 0
        index = max(0, bisect_right(self.pieces, at, key=lambda piece: piece.at) - 1)
        piece = self.pieces[index]
        return piece.offset + min(max(0, at - piece.at), max(0, piece.length - 1))

    def seconds(self, start: int, end: int) -> tuple[float, float] | None:
        """Start and end in seconds of ``text[start:end]``, where the passage is timed."""
        if not self.cues:
            return None
        first = self.cues[max(0, bisect_right(self.cues, start, key=lambda cue: cue.at) - 1)]
        last = self.cues[max(0, bisect_right(self.cues, max(start, end - 1), key=lambda cue: cue.at) - 1)]
        return first.start, last.end
