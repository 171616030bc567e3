"""Put right what may be put right without asking: edits of safe remedies, laid into the text as it stands."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Iterator

from spoonproof.model.finding import Edit, Finding
from spoonproof.model.text import Document
from spoonproof.reading.edits import fitted

_LINE_END = re.compile(r"\r\n|\r|\n")


def safe_edits(findings: Iterable[Finding]) -> dict[Document, tuple[Edit, ...]]:
    """The edits of safe remedies by document, from the front, each written as its place asks for (quotation marks
    in the head, say), none overlapping another: the first found wins, whole remedies only."""
    wanted: dict[str, tuple[Document, list[Edit]]] = {}
    for finding in findings:
        remedy = finding.remedy
        if remedy is None or not remedy.safe or not remedy.edits:
            continue
        _, taken = wanted.setdefault(finding.document.path, (finding.document, []))
        edits: list[Edit] = []
        for edit in (fitted(finding.document, edit) for edit in remedy.edits):
            if any(_overlap(edit, old) for old in (*taken, *edits)):
                break
            edits.append(edit)
        else:
            taken.extend(edits)
    return {document: tuple(sorted(edits)) for document, edits in wanted.values() if edits}


def _overlap(a: Edit, b: Edit) -> bool:
    return (a.span.start < b.span.end and b.span.start < a.span.end) or a.span == b.span


def difference(document: Document, after: str) -> Iterator[str]:
    """A unified diff of what mending would change."""
    before, now = (_LINE_END.split(text) for text in (document.text, after))
    yield from difflib.unified_diff(before, now, document.path, document.path, lineterm="", n=2)
