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


def full(item: Csl) -> str:
    """Who, when, what, in what, by whom and what number: whatever of it is known, for every type of source."""
    who = names(item.get("author")) or _edited(item) or _text(item, "publisher") or _text(item, "authority")
    year = issued_year(item)
    title = _text(item, "title").rstrip(".")
    # Without an author the title leads, as it does in a list of references.
    parts = (
        [f"{who} ({year})" if year else who, title]
        if who
        else [f"{title} ({year})" if year and title else title or year]
    )
    container = _text(item, "container-title")
    if container:
        volume = _text(item, "volume") + (f"({_text(item, 'issue')})" if _text(item, "issue") else "")
        pages = f": {_text(item, 'page')}" if _text(item, "page") else ""
        inside = "In: " if item.get("type") in ("chapter", "paper-conference", "entry") else ""
        parts.append(f"{inside}{container} {volume}".rstrip() + pages)
    if _text(item, "edition"):
        parts.append(
            f"Edition {_text(item, 'edition')}" if _text(item, "edition").isdigit() else _text(item, "edition")
        )
    parts += [text for key in ("authority", "publisher") if (text := _text(item, key)) and text != who]
    parts += [text for key in ("number", "version") if (text := _text(item, key)) and not container]
    parts += [f"ISBN {_text(item, 'ISBN')}"] if _text(item, "ISBN") else []
    parts += [f"Read on {read}"] if (read := _date(item.get("accessed"))) else []
    return ". ".join(dict.fromkeys(part for part in parts if part)) + "."


def web_link(item: Csl) -> str:
    """Where a page may link for this source: its URL, else its DOI as one; "" when neither is a web address."""
    url = str(item.get("URL", ""))
    if not url and item.get("DOI"):
        url = f"https://doi.org/{item['DOI']}"
    return url if url.startswith(("https://", "http://")) else ""


def address(source_id: str, sources: Mapping[str, Csl]) -> str:
    """The link of a source: its DOI, else its URL, else ""."""
    item = sources.get(source_id, {})
    if doi := item.get("DOI"):
        return f"https://doi.org/{doi}"
    return str(item.get("URL", ""))


def issued_year(item: Csl) -> str:
    """The year of publication, "" when there is none."""
    return _date(item.get("issued")).partition("-")[0]


def _date(given: Any) -> str:
    """A CSL date as "2024-02-09" as far as it is known, or its words; "" when there is none."""
    if not isinstance(given, Mapping):
        return str(given or "")
    parts = given.get("date-parts")
    if isinstance(parts, list) and parts and isinstance(parts[0], list) and parts[0]:
        return "-".join(str(part).zfill(2) for part in parts[0])
    return str(given.get("literal") or given.get("raw") or "")


def names(given: object, most: int = 3) -> str:
    """Names as they are read: "Lee S", "Lee S and Choi Y", "Lee S and others"; "" when there are none."""
    found = [name for one in given if (name := _name(one))] if isinstance(given, list) else []
    if len(found) > most:
        return f"{found[0]} and others"
    return found[0] if len(found) == 1 else " and ".join([", ".join(found[:-1]), found[-1]]) if found else ""


def _name(given: object) -> str:
    if not isinstance(given, Mapping):
        return ""
    if given.get("literal"):
        return str(given["literal"])
    family = " ".join(str(given[key]) for key in ("non-dropping-particle", "family") if given.get(key))
    initials = "".join(word[0] for word in str(given.get("given", "")).replace("-", " ").split())
    return f"{family} {initials}".strip()


def _edited(item: Csl) -> str:
    editors = names(item.get("editor"))
    return f"{editors} (ed.)" if editors else ""


def _text(item: Csl, key: str) -> str:
    value = item.get(key)
    return " ".join(str(value).split()) if isinstance(value, str | int | float) and value != "" else ""


def _names(item: Csl) -> str:
    """The first author's family name, or both of two; else who published."""
    authors = item.get("author")
    if isinstance(authors, list) and authors:
        found = [str(a.get("literal") or a.get("family") or "") for a in authors if isinstance(a, Mapping)]
        return " and ".join(found) if len(found) <= 2 else f"{found[0]} and others"
    return str(item.get("publisher", ""))
