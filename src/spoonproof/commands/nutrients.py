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
    found.add_argument("recipe", type=Path, metavar="RECIPE", help="the recipe's file")
    found.add_argument(
        "--with", dest="beside", type=Path, metavar="RECIPE", help="show a second recipe beside it (text only)"
    )
    found.add_argument("--swap", metavar="FOOD", help="what changes when this food takes the place of its like")
    return found


def run(options: Namespace) -> int:
    """Print the figures; 1 when a recipe can't be read or the food to swap can't be placed."""
    dish = open_recipe(options, options.recipe)
    other = open_recipe(options, options.beside) if dish is not None and options.beside else None
    if dish is None or (options.beside and other is None):
        return 1
    if options.swap:
        from spoonproof.foods.compare import swapped

        found = swapped(dish.recipe, options.swap, dish.knowledge.foods)
        if found is None:
            print(_no_swap(dish, options.swap), file=sys.stderr)
            return 1
        changed, gone, come = found
        print(f"{come.name} instead of {gone.name}", file=sys.stderr)
        dish, other = type(dish)(changed, dish.channel, dish.knowledge, dish.others), other or dish
        names = (f"with {come.name}", f"with {gone.name}" if not options.beside else "")
    else:
        names = (dish.recipe.title.value, "")
    if options.format == "json":
        import json

        print(json.dumps(_json(dish), ensure_ascii=False, indent=1, allow_nan=False))
        return 0
    from spoonproof.report.terminal import printable, write

    write(printable(line) for line in _text(dish, other, names).split("\n"))
    return 0


def _text(dish: Dish, other: Dish | None, names: tuple[str, str]) -> str:
    if other is not None:
        from spoonproof.foods.compare import side_by_side

        return side_by_side(dish.facts, other.facts, (names[0], names[1] or other.recipe.title.value))
    from spoonproof.foods.compare import trials
    from spoonproof.foods.show import as_text

    told = trials(dish.recipe)
    return as_text(dish.facts, dish.reference, dish.recipe.title.value, _width()) + (f"{told}\n" if told else "")


def _no_swap(dish: Dish, words: str) -> str:
    from spoonproof.report.terminal import printable

    near = dish.knowledge.foods.nearest(words)
    if dish.knowledge.foods.match(words) is None:
        hint = f" Did you mean {' or '.join(near)}?" if near else ""
        return f"“{printable(words)}” is not in the food table.{hint}"
    return f"No food of this recipe is enough like {printable(words)} for it to take its place."


def _json(dish: Dish) -> dict[str, object]:
    from spoonproof.foods.show import as_json

    return as_json(dish.facts, dish.reference, dish.knowledge.intakes.energy_from_foods(dish.recipe.youngest))


def _width() -> int:
    import shutil

    return min(110, shutil.get_terminal_size((96, 24)).columns) if sys.stdout.isatty() else 96
