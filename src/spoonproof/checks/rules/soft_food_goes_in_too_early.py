"""A soft food goes in so early that it is spent before the rest is done.

Leaves need about two minutes and soft fruit about three. Left in for the whole cooking they go grey, lose taste and
vitamins and fall to threads. It does no harm, it only spoils the bowl.

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

from collections.abc import Iterator

from spoonproof.checks.from_cooking import cooked, judged, melts_in, minutes_words, need_sources, walked
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy

SCOPE = "dish"
AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each food that cooks much longer than it can stand."""
    kitchen = walked(dish)
    for story in kitchen.stories:
        softness, need = judged(dish, story)
        time = cooked(story)
        if softness != "spent" or need is None or time is None or melts_in(story):
            continue
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
