"""The new-foods calendar of a site: in which order the channel's dishes bring each food for the first time."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.dish import Dish
from spoonproof.feeding.calendar import Calendar as Plan
from spoonproof.feeding.calendar import calendar
from spoonproof.model.channel import Channel
from spoonproof.site.view import Calendar, CalendarDay, Link

OLDEST = 12
"""Dishes for babies that start later than this many months are not first foods."""


def new_foods(channel: Channel, dishes: Sequence[Dish]) -> Calendar | None:
    """The calendar over the dishes a baby under a year may have; None where there is nothing to order."""
    chosen = [dish for dish in dishes if dish.recipe.ages.low <= OLDEST]
    if len(chosen) < 2:
        return None
    known = chosen[0].knowledge
    plan = calendar(
        [dish.candidate for dish in chosen],
        known.food_ids(channel.baby.knows),
        known.feeding,
        channel.policies,
        channel.baby.advice,
    )
    names = {food: known.foods.get(food) for dish in chosen for food in dish.candidate.foods}
    words = {food: record.name for food, record in names.items() if record is not None}
    titles = {dish.recipe.slug: dish.recipe.title.value for dish in chosen}
    known_words = [
        record.name for food in known.food_ids(channel.baby.knows) if (record := known.foods.get(food)) is not None
    ]
    whose = "the guidance of the channel’s own market" if plan.policy == "market" else f"the policy “{plan.policy}”"
    policy = f"The order follows {whose}."
    if known_words:
        policy += f" It is for a baby who knows {' and '.join(known_words)}; yours may know other foods."
    sources = dict.fromkeys(event.source.id for event in plan.events if event.source is not None)
    return Calendar(policy, _days(plan, words, titles), plan.notes, tuple(sources))


def _days(plan: Plan, words: dict[str, str], titles: dict[str, str]) -> tuple[CalendarDay, ...]:
    out = []
    for event in plan.events:
        what = words.get(event.what, event.what)
        new = (what,) if event.kind in ("food", "allergen") else ()
        served = Link(titles[event.slug], f"recipes/{event.slug}.html") if event.slug in titles else None
        note = f"{what}. {event.why}" if event.kind in ("advice", "keep") else event.why
        for food in sorted(words, key=lambda food: (-len(food), food)):
            note = note.replace(food, words[food]) if "-" in food else note
        out.append(CalendarDay(f"Day {event.day}", new, served, note.strip(". ") + "." if note.strip(". ") else ""))
    return tuple(out)
