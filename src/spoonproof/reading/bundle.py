"""The curated folders: where they are, how their tables are read, and how a channel's own lie over them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
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


_MARKS = ("shared", "claims")

OWN = "channel: "
"""How ``Row.file`` starts where a channel's own table gave the row."""

# Tables whose rows are told apart by more than an id.
KEYS: Mapping[str, tuple[str, ...]] = {
    "allergen_lists": ("market", "allergen"),
    "claim_references": ("list", "nutrient"),
    "cook_times": ("foods", "cut", "mm", "shape", "method"),
    "cuts": ("shape", "low_mm", "high_mm"),
    "intakes": ("authority", "from_months", "to_months", "nutrient", "kind"),
    "food_portions": ("food", "unit", "size"),
    "food_values": ("food",),
    "food_values_more": ("food", "nutrient"),
    "measures": ("unit", "system"),
    "preparations": ("word",),
    "retention": ("group", "method"),
    "softening": ("foods", "measure"),
    "thermal": ("foods",),
    "traits": ("trait",),
    "vitamins_kept": ("foods", "nutrient", "method", "minutes_low"),
    "yields": ("what", "method"),
}


@lru_cache(maxsize=1)
def bundle_root() -> Path:
    """The folder with ``shared``, ``claims``, ``site`` and ``recipes``: the wheel's ``spoonproof/bundle``, or the
    repository beside ``src``. Raises FileNotFoundError when the installation lacks it."""
    package = Path(__file__).resolve().parents[1]
    for root in (package / "bundle", package.parents[1]):
        if all((root / mark).is_dir() for mark in _MARKS):
            return root.resolve()
    raise FileNotFoundError("the folders 'shared' and 'claims' that belong to spoonproof are not installed")


def own_root(channel: Path | None) -> Path | None:
    """The channel's folder if it may bring tables of its own; None when it is the bundle itself."""
    return None if channel is None or channel.resolve() == bundle_root() else channel


def own_file(channel: Path | None, *parts: str) -> Path | None:
    """A channel's own version of a curated file, when there is one inside the channel's folder."""
    root = own_root(channel)
    if root is None:
        return None
    path = root.joinpath(*parts)
    return path if path.is_file() and path.resolve().is_relative_to(root.resolve()) else None


def table_rows(table: str, channel: Path | None = None) -> list[Row]:
    """The rows of ``shared/<table>.csv``: the bundled ones, each replaced by the channel's row of the same key
    (``KEYS``), and the channel's further rows after them. A channel's row says so by its ``file``.

    Raises ValueError when a table is broken, FileNotFoundError when there is none of that name.
    """
    name = f"{table}.csv"
    bundled = read_table(bundle_root() / "shared" / name)
    path = own_file(channel, "shared", name)
    if path is None:
        return bundled
    return merge(bundled, _own_rows(path), KEYS.get(table, ("id",)))


def _own_rows(path: Path) -> list[Row]:
    """The rows of a channel's own table; none when it can't be read (``own_tables`` tells why)."""
    try:
        return [Row(row.cells, f"{OWN}{row.file}", row.line) for row in read_table(path)]
    except (ValueError, OSError):
        return []


def overridden(table: str, channel: Path | None) -> list[tuple[Row, Row]]:
    """The bundled rows that a channel's own table replaces, each with the row that stands in its place: for the
    safety tables these are told to the reader, with the reason in the channel's ``reason`` column."""
    path = own_file(channel, "shared", f"{table}.csv")
    own = {row_key(row, table): row for row in _own_rows(path)} if path is not None else {}
    bundled = read_table(bundle_root() / "shared" / f"{table}.csv") if own else ()
    return [(row, own[row_key(row, table)]) for row in bundled if row_key(row, table) in own]


def sources(channel: Path | None = None) -> dict[str, Mapping[str, object]]:
    """Every source by id: the bundled ones with a channel's own ``shared/sources/*.yaml`` laid over by id."""
    found = read_sources(bundle_root() / "shared" / "sources")
    root = own_root(channel)
    if root is not None and (root / "shared" / "sources").is_dir():
        from spoonproof.reading.own_tables import own_sources

        found |= own_sources(root)[0]  # own_tables tells what is wrong with them
    return found


def merge(bundled: Iterable[Row], own: Sequence[Row], key: Sequence[str] = ("id",)) -> list[Row]:
    """Rows of ``own`` over ``bundled`` by the cells of ``key``; the order of the bundled table holds."""
    left: dict[tuple[str, ...], list[Row]] = {}
    for row in own:
        left.setdefault(_key(row, key), []).append(row)
    replaced = frozenset(left)
    merged: list[Row] = []
    for row in bundled:
        name = _key(row, key)
        merged += left.pop(name, ()) if name in replaced else (row,)
    return [*merged, *(row for rows in left.values() for row in rows)]


def row_key(row: Row, table: str) -> tuple[str, ...]:
    """The cells that tell a row of ``table`` from the others."""
    return _key(row, KEYS.get(table, ("id",)))


def _key(row: Row, columns: Sequence[str]) -> tuple[str, ...]:
    return tuple(row.text(column) for column in columns)
