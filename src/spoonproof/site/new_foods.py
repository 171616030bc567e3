"""The new-foods calendar of a site: in which order the channel's dishes bring each food for the first time."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from spoonproof.feeding.calendar import Event
from spoonproof.feeding.calendar_order import Candidate
from spoonproof.knowledge import Knowledge
from spoonproof.model.channel import Channel
from spoonproof.new_foods import order_of
from spoonproof.pile import Taken
from spoonproof.site.view import Link, href_of
from spoonproof.site.view_site import Calendar, CalendarDay

OLDEST = 12
"""Dishes for babies that start later than this many months are not first foods."""

LEAST = 2
"""Dishes that there is an order of."""


def new_foods(channel: Channel, known: Knowledge, candidates: Iterable[Candidate]) -> Calendar | None:
    """The calendar over the dishes a baby under a year may have; None where there is nothing to order."""
    chosen = [one for one in candidates if one.from_months <= OLDEST]
    if len(chosen) < LEAST:
        return None
    plan = order_of(channel, known, chosen)
    known_words = [
        record.name for food in known.food_ids(channel.baby.knows) if (record := known.foods.get(food)) is not None
    ]
    whose = "the guidance of the channel’s own market" if plan.policy == "market" else f"the policy “{plan.policy}”"
    policy = f"The order follows {whose}."
    if known_words:
        policy += f" It is for a baby who knows {' and '.join(known_words)}; yours may know other foods."
    sources = dict.fromkeys(event.source.id for event in plan.events if event.source is not None)
    leading = {event.slug for event in plan.events if event.kind != "dish"}
    titles = {one.slug: one.title for one in chosen if one.slug in leading}
    days = Taken(range(len(plan.events)), lambda at: _day(plan.events[at], titles))
    return Calendar(policy, days, plan.notes, tuple(sources))


def _day(event: Event, titles: Mapping[str, str]) -> CalendarDay:
    """A day of the plan. ``titles``: of the dishes that foods of their own lead to, by slug."""
    new: tuple[str, ...] = (event.what,) if event.kind in ("food", "allergen") else ()
    title = event.what if event.kind == "dish" else titles.get(event.slug)
    served = Link(title, href_of(event.slug)) if title is not None else None
    note = f"{event.what}: {event.why}" if event.kind in ("advice", "keep") else event.why
    if event.with_it:  # they stand among what is new, not in the note
        new, note = event.with_it, ""
    note = note.strip(". ") + "." if note.strip(". ") else ""
    return CalendarDay(f"Day {event.day}", new, served, note, event.kind == "allergen")
