"""Edits to a person's file that keep everything else of it: words by their place, structure by a round trip."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any

from spoonproof.model.finding import Edit
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Node, Scalar
from spoonproof.reading.front_matter import split_head
from spoonproof.reading.typed import plain
from spoonproof.reading.yaml_tree import read_yaml

_BREAKS = re.compile(r"(?<![ \t])[ \t]*+(?:\r\n?|\n)[ \t]*+")
_BREAK = re.compile(r"\r\n|\r|\n")
_DASH = re.compile(r"^[^\s#-][^\n]*:[ \t]*(?:#[^\n]*)?\n( *)- ", re.MULTILINE)
_ESCAPES = {"\\": "\\\\", '"': '\\"', "\t": "\\t", "\n": "\\n", "\r": "\\r"}


def apply_edits(document: Document, edits: Iterable[Edit]) -> str:
    """The text with ``edits`` made. Raises ValueError when two of them overlap or one lies outside the text."""
    parts: list[str] = []
    at = 0
    for edit in sorted(edits, key=lambda edit: edit.span):
        if edit.span.start < at or edit.span.end < edit.span.start or edit.span.end > len(document.text):
            raise ValueError(f"edits overlap or lie outside {document.path}: {edit.span}")
        parts += (document.text[at : edit.span.start], edit.replacement)
        at = edit.span.end
    return "".join((*parts, document.text[at:]))


def yaml_text(text: str) -> str:
    """``text`` written so that YAML reads it back as it is: plain where that holds, in double quotation marks else."""
    return text if _reads_back(text, text) else f'"{_escaped(text)}"'


def _escaped(text: str) -> str:
    return "".join(_ESCAPES.get(char, char) for char in text)


def fitted(document: Document, edit: Edit) -> Edit:
    """``edit`` with its replacement written as the place asks for.

    Of a sentence put where one stood, one of the two full stops goes. In the story it stands as it is. In a value of
    the head it is escaped as the value's quotation marks want it, and a plain value that would no longer be read as
    one text is put in quotation marks as a whole.
    """
    after = document.text[edit.span.end : edit.span.end + 1]
    if edit.replacement.endswith(".") and edit.span.end > edit.span.start and after in (".", "!", "?"):
        edit = Edit(edit.span, edit.replacement[:-1])
    scalar = _value_at(document, edit.span)
    if scalar is None:
        return edit
    raw = document.at(scalar.span)
    words = _BREAKS.sub(" ", edit.replacement)
    if raw.startswith("'"):
        return Edit(edit.span, words.replace("'", "''"))
    if raw.startswith('"'):
        return Edit(edit.span, _escaped(words))
    if raw.startswith(("|", ">")):
        return Edit(edit.span, words)
    start, end = edit.span.start - scalar.span.start, edit.span.end - scalar.span.start
    new = _BREAKS.sub(" ", raw[:start] + words + raw[end:])
    if _reads_back(new, new):
        return Edit(edit.span, words)
    return Edit(scalar.span, yaml_text(new))


def _reads_back(written: str, value: str) -> bool:
    """Whether ``written`` is read as the text ``value`` wherever a value may stand, in flow style too."""
    if not written.strip() or written != written.strip() or "\n" in written or "\r" in written:
        return False
    if written.startswith(("'", '"', "|", ">")):
        return False
    return _plain(f"- {written}\n- k: {written}\n- [{{k: {written}}}]\n") == [value, {"k": value}, [{"k": value}]]


def _value_at(document: Document, span: Span) -> Scalar | None:
    """The value of the head (or of a YAML file) that ``span`` lies in."""
    if document.path.endswith((".yaml", ".yml")):
        root, _ = read_yaml(document)
    else:
        head, _, _ = split_head(document)
        if head is None or not (head.start <= span.start and span.end <= head.end):
            return None
        root, _ = read_yaml(document, head)
    stack: list[Node] = [root] if root is not None else []
    while stack:
        node = stack.pop()
        if not (node.span.start <= span.start and span.end <= node.span.end):
            continue
        if isinstance(node, Scalar):
            return node
        stack += node.items if isinstance(node, Listing) else [value for _, value in node]
    return None


def with_value(document: Document, path: Sequence[str | int], value: object) -> str:
    """The text with the value at ``path`` of the head (or YAML file) set; None takes it out, comments stay.

    ``value`` is a text, number, list or mapping; the last step of ``path`` may be new: a key, or an index one
    past the end of a list. Needs the ``edit`` extra. Raises KeyError when ``path`` leads nowhere, ValueError when
    the file has no head that can be read.
    """
    from io import StringIO

    from ruamel.yaml import YAML

    span = Span(0, len(document.text)) if document.path.endswith((".yaml", ".yml")) else split_head(document)[0]
    if span is None or read_yaml(document, span)[0] is None:
        raise ValueError(f"the head of {document.path} can't be read, so it can't be changed")
    source = _BREAK.sub("\n", document.at(span))
    end = next(iter(_BREAK.findall(document.at(span))), "\n")
    dash = _DASH.search(source)
    offset = len(dash[1]) if dash is not None else 2
    yaml = YAML()
    yaml.preserve_quotes = True
    yaml.width = 1 << 20  # never fold a line that was not folded
    yaml.indent(mapping=2, sequence=offset + 2, offset=offset)
    tree = yaml.load(source)
    _set(tree, path, value)
    out = StringIO()
    yaml.dump(tree, out)
    written = out.getvalue()
    least = _least(source, written)
    if _plain(least) != _plain(written):
        least = written  # the blanks that were kept meant something
    return document.text[: span.start] + least.replace("\n", end) + document.text[span.end :]


def _plain(text: str) -> object:
    """What a YAML text says, places left out."""
    node, findings = read_yaml(Document("", text))
    return [finding.rule for finding in findings] or (plain(node) if node is not None else None)


def _set(tree: Any, path: Sequence[str | int], value: object) -> None:
    for step in path[:-1]:
        try:
            tree = tree[step]
        except (KeyError, IndexError, TypeError):
            raise KeyError(f"there is no {step!r}") from None
    last = path[-1]
    if isinstance(tree, list) and last == len(tree) and value is not None:
        tree.append(value)
    elif value is None:
        try:
            del tree[last]
        except (KeyError, IndexError, TypeError):
            raise KeyError(f"there is no {last!r}") from None
    else:
        tree[last] = value


def _least(before: str, after: str) -> str:
    """``after``, but with every line of ``before`` that differs from it in nothing but blanks kept as it was."""
    from difflib import SequenceMatcher

    old, new = before.split("\n"), after.split("\n")
    squeezed = [["".join(line.split()) for line in lines] for lines in (old, new)]
    kept: list[str] = []
    for tag, i, j, k, m in SequenceMatcher(None, squeezed[0], squeezed[1], autojunk=False).get_opcodes():
        kept += old[i:j] if tag == "equal" else new[k:m]
    return "\n".join(kept)
