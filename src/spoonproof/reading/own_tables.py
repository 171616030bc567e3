"""A channel's own tables and sources (``shared``), looked at before they are laid over ours.

What a person wrote never breaks the rest: it is read as a channel's other files are, with limits, and nothing of it is
constructed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from urllib.parse import urlsplit

from spoonproof.model.finding import Finding, Level, Related
from spoonproof.model.table import Row
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Listing, Mapped, Scalar
from spoonproof.reading.bundle import OWN, bundle_root, own_root, read_table, row_key
from spoonproof.reading.faults import fault, quoted
from spoonproof.reading.files import read_document
from spoonproof.reading.typed import nearest, plain
from spoonproof.reading.yaml_tree import read_yaml

SAFETY_TABLES = tuple("allergens cautions choking cook_times foods_not_yet introduction storage textures".split())
"""Tables that guard a baby: a row of theirs may be replaced only with a reason, and the page shows it."""


def own_table_faults(channel: Path | None) -> list[Finding]:
    """What is wrong with a channel's ``shared`` folder: tables nobody knows, tables that can't be read (they are
    left out), unknown columns, and safety rows replaced without a ``reason``."""
    root = own_root(channel)
    if root is None or not (root / "shared").is_dir():
        return []
    ours = {path.stem: path for path in sorted((bundle_root() / "shared").glob("*.csv"))}
    findings: list[Finding] = []
    for path in sorted((root / "shared").glob("*.csv")):
        shown = f"shared/{path.name}"
        document, faults = read_document(path, shown)
        findings += faults
        if document is None:
            continue
        if path.stem not in ours:
            close = nearest(path.stem, list(ours))
            hint = f"Did you mean {quoted(close + '.csv')}?" if close else f"Known: {', '.join(ours)}."
            message = f"There is no table of this name, so it is not read. {hint}"
            findings.append(fault("own-table-unknown", document, document.whole, message))
            continue
        try:
            rows = read_table(path)
        except ValueError as problem:
            message = f"This table can't be read and is left out: {problem}."
            findings.append(fault("own-table-not-read", document, document.whole, message))
            continue
        findings += _rows(document, path.stem, rows, read_table(ours[path.stem]))
    findings += own_sources(root)[1]
    return findings


def _rows(document: Document, table: str, rows: list[Row], ours: list[Row]) -> list[Finding]:
    findings = []
    known = (*ours[0].cells, "reason") if ours else ()
    for column in rows[0].cells if rows else ():
        if known and column not in known:
            close = nearest(column, known)
            hint = f"Did you mean {quoted(close)}?" if close else f"Known: {', '.join(known)}."
            at = document.text.find(column)
            span = Span(max(0, at), max(0, at) + len(column))
            message = f"{quoted(column)} is not a column of this table, so it is not read. {hint}"
            findings.append(fault("own-table-unknown", document, span, message))
    if table in SAFETY_TABLES:
        guarded = {row_key(row, table) for row in ours}
        for row in rows:
            if row_key(row, table) in guarded and not row.text("reason"):
                start = document.offset(row.line, 1)
                span = Span(start, start + len(document.line_text(row.line)))
                message = "This row takes the place of one that guards the baby. Say why in a column named reason."
                findings.append(fault("own-row-without-reason", document, span, message))
    return findings


def says_own(problem: ValueError) -> bool:
    """Whether a room's complaint about a table is about a row of the channel, not of ours."""
    return str(problem).startswith(OWN)


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
            findings.append(_source_not_read(document, tree.span, "A list of sources is expected here."))
            continue
        for item in tree.items:
            name = item.get("id") if isinstance(item, Mapped) else None
            if not isinstance(item, Mapped) or not isinstance(name, Scalar) or not name.value.strip():
                findings.append(_source_not_read(document, item.span, "Every source is a mapping with an id."))
                continue
            if name.value in places:
                other, span = places[name.value]
                message = f"{quoted(name.value)} is defined twice; the first one counts."
                related = (Related(other, span, "first defined here"),)
                findings.append(fault("own-table-not-read", document, name.span, message, related=related))
                continue
            places[name.value] = (document, name.span)
            findings += _address_faults(document, item)
            data = plain(item, _whole_or_text)
            assert isinstance(data, dict)
            found[name.value] = data
    return found, findings


def _source_not_read(document: Document, span: Span, message: str) -> Finding:
    return fault("own-table-not-read", document, Span(span.start, min(span.end, span.start + 80)), message)


def _whole_or_text(written: str) -> object:
    """A whole number as a number, since the parts of a date are."""
    return int(written) if _WHOLE.fullmatch(written) else written


def _address_faults(document: Document, item: Mapped) -> Iterator[Finding]:
    """What is wrong with a source's address. What it says is never repeated: it may hold a password."""
    node = item.get("URL")
    if node is None:
        return
    span = Span(node.span.start, max(node.span.start + 1, min(node.span.end, node.span.start + 80)))
    wrong = _wrong_with(node.value.strip() if isinstance(node, Scalar) else "")
    if wrong is not None:
        yield fault("source-address", document, span, wrong[1], level=wrong[0])


def _wrong_with(url: str) -> tuple[Level, str] | None:
    """What is wrong with an address, and how bad it is."""
    if not url:
        return "error", "This source's address is empty: write it, or leave URL out."
    if len(url) > LONGEST_ADDRESS:
        long = f"This address is longer than {LONGEST_ADDRESS} characters."
        return "error", f"{long} Take out what only tracks the reader."
    if _BLANK.search(url):
        return "error", "A blank or control character stands in this address. Write it as %20, or take it out."
    try:
        parts = urlsplit(url)
        host = parts.hostname or ""
    except ValueError:
        return "error", "This is no address that can be followed."
    secret = "This address holds a name or password. Take it out, and change the password: it stood in a file."
    looks = "The site's name has letters other than a to z, which may only look alike. Write its xn-- form."
    plain = "This address is not encrypted: a reader may be shown something else. Write https:// if the site has it."
    if parts.username is not None or parts.password is not None:
        return "error", secret
    if parts.scheme.lower() not in ("http", "https") or not host:
        return "error", "A source's address starts with https:// and the name of the site."
    if not host.isascii():
        return "warning", looks
    return ("note", plain) if parts.scheme.lower() == "http" else None
