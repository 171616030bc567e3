"""Nesting 10,000 deep, in every way YAML has."""

from pathlib import Path


def make(folder: Path) -> None:
    (folder / "brackets.md").write_text("---\nfoods: " + "[" * 10_000 + "\n---\n")
    (folder / "curly.md").write_text("---\nfoods: " + "{a: " * 10_000 + "\n---\n")
    (folder / "dashes.md").write_text("---\n" + "- " * 10_000 + "\n---\n")
    (folder / "keys.md").write_text("---\n" + "".join(" " * n + "a:\n" for n in range(300)) + "---\n")
