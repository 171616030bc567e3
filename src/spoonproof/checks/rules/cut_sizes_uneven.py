"""Hard foods that cook together for the same time are cut to very different sizes.

The time that softens the small pieces leaves the big ones hard in the middle: heating goes with the square of the
thickness. A range such as "1 to 3 cm dice" does the same within one food.

Fails::

    foods:
      - 300 g carrots, peeled, 8 mm dice
      - 300 g parsnips, peeled, 3 cm chunks
    steps:
      - Steam the carrots and the parsnips for 20 minutes.
      - Mash everything.

Passes::

    foods:
      - 300 g carrots, peeled, 1 cm dice
      - 300 g parsnips, peeled, 1 cm dice
    steps:
      - Steam the carrots and the parsnips for 20 minutes.
      - Mash everything.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.from_cooking import cooked, judged
from spoonproof.checks.rule import Fault
from spoonproof.cooking.story import Story
from spoonproof.cooking.treatment import cut_when_heated
from spoonproof.dish import Dish
from spoonproof.model.finding import Related, Remedy, SourceRef

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)

_PLENTY = 1.5  # of the time that the bigger pieces need (common practice)
_RATIO = 2.0  # from here on the middle of the bigger piece takes four times as long to heat
_DIGIT = re.compile(r"\d")
_PRACTICE = (SourceRef("common-practice", basis="common-practice"),)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each food cut unevenly in itself, and for each pair that should be of a size."""
    hard = [s for s in dish.walked.stories if s.food and s.food.hardness == "hard" and s.heats]
    for story in hard:
        cut = cut_when_heated(story)
        if cut and cut.low_mm and cut.high_mm and cut.high_mm >= _RATIO * cut.low_mm and _written(dish, story):
            yield Fault(
                cut.span,
                f"Pieces of {cut.low_mm:g} to {cut.high_mm:g} mm don't get soft together.",
                remedy=Remedy(f"Cut the {story.line.name} to one size."),
                sources=_PRACTICE,
            )
    for at, story in enumerate(hard):
        for other in hard[at + 1 :]:
            if story.heats == other.heats and story.food is not None and other.food is not None:
                yield from _pair(dish, story, other)


def _pair(dish: Dish, one: Story, other: Story) -> Iterator[Fault]:
    small, big = sorted((one, other), key=_size)
    if not _size(small) or _size(big) < _RATIO * _size(small) or not (_written(dish, small) and _written(dish, big)):
        return
    cut, finer = cut_when_heated(big), cut_when_heated(small)
    if cut is None or finer is None or _long_enough(dish, big):
        return
    yield Fault(
        cut.span,
        f"When the {small.line.name} ({_size(small):g} mm) will be soft, the {big.line.name} ({_size(big):g} mm) will "
        "still be hard in the middle.",
        related=(Related(dish.recipe.document, finer.span, "the smaller pieces"),),
        remedy=Remedy(f"Cut both to one size, or put the {big.line.name} in earlier."),
        sources=_PRACTICE,
    )


def _long_enough(dish: Dish, big: Story) -> bool:
    """Whether the bigger pieces too are soft at the end, by half as long again as they need."""
    softness, need = judged(dish, big)
    time = cooked(big)
    if softness not in ("soft", "spent") or need is None or time is None:
        return False
    return time.low >= _PLENTY * need.soft.high


def _size(story: Story) -> float:
    cut = cut_when_heated(story)
    return (cut.high_mm or 0.0) if cut else 0.0


def _written(dish: Dish, story: Story) -> bool:
    """Whether the author gave the size: what is usual for a word proves nothing."""
    cut = cut_when_heated(story)
    return bool(cut and _DIGIT.search(dish.recipe.document.at(cut.span)))
