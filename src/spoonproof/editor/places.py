"""Between a document's offsets (code points) and the protocol's positions (UTF-16 units unless agreed otherwise)."""

from __future__ import annotations

from collections.abc import Iterable

from lsprotocol import types

from spoonproof.model.text import Document, Span

Encoding = types.PositionEncodingKind | str
UTF16: Encoding = types.PositionEncodingKind.Utf16


def units(text: str, encoding: Encoding = UTF16) -> int:
    """How long ``text`` is in the units of the protocol."""
    if text.isascii() or encoding == types.PositionEncodingKind.Utf32:
        return len(text)
    if encoding == types.PositionEncodingKind.Utf8:
        return len(text.encode("utf-8", "surrogatepass"))
    return len(text) + sum(character > "\uffff" for character in text)


def position(document: Document, offset: int, encoding: Encoding = UTF16) -> types.Position:
    """Where an offset is, counted from 0 as the protocol does."""
    line, column = document.position(offset)
    start = document.line_starts[line - 1]
    return types.Position(line - 1, units(document.text[start : start + column - 1], encoding))


def range_of(document: Document, span: Span, encoding: Encoding) -> types.Range:
    """Both ends of a span."""
    return types.Range(position(document, span.start, encoding), position(document, span.end, encoding))


def offset(document: Document, place: types.Position, encoding: Encoding = UTF16) -> int:
    """The offset of a position; one past the end of a line is its end, past the text the end of the text.

    A position inside a character (between the two halves of an emoji) is the start of that character.
    """
    if place.line >= len(document.line_starts):
        return len(document.text)
    start = document.line_starts[place.line]
    line = document.line_text(place.line + 1)
    if line.isascii() or encoding == types.PositionEncodingKind.Utf32:
        return start + min(place.character, len(line))
    left = place.character
    for index, character in enumerate(line):
        left -= units(character, encoding)
        if left < 0:
            return start + index
    return start + len(line)


def span_of(document: Document, there: types.Range, encoding: Encoding = UTF16) -> Span:
    """The span of a range; its ends in order whatever was sent."""
    ends = sorted((offset(document, there.start, encoding), offset(document, there.end, encoding)))
    return Span(ends[0], ends[1])


def changed(
    document: Document, changes: Iterable[types.TextDocumentContentChangeEvent], encoding: Encoding = UTF16
) -> Document:
    """The document after ``changes``, each made on the outcome of the one before."""
    for change in changes:
        if isinstance(change, types.TextDocumentContentChangePartial):
            span = span_of(document, change.range, encoding)
            text = document.text[: span.start] + change.text + document.text[span.end :]
        else:
            text = change.text
        document = Document(document.path, text)
    return document
