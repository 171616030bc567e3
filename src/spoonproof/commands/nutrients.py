"""``nutrients``: what is in it, per batch, portion and 100 g, against the age's reference intake."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import new_parser, open_recipe

if TYPE_CHECKING:
    from spoonproof.dish import Dish


def parser() -> ArgumentParser:
    """The arguments of ``nutrients``."""
    found = new_parser("nutrients", "What is in a recipe.", ("text", "json"))
    found.add_argument("recipe", type=Path, metavar="RECIPE")
    return found


def run(options: Namespace) -> int:
    """Print the figures; 1 when the recipe can't be read."""
    dish = open_recipe(options, options.recipe)
    if dish is None:
        return 1
    if options.format == "json":
        import json

        print(json.dumps(_json(dish), ensure_ascii=False, indent=1, allow_nan=False))
    else:
        from spoonproof.foods.show import as_text
        from spoonproof.report.terminal import printable, write

        text = as_text(dish.facts, dish.reference, dish.recipe.title.value, _width())
        write(printable(line) for line in text.split("\n"))
    return 0


def _json(dish: Dish) -> dict[str, object]:
    from spoonproof.foods.show import as_json

    return as_json(dish.facts, dish.reference, dish.knowledge.intakes.energy_from_foods(dish.recipe.youngest))


def _width() -> int:
    import shutil

    return min(110, shutil.get_terminal_size((96, 24)).columns) if sys.stdout.isatty() else 96
