"""What goes in when, so that everything that shares a pot is tender at the same time.

Harder foods first, what wilts last: each food goes in so long before the end as it needs, and the longest opens the
pot. Times aim at the middle of each range and are never below its soft end; the end is the squash test. What was soft
before it came into the pot ("boil the potatoes; poach the fish; bake both") is not asked to cook there again.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from spoonproof.cooking.pots import Kitchen
from spoonproof.cooking.softness import CookTimes, Need, thickness
from spoonproof.cooking.story import Story
from spoonproof.cooking.treatment import cut_when_heated, method_of, softens_as
from spoonproof.model.kitchen import Foods, Verbs
from spoonproof.model.recipe import Minutes, Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.treatment import Heat

_FINE_MM = 3
"""Cut as thin as this (grated, shredded, minced) a food sets no time for a pot: the tables know none so thin."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One food of a pot: goes in ``at`` minutes after the pot is hot, and cooks ``minutes`` to the common end.

    ``need`` is the range the table gives (None: not known, then it is not placed); ``written`` the minutes the
    recipe gives it, None when it gives none; ``line`` the index of the food line.
    """

    line: int
    name: str
    at: float
    minutes: float
    need: Need
    written: Minutes | None = None


@dataclass(frozen=True, slots=True)
class PotOrder:
    """One shared pot: its method, its foods in the order they go in, and the foods the table does not know."""

    method: str
    entries: tuple[Entry, ...]
    unknown: tuple[int, ...] = ()

    @property
    def minutes(self) -> float:
        """From the first food in to the common end."""
        return max((entry.minutes for entry in self.entries), default=0.0)


def tender_together(needs: Mapping[int, Minutes]) -> Mapping[int, tuple[float, float]]:
    """For each key: (when it goes in, how long it cooks), so that all end together, in minutes.

    A food cooks for the middle of its range, between the ends as many times the low one as the high one is of it: a
    range that is wide because its sources differ ("2 to 36") is no reason to cook for long. Starts are whole minutes,
    counted from the first food in.
    """
    aims = {key: float(round(math.sqrt(need.low * need.high))) for key, need in needs.items()}
    aims = {key: max(aim, needs[key].low) for key, aim in aims.items()}
    longest = max(aims.values(), default=0.0)
    return {key: (longest - aim, aim) for key, aim in aims.items()}


def pot_orders(recipe: Recipe, foods: Foods, verbs: Verbs, times: CookTimes) -> tuple[PotOrder, ...]:
    """The best order of every pot of the recipe in which more than one food gets soft, in the order of the method."""
    stories = Kitchen(recipe, foods, verbs).walk()
    pots: dict[tuple[int, str], list[Story]] = {}
    for story in stories:
        cooking = [heat for heat in story.heats if method_of(heat)]
        if cooking:
            last = cooking[-1]
            pots.setdefault((last.step, last.verb), []).append(story)
    orders = []
    for (_, _), together in sorted(pots.items()):
        order = _order(together, times)
        if order is not None:
            orders.append(order)
    return tuple(orders)


def _order(stories: Sequence[Story], times: CookTimes) -> PotOrder | None:
    shared = [heat for story in stories for heat in story.heats if method_of(heat) and not _alone(heat, story, stories)]
    if not shared:
        return None
    method = method_of(max(shared, key=_length))
    needs: dict[int, Need] = {}
    unknown = []
    for story in stories:
        if story.food is None or story.food.hardness in ("liquid", "powder", "paste", "none"):
            continue
        mm, _ = thickness(cut_when_heated(story))
        if mm is not None and mm <= _FINE_MM:
            continue  # grated carrot is soft before anything else is
        name = softens_as(story.food, times)
        if name and _soft_before(story, stories, name, times):
            continue
        need = times.needed(name, cut_when_heated(story), method) if name else None
        if need is None:
            unknown.append(story.index)
        else:
            needs[story.index] = need
    if len(needs) < 2:
        return None
    placed = tender_together({line: need.soft for line, need in needs.items()})
    entries = [
        Entry(story.index, story.line.name, *placed[story.index], needs[story.index], _written(story))
        for story in stories
        if story.index in needs
    ]
    return PotOrder(method, tuple(sorted(entries, key=lambda entry: (entry.at, entry.line))), tuple(unknown))


def _alone(heat: Heat, story: Story, stories: Sequence[Story]) -> bool:
    """Whether no other solid food of the pot went through this heat."""
    return not any(
        other is not story and other.solid and (heat.step, heat.verb) in {(one.step, one.verb) for one in other.heats}
        for other in stories
    )


def _soft_before(story: Story, stories: Sequence[Story], name: str, times: CookTimes) -> bool:
    """Whether what a food had by itself, in another pan than the one they share, was enough to make it soft."""
    own = [heat for heat in story.heats if method_of(heat)]
    alone = [heat for heat in own if heat.medium != own[-1].medium and _alone(heat, story, stories)]
    if not alone:
        return False
    need = times.needed(name, cut_when_heated(story), method_of(max(alone, key=_length)))
    return need is not None and sum(_length(heat) for heat in alone) >= need.soft.low


def _length(heat: Heat) -> float:
    return heat.minutes.high if heat.minutes else 0.0


def _written(story: Story) -> Minutes | None:
    timed = [heat.minutes for heat in story.heats if heat.minutes and method_of(heat)]
    return Minutes(sum(t.low for t in timed), sum(t.high for t in timed)) if timed else None
