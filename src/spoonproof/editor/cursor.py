"""Where in a head the cursor stands, from the lines alone: a head that is being typed is seldom whole YAML."""

from __future__ import annotations

import re

from spoonproof.model.record import dataclass
from spoonproof.model.text import Document, Span

_LINE = re.compile(r"(?P<indent>[ ]*)(?P<dashes>(?:-[ ]+)*)(?:(?P<key>[A-Za-z_][A-Za-z_ -]{0,40}?):(?P<after>[ ]|$))?")
_INLINE = re.compile(r"(?:^|[{,])\s*(?P<key>[A-Za-z_][A-Za-z_ -]{0,40}?):[ ]*(?P<value>[^{},]*)$")
_LOOKED_BACK = 3000


@dataclass(frozen=True, slots=True)
class Cursor:
    """``path``: the keys above and at the cursor, outermost first; ``is_key``: a key is being typed below
    ``path``; ``written``: the words from the start of the key or value up to the cursor; ``span``: theirs."""

    path: tuple[str, ...]
    is_key: bool
    written: str
    span: Span


def head_of(document: Document) -> Span | None:
    """The head of a recipe, as far as it was typed: None where the text has no head."""
    if document.line_text(1).lstrip("\ufeff").rstrip() != "---":
        return None
    for number in range(2, len(document.line_starts) + 1):
        if document.line_text(number).rstrip() == "---":
            return Span(document.line_starts[1], document.line_starts[number - 1])
    return Span(document.line_starts[1], len(document.text)) if len(document.line_starts) > 1 else None


def cursor(document: Document, at: int, head: Span) -> Cursor:
    """The cursor at an offset inside ``head`` (for a file that is all YAML: the whole of it)."""
    line = document.position(at)[0]
    start = document.line_starts[line - 1]
    before = document.text[start:at]
    found = _LINE.match(before)
    assert found is not None  # every part of it may be empty
    dashes = found["dashes"] or ""
    width = len(found["indent"])
    above = _above(document, line, width + (2 if dashes and found["key"] else 0), head, bool(dashes))
    if found["key"]:
        value = before[found.end() :]
        path = (*above, found["key"].strip())
        inline = _inline(value)
        if inline is not None:
            return _made(path, inline, at)
        return Cursor(path, False, value.lstrip(), Span(at - len(value.lstrip()), at))
    words = before[found.end() :]
    inline = _inline(words)
    if inline is not None:
        return _made(above, inline, at)
    return Cursor(above, not dashes, words, Span(at - len(words), at))


def _made(path: tuple[str, ...], inline: tuple[str, str, bool], at: int) -> Cursor:
    key, written, is_key = inline
    return Cursor(path if is_key else (*path, key), is_key, written, Span(at - len(written), at))


def _inline(value: str) -> tuple[str, str, bool] | None:
    """Inside a mapping on one line: (key, what is written, whether that is a key); None outside of one."""
    opened = value.rfind("{")
    if opened < 0 or "}" in value[opened:]:
        return None
    found = _INLINE.search(value[opened:])
    if found is not None:
        return found["key"].strip(), found["value"], False
    return "", value[max(opened, value.rfind(",")) + 1 :].lstrip(), True


def _above(document: Document, line: int, width: int, head: Span, in_list: bool) -> tuple[str, ...]:
    """The keys that the line stands below, by their indentation."""
    path: list[str] = []
    for number in range(line - 1, max(0, line - _LOOKED_BACK), -1):
        if document.line_starts[number - 1] < head.start or width < 0:
            break
        text = document.line_text(number)
        found = _LINE.match(text)
        if found is None or not text.strip() or not found["key"]:
            continue
        indent = len(found["indent"]) + len(found["dashes"] or "")
        # A list may stand as far left as its key.
        if indent < width or (in_list and indent == width and not found["dashes"]):
            path.append(found["key"].strip())
            width, in_list = len(found["indent"]), bool(found["dashes"])
            if width == 0 and not in_list:
                break
    return tuple(reversed(path))
