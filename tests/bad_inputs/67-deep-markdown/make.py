"""Quotes, lists and brackets nested far deeper than anybody writes."""

from pathlib import Path

from tests.bad_inputs.plain import RECIPE


def make(folder: Path) -> None:
    (folder / "brackets.md").write_text(RECIPE + "[" * 5_000 + "\n")
    (folder / "lists.md").write_text(RECIPE + "".join(" " * (2 * n) + "- a\n" for n in range(500)))
    (folder / "quotes.md").write_text(RECIPE + ">" * 2_000 + " a\n")
