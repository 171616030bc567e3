"""Files of statements for ``listen``: captions, transcripts and texts as running passages with places and times."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from html import unescape
from itertools import groupby
from pathlib import PurePosixPath

from spoonproof.model.finding import Finding
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.text import Cue, Document, Passage, Piece, Span
from spoonproof.reading import limits
from spoonproof.reading.markdown import read_prose
from spoonproof.reading.runs import side_by_side
from spoonproof.reading.typed import Sink

_TIMING = re.compile(
    r"[ \t]{0,20}(?P<start>(?:[0-9]{1,4}:)?[0-9]{1,2}:[0-9]{2}[.,][0-9]{1,3})[ \t]{1,20}-->[ \t]{1,20}"
    r"(?P<end>(?:[0-9]{1,4}:)?[0-9]{1,2}:[0-9]{2}[.,][0-9]{1,3})(?P<settings>[ \t].{0,300})?"
)
_TAG = re.compile(r"<[^<>\r\n]{0,200}>|\{\\[^{}\r\n]{0,200}\}")
_ENTITY = re.compile(r"&(?:#[0-9]{1,7}|#x[0-9a-fA-F]{1,6}|[a-zA-Z]{2,31});")
_VOICE = re.compile(r"<v(?:\.[^\s<>]{0,60})?[ \t]{1,4}(?P<name>[^<>\r\n]{1,60})>")
_SPEAKER = re.compile(r"(?:>>|-)[ \t]{1,4}")
_BLOCKS = ("NOTE", "STYLE", "REGION")
_HOLE = 4.0
"""Seconds of silence after which a passage ends: what is said then belongs to something else."""

_LONGEST = 2000
"""Characters after which a running passage ends at the next end of a sentence."""


class _Line(NamedTuple):
    """A line of the file: its text and where it starts."""

    text: str
    start: int


@dataclass(slots=True)
class _CueText:
    """A cue: its time and its lines, tags out, every character with its place; who speaks, where a tag says so."""

    start: float
    end: float
    lines: list[list[tuple[str, int]]]
    voice: str = ""


def read_statements(document: Document, lines: bool = False) -> tuple[list[Passage], list[Finding]]:
    """The passages of a caption, transcript or text file, and what of it can't be read.

    The kind of file is told by its suffix, else by how it starts. Cues run on into passages, cut where nobody
    speaks for a while; words that rolling captions show again are taken once. ``lines``: each line (each cue of a
    timed file) is a passage of its own.
    """
    sink = Sink(document)
    suffix = PurePosixPath(document.path.replace("\\", "/").lower()).suffix
    rows = _lines(document)
    if suffix in (".vtt", ".srt") or (suffix not in (".txt", ".md") and _is_timed(rows)):
        passages = list(_spoken(document, list(_cues(rows, sink)), lines))
    elif lines:
        passages = [_plain(document, [row]) for row in rows if row.text.strip()]
    elif suffix == ".md":
        passages, more = read_prose(document, _after_head(document))
        sink.findings += more
    else:
        passages = [_plain(document, block) for block in _paragraphs(rows)]
    return passages, sink.findings


def _lines(document: Document) -> list[_Line]:
    return [_Line(document.line_text(number), start) for number, start in enumerate(document.line_starts, 1)]


def _is_timed(rows: Sequence[_Line]) -> bool:
    return rows[0].text.startswith("WEBVTT") or any(_TIMING.fullmatch(row.text) for row in rows[:40])


def _after_head(document: Document) -> Span:
    """The story of a Markdown file; all of it where there is no head."""
    from spoonproof.reading.front_matter import split_head

    head, story, _ = split_head(document)
    return story if head is not None else Span(0, len(document.text))


# --- texts ------------------------------------------------------------------------------------------------------------


def _paragraphs(rows: Sequence[_Line]) -> Iterator[list[_Line]]:
    for blank, block in groupby(rows, key=lambda row: not row.text.strip()):
        if not blank:
            yield list(block)


def _plain(document: Document, rows: Sequence[_Line]) -> Passage:
    text = ""
    pieces: list[Piece] = []
    for row in rows:
        words = row.text.strip()
        text += " " if text else ""
        pieces.append(Piece(len(text), row.start + row.text.find(words), len(words)))
        text += words
    return Passage(text, document, tuple(pieces), "speech", f"line {document.position(rows[0].start)[0]}")


# --- captions ---------------------------------------------------------------------------------------------------------


def _cues(rows: Sequence[_Line], sink: Sink) -> Iterator[_CueText]:
    """The cues of a WebVTT or SubRip file, in the order of the file.

    Words are never lost: under a time that can't be read, or under none, they are heard where the cue before ended.
    """
    number = _after_header(rows)
    last = 0.0
    told = False
    while number < len(rows):
        row = rows[number]
        times = _times_of(row, sink)
        if times is not None:
            number += 1
        elif "-->" in row.text:
            message = "This time line can't be read; its words are heard, but not at their time."
            message += f" Write 00:01:02.000 --> 00:01:04.000, with at most {limits.FILM_HOURS} hours."
            sink.add("cue-not-read", Span(row.start, row.start + max(1, len(row.text))), message)
            number += 1
        elif row.text.split(" ")[0].strip() in _BLOCKS:
            while number < len(rows) and rows[number].text.strip():
                number += 1
            continue
        elif _is_name(rows, number):
            number += 1
            continue
        elif not told:
            told = True
            message = "No time stands above these words; they are heard where the cue before them ended."
            sink.add("cue-not-read", Span(row.start, row.start + len(row.text)), message, level="note")
        start, last = times or (last, last)
        end = next((n for n in range(number, len(rows)) if _ends_words(rows[n].text)), len(rows))
        said, number = rows[number:end], end
        # SubRip without blank lines: the counter of the next cue is no speech.
        if end < len(rows) and rows[end].text.strip() and said and said[-1].text.strip().isdigit():
            said = said[:-1]
        lines = [line for line in map(_characters, said) if "".join(char for char, _ in line).strip()]
        voices = (_VOICE.search(row.text) for row in said)
        names = (" ".join(unescape(voice["name"]).split()) for voice in voices if voice is not None)
        yield _CueText(start, last, lines, next(filter(None, names), ""))


def _ends_words(text: str) -> bool:
    """Whether the words of a cue end at this row."""
    return not text.strip() or _TIMING.fullmatch(text) is not None


def _after_header(rows: Sequence[_Line]) -> int:
    """The first row after the block that begins a WebVTT file."""
    if not rows[0].text.startswith("WEBVTT"):
        return 0
    return next((n for n, row in enumerate(rows) if not row.text.strip() or "-->" in row.text), len(rows))


def _is_name(rows: Sequence[_Line], number: int) -> bool:
    """Whether a row is no speech: blank, a counter, or the name of the cue below it."""
    text = rows[number].text.strip()
    return not text or text.isdigit() or (number + 1 < len(rows) and "-->" in rows[number + 1].text)


def _times_of(row: _Line, sink: Sink) -> tuple[float, float] | None:
    """Start and end of a time line in seconds; None where it is none, or stands later than any film lasts."""
    timing = _TIMING.fullmatch(row.text)
    if timing is None:
        return None
    start, end = _seconds(timing["start"]), _seconds(timing["end"])
    if max(start, end) > limits.FILM_HOURS * 3600:
        return None
    if end < start:
        at = Span(row.start, row.start + len(row.text))
        sink.add("cue-not-read", at, "This cue ends before it starts.", level="note")
        end = start
    return start, end


def _seconds(written: str) -> float:
    whole, _, part = written.replace(",", ".").partition(".")
    seconds = 0
    for number in whole.split(":"):
        seconds = seconds * 60 + int(number)
    return seconds + int(part.ljust(3, "0")) / 1000


def _characters(row: _Line) -> list[tuple[str, int]]:
    """The shown characters of a cue line, each with its place: tags out, entities read, speaker marks out."""
    found: list[tuple[str, int]] = []
    at = 0
    text = row.text
    dash = _SPEAKER.match(text)
    if dash is not None:
        at = dash.end()
    while at < len(text):
        char = text[at]
        if char in "<{":
            tag = _TAG.match(text, at)
            if tag is not None:
                at = tag.end()
                continue
        if char == "&":
            entity = _ENTITY.match(text, at)
            if entity is not None:
                found += [(made, row.start + at) for made in unescape(entity[0])]
                at = entity.end()
                continue
        found.append((" " if char in "\t\xa0" else char, row.start + at))
        at += 1
    shown = [n for n, (char, _) in enumerate(found) if not char.isspace()]
    return found[shown[0] : shown[-1] + 1] if shown else []


def _spoken(document: Document, cues: Sequence[_CueText], each: bool) -> Iterator[Passage]:
    """Passages of running speech; lines that roll on from the cue before are dropped."""
    running = _Running(document)
    shown: list[str] = []
    last_end = None
    for cue in cues:
        fresh, shown = _fresh(cue, shown, last_end)
        pause = last_end is not None and cue.start - last_end > _HOLE
        if running.length and (each or pause or (running.length > _LONGEST and running.ends_sentence())):
            yield running.passage()
            running = _Running(document)
        for line in fresh:
            running.add(line, cue)
        last_end = max(cue.end, last_end or 0.0)
    if running.length:
        yield running.passage()


def _fresh(
    cue: _CueText, shown: Sequence[str], last_end: float | None
) -> tuple[list[list[tuple[str, int]]], list[str]]:
    """The lines of a cue that were not on the picture just before, and those that are on it now.

    Rolling captions repeat: the last lines of one cue are the first of the next, or a cue starts with the words
    of the one before and adds some.
    """
    texts = ["".join(char for char, _ in line) for line in cue.lines]
    if last_end is None or cue.start - last_end > 0.5 or not shown:
        return list(cue.lines), texts
    for count in range(min(len(shown), len(texts)), 0, -1):
        if list(shown[-count:]) == texts[:count]:
            return list(cue.lines[count:]), texts
    if texts and len(shown[-1]) > 3 and texts[0].startswith(shown[-1] + " "):
        grown = cue.lines[0][len(shown[-1]) + 1 :]
        return [line for line in (grown, *cue.lines[1:]) if line], texts
    return list(cue.lines), texts


class _Running:
    """A passage of speech as it grows."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.parts: list[str] = []
        self.pieces: list[Piece] = []
        self.cues: list[Cue] = []
        self.length = 0
        self.first = 0.0

    def add(self, line: Sequence[tuple[str, int]], cue: _CueText) -> None:
        if not line:
            return
        if self.length:
            self.parts.append(" ")
            self.length += 1
        else:
            self.first = cue.start
        if not self.cues or (self.cues[-1].start, self.cues[-1].end) != (cue.start, cue.end):
            self.cues.append(Cue(self.length, cue.start, cue.end, cue.voice))
        for begin, end in side_by_side([place for _, place in line]):
            self.pieces.append(Piece(self.length + begin, line[begin][1], end - begin))
        self.parts.append("".join(char for char, _ in line))
        self.length += len(line)

    def ends_sentence(self) -> bool:
        return self.parts[-1].rstrip("\"'”’)").endswith((".", "!", "?", "…"))

    def passage(self) -> Passage:
        minutes, seconds = divmod(int(self.first), 60)
        where, cues = f"at {minutes}:{seconds:02d}", tuple(self.cues)
        return Passage("".join(self.parts), self.document, tuple(self.pieces), "speech", where, cues)
