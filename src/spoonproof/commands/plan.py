"""``plan``: the cook timeline of a recipe."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from spoonproof.commands import new_parser, open_recipe


def parser() -> ArgumentParser:
    """The arguments of ``plan``."""
    found = new_parser("plan", "What goes in when.", ("text", "svg"))
    found.add_argument("recipe", nargs="+", type=Path, metavar="RECIPE")
    return found


def run(options: Namespace) -> int:
    """Print the timeline of each recipe; 1 when one can't be read."""
    from spoonproof.cooking.drawing import plan_svg, plan_text
    from spoonproof.report.terminal import printable, write

    code = 0
    for path in options.recipe:
        dish = open_recipe(options, path)
        if dish is None:
            code = 1
            continue
        if options.format == "svg":
            write([plan_svg(dish.plan)])
        else:
            write(["", printable(dish.recipe.title.value), ""])
            write(printable(line) for line in plan_text(dish.plan).split("\n"))
    return code
