"""The table of README.md names every row, and each case that it names is there."""

from __future__ import annotations

import re

from tests.bad_inputs.run_rows import HERE, rows
from tests.each import each

ROOT = HERE.parents[1]
LAST = 113
LINES = re.findall(r"^\| (\d+) \| [^|]+ \| ([^|]+) \|$", (HERE / "README.md").read_text(encoding="utf-8"), re.MULTILINE)


def test_every_row_has_its_line() -> None:
    assert [int(number) for number, _ in LINES][:LAST] == list(range(1, LAST + 1))
    named = {name for _, cell in LINES for name in re.findall(r"`(\d[\w-]+)`", cell)}
    assert named == {folder.name for folder in rows()}


@each("number, cell", LINES)
def test_what_a_line_names_is_there(number: str, cell: str) -> None:
    if cell.startswith("falls away: "):
        return
    names = re.findall(r"`([^`]+)`", cell)
    assert names
    for name in names:
        path, _, test = name.partition("::")
        if test:
            assert f"def {test}(" in (ROOT / path).read_text(encoding="utf-8"), name
        elif path.endswith(".py"):
            assert f"def test_{number}_" in (HERE / path).read_text(encoding="utf-8"), name
        else:
            assert path.startswith(number.zfill(2)) and (HERE / path / "expect").is_file(), name
