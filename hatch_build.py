"""What the wheel gets beside the curated folders: the food table as plain data, so that it loads at once."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class CompiledTables(BuildHookInterface):  # type: ignore[type-arg]
    """Compiles the tables into ``spoonproof/bundle/compiled/``. An editable install reads the CSV files."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Write the compiled table beside the build and have it packed."""
        if version == "editable":
            return
        root = Path(self.root)
        sys.path.insert(0, str(root / "src"))
        try:
            from spoonproof.foods.compiled import TABLES, compile_foods
            from spoonproof.reading.tables import read_table

            data = compile_foods(*(read_table(root / "shared" / f"{table}.csv") for table in TABLES))
        finally:
            sys.path.remove(str(root / "src"))
        made = root / "build" / "compiled" / "foods.json"
        made.parent.mkdir(parents=True, exist_ok=True)
        made.write_text(json.dumps(data, ensure_ascii=False, separators=(",", ":")), encoding="utf-8")
        build_data["force_include"][str(made)] = "spoonproof/bundle/compiled/foods.json"
