"""YAML as a tree of texts: from the C parser's events, with marks, refusing as it streams what nobody needs.

Every scalar stays text: what it means is for the typed readers, so NO is a country and 22:30 a time. Aliases,
anchors, tags, merge keys, a second document and runaway sizes are findings.
"""

from __future__ import annotations

import re

import yaml

from spoonproof.model.record import dataclass, field

try:
    from yaml._yaml import CParser as _Parser
except ImportError:  # a PyYAML built without its C library: slower, and the same events
    from yaml import BaseLoader as _Parser  # type: ignore[assignment]  # the twin has the same methods

from spoonproof.model.finding import Edit, Finding, Related, Remedy
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading import limits
from spoonproof.reading.characters import unseen
from spoonproof.reading.faults import quoted
from spoonproof.reading.typed import Sink
from spoonproof.reading.yaml_words import plain_words

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


# The parser takes these for line ends or refuses them; our index counts neither, so they pass through it in
# disguise: 1 for 1, into a private plane, and come back as they were.
_DISGUISED = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_PLANE = 0x100000
_UNDISGUISE = re.compile("[\U00100000-\U0010ffff]")


def read_yaml(document: Document, span: Span | None = None) -> tuple[Node | None, list[Finding]]:
    """The tree of ``document`` (or of the part ``span``), its spans in the whole document.

    None when the structure can't be trusted: then the findings say where and why.
    """
    span = Span(0, len(document.text)) if span is None else span
    reader = _Reader(document, span.start, document.text[span.start : span.end])
    node = reader.read()
    return node, reader.sink.findings


@dataclass(slots=True)
class _Open:
    """A list or mapping that is being read."""

    start: int
    mapping: bool
    flow: bool
    items: list[Node] = field(default_factory=list)
    entries: list[tuple[Scalar, Node]] = field(default_factory=list)
    names: dict[str, Span] = field(default_factory=dict)
    key: Scalar | None = None
    waiting: bool = False  # a key was read, its value is next
    lost: bool = False  # the value that comes belongs to a key that does not count
    end: int = 0


class _Stopped(Exception):
    """Reading goes no further: no error of ours, the person's file ends here for us."""


def _marks(event: yaml.Event) -> tuple[int, int]:
    """Offsets in code points; the parser always sets both marks."""
    start, end = event.start_mark, event.end_mark
    return (start.index if start is not None else 0), (end.index if end is not None else 0)


class _Reader:
    """One text on its way to a tree."""

    def __init__(self, document: Document, base: int, text: str) -> None:
        self.document = document
        self.base = base
        self.source = text
        self.sink = Sink(document)
        self.root: Node | None = None
        self.stack: list[_Open] = []
        self.nodes = 0
        self.disguised = bool(_DISGUISED.search(text)) if not text.isascii() or not text.isprintable() else False
        self.text = _DISGUISED.sub(lambda m: chr(_PLANE + ord(m[0])), text) if self.disguised else text

    def read(self) -> Node | None:
        parser = _Parser(self.text)
        documents = 0
        try:
            while True:
                event = parser.get_event()
                if isinstance(event, yaml.ScalarEvent):
                    self._scalar(event)
                elif isinstance(event, yaml.CollectionStartEvent):
                    self._open(event, isinstance(event, yaml.MappingStartEvent))
                elif isinstance(event, yaml.CollectionEndEvent):
                    self._close(event)
                elif isinstance(event, yaml.AliasEvent):
                    alias = quoted(self.document.at(self._span(event)))
                    message = f"{alias} is read as an alias, and none is allowed here."
                    message += " Put a text that starts with * in quotation marks."
                    self._stop("alias-not-allowed", self._span(event), message)
                elif isinstance(event, yaml.DocumentStartEvent):
                    documents += 1
                    if documents > 1:
                        message = "A second document starts here. Use one a file."
                        self._stop("second-document", self._span(event), message)
                elif event is None or isinstance(event, yaml.StreamEndEvent):
                    return self.root
        except _Stopped:
            return None
        except yaml.MarkedYAMLError as problem:
            self._syntax(problem)
            return None
        except (yaml.YAMLError, UnicodeError, ValueError) as problem:
            self.sink.add("yaml-syntax", Span(self.base, self.base + 1), f"This can't be read as YAML: {problem}")
            return None

    def _span(self, event: yaml.Event) -> Span:
        start, end = _marks(event)
        return Span(self.base + start, self.base + end)

    def _stop(self, rule: str, span: Span, message: str) -> None:
        self.sink.add(rule, span, message)
        raise _Stopped

    def _count(self, event: yaml.NodeEvent) -> None:
        self.nodes += 1
        tag = getattr(event, "tag", None)
        if self.nodes <= limits.YAML_NODES and event.anchor is None and tag is None:
            return
        at = self._span(event).start
        if self.nodes > limits.YAML_NODES:
            message = f"This file holds more than {limits.YAML_NODES} values; the rest is not read."
            self._stop("too-many-values", Span(at, at + 1), message)
        if event.anchor is not None:
            message = f"{quoted('&' + event.anchor)} is read as an anchor, and anchors are not used here."
            message += " Put a text that starts with & in quotation marks."
            self._stop("alias-not-allowed", Span(at, at + 1 + len(event.anchor)), message)
        if tag is not None:
            message = f"The tag {quoted(str(tag)[:60])} is not obeyed."
            message += " Put a text that starts with ! in quotation marks."
            self.sink.add("yaml-tag-not-allowed", Span(at, at + 1), message)

    def _open(self, event: yaml.NodeEvent, mapping: bool) -> None:
        self._count(event)
        start, end = _marks(event)
        flow = end > start
        if len(self.stack) >= limits.YAML_DEPTH:
            at = self._span(event).start
            self._stop("nested-too-deep", Span(at, at + 1), f"Nested more than {limits.YAML_DEPTH} deep; not read.")
        self.stack.append(_Open(self._span(event).start, mapping, flow, end=self._span(event).end))

    def _close(self, event: yaml.Event) -> None:
        done = self.stack.pop()
        end = self._span(event).end if done.flow else done.end
        span = Span(done.start, max(done.start, end))
        if done.mapping:
            self._give(Mapped(tuple(done.entries), span))
        else:
            if len(done.items) > limits.LIST_LENGTH:
                message = f"This list has {len(done.items)} items; {limits.LIST_LENGTH} are read."
                self.sink.add("list-too-long", done.items[limits.LIST_LENGTH].span, message)
                del done.items[limits.LIST_LENGTH :]
            self._give(Listing(tuple(done.items), span))

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        self._count(event)
        start, end = _marks(event)
        value: str = event.value
        if event.style in ("|", ">"):
            end = start + len(self.source[start:end].rstrip())
        span = Span(self.base + start, self.base + end)
        if len(value) > limits.SCALAR_CHARACTERS:
            message = f"This value has {len(value)} characters; at most {limits.SCALAR_CHARACTERS} are read."
            self.sink.add("value-too-long", Span(span.start, span.start + 1), message)
            value = value[: limits.SCALAR_CHARACTERS]
        if self.disguised:
            value = _UNDISGUISE.sub(lambda m: chr(ord(m[0]) - _PLANE), value)
        raw = self.source[start:end]
        if event.style == '"' and "\\" in raw and (told := unseen(value)) is not None:
            self.sink.add(told[0], span, told[1])  # "e\u200bgg" is no egg to anybody but the reader of the page
        pieces = () if value == raw else pieces_of(value, raw, event.style or "", span.start)
        self._give(Scalar(value, span, pieces), plain=not event.style)

    def _give(self, node: Node, plain: bool = False) -> None:
        """Hand a finished node to what is open around it."""
        if not self.stack:
            self.root = node
            return
        around = self.stack[-1]
        around.end = max(around.end, node.span.end)
        if not around.mapping:
            around.items.append(node)
        elif around.waiting:
            if around.key is not None and not around.lost:
                around.entries.append((around.key, node))
            around.waiting = around.lost = False
        else:
            around.waiting = True
            around.key = self._key(node, around, plain)
            around.lost = around.key is None

    def _key(self, node: Node, around: _Open, plain: bool) -> Scalar | None:
        if not isinstance(node, Scalar):
            self.sink.add("key-not-text", node.span, "A key must be a word, not a list or a mapping.")
            return None
        name = node.value
        if plain and name == "<<":
            self._stop("alias-not-allowed", node.span, "“<<” copies another mapping in, and that is not used here.")
        if plain and (not name or name in ("~", "null") or _NUMBER.fullmatch(name)):
            shown = f"{quoted(name)} is" if name else "nothing is"
            message = f"A key must be a word, and {shown} not one. Put it in quotation marks if it is a name."
            self.sink.add("key-not-text", Span(node.span.start, max(node.span.end, node.span.start + 1)), message)
            return None
        first = around.names.setdefault(name, node.span)
        if first is not node.span:
            line = self.document.position(first.start)[0]
            message = f"{quoted(name)} stands here a second time (first on line {line}). Keep one."
            again = Related(self.document, first, "first written here")
            self.sink.add("duplicate-key", node.span, message, related=(again,))
            return None
        return node

    def _syntax(self, problem: yaml.MarkedYAMLError) -> None:
        at = problem.problem_mark.index if problem.problem_mark is not None else 0
        context = problem.context_mark.index if problem.context_mark is not None else None
        told = plain_words(self.source, at, context, str(problem.problem or ""), str(problem.context or ""))
        span = Span(self.base + told.start, self.base + told.end)
        related: tuple[Related, ...] = ()
        if told.began is not None:
            began = Span(self.base + told.began, self.base + told.began + 1)
            related = (Related(self.document, began, "it began here"),)
        edits = () if told.write is None else (Edit(span, told.write),)
        self.sink.add(told.rule, span, told.message, related=related, remedy=Remedy(told.remedy, False, edits))


_NUMBER = re.compile(r"[-+]?[0-9][0-9_.]*")
