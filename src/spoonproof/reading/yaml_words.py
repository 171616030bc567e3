"""The YAML parser's complaints in a cook's words, each with what to do."""

from __future__ import annotations

import re
from typing import NamedTuple

from spoonproof.reading.faults import quoted


class Told(NamedTuple):
    """What to say, of which offsets; ``began`` is where the broken thing started, if elsewhere."""

    rule: str
    start: int
    end: int
    message: str
    began: int | None = None


_LINE = re.compile(r"[^\r\n]*")


def plain_words(source: str, at: int, context: int | None, problem: str, about: str) -> Told:
    """What the parser's ``problem`` at offset ``at`` means, and how to put it right."""
    at = min(at, max(0, len(source) - 1))
    start = max(source.rfind("\n", 0, at), source.rfind("\r", 0, at)) + 1
    match = _LINE.match(source, start)
    line = match[0] if match is not None else ""
    here = source[at : at + 1]
    if "\t" in line[: len(line) - len(line.lstrip())]:
        tab = start + line.index("\t")
        return Told("tab-indentation", tab, tab + 1, "This line is indented with a tab. Use spaces.")
    if "quoted scalar" in about and "end of stream" in problem and context is not None:
        return Told("yaml-syntax", context, context + 1, "This quotation mark is opened and never closed.")
    if "escape character" in problem:
        return _syntax(at, "A backslash is special between double quotation marks. Use single ones, or \\\\.")
    if "mapping values are not allowed" in problem:
        colon = source.find(":", at, at + 200)
        where = at if colon < 0 or source[at:colon].strip() else colon
        return _syntax(
            where,
            "A colon here would start a new key inside a value. Put the whole value in quotation marks, "
            "or check that this line is indented like the one it belongs to.",
        )
    if "cannot start any token" in problem:
        return _syntax(at, f"A value can't start with {quoted(here)}. Put it in quotation marks.")
    if "',' or ']'" in problem or "',' or '}'" in problem:
        bracket = "]" if "]" in problem else "}"
        message = f"A bracket was opened and not closed: a comma or {bracket} is missing here."
        return Told("yaml-syntax", at, at + 1, message, context)
    if "expected ':'" in problem and context is not None:
        message = "This line has no colon. Is it indented like what it belongs to?"
        return Told("yaml-syntax", context, context + 1, message)
    if "'-' indicator" in problem:
        return _syntax(at, "A list item (with -) was expected here. Lists and keys can't be mixed on one level.")
    if "block sequence entries" in problem:
        return _syntax(at, "A list starts on its own line: put the - on the next line.")
    if "expected key" in problem:
        if here == "-":
            return _syntax(at, "A list item stands here, but its key above already has a value.")
        return _syntax(
            at,
            "This does not fit the lines above it. Check the indentation, and put a value that holds quotation marks, "
            "colons or brackets in quotation marks as a whole.",
        )
    if "node content" in problem:
        return _syntax(at, "A value is missing here" + (f"; {quoted(here)} can't start one." if here.strip() else "."))
    if "directive" in problem or "directive" in about:
        return _syntax(at, "A line can't start with %. Put the text in quotation marks.")
    if "nesting depth" in problem:
        return Told("nested-too-deep", at, at + 1, "Brackets nest too deep here; not read.")
    if "<document start>" in problem:
        return Told("second-document", at, at + 1, "The document ended above. Use one a file.")
    return _syntax(at, f"This can't be read as YAML ({problem or 'unknown reason'}).")


def _syntax(at: int, message: str) -> Told:
    return Told("yaml-syntax", at, at + 1, message)
