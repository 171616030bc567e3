"""Write the reference into a checkout: ``python -m spoonproof.reference [FOLDER]``."""

from __future__ import annotations

import sys
from pathlib import Path

from spoonproof.reference.pages import pages
from spoonproof.reference.picture import with_picture


def write(root: Path) -> None:
    """``guide/reference/*.md`` and the picture in ``DEVELOPERS.md`` under ``root``."""
    folder = root / "guide" / "reference"
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in pages().items():
        (folder / name).write_text(text, encoding="utf-8", newline="\n")
    notes = root / "DEVELOPERS.md"
    notes.write_text(with_picture(notes.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write(Path(sys.argv[1] if len(sys.argv) > 1 else "."))
