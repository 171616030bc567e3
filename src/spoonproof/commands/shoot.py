"""``shoot``: the filming package of a recipe."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from spoonproof.commands import new_parser, open_channel


def parser() -> ArgumentParser:
    """The arguments of ``shoot``."""
    found = new_parser("shoot", "Make the filming package of a recipe.")
    found.add_argument("recipe", nargs="+", type=Path, metavar="RECIPE")
    found.add_argument("--out", type=Path, metavar="DIR", help="where to (default: out/film in the channel)")
    return found


def run(options: Namespace) -> int:
    """Write the package and say where it is; 1 when a recipe can't be read."""
    from spoonproof.film.package import shoot
    from spoonproof.report.terminal import printable

    folder = open_channel(options)
    out = options.out or folder.root / "out" / "film"
    code = 0
    for file in folder.select(options.recipe, drafts=True):
        if file.recipe is None:
            print(f"{printable(file.shown)}: can't be read; spoonproof check {printable(file.shown)} says why")
            code = 1
            continue
        for path in shoot(folder.dish(file.recipe), out):
            print(path)
    return code
