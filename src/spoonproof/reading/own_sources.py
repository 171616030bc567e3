"""A channel's own sources (``shared/sources/*.yaml``): CSL-JSON items with their places, and what is wrong with them.

They are what a person wrote, so they are read as a channel's other files are: with limits, with nothing constructed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from urllib.parse import urlsplit

from spoonproof.model.finding import Finding, Level, Related
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Node, Scalar
from spoonproof.reading.faults import fault, quoted
from spoonproof.reading.files import read_document
from spoonproof.reading.yaml_tree import read_yaml

LONGEST_ADDRESS = 2048
_WHOLE = re.compile(r"-?[0-9]{1,9}")
_BLANK = re.compile(r"[\s\x00-\x20\x7f]")


def own_sources(root: Path) -> tuple[dict[str, Mapping[str, object]], list[Finding]]:
    """The sources of the channel's folder ``root`` by id, and the faults met. An item at fault is left out; a
    doubtful address is only told."""
    found: dict[str, Mapping[str, object]] = {}
    places: dict[str, tuple[Document, Span]] = {}
    findings: list[Finding] = []
    for path in sorted((root / "shared" / "sources").glob("*.yaml"), key=lambda path: path.name):
        document, faults = read_document(path, f"shared/sources/{path.name}", root)
        findings += faults
        if document is None:
            continue
        tree, faults = read_yaml(document)
        findings += faults
        if tree is None:
            continue
        if not isinstance(tree, Listing):
            findings.append(_not_read(document, tree.span, "A list of sources is expected here."))
            continue
        for item in tree.items:
            name = item.get("id") if isinstance(item, Mapped) else None
            if not isinstance(item, Mapped) or not isinstance(name, Scalar) or not name.value.strip():
                findings.append(_not_read(document, item.span, "Every source is a mapping with an id."))
                continue
            if name.value in places:
                other, span = places[name.value]
                message = f"{quoted(name.value)} is defined twice; the first one counts."
                related = (Related(other, span, "first defined here"),)
                findings.append(fault("own-table-not-read", document, name.span, message, related=related))
                continue
            places[name.value] = (document, name.span)
            findings += _address_faults(document, item)
            plain = _plain(item)
            assert isinstance(plain, dict)
            found[name.value] = plain
    return found, findings


def _not_read(document: Document, span: Span, message: str) -> Finding:
    return fault("own-table-not-read", document, Span(span.start, min(span.end, span.start + 80)), message)


def _plain(node: Node) -> object:
    """The data of a node; whole numbers as numbers, since the parts of a date are."""
    if isinstance(node, Listing):
        return [_plain(item) for item in node.items]
    if isinstance(node, Mapped):
        return {name.value: _plain(value) for name, value in node}
    return int(node.value) if _WHOLE.fullmatch(node.value) else node.value


def _address_faults(document: Document, item: Mapped) -> Iterator[Finding]:
    """What is wrong with a source's address. What it says is never repeated: it may hold a password."""
    node = item.get("URL")
    if node is None:
        return
    span = Span(node.span.start, max(node.span.start + 1, min(node.span.end, node.span.start + 80)))
    for message, level in _problems(node.value if isinstance(node, Scalar) else ""):
        yield fault("source-address", document, span, message, level=level)


def _problems(url: str) -> Iterator[tuple[str, Level]]:
    if not url.strip():
        yield "This source's address is empty: write it, or leave URL out.", "error"
        return
    if len(url) > LONGEST_ADDRESS:
        yield (
            f"This address is longer than {LONGEST_ADDRESS} characters. Take out what only tracks the reader.",
            "error",
        )
        return
    if _BLANK.search(url.strip()):
        yield "A blank or control character stands in this address. Write it as %20, or take it out.", "error"
        return
    try:
        parts = urlsplit(url.strip())
        host = parts.hostname or ""
    except ValueError:
        yield "This is no address that can be followed.", "error"
        return
    if parts.username is not None or parts.password is not None:
        yield (
            "This address holds a name or password. Take it out, and change the password: it stood in a file.",
            "error",
        )
    elif parts.scheme.lower() not in ("http", "https") or not host:
        yield "A source's address starts with https:// and the name of the site.", "error"
    elif not host.isascii():
        yield (
            "The site's name has letters other than a to z, which may only look alike. Write its xn-- form.",
            "warning",
        )
    elif parts.scheme.lower() == "http":
        yield (
            "This address is not encrypted: a reader may be shown something else. Write https:// if the site has it.",
            "note",
        )
