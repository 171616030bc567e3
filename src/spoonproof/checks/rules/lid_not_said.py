"""A long steaming or simmering does not say whether the lid is on.

Without its lid a steamer hardly steams, and a simmering pan loses its water: the same minutes leave the food harder and
the pot drier than the author's own.

Fails::

    foods:
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots for 20-25 minutes, until a cube squashes.
      - Mash the carrots.

Passes::

    foods:
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots, covered, for 20-25 minutes, until a cube squashes.
      - Mash the carrots.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "cooking"
LEVEL = "note"
SOURCES = ("common-practice",)

_SAID = re.compile(r"\b(?:lid|cover\w*|uncover\w*)\b", re.IGNORECASE)
_LONG = 10.0  # minutes from which the lid matters
_VERBS = ("steam", "simmer", "stew", "braise", "microwave")


def check(dish: Dish) -> Iterator[Fault]:
    """One fault, at the first long heat that leaves the lid open, when no step mentions it."""
    if any(_SAID.search(step.text) for step in dish.recipe.steps):
        return
    for event in dish.walked.events:
        long = event.action.time is not None and event.action.time.high >= _LONG
        if event.verb.id in _VERBS and event.action.covered is None and (long or event.verb.id == "microwave"):
            yield Fault(
                event.action.span,
                "It is not said whether the lid is on.",
                remedy=Remedy('Say "covered" or "with the lid off".'),
                sources=(SourceRef("common-practice", basis="common-practice"),),
            )
            return
