"""The calendar of new foods over a channel's recipes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from spoonproof.model.record import replace

if TYPE_CHECKING:
    from spoonproof.feeding.calendar import Calendar, Event
    from spoonproof.feeding.calendar_order import Candidate
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.channel import Channel
    from spoonproof.model.recipe import Recipe


def plan_of(
    folder: ChannelFolder, recipes: Sequence[Recipe], by_hand: bool = False, age_months: int | None = None
) -> Calendar:
    """The calendar of these recipes as ``order_of`` plans it, each dish with the age it is for."""
    candidates = [folder.dish(recipe).candidate for recipe in recipes]
    plan = order_of(folder.channel, folder.knowledge, candidates, by_hand, age_months)
    ages = {recipe.slug: recipe.youngest for recipe in recipes}
    return replace(plan, events=tuple(_with_age(event, ages) for event in plan.events))


def order_of(
    channel: Channel,
    known: Knowledge,
    candidates: Sequence[Candidate],
    by_hand: bool = False,
    age_months: int | None = None,
) -> Calendar:
    """The calendar of a channel's dishes, in their own order when ``by_hand``, from ``age_months`` on (None: from the
    age of the earliest of them)."""
    from spoonproof.feeding.calendar import calendar

    return calendar(
        candidates,
        known.food_ids(channel.baby.knows),
        known.feeding,
        channel.policies,
        channel.baby.advice,
        by_hand,
        min((one.from_months for one in candidates), default=0) if age_months is None else age_months,
    )


def _with_age(event: Event, ages: Mapping[str, int]) -> Event:
    """An event of a dish with the age it is for."""
    if event.kind != "dish" or event.slug not in ages:
        return event
    return replace(event, what=f"{event.what} (from {ages[event.slug]} months)")
