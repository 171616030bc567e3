"""A source as a reader sees it, rendered from its CSL-JSON."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

Csl = Mapping[str, object]

UNPUBLISHED = {
    "common-practice": "common practice, no source",
    "from-memory": "from memory, to be verified",
    "own": "the author's own source",
}


def short(source_id: str, sources: Mapping[str, Csl]) -> str:
    """Who, what and when in one line; the id itself where the source is not known."""
    if source_id in UNPUBLISHED:
        return UNPUBLISHED[source_id]
    item = sources.get(source_id)
    if item is None:
        return source_id
    parts = [part for part in (_names(item), str(item.get("title", ""))) if part]
    year = issued_year(item)
    return ", ".join(parts) + (f" ({year})" if year else "")


def address(source_id: str, sources: Mapping[str, Csl]) -> str:
    """The link of a source: its DOI, else its URL, else ""."""
    item = sources.get(source_id, {})
    if doi := item.get("DOI"):
        return f"https://doi.org/{doi}"
    return str(item.get("URL", ""))


def issued_year(item: Csl) -> str:
    """The year of publication, "" when there is none."""
    issued: Any = item.get("issued")
    if isinstance(issued, Mapping):
        parts = issued.get("date-parts")
        if isinstance(parts, list) and parts and isinstance(parts[0], list) and parts[0]:
            return str(parts[0][0])
        return str(issued.get("literal", ""))
    return str(issued or "")


def _names(item: Csl) -> str:
    authors = item.get("author")
    if isinstance(authors, list) and authors:
        names = [str(a.get("literal") or a.get("family") or "") for a in authors if isinstance(a, Mapping)]
        return " and ".join(names) if len(names) <= 2 else f"{names[0]} and others"
    return str(item.get("publisher", ""))
