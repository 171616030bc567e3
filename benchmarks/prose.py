"""Checking beside general linters of prose and Markdown: words a second, whole process, in one run.

    python benchmarks/prose.py 300 [--rounds 3] [--tools DIR]

Every tool gets the same stories as plain Markdown pages (those installed, on the path or in DIR); ours gets the recipes
with the stories in them, reads the kitchen too, and is measured with nothing kept and with what it read before. Words
are those of the stories for all of them; the words of our recipes' heads are not counted. ``markdownlint-cli2``,
``markdownlint`` and ``pymarkdown`` look at structure alone; ``codespell`` at a list of misspellings.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path

from bowls import make
from thousand import forget
from timing import OURS, Job, interleaved, table, tools

COMMANDS = {
    "proselint": ["check", "content"],
    "write-good": [],
    "alex": ["content"],
    "vale": ["--config", "vale.ini", "content"],
    "textlint": ["--rule", "terminology", "content"],
    "codespell": ["content"],
    "markdownlint-cli2": ["content/*.md"],
    "pymarkdown": ["scan", "content"],
}


def main() -> None:
    """Make, measure, print."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("count", nargs="?", type=int, default=300)
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--tools", type=Path, action="append", default=[], metavar="DIR", help="where the linters are")
    parser.add_argument("--without", action="append", default=[], metavar="NAME", help="a linter to leave out")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="prose-") as name:
        folder = make(Path(name) / "channel", options.count)
        (folder / "vale.ini").write_text("MinAlertLevel = suggestion\n[*.md]\nBasedOnStyles = Vale\n", "utf-8")
        pages = sorted((folder / "content").iterdir())
        words = sum(len(page.read_text("utf-8").partition("---\n")[2].partition("---\n")[2].split()) for page in pages)
        found: dict[str, str] = {}
        wanted = [tool for tool in COMMANDS if tool not in options.without]
        for place in (*options.tools, None):
            missing = [tool for tool in wanted if tool not in found]
            found |= tools(place, missing) if place is None else quietly(place, missing)
        jobs = {
            "spoonproof check, all new": Job([*OURS, "check"], folder, lambda: forget(folder)),
            "spoonproof check, nothing new": Job([*OURS, "check"], folder),
        }
        for tool, path in found.items():
            more = [str(page) for page in pages] if tool == "write-good" else []
            jobs[tool] = Job([path, *COMMANDS[tool], *more], folder, answers=tuple(range(256)))
        print(f"{options.count} stories, {words:,} words, medians of {options.rounds} interleaved runs")
        table(interleaved(jobs, options.rounds), "spoonproof check, all new", words)


def quietly(folder: Path, names: list[str]) -> dict[str, str]:
    """Those of ``names`` that are in ``folder``."""
    return {name: str((folder / name).absolute()) for name in names if (folder / name).exists()}


if __name__ == "__main__":
    main()
