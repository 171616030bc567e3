"""Steaming is asked for, and water never mentioned.

A steamer needs enough water for the whole time; a baby's portion over two centimetres of water boils dry in about
twenty minutes, the pan burns and the vegetables stay hard. A long steaming that says nothing about water is a warning,
a short one a note.

Fails::

    foods:
      - 300 g beetroot, peeled, 1 cm dice
    steps:
      - Steam the beetroot for 35 minutes, until a cube squashes.
      - Mash the beetroot.

Passes::

    foods:
      - 300 g beetroot, peeled, 1 cm dice
    steps:
      - Bring 4 cm of water to the boil under the steamer.
      - Steam the beetroot for 35 minutes, until a cube squashes, topping up with boiling water halfway.
      - Mash the beetroot.
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

_WATER = re.compile(r"\b(?:water|electric steamer|microwave|kettle|stock|top(?:ping|ped)? up)\b", re.IGNORECASE)
_DRY_AFTER = 40.0  # minutes that the usual finger of water lasts (common practice)


def check(dish: Dish) -> Iterator[Fault]:
    """One fault, at the first steaming, when no step mentions water."""
    if any(_WATER.search(step.text) for step in dish.recipe.steps):
        return
    steams = [event for event in dish.walked.events if event.verb.id == "steam"]
    if not steams:
        return
    minutes = sum(event.action.time.high for event in steams if event.action.time and not event.action.last)
    yield Fault(
        steams[0].action.span,
        f"Nothing is said about water for {minutes:g} minute{'' if minutes == 1 else 's'} of steaming."
        if minutes
        else "Nothing is said about the water under the steamer.",
        "warning" if minutes > _DRY_AFTER else "note",
        remedy=Remedy("Say how much water boils under the steamer, and to top it up when the time is long."),
        sources=(SourceRef("common-practice", basis="common-practice"),),
    )
