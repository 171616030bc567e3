"""A soft food goes in so early that it is spent before the rest is done.

Leaves need about two minutes and soft fruit about three. Left in for the whole cooking they go grey, lose taste and
vitamins and fall to threads. It does no harm, it only spoils the bowl. What is baked inside a pie or a batter, or
stews in its sauce, is meant to stay there; fruit that is mashed, and a courgette blended, were meant to fall apart.

Fails::

    foods:
      - 300 g potatoes, peeled, 1 cm dice
      - 80 g spinach
    steps:
      - Steam the potatoes and the spinach for 25 minutes.
      - Mash everything.

Passes::

    foods:
      - 300 g potatoes, peeled, 1 cm dice
      - 80 g spinach
    steps:
      - Steam the potatoes for 22-25 minutes, until a cube squashes between finger and thumb.
      - Add the spinach and steam for 3 minutes more.
      - Mash everything.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.from_cooking import FINE, cooked, judged, melts_in, minutes_words, need_sources
from spoonproof.checks.rule import Fault
from spoonproof.cooking.pots import Kitchen
from spoonproof.cooking.story import Story
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy
from spoonproof.model.record import replace
from spoonproof.model.treatment import Heat

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)

_MEANT = re.compile(
    r"\b(?:until|till)\b[^.;]{0,40}\b(?:melting|silky|collaps|fall(?:s|ing)? apart|pulp|mush)", re.IGNORECASE
)
"""So soft is what the cook is after."""


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each food that cooks much longer than it can stand."""
    kitchen = dish.walked
    for story in kitchen.stories:
        story = _outside_the_pie(story, kitchen)
        softness, need = judged(dish, story)
        time = cooked(story)
        if softness != "spent" or need is None or time is None or melts_in(story) or _falls_apart(story):
            continue
        if any(_MEANT.search(dish.recipe.steps[heat.step].text) for heat in story.heats):
            continue
        if any(heat.verb == "slow-cook" for heat in story.heats):
            continue  # all goes in at the start and nobody stands by
        name = story.line.name
        span = next((e.action.span for e in kitchen.events if story.index in e.lines), story.line.span)
        last = max(1, round(need.soft.high))
        yield Fault(
            span,
            f"After {minutes_words(time)} the {name} will be spent: {minutes_words(need.soft)} in the heat are enough.",
            bowl=story.bowl,
            remedy=Remedy(f"Let the {name} join for the last {last} minutes."),
            sources=need_sources(need),
        )


def _outside_the_pie(story: Story, kitchen: Kitchen) -> Story:
    """The food without the oven heat of what it is baked in together with others."""
    alone = {
        event.step for event in kitchen.events if event.verb.medium == "oven" and len(event.pot) < 2 and event.lines
    }
    baked = [heat for heat in story.heats if heat.medium == "oven" and heat.step not in alone and _bakes(heat, kitchen)]
    return replace(story, heats=[heat for heat in story.heats if heat not in baked]) if baked else story


def _bakes(heat: Heat, kitchen: Kitchen) -> bool:
    """Whether the heat is a bake, not a roast: what is roasted lies open on a tray."""
    return any(event.step == heat.step and event.verb.id == "bake" for event in kitchen.events)


def _falls_apart(story: Story) -> bool:
    """Fruit that is mashed, any but leaves in a smooth sauce, and all that stews in what is served with it: what leaves
    it stays in the dish, and soft is what a baby needs."""
    if any(heat.water == "kept" for heat in story.heats):
        return True
    if story.food is None:
        return False
    blended = story.made in FINE and story.food.group == "vegetable" and story.food.hardness != "leaf"
    return blended or (story.food.group == "fruit" and story.made in ("mashed", *FINE))
