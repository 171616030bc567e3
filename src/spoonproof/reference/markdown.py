"""Small shapes of Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Sequence


def table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table; bars inside cells are written so that they stay inside."""
    lines = [head, ["---"] * len(head), *rows]
    return "\n".join("| " + " | ".join(cell.replace("|", "\\|") for cell in line) + " |" for line in lines)


def code(word: str) -> str:
    """A word as code."""
    return f"`{word}`"
