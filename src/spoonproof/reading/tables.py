"""Our own tables: CSV rows and sources, read in one pass. What is wrong in them is a fault of the project."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from spoonproof.model.table import Row


def read_table(path: Path) -> list[Row]:
    """All rows of a CSV table with its first line as column names; cells stripped, blank rows left out.

    Raises ValueError with file and line when a row has more cells than there are columns, a column name is
    empty or stands twice, or the file is not UTF-8.
    """
    import csv

    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            return _rows(file, path.name)
    except (csv.Error, UnicodeDecodeError) as problem:
        raise ValueError(f"{path.name}: {problem}") from None


def _rows(lines: Iterator[str], name: str) -> list[Row]:
    import csv

    reader = csv.reader(lines, strict=True)
    columns = [cell.strip() for cell in next(reader, [])]
    if len(set(columns)) != len(columns) or "" in columns:
        raise ValueError(f"{name}:1: column names must be there and differ: {columns}")
    rows: list[Row] = []
    line = reader.line_num + 1
    for cells in reader:
        if len(cells) > len(columns):
            raise ValueError(f"{name}:{line}: {len(cells)} cells for {len(columns)} columns")
        if any(cells):
            # A short row ends in empty cells.
            rows.append(Row(dict(zip(columns, map(str.strip, cells), strict=False)), name, line))
        line = reader.line_num + 1
    return rows


def read_sources(folder: Path) -> dict[str, Mapping[str, object]]:
    """All sources (CSL-JSON items) of ``folder``/*.yaml by id, in the order of files and items.

    Raises ValueError when a file is no list of items with an id, or an id stands twice.
    """
    import yaml

    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    sources: dict[str, Mapping[str, object]] = {}
    where: dict[str, str] = {}
    for path in sorted(folder.glob("*.yaml"), key=lambda path: path.name):
        try:
            items = yaml.load(path.read_text(encoding="utf-8"), Loader=loader)  # a safe loader either way
        except yaml.YAMLError as problem:
            raise ValueError(f"{path.name}: {' '.join(str(problem).split())}") from None
        if not isinstance(items, list):
            raise ValueError(f"{path.name}: a list of sources is expected")
        for item in items:
            if not isinstance(item, dict) or not isinstance(item.get("id"), str):
                raise ValueError(f"{path.name}: every source is a mapping with an id in text: {str(item)[:80]}")
            if item["id"] in where:
                raise ValueError(f"{path.name}: {item['id']!r} stands in {where[item['id']]} already")
            where[item["id"]] = path.name
            sources[item["id"]] = item
    return sources
