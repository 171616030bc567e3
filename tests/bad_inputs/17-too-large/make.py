"""A file of 50 MB, a line of 5 MB, a named pipe, and a line that is merely too long."""

import os
from pathlib import Path

from tests.bad_inputs.plain import RECIPE


def make(folder: Path) -> None:
    with (folder / "big.md").open("wb") as file:
        file.truncate(50 << 20)
    (folder / "line.md").write_bytes(b"x" * (5 << 20))
    os.mkfifo(folder / "pipe.md")
    (folder / "wide.md").write_text(RECIPE + "x" * 20_000 + "\n")
