"""From a YAML value back to the characters it was written with."""

from __future__ import annotations

import re

# Nothing is given back once it is taken, and no match begins inside a run of blanks: linear whatever comes.
_FOLD = re.compile(r"(?<![ \t])[ \t]*+(?:\r\n?|\n)(?:[ \t]*+(?:\r\n?|\n))*+[ \t]*+")
_BREAK = re.compile(r"\r\n|\r|\n")
_ESCAPE = re.compile(r"\\(?:x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U[0-9a-fA-F]{8}|[ \t]*(?:\r\n|\r|\n)[ \t]*|.)", re.DOTALL)

Pieces = tuple[tuple[int, int, int], ...]


def pieces_of(value: str, raw: str, style: str, base: int) -> Pieces:
    """(offset in value, offset in document, length) of the runs of ``value`` that ``raw`` has as they are.

    ``raw`` is the scalar as written, ``base`` where it starts in the document. Never fails: what can't be
    followed maps to the scalar's own place.
    """
    if not value:
        return ()
    if not value.strip():
        return ((0, base, 1),)
    quoted = style in ("'", '"')
    inner, begin = (raw[1:-1], base + 1) if quoted else (raw, base)
    runs = _block(value, raw) if style in ("|", ">") else _flow(value, inner, style if quoted else "")
    if runs is None:
        return ((0, base, max(1, min(len(value), len(raw)))),)
    return tuple((at, begin + offset, length) for at, offset, length in runs)


def _flow(value: str, raw: str, style: str) -> list[tuple[int, int, int]] | None:
    """Runs of a plain or quoted scalar: line breaks fold, quotes double, escapes stand for one character."""
    runs: list[tuple[int, int, int]] = []
    at = offset = 0
    while offset < len(raw):
        special = _next_special(raw, offset, style)
        stop, end = special if special is not None else (len(raw), len(raw))
        if stop > offset:
            if value[at : at + stop - offset] != raw[offset:stop]:
                return None
            runs.append((at, offset, stop - offset))
            at += stop - offset
        if special is None:
            break
        made = _made(raw[stop:end])
        if made:
            runs.append((at, stop, 1))
        at += made
        offset = end
    return runs if at == len(value) else None


def _next_special(raw: str, offset: int, style: str) -> tuple[int, int] | None:
    found = _FOLD.search(raw, offset)
    best = (found.start(), found.end()) if found else None
    if style == '"':
        slash = raw.find("\\", offset)
        if slash >= 0 and (best is None or slash < best[0]):
            escape = _ESCAPE.match(raw, slash)
            best = (slash, escape.end()) if escape else best
    elif style == "'":
        quote = raw.find("''", offset)
        if quote >= 0 and (best is None or quote < best[0]):
            best = (quote, quote + 2)
    return best


def _made(special: str) -> int:
    """How many characters of the value a fold, escape or doubled quote makes."""
    if special[0] == "\\":
        return 0 if special[1:2] in (" ", "\t", "\r", "\n") and _BREAK.search(special) else 1
    if special == "''":
        return 1
    return max(1, len(_BREAK.findall(special)) - 1)


def _block(value: str, raw: str) -> list[tuple[int, int, int]] | None:
    """Runs of a literal or folded block: each written line is looked for in order."""
    header = _BREAK.search(raw)
    if header is None:
        return None
    runs: list[tuple[int, int, int]] = []
    lines: list[tuple[int, str]] = []
    offset = header.end()
    for found in _BREAK.finditer(raw, offset):
        lines.append((offset, raw[offset : found.start()]))
        offset = found.end()
    lines.append((offset, raw[offset:]))
    indicator = re.search(r"[1-9]", raw[: header.start()].split("#")[0])
    first = next((line for _, line in lines if line.strip(" ")), "")
    indent = len(first) - len(first.lstrip(" "))
    if indicator is not None:
        # An indent that is given counts from the parent's, which is not known here: the text tells.
        first_text = value.lstrip("\n").split("\n")[0]
        indent = max(0, len(first) - len(first_text))
    at = 0
    for start, line in lines:
        text = line[indent:]
        if not text.strip():
            continue
        while at < len(value) and not value.startswith(text, at) and value[at] in " \n\t":
            at += 1
        if not value.startswith(text, at):
            return None if at < len(value) else runs
        runs.append((at, start + indent, len(text)))
        at += len(text)
    return runs
