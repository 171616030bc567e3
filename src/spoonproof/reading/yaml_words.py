"""The YAML parser's complaints in a cook's words, each with what to do."""

from __future__ import annotations

import re
from typing import NamedTuple

from spoonproof.reading.faults import quoted


class Told(NamedTuple):
    """What is wrong at which offsets, and what to do; ``began`` is where the broken thing started, if elsewhere.

    ``write`` is what may stand at ``start`` to ``end`` in its place, where only one thing can be meant.
    """

    rule: str
    start: int
    end: int
    message: str
    remedy: str
    began: int | None = None
    write: str | None = None


_LINE = re.compile(r"[^\r\n]*")
_NUMBERED = re.compile(r"[ ]*(\d{1,3}[.)])[ \t]")
_OTHER_LIST_MARK = re.compile(r"[ ]*([•·‣▪*–—])[ \t]")
_INDENT = re.compile(r"[ \t]*")


def plain_words(source: str, at: int, context: int | None, problem: str, about: str) -> Told:
    """What the parser's ``problem`` at offset ``at`` means, and how to put it right."""
    at = min(at, max(0, len(source) - 1))
    start, line = _line_at(source, at)
    here = source[at : at + 1]
    indent = _INDENT.match(line)
    if indent is not None and "\t" in indent[0]:
        return _tab(start, indent[0])
    if "quoted scalar" in about and "end of stream" in problem and context is not None:
        return _told(context, "This quotation mark is opened and never closed.", "Close it, or take it out.")
    if "escape character" in problem:
        return _told(at, "A backslash is special between double quotation marks.", "Use single ones, or \\\\.")
    if "mapping values are not allowed" in problem:
        return _colon(source, at, start, line)
    if "cannot start any token" in problem:
        return _marked(start, line) or _told(
            at, f"A value can't start with {quoted(here)}.", "Put it in quotation marks."
        )
    if "',' or ']'" in problem or "',' or '}'" in problem:
        bracket = "]" if "]" in problem else "}"
        return _told(at, "A bracket was opened and not closed.", f"A comma or {bracket} is missing here.", context)
    if "expected ':'" in problem and context is not None:
        return _marked(*_line_at(source, context)) or _told(
            context,
            "This line has no colon, and is no item of a list.",
            "Start an item of a list with a hyphen and a blank (“- ”); write a key with a colon (“keeps: ”); "
            "indent what goes on from the line above.",
        )
    if "'-' indicator" in problem:
        return _marked(start, line) or _told(
            at,
            "A list item (with -) was expected here: lists and keys can't be mixed on one level.",
            "Start each item of the list with “- ”, and a key of the recipe in the first column.",
        )
    if "block sequence entries" in problem:
        return _told(at, "A list starts on its own line.", "Put the - on the next line.")
    if "expected key" in problem:
        return _key_expected(at, here)
    if "node content" in problem:
        message = "A value is missing here" + (f"; {quoted(here)} can't start one." if here.strip() else ".")
        return _marked(start, line) or _told(
            at, message, "Write the value, in quotation marks if it starts with a sign."
        )
    if "directive" in problem or "directive" in about:
        return _told(at, "A line can't start with %.", "Put the text in quotation marks.")
    if "nesting depth" in problem:
        return Told("nested-too-deep", at, at + 1, "Brackets nest too deep here; not read.", "Take brackets out.")
    if "<document start>" in problem:
        return Told("second-document", at, at + 1, "The document ended above.", "Use one a file.")
    return _told(
        at, f"This can't be read as YAML ({problem or 'unknown reason'}).", "Compare it with a file that is read."
    )


def _line_at(source: str, at: int) -> tuple[int, str]:
    """Where the line around ``at`` starts, and the line."""
    start = max(source.rfind("\n", 0, at), source.rfind("\r", 0, at)) + 1
    match = _LINE.match(source, start)
    return start, match[0] if match is not None else ""


def _told(at: int, message: str, remedy: str, began: int | None = None) -> Told:
    return Told("yaml-syntax", at, at + 1, message, remedy, began)


def _tab(start: int, indent: str) -> Told:
    spaces = indent.replace("\t", "  ")
    return Told(
        "tab-indentation",
        start,
        start + len(indent),
        "This line is indented with a tab, and only spaces are read there.",
        f"Write {len(spaces)} spaces, and the same in each line of this list.",
        write=spaces,
    )


def _marked(start: int, line: str) -> Told | None:
    """An item of a list that starts with a number or a bullet instead of a hyphen."""
    mark = _NUMBERED.match(line) or _OTHER_LIST_MARK.match(line)
    if mark is None:
        return None
    return Told(
        "yaml-syntax",
        start + mark.start(1),
        start + mark.end(1),
        f"This line starts with {quoted(mark[1])}, which starts no item of a list here.",
        "Start each line of the list with a hyphen and a blank (“- ”); steps are numbered on the page.",
        write="-",
    )


def _colon(source: str, at: int, start: int, line: str) -> Told:
    """A second colon in a line: in a value, or in a line that should be indented otherwise."""
    colon = source.find(":", at, at + 200)
    where = at if colon < 0 or source[at:colon].strip() else colon
    message = "A colon here would start a new key inside a value."
    key, _, value = line.partition(":")
    value = value.strip()
    if ":" in value and start + len(key) < where and len(value) <= 60 and '"' not in value and "\\" not in value:
        return _told(where, message, f'Put the whole value in quotation marks: {key.strip()}: "{value}".')
    return _told(
        where,
        message,
        "Put the whole value in quotation marks, or indent this line like the one it belongs to.",
    )


def _key_expected(at: int, here: str) -> Told:
    if here == "-":
        return _told(
            at,
            "A list item stands here, but its key above already has a value.",
            "Take that value out, or make it an item.",
        )
    return _told(
        at,
        "This does not fit the lines above it.",
        "Check the indentation, and put a value that holds quotation marks, colons or brackets in quotation marks "
        "as a whole.",
    )
