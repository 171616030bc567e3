"""What the wheel gets beside the curated folders: tables, lexicon and register as read, so that they load at once."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class CompiledTables(BuildHookInterface):  # type: ignore[type-arg]
    """Compiles the tables into ``spoonproof/bundle/compiled/``. A checkout keeps its own in ``src/spoonproof/made``."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Write the compiled parts beside the build and have them packed. Needs what spoonproof itself needs."""
        if version == "editable":
            return
        root = Path(self.root)
        sys.path.insert(0, str(root / "src"))
        try:
            from spoonproof import __version__
            from spoonproof.compiled import write_parts

            written = write_parts(root / "build" / "compiled", __version__)
        finally:
            sys.path.remove(str(root / "src"))
        for path in written:
            build_data["force_include"][str(path)] = f"spoonproof/bundle/compiled/{path.name}"

    def dependencies(self) -> list[str]:
        """What reading the tables needs in the environment of the build."""
        return ["pyyaml>=6.0.1", "pyahocorasick>=2.1"]
