"""New foods and the filming day: choose recipes, see the plan, move things by hand, see what breaks."""

from __future__ import annotations

from markupsafe import Markup
from starlette.responses import Response

from spoonproof.desk import drawings, live
from spoonproof.desk.ask import Ask
from spoonproof.desk.desk import Desk
from spoonproof.desk.shelf import DeskFolder, NoSuchRecipe
from spoonproof.feeding.calendar import Calendar
from spoonproof.model.recipe import Recipe

MOST = 24
"""Recipes planned at once."""
EFFORT = 1.0
"""How hard the solver tries for a page (about seconds)."""


def new_foods(desk: Desk, ask: Ask) -> Response:
    """The calendar of the chosen recipes: in the best order, or in hers, with what hers costs."""
    from spoonproof.new_foods import plan_of

    folder = desk.shelf.folder()
    chosen = _moved(_chosen(desk, folder, ask), ask.asked("move"))
    recipes = [recipe for _, recipe in chosen]
    by_hand = bool(ask.asked("by_hand") or ask.asked("move"))
    best = plan_of(folder, recipes) if recipes else None
    plan = plan_of(folder, recipes, True) if by_hand and recipes else best
    sources = folder.knowledge.sources
    cites = {event: live.cited([event.source], sources) for event in plan.events if event.source} if plan else {}
    order = [event.slug for event in plan.events if event.kind == "dish"] if plan else []
    chosen.sort(key=lambda each: order.index(each[1].slug) if each[1].slug in order else len(order))
    return desk.page(
        "new_foods.html",
        "/new-foods",
        choices=_choices(desk, folder),
        chosen=chosen,
        plan=plan,
        best=best,
        by_hand=by_hand,
        cites=cites,
        knows=folder.channel.baby.knows,
        later=_later(best, plan) if best and plan and by_hand else [],
    )


def _later(best: Calendar, plan: Calendar) -> list[str]:
    """What comes later in her order than in the best."""
    first = {(event.kind, event.what): event.day for event in reversed(best.events) if event.kind != "keep"}
    mine = {(event.kind, event.what): event.day for event in reversed(plan.events) if event.kind != "keep"}
    return [
        f"{what}: day {mine[kind, what]} instead of day {day}"
        for (kind, what), day in sorted(first.items(), key=lambda each: (each[1], each[0]))
        if mine.get((kind, what), day) > day
    ]


def filming_day(desk: Desk, ask: Ask) -> Response:
    """The day of the chosen recipes; with starts moved by hand, what breaks."""
    from spoonproof.cooking.day_drawing import clock

    folder = desk.shelf.folder()
    chosen = _chosen(desk, folder, ask)[:8]
    values: dict[str, object] = {"plan": None, "wrong": "", "breaks": None, "slots": (), "drawing": "", "moved": {}}
    if chosen:
        try:
            values |= _day_of(folder, [recipe for _, recipe in chosen], ask)
        except ValueError as error:
            values["wrong"] = str(error)
    titles = {recipe.slug: recipe.title.value for _, recipe in chosen}
    return desk.page(
        "filming_day.html",
        "/filming-day",
        200,
        choices=_choices(desk, folder),
        chosen=chosen,
        titles=titles,
        clock=clock,
        day=folder.channel.day,
        **values,
    )


def _day_of(folder: DeskFolder, recipes: list[Recipe], ask: Ask) -> dict[str, object]:
    """The day of some recipes for its page. Raises ValueError where it can't be planned."""
    from spoonproof.cooking.day import schedule_day
    from spoonproof.cooking.day_drawing import clock, day_svg
    from spoonproof.cooking.day_moved import broken
    from spoonproof.cooking.day_work import day_problem

    channel = folder.channel
    problem = day_problem([folder.dish(recipe).plan for recipe in recipes], channel.kitchen, channel.day)
    plan = schedule_day(problem, channel.day.start, EFFORT)
    starts = {slot.task.id: slot.start for slot in plan.slots}
    asked = {name: minute for name in starts if (minute := _minute(ask.asked(f"at:{name}"))) is not None}
    starts |= {name: minute - channel.day.start for name, minute in asked.items()}
    return {
        "plan": plan,
        "slots": plan.slots,
        "moved": {name: clock(channel.day.start + start) for name, start in starts.items()},
        "breaks": broken(problem, starts) if asked else None,
        "drawing": Markup(drawings.without_styles(day_svg(plan, problem))) if plan.slots else "",
    }


def _minute(given: str) -> int | None:
    """ "10:45" as minutes from midnight; None when it is no time of day."""
    hours, colon, minutes = given.partition(":")
    if not colon or not hours.isdecimal() or not minutes[:2].isdecimal() or len(given) > 8:
        return None
    return int(hours) * 60 + int(minutes[:2])


def _choices(desk: Desk, folder: DeskFolder) -> list[tuple[str, str]]:
    """Every recipe by its key, with its title as it stands in the head, which alone is looked at; else its key."""
    return [(key := desk.shelf.key(path), folder.title_of(path) or key) for path in folder.recipe_paths]


def _chosen(desk: Desk, folder: DeskFolder, ask: Ask) -> list[tuple[str, Recipe]]:
    chosen: dict[str, Recipe] = {}
    for key in ask.query.get("recipe", [])[:MOST]:
        try:
            recipe = folder.read(desk.shelf.path(key)).recipe
        except NoSuchRecipe:
            continue
        if recipe is not None:
            chosen.setdefault(key, recipe)
    return list(chosen.items())


def _moved(chosen: list[tuple[str, Recipe]], move: str) -> list[tuple[str, Recipe]]:
    """``up:KEY`` or ``down:KEY``: one place earlier or later."""
    way, _, key = move.partition(":")
    at = next((number for number, each in enumerate(chosen) if each[0] == key), None)
    if at is None or way not in ("up", "down"):
        return chosen
    to = at - 1 if way == "up" else at + 1
    if 0 <= to < len(chosen):
        chosen[at], chosen[to] = chosen[to], chosen[at]
    return chosen
