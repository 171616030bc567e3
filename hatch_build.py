"""What the wheel gets beside the curated folders: tables, lexicon and register as read, and expressions and modules as
compiled by this interpreter, so that they load at once."""

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
            from spoonproof import __version__, modules
            from spoonproof.compiled import write_parts
            from spoonproof.expressions import brought_in, lay

            folder = root / "build" / "compiled"
            written = [*write_parts(folder, __version__), lay(folder)]
            written.append(modules.lay(folder, root / "src" / "spoonproof", *brought_in()))
        finally:
            sys.path.remove(str(root / "src"))
        for path in written:
            build_data["force_include"][str(path)] = f"spoonproof/bundle/compiled/{path.name}"

    def dependencies(self) -> list[str]:
        """What reading the tables and checking the bundled recipes needs in the environment of the build."""
        return ["pyyaml>=6.0.1", "markdown-it-py>=4.0", "jinja2>=3.1.4", "pyahocorasick>=2.1", "syntok>=1.4.4"]
