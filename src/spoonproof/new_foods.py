"""The calendar of new foods over a channel's recipes, worded for people."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from spoonproof.feeding.calendar import Calendar, Event
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.recipe import Recipe

AGES = "Days count from the first new food; a dish waits for the age it is for, whatever day stands here."


def plan_of(folder: ChannelFolder, recipes: Sequence[Recipe], by_hand: bool = False) -> Calendar:
    """The calendar of these recipes, worded for people; in their own order when ``by_hand``."""
    from spoonproof.feeding.calendar import calendar

    channel, known = folder.channel, folder.knowledge
    plan = calendar(
        [folder.dish(recipe).candidate for recipe in recipes],
        known.food_ids(channel.baby.knows),
        known.feeding,
        channel.policies,
        channel.baby.advice,
        by_hand,
    )
    ages = {recipe.slug: recipe.ages.low for recipe in recipes}
    return replace(plan, events=tuple(_worded(event, known, ages) for event in plan.events), notes=(AGES, *plan.notes))


def _worded(event: Event, known: Knowledge, ages: dict[str, int]) -> Event:
    """An event with foods by name instead of id, and from which age a dish is."""
    food = known.foods.get(event.what)
    what = food.name if food is not None else event.what
    if event.kind == "dish" and event.slug in ages:
        what += f" (from {ages[event.slug]} months)"
    head, colon, listed = event.why.partition(": ")
    names = [known.foods.get(name) for name in listed.split(", ")] if colon and event.kind == "dish" else []
    if names and all(name is not None for name in names):
        return replace(event, what=what, why=f"{head}: {', '.join(name.name for name in names if name)}")
    return replace(event, what=what)
