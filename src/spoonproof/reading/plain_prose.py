"""Prose that is nothing but paragraphs: its passages are told without the Markdown parser, which takes longer to bring
in than to run. Whatever holds a mark that Markdown may know is left to the parser (``markdown``)."""

from __future__ import annotations

import re
from collections.abc import Iterable

from spoonproof.model.text import Document, Passage, Piece

# A letter first, no blank last, and none of the marks between: links, emphasis, code, escapes, entities, tables.
_PLAIN_LINE = re.compile(r"[^\W\d_](?:[^\x00-\x1f\x7f-\xa0\u2028\u2029*_`\[\]<>&\\~|]*[^\s*_`\[\]<>&\\~|])?")


def plain_passages(document: Document, lines: Iterable[tuple[str, int]]) -> list[Passage] | None:
    """The paragraphs of ``lines`` (each with its offset in the document), one passage each as the parser gives them;
    None where it takes the parser to tell."""
    paragraphs = plain_paragraphs(lines)
    return None if paragraphs is None else [_passage(document, paragraph) for paragraph in paragraphs]


def plain_paragraphs(lines: Iterable[tuple[str, int]]) -> list[list[tuple[str, int]]] | None:
    """The lines of each paragraph; None where it takes the parser to tell."""
    found: list[list[tuple[str, int]]] = []
    paragraph: list[tuple[str, int]] = []
    for text, start in (*lines, ("", 0)):
        if text:
            if _PLAIN_LINE.fullmatch(text) is None:
                return None
            paragraph.append((text, start))
        elif paragraph:
            found.append(paragraph)
            paragraph = []
    return found


def _passage(document: Document, lines: list[tuple[str, int]]) -> Passage:
    pieces: list[Piece] = []
    at = 0
    for number, (text, start) in enumerate(lines):
        if number:
            before, begin = lines[number - 1]
            pieces.append(Piece(at, begin + len(before), 1))
            at += 1
        pieces.append(Piece(at, start, len(text)))
        at += len(text)
    return Passage(" ".join(text for text, _ in lines), document, tuple(pieces), "story", "the story")
