"""Rows of the tables that people curate: text cells, with the file and line they stand on."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.model.record import dataclass


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table; cells are text, stripped. Lists inside a cell are split at ``;``."""

    cells: Mapping[str, str]
    file: str = ""
    line: int = 0

    def text(self, column: str) -> str:
        """The cell, "" when the column is absent or empty."""
        return self.cells.get(column, "")

    def optional(self, column: str) -> str | None:
        """The cell, None when it is empty."""
        return self.cells.get(column) or None

    def number(self, column: str) -> float | None:
        """The cell as a number, None when it is empty: missing is never zero.

        Raises ValueError with file and line when the cell is not a number.
        """
        cell = self.cells.get(column, "")
        if not cell:
            return None
        try:
            return float(cell)
        except ValueError:
            raise ValueError(f"{self.file}:{self.line}: {column} should be a number, not {cell!r}") from None

    def items(self, column: str) -> tuple[str, ...]:
        """The cell's parts between semicolons, stripped, empty ones left out."""
        return tuple(part for raw in self.text(column).split(";") if (part := raw.strip()))
