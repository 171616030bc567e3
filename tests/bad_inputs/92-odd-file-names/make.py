"""File names that no shell and no address likes."""

import os
from pathlib import Path

from tests.bad_inputs.plain import RECIPE


def make(folder: Path) -> None:
    (folder / "recipes").mkdir()
    for name in ("-a b#?%25.md", "quote\"'.md", "new\nline.md", "smile\U0001f600.md"):
        (folder / "recipes" / name).write_text(RECIPE)
    Path(os.fsdecode(os.fsencode(folder / "recipes") + b"/not\xff-text.md")).write_text(RECIPE)
