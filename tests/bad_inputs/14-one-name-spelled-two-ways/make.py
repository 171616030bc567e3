"""Two file names that look the same: one composed, one decomposed."""

from pathlib import Path

from tests.bad_inputs.plain import RECIPE


def make(folder: Path) -> None:
    (folder / "recipes").mkdir()
    for name in ("pur\u00e9e", "pure\u0301e"):
        (folder / "recipes" / f"{name}.md").write_text(RECIPE, encoding="utf-8")
