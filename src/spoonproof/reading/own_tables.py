"""A channel's own tables, looked at before they are laid over ours: what a person wrote never breaks the rest."""

from __future__ import annotations

from pathlib import Path

from spoonproof.model.finding import Finding
from spoonproof.model.table import Row
from spoonproof.model.text import Document, Span
from spoonproof.reading.bundle import OWN, bundle_root, own_root, row_key
from spoonproof.reading.faults import fault, quoted
from spoonproof.reading.files import read_document
from spoonproof.reading.own_sources import own_sources
from spoonproof.reading.tables import read_table
from spoonproof.reading.typed import nearest

SAFETY_TABLES = (
    "allergens",
    "cautions",
    "choking",
    "cook_times",
    "foods_not_yet",
    "introduction",
    "storage",
    "textures",
)
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
