"""A food's published values as the table writes them, read only when asked for.

A cell is an amount per 100 g edible, then what is known about it: ``93.0`` measured, ``93.0~1.4`` measured with
its standard error, ``2.1c`` calculated or imputed by the table's makers, ``0z`` assumed zero by them, ``t`` a
trace, ``<0.5`` below what they could measure. An empty cell is not determined: the key is absent.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from spoonproof.model.food import NutrientValue

# Two standard errors: about 95 in 100 of repeated surveys would find the mean in this range.
_ERRORS = 2.0


def read_value(cell: str) -> NutrientValue:
    """One cell as a value with its range. Raises ValueError when it is none of the forms above, or negative."""
    if cell == "t":
        return NutrientValue(0.0, 0.0, 0.0, "trace")
    if cell.startswith("<"):
        most = _amount(cell[1:])
        return NutrientValue(most / 2, 0.0, most, "trace")
    if cell.endswith("z"):
        amount = _amount(cell[:-1])
        return NutrientValue(amount, amount, amount, "assumed-zero")
    kind = "measured"
    if cell.endswith("c"):
        kind, cell = "calculated", cell[:-1]
    text, _, error = cell.partition("~")
    amount = _amount(text)
    if not error:
        return NutrientValue(amount, amount, amount, kind)
    spread = _ERRORS * _amount(error)
    return NutrientValue(amount, max(0.0, amount - spread), amount + spread, kind)


def _amount(text: str) -> float:
    amount = float(text)
    if not 0 <= amount < 100_000:
        raise ValueError(f"an amount per 100 g should be between 0 and 100,000, not {text!r}")
    return amount


class Values(Mapping[str, NutrientValue]):
    """The values of one food by nutrient key; a key that is absent was not determined."""

    __slots__ = ("_cells", "_count", "_read", "_sources")

    def __init__(self, cells: Mapping[str, str], sources: Mapping[str, str] | None = None) -> None:
        """``sources``: source ids of the nutrients that do not come from the food's own record."""
        self._cells = cells
        self._sources = sources or {}
        self._read: dict[str, NutrientValue] = {}
        self._count = -1

    def __getitem__(self, nutrient: str) -> NutrientValue:
        value = self._read.get(nutrient)
        if value is None:
            cell = self._cells[nutrient]
            if not cell:
                raise KeyError(nutrient)
            value = read_value(cell)
            if nutrient in self._sources:
                value = value._replace(source=self._sources[nutrient])
            self._read[nutrient] = value
        return value

    def get(self, nutrient: str, default: NutrientValue | None = None) -> NutrientValue | None:  # type: ignore[override]  # None is the one default
        """The value, ``default`` when it was not determined."""
        value = self._read.get(nutrient)
        if value is not None:
            return value
        return self[nutrient] if self._cells.get(nutrient) else default

    def all(self) -> Mapping[str, NutrientValue]:
        """Every value at once, as a plain mapping: for sums over all nutrients."""
        if len(self._read) < len(self):
            for nutrient in self:
                self[nutrient]
        return self._read

    def __iter__(self) -> Iterator[str]:
        return (key for key, cell in self._cells.items() if cell)

    def __len__(self) -> int:
        if self._count < 0:
            self._count = sum(1 for cell in self._cells.values() if cell)
        return self._count

    def __contains__(self, nutrient: object) -> bool:
        return bool(self._cells.get(nutrient, "")) if isinstance(nutrient, str) else False

    def __repr__(self) -> str:
        return f"Values({dict(self)!r})"
