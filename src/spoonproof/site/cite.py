"""Sources as people read them: one line from a CSL-JSON item."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any


def cite(item: Mapping[str, Any]) -> str:
    """Author or publisher, year, title, container, volume, pages and DOI, whatever of it is known."""
    who = _names(item.get("author")) or str(item.get("publisher", ""))
    year = _year(item.get("issued"))
    title = str(item.get("title", "")).rstrip(".")
    parts = [f"{who} ({year})" if who and year else who or year, title]
    container = str(item.get("container-title", ""))
    if container:
        volume = str(item.get("volume", ""))
        issue = f"({item['issue']})" if item.get("issue") else ""
        page = f": {item['page']}" if item.get("page") else ""
        parts.append(f"{container} {volume}{issue}{page}".strip())
    elif item.get("publisher") and str(item["publisher"]) != who:
        parts.append(str(item["publisher"]))
    if item.get("number") and not container:
        parts.append(str(item["number"]))
    return ". ".join(part for part in parts if part) + "."


def address(item: Mapping[str, Any]) -> str:
    """Where the source is: its URL, or its DOI as one; "" when neither is https."""
    url = str(item.get("URL", ""))
    if not url and item.get("DOI"):
        url = f"https://doi.org/{item['DOI']}"
    return url if url.startswith(("https://", "http://")) else ""


def _names(names: object) -> str:
    if not isinstance(names, Sequence) or isinstance(names, str):
        return ""
    shown = []
    for name in names:
        if isinstance(name, Mapping):
            shown.append(str(name.get("literal") or " ".join(str(name[k]) for k in ("family", "given") if name.get(k))))
    if len(shown) > 3:
        return f"{shown[0]} and others"
    return " and ".join(", ".join(shown).rsplit(", ", 1)) if len(shown) > 1 else "".join(shown)


def _year(issued: object) -> str:
    if isinstance(issued, Mapping):
        parts = issued.get("date-parts")
        if isinstance(parts, Sequence) and parts and isinstance(parts[0], Sequence) and parts[0]:
            return str(parts[0][0])
        return str(issued.get("literal", issued.get("raw", "")))
    return str(issued) if isinstance(issued, str | int) else ""
