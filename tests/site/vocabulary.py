"""A walk over structured data: types, properties, where they may stand, what they take, and what search engines ask."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

_TABLE = json.loads((Path(__file__).parent / "schema_vocabulary.json").read_text(encoding="utf-8"))
_DURATION = re.compile(r"P(?=.)(\d+W|(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+(\.\d+)?S)?)?)")
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2})?([+-]\d{2}:\d{2}|Z))?")
_TEXT = {"Text", "CssSelectorType", "PronounceableText", "XPathType"}

REQUIRED = {
    "Recipe": ("name", "image"),
    "VideoObject": ("name", "thumbnailUrl", "uploadDate"),
    "Clip": ("name", "startOffset", "url"),
    "HowToStep": ("text",),
    "HowToSection": ("name", "itemListElement"),
    "ListItem": ("position",),
}
"""What search engines document as required (their recipe and video pages, read in copies of November 2026)."""

RECOMMENDED_RECIPE = (
    "author", "description", "keywords", "recipeCategory", "recipeIngredient", "recipeInstructions", "recipeYield",
    "totalTime", "nutrition", "video",
)  # fmt: skip


def parents(type_: str) -> set[str]:
    """A type with all it descends from."""
    found = {type_}
    for parent in _TABLE["types"].get(type_, ()):
        found |= parents(parent)
    return found


def faults(node: Any, path: str = "$") -> list[str]:
    """Everything wrong with a block of structured data."""
    if isinstance(node, list):
        return [fault for at, item in enumerate(node) for fault in faults(item, f"{path}[{at}]")]
    if not isinstance(node, dict):
        return []
    type_ = node.get("@type", "")
    if type_ not in _TABLE["types"]:
        return [f"{path}: unknown type {type_!r}"]
    out = [
        f"{path}: {type_} lacks {name}"
        for name in REQUIRED.get(type_, ())
        if not node.get(name) and node.get(name) != 0
    ]
    lineage = parents(type_)
    for name, value in node.items():
        if name.startswith("@"):
            continue
        row = _TABLE["properties"].get(name)
        where = f"{path}.{name}"
        if row is None:
            out.append(f"{where}: unknown property")
            continue
        if name in _TABLE["superseded"]:
            out.append(f"{where}: superseded")
        if not lineage & set(row["on"]):
            out.append(f"{where}: not a property of {type_}")
        for item in value if isinstance(value, list) else [value]:
            out += _value(item, set(row["takes"]), where)
        out += faults(value, where)
    return out


def _value(item: Any, takes: set[str], where: str) -> list[str]:
    if isinstance(item, dict):
        return (
            []
            if parents(item.get("@type", "")) & takes
            else [f"{where}: takes {sorted(takes)}, not {item.get('@type')}"]
        )
    if isinstance(item, bool):
        return [] if "Boolean" in takes else [f"{where}: no yes or no here"]
    if isinstance(item, int | float):
        return [] if takes & {"Number", "Integer", "Float"} else [f"{where}: no number here"]
    if not isinstance(item, str) or not item:
        return [f"{where}: empty"]
    if "Duration" in takes and not takes & _TEXT:
        return [] if _DURATION.fullmatch(item) else [f"{where}: {item!r} is no duration"]
    if takes <= {"Date", "DateTime"}:
        return [] if _DATE.fullmatch(item) else [f"{where}: {item!r} is no date"]
    if takes == {"URL"}:
        return [] if item.startswith(("https://", "http://")) else [f"{where}: {item!r} is no full address"]
    # Energy and Mass are written as text ("104 kcal"); types of things may be given by their address.
    if takes & (_TEXT | {"URL", "Energy", "Mass"}) or item.startswith("https://"):
        return []
    return [f"{where}: text where {sorted(takes)} is meant"]
