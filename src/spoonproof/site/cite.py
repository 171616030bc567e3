"""Sources as people read them: one line from a CSL-JSON item."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from spoonproof.model.citation import full


def cite(item: Mapping[str, Any]) -> str:
    """Author or publisher, year, title, container, volume, pages and number, whatever of it is known."""
    return full(item)


def address(item: Mapping[str, Any]) -> str:
    """Where the source is: its URL, or its DOI as one; "" when neither is https."""
    url = str(item.get("URL", ""))
    if not url and item.get("DOI"):
        url = f"https://doi.org/{item['DOI']}"
    return url if url.startswith(("https://", "http://")) else ""
