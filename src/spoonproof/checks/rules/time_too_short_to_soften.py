"""The time is too short for a food to get soft.

The five to seven minutes that are often given for inch pieces of hard vegetables leave them crisp-tender at best: fine
for a grown-up's fork, a choking danger for a baby. Published steaming times fit about half the firmness left; soft
enough to squash takes one and a half to three times as long. Heat also needs time to reach the middle. Blended to
nothing it is a fault of cooking; left in pieces, it is the baby's.

Fails::

    foods:
      - 300 g carrots, peeled, 2.5 cm chunks
      - 1 tsp rapeseed oil
    steps:
      - Steam the carrots for 5-7 minutes.
      - Mash the carrots with the oil.

Passes::

    foods:
      - 300 g carrots, peeled, 1 cm dice
      - 1 tsp rapeseed oil
    steps:
      - Steam the carrots for 18-22 minutes, until a cube squashes between finger and thumb.
      - Mash the carrots with the oil.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_cooking import (
    blended_raw,
    cooked,
    fine_raw,
    fried_short,
    grated_through,
    judged,
    late,
    minutes_words,
    need_sources,
    need_words,
    severity,
    soft_by_a_test,
    time_span,
)
from spoonproof.checks.rule import Fault
from spoonproof.cooking.softness import Need
from spoonproof.cooking.story import Story
from spoonproof.dish import Dish
from spoonproof.feeding.heat import quick
from spoonproof.model.finding import Remedy
from spoonproof.model.recipe import Minutes

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("steamer-manual-rc", "kitchen-questions-steaming", "lee-2017-texture-kinetics", "common-practice")

_NEAR = 0.75  # of the time needed: a knife that slips in and a masher tell of the rest (common practice)


def _fried(dish: Dish, story: Story, need: Need, time: Minutes) -> Fault:
    """The fault of a hard food that is fried for less than half of what boiling would take."""
    level, bowl = severity(dish, story, need)
    name = story.line.name
    return Fault(
        time_span(dish.walked, story),
        f"After {minutes_words(time)} in the pan the {name} will be hard: even in boiling water such pieces need "
        f"{minutes_words(need.soft)} to be soft.",
        level,
        area="baby" if bowl == "baby" else "cooking",
        bowl=bowl,
        remedy=Remedy(f"Steam the {name} first, until a piece squashes between finger and thumb, and then fry it."),
        sources=need_sources(need),
    )


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each food that comes out hard or crisp-tender, unless it only joins too late."""
    kitchen = dish.walked
    joins_late = late(dish, kitchen)
    for story in kitchen.stories:
        softness, need = judged(dish, story)
        time = cooked(story)
        if softness == "not-judged" and (boiled := fried_short(dish, story)) is not None and time is not None:
            yield _fried(dish, story, boiled, time)
            continue
        if softness not in ("hard", "crisp-tender") or need is None or time is None or story.index in joins_late:
            continue
        if grated_through(dish, story, time):
            continue
        if fine_raw(story) or blended_raw(story) or quick(dish.treatments[story.index], story.food):
            continue  # meat and fish that are only cooked through: foods-not-yet asks whether they are
        nearly = softness == "crisp-tender" or need.crisp == need.soft
        if nearly and soft_by_a_test(dish, story) and time.high >= _NEAR * need.soft.low:
            continue
        level, bowl = severity(dish, story, need)
        name = story.line.name
        outcome = "hard" if softness == "hard" and need.crisp == need.soft else "crisp-tender at best"
        message = f"After {minutes_words(time)} the {name} will be {outcome}: {need_words(need)}."
        if story.tested:
            message += " The squash test will not pass in the time given."
        aim = round((need.soft.low + need.soft.high) / 2)
        remedy = Remedy(
            f"Cook the {name} for about {aim} minutes, cut finer if that is too long, until a piece squashes between "
            "finger and thumb."
        )
        yield Fault(
            time_span(kitchen, story),
            message,
            level,
            area="baby" if bowl == "baby" else "cooking",
            bowl=bowl,
            remedy=remedy,
            sources=need_sources(need),
        )
