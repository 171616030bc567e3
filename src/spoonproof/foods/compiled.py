"""The food table as plain data: made once from the rows (when the wheel is built, say), loaded as it stands.

What takes time is done here: names brought to their plain words, states and forms linked, every figure checked.
A food itself is only put together when it is asked for.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from spoonproof.foods.values import Values, read_value
from spoonproof.foods.words import key
from spoonproof.model.food import Food, Hardness, Portion
from spoonproof.model.table import Row

# What nearly every cell looks like; the others are read closely.
_SOUND = re.compile(r"\d{1,4}(?:\.\d+)?(?:~\d{1,4}(?:\.\d+)?)?[cz]?")

VERSION = 2
"""Goes up when the shape of the data changes; data of another version is not read."""
_PIECES = ("piece", "slice", "head", "stalk", "spear", "clove", "cob")
_LISTS = ("names", "refuse", "allergens", "traits")


def compile_foods(
    foods: Sequence[Row], values: Sequence[Row] = (), portions: Sequence[Row] = (), more: Sequence[Row] = ()
) -> dict[str, Any]:
    """All that a food table needs, as JSON can hold it.

    Raises ValueError with file and line when a cell is no number, a portion weighs nothing, a waste is not from 0 to
    below 100, or a parent is no food of the table.
    """
    known = {row.text("id") for row in foods}
    for row in foods:
        _check(row, known)
    data: dict[str, Any] = {
        "version": VERSION,
        "foods": {row.text("id"): _cells(row) for row in foods},
        "values": {},
        "sources": {},
        "portions": {},
    }
    for row in values:
        _checked_values(row)
        data["values"][row.text("food")] = {k: v for k, v in row.cells.items() if v and k != "food"}
    for row in more:
        own = data["values"].setdefault(row.text("food"), {})
        nutrient = row.text("nutrient")
        if nutrient not in own:
            _cell(row, "value")
            own[nutrient] = row.text("value")
            data["sources"].setdefault(row.text("food"), {})[nutrient] = row.text("source")
    for row in portions:
        grams = row.number("grams")
        if grams is None or not grams > 0:
            raise ValueError(f"{row.file}:{row.line}: grams of a portion should be above 0")
        found = data["portions"].setdefault(row.text("food"), [])
        found.append([row.text("unit"), row.text("size"), grams, row.text("source")])
    data.update(_index(foods))
    return data


def _cells(row: Row) -> dict[str, str]:
    cells = {k: v for k, v in row.cells.items() if v and k != "id"}
    return cells | {k: cells[k].replace("~", "") for k in ("name", "names") if k in cells}


def _check(row: Row, known: set[str]) -> None:
    if row.text("parent") and row.text("parent") not in known:
        raise ValueError(f"{row.file}:{row.line}: the parent {row.text('parent')!r} is not in the table")
    if not 0 <= (row.number("refuse_pct") or 0.0) < 100:
        raise ValueError(f"{row.file}:{row.line}: refuse_pct should be from 0 to below 100")
    density = row.number("density")
    if density is not None and not 0 < density < 25:
        raise ValueError(f"{row.file}:{row.line}: density should be in g per ml")


def _checked_values(row: Row) -> None:
    for column, cell in row.cells.items():
        if cell and column != "food" and _SOUND.fullmatch(cell) is None:
            _cell(row, column)


def _cell(row: Row, column: str) -> None:
    try:
        read_value(row.text(column))
    except ValueError as problem:
        raise ValueError(f"{row.file}:{row.line}: {column}: {problem}") from None


def _index(foods: Sequence[Row]) -> dict[str, Any]:
    names: dict[str, str] = {}
    longest: dict[str, int] = {}
    as_written: dict[str, str] = {}
    records: dict[str, str] = {}
    variants: dict[str, str] = {}
    bought: dict[str, str] = {}
    for row in foods:
        if row.text("record"):
            records.setdefault(row.text("record"), row.text("id"))
        for name in _names(row):
            if name.startswith("="):  # only in this very form: "peppers" are no pepper
                as_written.setdefault(name[1:], row.text("id"))
            elif name.startswith("~"):  # bought as such on a food line; in a method most often what is being made
                bought.setdefault(" ".join(key(name[1:])), row.text("id"))
            else:
                names.setdefault(" ".join(key(name)), row.text("id"))
    for row in foods:
        known = bought if row.text("name").startswith("~") else names
        known.setdefault(" ".join(key(row.text("id").replace("-", " "))), row.text("id"))
        if row.text("parent"):
            state = row.text("state") or "raw"
            variants.setdefault(f"{row.text('parent')} {row.text('form') or state}", row.text("id"))
            if state != "cooked":
                variants.setdefault(f"{row.text('parent')} {state}", row.text("id"))
    names.pop("", None)
    for name in (*names, *bought, *(" ".join(key(name)) for name in as_written)):
        words = name.split(" ")
        longest[words[0]] = max(longest.get(words[0], 0), len(words))
    return {
        "names": names,
        "longest": longest,
        "as_written": as_written,
        "bought": bought,
        "records": records,
        "variants": variants,
    }


def _names(row: Row) -> Iterator[str]:
    yield row.text("name")
    yield from row.items("names")


def _counts_of(data: Mapping[str, Any], parent: str) -> list[Portion]:
    """What pieces of a raw food weigh: the nearest there is for pieces of it cooked, where no table has them."""
    if not parent or data["foods"][parent].get("state", "raw") not in ("", "raw"):
        return []
    return [Portion(*each) for each in data["portions"].get(parent, ()) if each[0] in _PIECES]


def food_of(data: Mapping[str, Any], food_id: str) -> Food:
    """One food of the compiled data. Raises KeyError when there is none of that id."""
    cells: Mapping[str, str] = data["foods"][food_id]
    lists = {column: tuple(p for raw in cells.get(column, "").split(";") if (p := raw.strip())) for column in _LISTS}
    group = cells.get("group", "")
    own = [Portion(*each) for each in data["portions"].get(food_id, ())]
    units = {portion.unit for portion in own}
    # What a handful or a slice of this kind of food weighs, where the food itself has no figure.
    shared = [Portion(*each) for each in data["portions"].get(f"group:{group}", ()) if each[0] not in units]
    if cells.get("state") == "cooked":
        shared += [one for one in _counts_of(data, cells.get("parent", "")) if one.unit not in units]
    values = data["values"].get(food_id)
    hardness: Hardness = cells.get("hardness", "none")  # type: ignore[assignment]  # a closed list, tested
    density = cells.get("density")
    return Food(
        id=food_id,
        record=cells.get("record", ""),
        name=cells.get("name", food_id),
        names=lists["names"],
        group=group,
        state=cells.get("state", "raw"),
        scientific=cells.get("scientific", ""),
        source=cells.get("source", ""),
        per_100g=Values(values, data["sources"].get(food_id)) if values else {},
        portions=tuple(own + shared),
        refuse_pct=float(cells.get("refuse_pct", 0.0)),
        density=float(density) if density else None,
        hardness=hardness,
        allergens=frozenset(lists["allergens"]),
        traits=frozenset(lists["traits"]),
        retention=cells.get("retention", ""),
        softens_as=cells.get("softens_as", ""),
        parent=cells.get("parent", ""),
        refuse=lists["refuse"],
        note=cells.get("note", ""),
    )
