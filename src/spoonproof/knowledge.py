"""Every table and register the rooms need, loaded when first asked for.

The one place where tables meet files: rooms get rows and trees, never paths.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property
from pathlib import Path

from spoonproof.model.table import Row


class Knowledge:
    """The bundled tables, with a channel's own rows laid over them by id."""

    def __init__(self, channel_dir: Path | None = None) -> None:
        """``channel_dir``: the channel's folder, None where there is no channel."""
        self.channel_dir = channel_dir

    def rows(self, table: str) -> Sequence[Row]:
        """The rows of ``shared/<table>.csv``, the channel's own laid over by id."""
        from spoonproof.reading.bundle import table_rows

        return table_rows(table, self.channel_dir)

    @cached_property
    def sources(self) -> Mapping[str, Mapping[str, object]]:
        """Every source by id, as CSL-JSON."""
        from spoonproof.reading.bundle import sources

        return sources(self.channel_dir)
