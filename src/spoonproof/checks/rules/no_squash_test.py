"""A hard food is cooked by the clock alone, with no squash test at the end.

Roots, pans and rings differ more than any table does: the published rates of softening of carrot alone spread more
than tenfold. A time tells a reader when to look; only a piece that squashes between finger and thumb tells that
the pan is done.

Fails::

    foods:
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots for 18-22 minutes.
      - Mash the carrots.

Passes::

    foods:
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots for 18-22 minutes, until a cube squashes between finger and thumb.
      - Mash the carrots.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.from_cooking import FINE, KNIFE_TEST, SAID_SOFT, judged, names, time_span
from spoonproof.checks.rule import Fault
from spoonproof.cooking.story import Story
from spoonproof.cooking.treatment import cut_when_heated
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef
from spoonproof.model.text import Span

AREA = "baby"
LEVEL = "warning"
SOURCES = ("lee-2017-texture-kinetics", "common-practice")

_TEST = re.compile(
    r"\b(?:squash\w*|finger and thumb|fall(?:s|ing)? apart|collapse\w*|crush(?:es)? easily"
    r"|scoop\w* (?:out )?(?:the |its |their )?(?:soft )?flesh)\b",
    re.IGNORECASE,
)
_BY_HAND = ("mashed", "lumpy")  # what is still hard does not give way to a fork
_UNTIL = 24  # months: the ages at which gums do most of the chewing
_SOURCES = (SourceRef("lee-2017-texture-kinetics", "Table 1"), SourceRef("common-practice", basis="common-practice"))

_FINE_SHAPES = ("grated", "shredded", "minced", "ground", "puréed", "mashed", "flaked", "crumbled")
_FINE_MM = 3.0


def _too_fine(story: Story) -> bool:
    """Whether it went into the heat so fine that there is no piece to squash: grated, minced, finely chopped."""
    cut = cut_when_heated(story)
    fine = cut is not None and (cut.shape in _FINE_SHAPES or (cut.high_mm is not None and cut.high_mm <= _FINE_MM))
    return fine or (story.food is not None and "mince" in story.food.id.split("-"))


def _mashed_pulse(story: Story) -> bool:
    """Whether it is dal, beans or rice that is mashed: what is not soft yet does not mash."""
    grainy = story.food is not None and (story.food.group == "pulse" or story.food.hardness == "grain")
    return grainy and story.made in _BY_HAND


def check(dish: Dish) -> Iterator[Fault]:
    """One fault for each place where hard foods are timed without a test."""
    if dish.recipe.youngest >= _UNTIL or any(_TEST.search(step.text) for step in dish.recipe.steps):
        return
    kitchen = dish.walked
    places: dict[Span, list[Story]] = {}
    unsure: set[Span] = set()
    for story in kitchen.stories:
        softness, _ = judged(dish, story)
        solid = story.food is not None and story.food.hardness in ("hard", "firm")
        if not solid or story.tested or story.bowl == "family" or softness not in ("soft", "maybe-soft"):
            continue
        if not story.heats or _too_fine(story) or _mashed_pulse(story):
            continue
        if any(KNIFE_TEST.search(dish.recipe.steps[heat.step].text) for heat in story.heats):
            continue  # a test of the middle ends it, and no clock alone
        span = time_span(kitchen, story)
        places.setdefault(span, []).append(story)
        hard = story.food is not None and story.food.hardness == "hard"
        said_soft = any(SAID_SOFT.search(dish.recipe.steps[heat.step].text) for heat in story.heats)
        if softness == "maybe-soft" and hard and story.made not in (*FINE, *_BY_HAND) and not said_soft:
            unsure.add(span)
    for span, stories in places.items():
        yield Fault(
            span,
            f"Only the clock ends the cooking of the {names(stories)}: there is no squash test.",
            "warning" if span in unsure else "note",
            bowl="baby",
            remedy=Remedy("Add: until a piece squashes between finger and thumb."),
            sources=_SOURCES,
        )
