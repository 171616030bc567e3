"""The new-foods calendar of a site: in which order the channel's dishes bring each food for the first time."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.dish import Dish
from spoonproof.feeding.calendar import Calendar as Plan
from spoonproof.feeding.calendar import Candidate, calendar
from spoonproof.model.channel import Channel
from spoonproof.site.view import Calendar, CalendarDay, Link

IRON_SHARE = 0.1
"""From this share of the reference intake in a portion on, a dish counts as one that brings iron (common practice)."""

OLDEST = 12
"""Dishes for babies that start later than this many months are not first foods."""

_NOT_NEW = frozenset({"water", "salt"})


def candidate(dish: Dish) -> Candidate:
    """A dish as the calendar sees it: the foods of the baby's bowl."""
    foods: dict[str, None] = {}
    allergens: dict[str, tuple[str, ...]] = {}
    for part in dish.facts.all_ingredients:
        if part.food is None or part.bowl == "family" or part.left_out or part.food.id in _NOT_NEW:
            continue
        food = part.food.parent or part.food.id
        foods[food] = None
        brought = sorted({*allergens.get(food, ()), *part.food.allergens})
        if brought:
            allergens[food] = tuple(brought)
    portion = dish.facts.per_portion
    iron = portion.get("iron_mg") if portion else None
    share = dish.reference.share("iron_mg", iron) if iron is not None else None
    return Candidate(
        dish.recipe.slug,
        dish.recipe.title.value,
        tuple(foods),
        allergens,
        share is not None and share.share >= IRON_SHARE,
    )


def new_foods(channel: Channel, dishes: Sequence[Dish]) -> Calendar | None:
    """The calendar over the dishes a baby under a year may have; None where there is nothing to order."""
    chosen = [dish for dish in dishes if dish.recipe.ages.low <= OLDEST]
    if len(chosen) < 2:
        return None
    known = chosen[0].knowledge
    plan = calendar(
        [candidate(dish) for dish in chosen], channel.baby.knows, known.feeding, channel.policies, channel.baby.advice
    )
    names = {food: known.foods.get(food) for dish in chosen for food in candidate(dish).foods}
    words = {food: record.name for food, record in names.items() if record is not None}
    titles = {dish.recipe.slug: dish.recipe.title.value for dish in chosen}
    known_words = [record.name for food in channel.baby.knows if (record := known.foods.get(food)) is not None]
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
