"""Typed readers over a tree of texts: each knows how to read a value, how to say what it wants, and its schema.

A reader never raises on what a person wrote: it adds a finding to the ``Sink`` and gives None. The same
readers make the documentation of the keys and the JSON Schemas (see ``schema.py``).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Generic, TypeVar

from spoonproof.model.finding import Edit, Finding, Level, Related, Remedy
from spoonproof.model.record import dataclass, replace
from spoonproof.model.text import Document, Span, Spanned
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading import limits
from spoonproof.reading.faults import fault, quoted

_LOGIN = re.compile(r"//[^/@\s]{1,400}@")
T = TypeVar("T")
A = TypeVar("A")
B = TypeVar("B")
T_co = TypeVar("T_co", covariant=True)
Schema = Mapping[str, object]


class Sink:
    """Where the findings of one document gather."""

    __slots__ = ("document", "findings")

    def __init__(self, document: Document) -> None:
        self.document = document
        self.findings: list[Finding] = []

    def add(
        self,
        rule: str,
        span: Span,
        message: str,
        *,
        remedy: Remedy | None = None,
        level: Level | None = None,
        related: tuple[Related, ...] = (),
    ) -> None:
        """One more finding of a reading rule."""
        found = fault(rule, self.document, span, message, remedy=remedy, level=level, related=related)
        self.findings.append(found)


@dataclass(frozen=True, slots=True)
class Reader(Generic[T_co]):
    """``words`` say what is wanted ("a whole number"); ``schema`` is its JSON Schema; ``read`` gives the value."""

    words: str
    schema: Schema
    read: Callable[[Node, Sink], T_co | None]


@dataclass(frozen=True, slots=True)
class Key(Generic[T_co]):
    """A key of a mapping with its reader and what it is for."""

    name: str
    reader: Reader[T_co]
    doc: str
    needed: bool = False


@dataclass(frozen=True, slots=True)
class Values:
    """What stood under the known keys of a mapping; ``get`` gives None for what was absent or faulty."""

    mapped: Mapped
    found: Mapping[str, Any]
    spans: Mapping[str, Span]

    def get(self, key: Key[T]) -> T | None:
        """The value read for ``key``."""
        value: T | None = self.found.get(key.name)
        return value

    def or_else(self, key: Key[T], default: T) -> T:
        """The value read for ``key``, or ``default``."""
        value: T = self.found.get(key.name, default)
        return value

    def put_into(self, record: T, **keys: Key[Any]) -> T:
        """``record`` with what was read under these keys, each named by its field, in place of what it has."""
        given = {name: self.found[key.name] for name, key in keys.items() if key.name in self.found}
        return replace(record, **given)  # type: ignore[type-var]  # a record, whichever

    def node(self, key: Key[Any]) -> Node | None:
        """The node under ``key`` as written."""
        return self.mapped.get(key.name)

    def span(self, key: Key[Any]) -> Span | None:
        """Where the value of ``key`` stands."""
        node = self.mapped.get(key.name)
        return None if node is None else node.span


def read_keys(mapped: Mapped, keys: Sequence[Key[Any]], sink: Sink, what: str) -> Values:
    """Read every known key of a mapping; unknown, empty and missing ones are findings. ``what`` names the mapping."""
    by_name = {key.name: key for key in keys}
    found: dict[str, Any] = {}
    spans: dict[str, Span] = {}
    for name, node in mapped:
        key = by_name.get(name.value)
        if key is None:
            unknown_key(name, node, by_name, sink, what)
            continue
        spans[name.value] = name.span
        if is_empty(node):
            hint = f"Write {key.reader.words} after the colon, or take the line out."
            sink.add("empty-value", name.span, f"{quoted(name.value)} has no value. {hint}")
            continue
        value = key.reader.read(node, sink)
        if value is not None:
            found[name.value] = value
    missing = [key.name for key in keys if key.needed and key.name not in spans]
    if missing:
        at = mapped.span.start
        names = ", ".join(quoted(name) for name in missing)
        sink.add("missing-key", Span(at, min(at + 1, mapped.span.end)), f"{what.capitalize()} needs {names}.")
    return Values(mapped, found, spans)


def is_empty(node: Node) -> bool:
    """Whether nothing was written: ``key:`` or ``key: ~``."""
    return isinstance(node, Scalar) and (node.span.start == node.span.end or node.value == "~")


def _cut_by_comma(name: Scalar, node: Node, sink: Sink) -> bool:
    """Whether a key is the rest of a value, which is said: {how: slice it, then mash}: inside curly brackets a comma
    ends the value."""
    if not is_empty(node) or sink.document.text[name.span.end : name.span.end + 1] == ":":
        return False
    message = f"The comma before {shown(name)} ends the value it belongs to. Put the whole value in quotation marks."
    sink.add("unknown-key", short(name.span), message)
    return True


def unknown_key(name: Scalar, node: Node, known: Mapping[str, object], sink: Sink, what: str) -> None:
    """Say that a key is none of ``known``, and which one it may have meant."""
    if _cut_by_comma(name, node, sink):
        return
    close = _meant(name.value, known)
    hint = f"Did you mean {quoted(close)}?" if close else f"Known here: {', '.join(known)}."
    remedy = Remedy(f"Write {quoted(close)}.", False, (Edit(name.span, close),)) if close else None
    message = f"{shown(name)} is not a key of {what}, so it is not read. {hint}"
    sink.add("unknown-key", short(name.span), message, remedy=remedy)


OTHER_NAMES = {
    "ingredients": "foods", "ingredient": "foods", "method": "steps", "directions": "steps", "instructions": "steps",
    "preparation": "steps", "serves": "makes", "servings": "makes", "portions": "makes", "yield": "makes",
    "description": "summary", "intro": "summary", "name": "title", "consistency": "texture", "storage": "keeps",
    "storing": "keeps", "store": "keeps", "sponsor": "paid", "photos": "pictures", "images": "pictures",
}  # fmt: skip
"""What cooks and other programs call a key of ours."""


def _meant(word: str, known: Mapping[str, object]) -> str:
    """The key that ``word`` may have meant: by another name of it, else the nearest in spelling; "" when none is."""
    other = OTHER_NAMES.get(word.strip().lower(), "")
    return other if other in known else nearest(word, known)


def nearest(word: str, known: Mapping[str, object] | Sequence[str]) -> str:
    """The known word that ``word`` may have meant, "" when none is near."""
    from difflib import get_close_matches

    close = get_close_matches(word[:60].lower(), list(known), 1, 0.7)
    return close[0] if close else ""


def wrong(node: Node, sink: Sink, words: str, remedy: str = "") -> None:
    """Say that ``node`` is not ``words``, and with ``remedy`` how it is written."""
    told = Remedy(remedy) if remedy else None
    sink.add("wrong-type", short(node.span), f"{shown(node)} can't be read as {words}.", remedy=told)


def short(span: Span) -> Span:
    """A span to point with: not empty, and no longer than a line or two."""
    return Span(span.start, max(span.start + 1, min(span.end, span.start + 200)))


def shown(node: Node) -> str:
    """A value as a message quotes it; the name and password of an address are never repeated."""
    if isinstance(node, Scalar):
        return quoted(_LOGIN.sub("//…@", node.value) if "@" in node.value else node.value)
    return "A list" if isinstance(node, Listing) else "A mapping"


def plain(node: Node, leaf: Callable[[str], object] = str) -> object:
    """A node as plain texts, lists and mappings; ``leaf`` makes what a text stands for."""
    if isinstance(node, Scalar):
        return leaf(node.value)
    if isinstance(node, Listing):
        return [plain(item, leaf) for item in node.items]
    return {name.value: plain(child, leaf) for name, child in node}


def scalar(words: str, schema: Schema, parse: Callable[[Scalar, Sink], T | None]) -> Reader[T]:
    """A reader of one text; lists and mappings are findings. ``parse`` says itself what is wrong with the text."""

    def read(node: Node, sink: Sink) -> T | None:
        if isinstance(node, Scalar):
            return parse(node, sink)
        if isinstance(node, Mapped) and len(node.entries) == 1 and isinstance(node.entries[0][1], Scalar):
            parse_colon(node, sink, words)
            return None
        wrong(node, sink, words)
        return None

    return Reader(words, schema, read)


def parse_colon(node: Mapped, sink: Sink, words: str) -> None:
    """Say that a colon in a text made YAML take it for a key and its value; the remedy puts it in quotation marks."""
    written = sink.document.at(node.span)
    remedy = None
    if not written.startswith(("{", '"', "'")) and "\n" not in written:
        mended = '"' + written.replace("\\", "\\\\").replace('"', '\\"') + '"'
        remedy = Remedy("Put it in quotation marks.", True, (Edit(node.span, mended),))
    sink.add(
        "wrong-type",
        short(node.span),
        f"The colon after {quoted(node.entries[0][0].value)} makes this a key with a value, and {words} is wanted. "
        "Put the whole text in quotation marks.",
        remedy=remedy,
    )


def text(words: str = "a text", most: int = limits.SCALAR_CHARACTERS) -> Reader[str]:
    """Any text, surrounding white space taken off."""

    def parse(node: Scalar, sink: Sink) -> str | None:
        if len(node.value) > most:
            sink.add("value-too-long", short(node.span), f"This is longer than {most} characters.")
            return None
        return node.value.strip()

    return scalar(words, {"type": "string", "maxLength": most}, parse)


def node_text(words: str = "a text") -> Reader[Scalar]:
    """Any text, with the map back to where it is written."""
    return scalar(words, {"type": "string"}, lambda node, _sink: node)


def spanned(reader: Reader[A]) -> Reader[Spanned[A]]:
    """What ``reader`` reads, with where it stands."""

    def read(node: Node, sink: Sink) -> Spanned[A] | None:
        value = reader.read(node, sink)
        return None if value is None else Spanned(value, node.span)

    return Reader(reader.words, reader.schema, read)


def one_of(choices: Sequence[str], also: Mapping[str, str] | None = None) -> Reader[str]:
    """One of ``choices``, whatever its capitals; ``also`` maps other spellings to choices."""
    by_low = {choice.lower(): choice for choice in choices} | {k.lower(): v for k, v in (also or {}).items()}
    words = ", ".join(choices[:-1]) + f" or {choices[-1]}" if len(choices) > 1 else choices[0]

    def parse(node: Scalar, sink: Sink) -> str | None:
        choice = by_low.get(node.value.strip().lower())
        if choice is None:
            close = by_low.get(nearest(node.value, by_low), "")
            remedy = Remedy(f"Write {quoted(close)}.", False, (Edit(node.span, close),)) if close else None
            hint = f"Did you mean {quoted(close)}? " if close else ""
            message = f"{shown(node)} is not known here. {hint}Known: {words}."
            sink.add("not-in-list", short(node.span), message, remedy=remedy)
        return choice

    return scalar(f"one of {words}", {"enum": list(choices)}, parse)


def truth() -> Reader[bool]:
    """yes or no (true and false do as well), where a yes or no is asked."""
    values = {"yes": True, "true": True, "no": False, "false": False}

    def parse(node: Scalar, sink: Sink) -> bool | None:
        value = values.get(node.value.strip().lower())
        if value is None:
            wrong(node, sink, "yes or no")
        return value

    return scalar("yes or no", {"enum": [True, False, "yes", "no", "true", "false"]}, parse)


def listed(item: Reader[A], words: str = "", alone: bool = False) -> Reader[tuple[A, ...]]:
    """A list of what ``item`` reads; faulty items are left out. ``alone``: a single value counts as a list of one."""
    words = words or f"a list, each {item.words}"

    def read(node: Node, sink: Sink) -> tuple[A, ...] | None:
        if isinstance(node, Listing):
            values = []
            for child in node.items:
                if is_empty(child):
                    sink.add("empty-value", short(child.span), "A list item is empty. Fill it or take it out.")
                    continue
                value = item.read(child, sink)
                if value is not None:
                    values.append(value)
            return tuple(values)
        if alone:
            value = item.read(node, sink)
            return None if value is None else (value,)
        remedy = "Start each on a line of its own, with a hyphen and a blank before it (“- ”)."
        wrong(node, sink, words, remedy=remedy if isinstance(node, Scalar) else "")
        return None

    many: Schema = {"type": "array", "items": item.schema, "maxItems": limits.LIST_LENGTH}
    return Reader(words, {"anyOf": [many, item.schema]} if alone else many, read)


def shape(keys: Sequence[Key[Any]], what: str) -> Reader[Values]:
    """A mapping with these keys; ``what`` names it in messages ("a segment")."""

    def read(node: Node, sink: Sink) -> Values | None:
        if not isinstance(node, Mapped):
            wrong(node, sink, f"{what}: a mapping with {', '.join(key.name for key in keys)}")
            return None
        return read_keys(node, keys, sink, what)

    return Reader(f"a mapping with {', '.join(key.name for key in keys)}", keys_schema(keys), read)


def keys_schema(keys: Sequence[Key[Any]]) -> Schema:
    """The JSON Schema of a mapping with these keys."""
    schema: dict[str, object] = {
        "type": "object",
        "properties": {key.name: {**key.reader.schema, "description": key.doc} for key in keys},
        "additionalProperties": False,
    }
    needed = [key.name for key in keys if key.needed]
    return schema | {"required": needed} if needed else schema


def either(plain: Reader[A], mapping: Reader[B]) -> Reader[A | B]:
    """A text or list read by ``plain``, or a mapping read by ``mapping``."""

    def read(node: Node, sink: Sink) -> A | B | None:
        return mapping.read(node, sink) if isinstance(node, Mapped) else plain.read(node, sink)

    return Reader(f"{plain.words}, or {mapping.words}", {"anyOf": [plain.schema, mapping.schema]}, read)


def open_mapping(item: Reader[A], words: str) -> Reader[dict[str, A]]:
    """A mapping whose keys are the author's own; each value is read by ``item``."""

    def read(node: Node, sink: Sink) -> dict[str, A] | None:
        if not isinstance(node, Mapped):
            wrong(node, sink, words)
            return None
        values = {}
        for name, child in node:
            if is_empty(child):
                sink.add("empty-value", name.span, f"{quoted(name.value)} has no value.")
                continue
            value = item.read(child, sink)
            if value is not None:
                values[name.value] = value
        return values

    return Reader(words, {"type": "object", "additionalProperties": item.schema}, read)
