"""``plan``: the cook timeline of a recipe; methods side by side; a filming day over several recipes."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import new_parser, open_channel, open_recipe

if TYPE_CHECKING:
    from spoonproof.cooking.day import DayPlan
    from spoonproof.cooking.timeline import Plan
    from spoonproof.dish import Dish


def parser() -> ArgumentParser:
    """The arguments of ``plan``."""
    found = new_parser("plan", "What goes in when; methods side by side; a filming day.", ("text", "svg", "json"))
    found.add_argument("recipe", nargs="+", type=Path, metavar="RECIPE", help="one or several")
    found.add_argument("--day", action="store_true", help="film all the recipes on one day of the channel's kitchen")
    found.add_argument("--methods", action="store_true", help="steam, boil, microwave ... side by side")
    return found


def run(options: Namespace) -> int:
    """Print what was asked for; 1 when a recipe can't be read or does not fit the day."""
    from spoonproof.cli import UsageError

    if options.day and options.methods:
        raise UsageError("--day and --methods are two questions: ask one at a time")
    if options.methods and options.format != "text":
        raise UsageError("--methods prints text")
    dishes = [open_recipe(options, path) for path in dict.fromkeys(options.recipe)]
    readable = [dish for dish in dishes if dish is not None]
    code = 0 if len(readable) == len(dishes) else 1
    if not readable:
        return 1
    if options.day:
        return max(code, _day(options, readable))
    for dish in readable:
        _print(_methods(dish) if options.methods else _timeline(dish, options.format))
    return code


def _print(lines: Iterator[str]) -> None:
    from spoonproof.report.terminal import printable, write

    write(printable(line) for text in lines for line in text.rstrip("\n").split("\n"))


def _timeline(dish: Dish, form: str) -> Iterator[str]:
    from spoonproof.cooking.drawing import plan_svg, plan_text
    from spoonproof.cooking.methods_text import order_text
    from spoonproof.cooking.order import pot_orders

    if form == "svg":
        yield plan_svg(dish.plan)
        return
    if form == "json":
        yield _json(dish.plan)
        return
    yield plan_text(dish.plan)
    known = dish.knowledge
    for order in pot_orders(dish.recipe, known.foods, known.verbs, known.cook_times):
        yield order_text(order)
    yield ""


def _json(plan: Plan) -> str:
    import json

    times = plan.iso
    whole = {
        "recipe": plan.slug,
        "prep": times["prepTime"],
        "cook": times["cookTime"],
        "total": times["totalTime"],
        "tasks": [
            {"does": task.label, "step": task.step, "start": task.start, "end": task.end, "after": list(task.after)}
            for task in plan.tasks
        ],
    }
    return json.dumps(whole, ensure_ascii=False, indent=1)


def _methods(dish: Dish) -> Iterator[str]:
    from spoonproof.cooking.methods_text import methods_of, methods_text

    known = dish.knowledge
    yield dish.recipe.title.value
    yield methods_text(methods_of(dish.recipe, known.foods, known.verbs, known.cook_times, known.vitamins_kept))


def _day(options: Namespace, dishes: list[Dish]) -> int:
    """The day of the channel's kitchen; 1 when something does not fit it."""
    from spoonproof.cli import UsageError
    from spoonproof.cooking.day import schedule_day
    from spoonproof.cooking.day_drawing import day_svg, day_text
    from spoonproof.cooking.day_work import day_problem

    twice = [slug for slug, times in Counter(dish.recipe.slug for dish in dishes).items() if times > 1]
    if twice:
        raise UsageError(f"two of these recipes are called {twice[0]}: a day films each once")
    channel = open_channel(options).channel
    problem = day_problem([dish.plan for dish in dishes], channel.kitchen, channel.day)
    try:
        found = schedule_day(problem, channel.day.start)
    except ValueError as error:
        raise UsageError(f"the day can't be planned: {error}") from None
    if options.format == "json":
        _print(iter([_day_json(found)]))
    else:
        _print(iter([day_svg(found, problem) if options.format == "svg" else day_text(found, problem)]))
    return 1 if found.dropped else 0


def _day_json(found: DayPlan) -> str:
    import json

    slots = [
        {
            "does": slot.task.label,
            "recipe": slot.task.recipe,
            "start": found.start + slot.start,
            "end": found.start + slot.end,
        }
        for slot in found.slots
    ]
    return json.dumps({"how": found.how, "dropped": list(found.dropped), "tasks": slots}, ensure_ascii=False, indent=1)
