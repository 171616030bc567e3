"""The YAML parser's complaints in a cook's words, each with what to do."""

from __future__ import annotations

import re
from collections.abc import Callable

from spoonproof.model.record import NamedTuple
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
_FIRST = re.compile(r"(?:[ \t]*(?:#[^\r\n]*)?(?:\r\n?|\n))*+([^\s#\-\[{][^\r\n]*)")
_ENDS_KEY = re.compile(r":(?=[ \t]|$)")
_INDENT = re.compile(r"[ \t]*")


class _Place(NamedTuple):
    """Where the parser stopped, and ``context``: where what it was reading began."""

    source: str
    at: int
    context: int | None
    start: int  # of the line
    line: str


def plain_words(source: str, at: int, context: int | None, problem: str, about: str) -> Told:
    """What the parser's ``problem`` at offset ``at`` means, and how to put it right."""
    at = min(at, max(0, len(source) - 1))
    place = _Place(source, at, context, *_line_at(source, at))
    indent = _INDENT.match(place.line)
    if indent is not None and "\t" in indent[0]:
        return _tab(place.start, indent[0])
    if "quoted scalar" in about and "end of stream" in problem and context is not None:
        return _told(context, "This quotation mark is opened and never closed.", "Close it, or take it out.")
    for piece, tell in _BY_PROBLEM:
        said = tell(place) if piece in problem or (piece == "directive" and piece in about) else None
        if said is not None:
            return said
    unknown = f"This can't be read as YAML ({problem or 'unknown reason'})."
    return _told(at, unknown, "Compare it with a file that is read.")


def _line_at(source: str, at: int) -> tuple[int, str]:
    """Where the line around ``at`` starts, and the line."""
    start = max(source.rfind("\n", 0, at), source.rfind("\r", 0, at)) + 1
    match = _LINE.match(source, start)
    return start, match[0] if match is not None else ""


def _told(at: int, message: str, remedy: str, began: int | None = None, rule: str = "yaml-syntax") -> Told:
    return Told(rule, at, at + 1, message, remedy, began)


def _tab(start: int, indent: str) -> Told:
    spaces = indent.replace("\t", "  ")
    message = "This line is indented with a tab, and only spaces are read there."
    remedy = f"Write {len(spaces)} spaces, and the same in each line of this list."
    return Told("tab-indentation", start, start + len(indent), message, remedy, write=spaces)


def _marked(start: int, line: str) -> Told | None:
    """An item of a list that starts with a number or a bullet instead of a hyphen."""
    mark = _NUMBERED.match(line) or _OTHER_LIST_MARK.match(line)
    if mark is None:
        return None
    message = f"This line starts with {quoted(mark[1])}, which starts no item of a list here."
    remedy = "Start each line of the list with a hyphen and a blank (“- ”); steps are numbered on the page."
    return Told("yaml-syntax", start + mark.start(1), start + mark.end(1), message, remedy, write="-")


def _colon(place: _Place) -> Told:
    """A second colon in a line: in a value, or in a line that should be indented otherwise."""
    source, at, _, start, line = place
    first = _FIRST.match(source)
    if first is not None and first.end() < start and _ENDS_KEY.search(first[1]) is None:
        return _without_colon(first.start(1))  # the whole head was read as one text up to here
    colon = source.find(":", at, at + 200)
    where = at if colon < 0 or source[at:colon].strip() else colon
    message = "A colon here would start a new key inside a value."
    key, _, value = line.partition(":")
    value = value.strip()
    if ":" in value and start + len(key) < where and len(value) <= 60 and '"' not in value and "\\" not in value:
        return _told(where, message, f'Put the whole value in quotation marks: {key.strip()}: "{value}".')
    remedy = "Put the whole value in quotation marks, or indent this line like the one it belongs to."
    return _told(where, message, remedy)


def _no_start(place: _Place) -> Told:
    message = f"A value can't start with {quoted(place.source[place.at : place.at + 1])}."
    return _marked(place.start, place.line) or _told(place.at, message, "Put it in quotation marks.")


def _no_bracket(place: _Place, bracket: str) -> Told:
    remedy = f"A comma or {bracket} is missing here."
    return _told(place.at, "A bracket was opened and not closed.", remedy, place.context)


def _no_colon(place: _Place) -> Told | None:
    if place.context is None:
        return None
    return _marked(*_line_at(place.source, place.context)) or _without_colon(place.context)


def _without_colon(at: int) -> Told:
    return _told(
        at,
        "This line has no colon, and is no item of a list.",
        "Start an item of a list with a hyphen and a blank (“- ”); write a key with a colon (“keeps: ”); "
        "indent what goes on from the line above.",
    )


def _no_hyphen(place: _Place) -> Told:
    return _marked(place.start, place.line) or _told(
        place.at,
        "A list item (with -) was expected here: lists and keys can't be mixed on one level.",
        "Start each item of the list with “- ”, and a key of the recipe in the first column.",
    )


def _key_expected(place: _Place) -> Told:
    if place.source[place.at : place.at + 1] == "-":
        line_start = place.source.rfind("\n", 0, place.at) + 1
        above, mine = _blanks_above(place.source[:line_start]), place.at - line_start
        if above is not None and above != mine:
            message = f"This hyphen has {mine} blank{'s' * (mine != 1)} before it, and the one above it {above}."
            remedy = f"Write {above} blank{'s' * (above != 1)} before it, if it belongs to the same list."
            return _told(place.at, message, remedy)
        message = "A list item stands here, but its key above already has a value."
        return _told(place.at, message, "Take that value out, or make it an item.")
    return _told(
        place.at,
        "This does not fit the lines above it.",
        "Check the indentation, and put a value that holds quotation marks, colons or brackets in quotation marks "
        "as a whole.",
    )


def _blanks_above(text: str) -> int | None:
    """How far in the last line of ``text`` stands where it is an item of a list, else None."""
    line = text.rstrip().rpartition("\n")[2]
    return len(line) - len(line.lstrip()) if line.lstrip().startswith("- ") else None


def _no_value(place: _Place) -> Told:
    here = place.source[place.at : place.at + 1]
    message = "A value is missing here" + (f"; {quoted(here)} can't start one." if here.strip() else ".")
    remedy = "Write the value, in quotation marks if it starts with a sign."
    return _marked(place.start, place.line) or _told(place.at, message, remedy)


_TOO_DEEP = "Brackets nest too deep here; not read.", "Take brackets out."
_BY_PROBLEM: tuple[tuple[str, Callable[[_Place], Told | None]], ...] = (  # words of the parser; the first one counts
    (
        "escape character",
        lambda p: _told(p.at, "A backslash is special between double quotation marks.", "Use single ones, or \\\\."),
    ),
    ("mapping values are not allowed", _colon),
    ("cannot start any token", _no_start),
    ("',' or ']'", lambda p: _no_bracket(p, "]")),
    ("',' or '}'", lambda p: _no_bracket(p, "}")),
    ("expected ':'", _no_colon),
    ("'-' indicator", _no_hyphen),
    ("block sequence entries", lambda p: _told(p.at, "A list starts on its own line.", "Put the - on the next line.")),
    ("expected key", _key_expected),
    ("node content", _no_value),
    ("nesting depth", lambda p: _told(p.at, *_TOO_DEEP, rule="nested-too-deep")),
    ("<document start>", lambda p: _told(p.at, "The document ended above.", "Use one a file.", rule="second-document")),
    ("directive", lambda p: _told(p.at, "A line can't start with %.", "Put the text in quotation marks.")),
)
