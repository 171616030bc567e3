"""Findings for a person at a terminal: grouped by what they mean for her, each with its line shown."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import TextIO

from spoonproof.model.citation import Csl, short
from spoonproof.model.finding import LEVELS, Area, Finding, Level, SourceRef

AREA_HEADINGS: Mapping[Area, str] = {
    "baby": "THE BABY",
    "words": "THE WORDS",
    "cooking": "THE COOKING",
    "film": "THE FILM",
    "page": "THE PAGE AND ITS FILES",
}
MOST_SHOWN = 200
_STYLE: Mapping[Level, str] = {"error": "1;31", "warning": "1;33", "note": "36"}
_WIDTH = 100
_LINE_SHOWN = 160


def printable(text: str) -> str:
    """``text`` with every control or direction character written out, so that no content steers a terminal."""
    return "".join(c if c.isprintable() or c == " " else _escaped(c) for c in text)


def _escaped(character: str) -> str:
    if character == "\t":
        return "⇥"
    code = ord(character)
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def wants_colour(stream: TextIO) -> bool:
    """Whether ``stream`` is a terminal and nobody asked for plain text."""
    return stream.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def report(
    findings: Sequence[Finding], sources: Mapping[str, Csl], colour: bool = False, trail: bool = False
) -> Iterator[str]:
    """The lines of the report, in the order of ``findings``, at most ``MOST_SHOWN`` findings."""
    area: Area | None = None
    for finding in findings[:MOST_SHOWN]:
        if finding.area != area:
            area = finding.area
            heading = AREA_HEADINGS[area]
            yield ""
            yield _paint(heading, "1", colour)
        yield from _one(finding, sources, colour, trail)
    if len(findings) > MOST_SHOWN:
        yield ""
        yield f"… and {len(findings) - MOST_SHOWN} more; --format jsonl gives all {len(findings)}."


def _one(finding: Finding, sources: Mapping[str, Csl], colour: bool, trail: bool) -> Iterator[str]:
    document = finding.document
    place = document.place(finding.span)
    bowl = f"  · {finding.bowl}'s bowl" if finding.bowl else ""
    level = _paint(finding.level, _STYLE[finding.level], colour)
    yield ""
    yield f"{printable(document.path)}:{place.line}:{place.column}  {level}  {finding.rule}{bowl}"
    end = place.end_column if place.end_line == place.line else None
    yield from _line_with_mark(document.line_text(place.line), place.column, end, finding.level, colour)
    yield from wrapped(finding.message)
    if finding.claim is not None and finding.claim.wording and not finding.remedy:
        yield from wrapped(f"“{finding.claim.wording}”", "Wording that stands: ")
    if finding.remedy is not None:
        yield from wrapped(finding.remedy.text, "To put it right: ")
    for other in finding.related:
        line, column = other.document.position(other.span.start)
        yield from wrapped(f"{other.document.path}:{line}:{column}  {other.message}", "also ")
    for source in dict.fromkeys(finding.sources):
        yield from wrapped(_cited(source, sources), "Source: ")
    if trail and finding.claim is not None:
        for number, step in enumerate(finding.claim.trail, 1):
            yield from wrapped(step, f"{number}. ", indent=8)


def _line_with_mark(text: str, column: int, end: int | None, level: Level, colour: bool) -> Iterator[str]:
    start = column - 1
    stop = min(len(text), (end or len(text) + 1) - 1)
    first = max(0, min(start - 60, len(text) - _LINE_SHOWN)) if len(text) > _LINE_SHOWN else 0
    shown = text[first : first + _LINE_SHOWN]
    before = printable(shown[: start - first])
    marked = printable(shown[start - first : max(start, stop) - first])
    yield f"    {'…' if first else ''}{printable(shown)}{'…' if first + _LINE_SHOWN < len(text) else ''}"
    mark = "▔" * max(1, len(marked))
    yield f"    {' ' if first else ''}{' ' * len(before)}{_paint(mark, _STYLE[level], colour)}"


def wrapped(text: str, lead: str = "", indent: int = 4) -> Iterator[str]:
    """``text`` after its ``lead`` in lines of a terminal's width; an address is never cut, so that it can be copied."""
    pad = " " * indent
    import textwrap

    yield from textwrap.wrap(
        printable(lead + text),
        _WIDTH,
        initial_indent=pad,
        subsequent_indent=pad + "  " * bool(lead),
        break_long_words=False,
        break_on_hyphens=False,
    )


def _cited(source: SourceRef, sources: Mapping[str, Csl]) -> str:
    words = short(source.id, sources)
    if source.locator:
        words += f"; {source.locator}"
    return words if source.basis == "read" or source.id == source.basis else f"{words} [{source.basis}]"


def _paint(text: str, style: str, colour: bool) -> str:
    return f"\x1b[{style}m{text}\x1b[0m" if colour else text


def summary(findings: Sequence[Finding], files: int) -> str:
    """One closing line: how many of which level, in how many files."""
    levels = [finding.level for finding in findings]
    counts = {level: levels.count(level) for level in LEVELS}
    said = ", ".join(f"{n} {level}{'s' if n != 1 else ''}" for level, n in counts.items() if n)
    recipes = f"{files} recipe{'s' if files != 1 else ''} checked"
    return f"{recipes}: {said or 'nothing found at this level'}."


def write(lines: Iterable[str], stream: TextIO | None = None) -> None:
    """Print lines; what the stream's encoding cannot carry is escaped."""
    out = stream or sys.stdout
    for line in lines:
        print(line, file=out)
