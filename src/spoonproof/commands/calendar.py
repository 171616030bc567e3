"""``calendar``: when each new food comes, over chosen recipes."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import missing_extra, new_parser, open_channel

if TYPE_CHECKING:
    from spoonproof.feeding.calendar import Calendar
    from spoonproof.folder import ChannelFolder
    from spoonproof.model.recipe import Recipe

KEPT = 26
"""How many times a calendar file repeats what is kept in the diet: half a year of weeks."""


def parser() -> ArgumentParser:
    """The arguments of ``calendar``."""
    found = new_parser("calendar", "When each new food comes, over chosen recipes.", ("text", "ics", "json"))
    found.add_argument("paths", nargs="*", type=Path, metavar="RECIPE", help="recipes (default: the channel's)")
    found.add_argument("--from", dest="start", metavar="DATE", help="the first day (default: today)")
    found.add_argument(
        "--age", type=int, metavar="MONTHS", help="the baby's age on that day (default: that of the earliest recipe)"
    )
    found.add_argument("--week", action="store_true", help="a week of these recipes: notes on iron, energy and meals")
    found.add_argument("--meals", type=int, metavar="N", help="meals a day of that week (default: by age)")
    return found


def run(options: Namespace) -> int:
    """Print the calendar; UsageError when there is nothing to order."""
    from spoonproof.cli import UsageError
    from spoonproof.feeding.calendar import as_text
    from spoonproof.report.terminal import printable, write

    folder = open_channel(options)
    if options.week:
        return _week(folder, options)
    if options.meals is not None:
        raise UsageError("--meals goes with --week")
    start = _start(options.start)
    plan = _plan(folder, options.paths, options.age)
    if options.format == "ics":
        write([_icalendar(plan, start, folder.channel.title).rstrip("\r\n")])
    elif options.format == "json":
        write([_json(plan, start)])
    else:
        write(printable(line) for line in as_text(plan).rstrip("\n").split("\n"))
    return 0


def _week(folder: ChannelFolder, options: Namespace) -> int:
    """Print the notes on a week of the recipes."""
    from spoonproof.cli import UsageError
    from spoonproof.report.terminal import printable, write
    from spoonproof.week import as_json, as_text, meals_at, week_of

    if options.format == "ics":
        raise UsageError("a week has no dates: --week writes text or json")
    if options.meals is not None and not 1 <= options.meals <= 8:
        raise UsageError(f"--meals is a number from 1 to 8, not {options.meals}")
    chosen = _chosen(folder, options.paths, options.age)
    months = max(recipe.youngest for recipe in chosen) if options.age is None else options.age
    week = week_of(folder, chosen if options.paths else meals_at(chosen, months), months, options.meals)
    if options.format == "json":
        import json

        write([json.dumps(as_json(week), ensure_ascii=False, indent=1)])
    else:
        write(printable(line) for line in as_text(week).rstrip("\n").split("\n"))
    return 0


def _start(words: str | None) -> date:
    from spoonproof.cli import UsageError
    from spoonproof.clock import today

    if words is None:
        return today()
    try:
        start = date.fromisoformat(words)
    except ValueError:
        raise UsageError(f"--from should be a date such as 2026-11-02, not {words!r}") from None
    if not 1900 <= start.year <= 2200:
        raise UsageError(f"--from should be a date from 1900 to 2200, not {words}")
    return start


def _plan(folder: ChannelFolder, paths: list[Path], age: int | None) -> Calendar:
    from spoonproof.new_foods import plan_of

    return plan_of(folder, _chosen(folder, paths, age), age_months=age)


def _chosen(folder: ChannelFolder, paths: list[Path], age: int | None) -> list[Recipe]:
    from spoonproof.cli import UsageError

    recipes = [file.recipe for file in folder.select(paths) if file.recipe is not None]
    if age is not None and not 0 <= age <= 60:
        raise UsageError(f"--age is a number of months from 0 to 60, not {age}")
    if not recipes:
        raise UsageError("there is no recipe to order")
    return recipes


def _json(plan: Calendar, start: date) -> str:
    import json
    from datetime import timedelta

    events = [
        {
            "day": event.day,
            "date": (start + timedelta(days=event.day - 1)).isoformat(),
            "kind": event.kind,
            "what": event.what,
            "why": event.why,
            "recipe": event.slug or None,
            "every_days": event.every or None,
            "source": event.source.id if event.source else None,
        }
        for event in plan.events
    ]
    whole = {"policy": plan.policy, "days": plan.days, "proved": plan.proved, "events": events, "notes": plan.notes}
    return json.dumps(whole, ensure_ascii=False, indent=1)


def _icalendar(plan: Calendar, start: date, title: str) -> str:
    """The plan as iCalendar (RFC 5545), one whole-day event a line."""
    from datetime import UTC, datetime, timedelta

    try:
        from icalendar import Calendar as Ics
        from icalendar import Event
    except ImportError as error:
        raise missing_extra(error, "iCalendar", "calendar") from None
    whole = Ics()
    whole.add("prodid", "-//Spoonproof//new foods//EN")
    whole.add("version", "2.0")
    whole.add("x-wr-calname", f"{title}: new foods")
    for number, event in enumerate(plan.events, 1):
        day = start + timedelta(days=event.day - 1)
        entry = Event()
        entry.add("uid", f"{start.isoformat()}-{number}@new-foods.spoonproof")
        entry.add("dtstamp", datetime(start.year, start.month, start.day, tzinfo=UTC))
        entry.add("dtstart", day)
        entry.add("dtend", day + timedelta(days=1))
        if event.every:
            entry.add("rrule", {"freq": "daily", "interval": event.every, "count": KEPT})
        entry.add("summary", event.what)
        entry.add("description", "\n".join((event.why, *plan.notes)))
        whole.add_component(entry)
    return str(whole.to_ical().decode("utf-8"))
