"""Markdown prose: readable passages that map back to every character of the file.

The inline parser tells nothing about positions, so a subclass of it notes where each token began. Comments
are the author's own and neither shown nor judged; ``<!-- leave: why -->`` marks the block after it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from spoonproof.model.finding import Finding
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document, Passage, Piece, Span
from spoonproof.reading import limits
from spoonproof.reading.faults import quoted
from spoonproof.reading.plain_prose import plain_passages
from spoonproof.reading.runs import side_by_side
from spoonproof.reading.typed import Sink

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.rules_core import StateCore
    from markdown_it.token import Token

_LEAVE = re.compile(r"(?i)\s{0,40}leave\b\s{0,40}:?")
_BREAK = re.compile(r"\r\n|\r|\n")
_SAFE_SCHEMES = ("http", "https", "mailto", "tel", "recipe")
_SCHEME = re.compile(r"\A[\x00-\x20]*([a-zA-Z][a-zA-Z0-9+.\-]*)[\x00-\x20]*:")


@dataclass(slots=True)
class _Mark:
    """A ``leave`` comment: where it stands, its reason, and the line it ends on."""

    span: Span
    why: str
    line: int
    used: bool = False


@dataclass(frozen=True, slots=True)
class _Line:
    """A line as the parser gets it: without comments, and where each character of it stands."""

    text: str
    start: int
    places: tuple[int, ...] | None = None

    def place(self, column: int) -> int:
        """Offset of a column (from 0), the line's own end included."""
        if self.places is None:
            return self.start + column
        if column < len(self.places):
            return self.places[column]
        return self.places[-1] + 1 + column - len(self.places) if self.places else self.start


def story_text(text: str) -> str:
    """The story as it is shown: without its comments, lines ending in LF."""
    return "\n".join(line.text for line in _lines(text)[0])


def safe_link(address: str) -> bool:
    """Whether an address may stand on a page: relative, web, mail, phone or ``recipe:``."""
    match = _SCHEME.match(address)
    return match is None or match[1].lower() in _SAFE_SCHEMES


@lru_cache(maxsize=1)
def prose_parser() -> MarkdownIt:
    """The Markdown that stories are written in: CommonMark with tables and strikethrough, HTML as plain text,
    unsafe links left as text. Use it to render, so that what is shown is what was checked."""
    from markdown_it import MarkdownIt

    from spoonproof.reading.inline import PlacedInline

    parser = MarkdownIt("commonmark", {"html": False, "maxNesting": limits.MARKDOWN_NESTING})
    parser.enable(["table", "strikethrough"])
    placed = PlacedInline()
    placed.ruler.enableOnly(parser.inline.ruler.get_active_rules())
    placed.ruler2.enableOnly(parser.inline.ruler2.get_active_rules())
    parser.inline = placed
    parser.disable(["html_block", "html_inline"], ignoreInvalid=True)
    # Kept apart, escapes and entities can be followed back to how they were written.
    parser.core.ruler.disable("text_join", ignoreInvalid=True)
    parser.inline.ruler2.disable("fragments_join", ignoreInvalid=True)
    # Every address becomes a link first, so that ours is the one place where unsafe ones are dropped.
    parser.validateLink = _any_link  # type: ignore[method-assign]  # the library has no other switch for it
    parser.core.ruler.push("drop_unsafe_links", _drop_unsafe)
    return parser


def _any_link(url: str) -> bool:  # noqa: ARG001 - the parser names the argument
    return True


def _drop_unsafe(state: StateCore) -> None:
    """Take links and pictures with unsafe addresses out of the tokens; their words stay. What was dropped is noted
    in the block's ``meta["unsafe"]`` as (place, address)."""
    for token in state.tokens:
        if token.type != "inline" or not token.children:
            continue
        kept: list[Token] = []
        open_links: list[bool] = []
        dropped: list[tuple[int, str]] = []
        for child in token.children:
            if child.type == "link_open":
                safe = safe_link(str(child.attrGet("href") or ""))
                open_links.append(safe)
                if not safe:
                    dropped.append((int(child.meta.get("at", 0)), str(child.attrGet("href"))))
                    continue
            elif child.type == "link_close" and open_links and not open_links.pop():
                continue
            elif child.type == "image" and not safe_link(str(child.attrGet("src") or "")):
                dropped.append((int(child.meta.get("at", 0)), str(child.attrGet("src"))))
                continue
            kept.append(child)
        if dropped:
            token.children = kept
            token.meta["unsafe"] = dropped


def read_prose(document: Document, span: Span) -> tuple[list[Passage], list[Finding]]:
    """The passages of the Markdown in ``span``: one a paragraph, list item, heading or table cell, in order."""
    sink = Sink(document)
    source = document.text[span.start : span.end]
    lines, marks = _lines(source, span.start)
    opened = source.rfind("<!--")
    if opened >= 0 and source.find("-->", opened) < 0:
        opened = source.find("<!--", source.rfind("-->") + 1)
        at = Span(span.start + opened, span.start + opened + 4)
        message = "This comment never ends, so the rest of the story is hidden. Write --> after it."
        sink.add("comment-not-closed", at, message)
    for mark in marks:
        if not mark.why:
            sink.add("leave-without-reason", mark.span, "Say why these words are left: <!-- leave: the reason -->")
    if "<!--" not in source:
        plain = plain_passages(document, ((line.text, line.start) for line in lines))
        if plain is not None:
            return plain, sink.findings
    tokens = prose_parser().parse("\n".join(line.text for line in lines))
    passages = list(_Walker(document, lines, marks, sink).walk(tokens))
    for mark in marks:
        if not mark.used:
            message = "Nothing follows this mark. Put it on the line before what it is for."
            sink.add("leave-marks-nothing", mark.span, message)
    return passages, sink.findings


def _lines(text: str, base: int = 0) -> tuple[list[_Line], list[_Mark]]:
    """The lines of a prose without its comments, and the marks among the comments."""
    ends = [match.span() for match in _BREAK.finditer(text)]
    starts = [0, *(after for _, after in ends)]
    stops = [*(stop for stop, _ in ends), len(text)]
    lines = [_Line(text[start:stop], base + start) for start, stop in zip(starts, stops, strict=True)]
    if "<!--" not in text:
        return lines, []
    marks: list[_Mark] = []
    kept: list[_Line] = []
    comment: list[str] | None = None
    began = 0
    for number, line in enumerate(lines):
        places: list[int] = []
        column = 0
        while column < len(line.text):
            if comment is None:
                stop = line.text.find("<!--", column)
                end = len(line.text) if stop < 0 else stop
                places.extend(range(line.start + column, line.start + end))
                column = end
                if stop >= 0:
                    comment, began, column = [], line.start + stop, stop + 4
            else:
                stop = line.text.find("-->", column)
                comment.append(line.text[column : stop if stop >= 0 else len(line.text)])
                column = stop + 3 if stop >= 0 else len(line.text)
                if stop >= 0:
                    mark = _mark(" ".join(comment), Span(began, line.start + column), number)
                    marks.extend([mark] if mark is not None else [])
                    comment = None
        kept.append(_Line("".join(text[place - base] for place in places), line.start, tuple(places)))
    return kept, marks


def _mark(comment: str, span: Span, line: int) -> _Mark | None:
    leave = _LEAVE.match(comment)
    return None if leave is None else _Mark(span, " ".join(comment[leave.end() :].split()), line)


class _Walker:
    """Goes through the tokens of one prose and makes passages."""

    def __init__(self, document: Document, lines: Sequence[_Line], marks: Sequence[_Mark], sink: Sink) -> None:
        self.document = document
        self.lines = lines
        self.sink = sink
        self.taken: dict[int, int] = {}  # of each line of a table: how far its cells were found
        self.cells = 0
        self.targets: dict[int, _Mark] = {}
        for mark in marks:
            target = next((n for n in range(mark.line, len(lines)) if lines[n].text.strip()), None)
            if target is not None:
                self.targets[target] = mark

    def walk(self, tokens: Sequence[Token]) -> Iterator[Passage]:
        """The passages of all blocks. A mark covers the outermost block that starts on the line after it."""
        covers: list[_Mark | None] = [None]
        block = ""
        for token in tokens:
            cover = covers[-1]
            if token.map is not None and token.nesting >= 0 and cover is None:
                cover = self.targets.get(token.map[0])
                if cover is not None:
                    cover.used = True
            if token.nesting == 1:
                covers.append(cover)
                block = token.type
            elif token.nesting == -1:
                covers.pop()
            elif token.type == "inline":
                yield from self._inline(token, block, cover)
            elif token.type in ("fence", "code_block"):
                yield from self._code(token, cover)

    def _inline(self, token: Token, block: str, mark: _Mark | None) -> Iterator[Passage]:
        if token.map is None:
            return
        cell = block in ("th_open", "td_open")
        offsets = self._offsets(token.content, token.map[0], cell)
        text, pieces, images = _readable(token, offsets)
        for place, address in token.meta.get("unsafe", ()):
            at = offsets[min(place, len(offsets) - 1)]
            message = f"The address {quoted(address[:60])} could run something or opens a file, so no link is made."
            self.sink.add("unsafe-link", Span(at, at + 1), message)
        if text.strip():
            yield self._passage(text, pieces, "story", "the story", mark)
        for alt, at in images:
            if alt.strip():
                yield self._passage(alt, [Piece(0, at, len(alt))], "picture", "a picture in the story", mark)

    def _passage(self, text: str, pieces: Sequence[Piece], kind: str, where: str, mark: _Mark | None) -> Passage:
        leave = mark.why if mark is not None else None
        return Passage(text, self.document, tuple(pieces), kind, where, leave=leave)

    def _code(self, token: Token, mark: _Mark | None) -> Iterator[Passage]:
        text = token.content.replace("\n", " ").rstrip()
        if token.map is None or not text:
            return
        pieces = []
        at = 0
        first = token.map[0] + (1 if token.type == "fence" else 0)
        for number, part in enumerate(token.content.split("\n"), first):
            if part.strip() and number < len(self.lines):
                line = self.lines[number]
                pieces.append(Piece(at, line.place(max(0, line.text.find(part))), len(part)))
            at += len(part) + 1
        yield self._passage(text, pieces, "story", "the story", mark)

    def _offsets(self, content: str, first: int, cell: bool) -> list[int]:
        """For every character of a block's content its offset in the file."""
        offsets: list[int] = []
        for number, part in enumerate(content.split("\n"), first):
            line = self.lines[min(number, len(self.lines) - 1)]
            offsets.extend(self._in_cell(part, line, number) if cell else _in_line(part, line))
            offsets.append(line.place(len(line.text)))
        offsets.pop()
        return offsets

    def _in_cell(self, part: str, line: _Line, number: int) -> list[int]:
        begin = self.taken.get(number, 0)
        found = line.text.find(part, begin)
        if found >= 0:
            self.taken[number] = found + len(part)
            return [line.place(found + index) for index in range(len(part))]
        found = line.text.find(part.replace("|", "\\|"), begin)
        if found < 0:
            return [line.place(begin)] * len(part)
        offsets = []
        for char in part:
            found += char == "|"
            offsets.append(line.place(found))
            found += 1
        self.taken[number] = found
        return offsets


def _in_line(part: str, line: _Line) -> list[int]:
    """Where the characters of a block's line stand: it is the tail of the line, or else somewhere in it."""
    stripped = part.rstrip()
    found = len(line.text.rstrip()) - len(stripped)
    if found < 0 or not line.text.startswith(stripped, found):
        found = line.text.find(stripped)
    if found >= 0 and line.places is None:
        return list(range(line.start + found, line.start + found + len(part)))
    if found >= 0:
        return [line.place(found + index) for index in range(len(part))]
    # Not to be followed (a tab was widened, say): the line as a whole stands for it.
    last = max(0, len(line.text) - 1)
    return [line.place(min(index, last)) for index in range(len(part))]


def _readable(block: Token, offsets: Sequence[int]) -> tuple[str, list[Piece], list[tuple[str, int]]]:
    """The plain text of a block's inline tokens, its pieces, and the pictures' texts with where they stand."""
    parts: list[str] = []
    pieces: list[Piece] = []
    images: list[tuple[str, int]] = []
    length = 0

    def place(at: int) -> int:
        return offsets[max(0, min(at, len(offsets) - 1))] if offsets else 0

    for child in block.children or ():
        at = int(child.meta.get("at", 0))
        if child.type in ("softbreak", "hardbreak"):
            parts.append(" ")
            pieces.append(Piece(length, place(at), 1))
            length += 1
        elif child.type == "image":
            images.append((child.content, place(at + 2)))
        elif child.type in ("text", "text_special", "code_inline") and child.content:
            if child.type == "code_inline":
                at += len(child.markup)
                at += not block.content.startswith(child.content, at)  # a blank beside the marks is not shown
            for run_at, run_offset, run_length in _runs(at, len(child.content), child.type != "text_special", offsets):
                pieces.append(Piece(length + run_at, run_offset, run_length))
            parts.append(child.content)
            length += len(child.content)
    return "".join(parts), pieces, images


def _runs(at: int, length: int, plain: bool, offsets: Sequence[int]) -> Iterator[tuple[int, int, int]]:
    """Stretches of characters that stand side by side in the file: (from, offset in the file, length)."""
    places = offsets[at : at + length] or [offsets[-1] if offsets else 0]
    if not plain:
        yield 0, places[0], length
        return
    for begin, end in side_by_side(places):
        yield begin, places[begin], end - begin
