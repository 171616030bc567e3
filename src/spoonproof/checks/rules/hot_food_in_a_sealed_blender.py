"""Food goes from the heat into a blender with nothing said about the steam.

Hot food gives off steam as the blades stir it; under a shut lid the pressure throws lid and food out over the cook and
whoever sits beside. "Cool to room temperature" is not needed: let the steam off, then blend, the cap of the lid out.

Fails::

    foods:
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots for 20-25 minutes.
      - Blend the carrots until smooth.

Passes::

    foods:
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots for 20-25 minutes.
      - Let the steam off for 5 minutes.
      - Blend the carrots until smooth.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)

_VENTED = re.compile(
    r"\b(?:stick|hand|immersion) blender\b|\bstick[- ]blend|\bhand[- ]blend|\bvent\w*|\bajar\b|\bin the pan\b|\bmouli\b"
    r"|\blid (?:off|open|a little open|of the blender open)|\b(?:cap|stopper|plug|centre) (?:out|off|removed|open)"
    r"|\b(?:towel|cloth)\b|\bsteam (?:out|escape|off|can)",
    re.IGNORECASE,
)
_SEALED = re.compile(
    r"\blid (?:shut|tight|on|closed|clamped)|\bsealed\b|\b(?:boiling|piping|steaming) hot\b"
    r"|\bwhile (?:it is |it's |still )?hot\b",
    re.IGNORECASE,
)
_WAITED = re.compile(
    r"\b(?:wait|rest|stand|sit|cool|leave|pause|give)\w*\b[^.;]{0,40}"
    r"\b(?:[2-9]|[1-9][0-9]|two|three|four|five|six|ten|a few) ?(?:min|minutes?|mins)\b"
    r"|\b(?:once|when|after)\b[^.;]{0,30}\b(?:cool|cooled|lukewarm|cooling)\b",
    re.IGNORECASE,
)
_A_PART = re.compile(r"\b(?:rest|remaining|remainder|other half)\b", re.IGNORECASE)
_HEAT_THAT_LASTS = 2.0  # minutes of cooling below which nothing has changed


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each blending of food that came straight from the heat."""
    hot: set[int] = set()
    for event in dish.walked.events:
        if event.verb.role == "heat":
            hot.update(event.pot)
        elif event.verb.role in ("cool", "chill"):
            minutes = event.action.time.low if event.action.time else event.verb.minutes
            if minutes >= _HEAT_THAT_LASTS:
                hot.difference_update(event.pot)
        elif event.verb.tool == "blender" and hot.intersection(event.lines):
            step = dish.recipe.steps[event.step]
            sealed = bool(_SEALED.search(step.text))
            before = step.text[: max(0, event.action.span.start - step.span.start)]
            kept_cold = set(event.action.foods) - hot and _A_PART.search(step.text)
            if kept_cold and not sealed:
                continue  # raw mango, and the rest of the yoghurt that the chicken was grilled in
            if (_VENTED.search(step.text) or _WAITED.search(before)) and not sealed:
                continue
            yield Fault(
                event.action.span,
                "Hot food is blended with the lid shut: steam throws the lid off and scalds."
                if sealed
                else "Food straight from the heat goes into the blender; in a closed one steam throws the lid off and "
                "scalds.",
                "error" if sealed else "warning",
                remedy=Remedy(
                    "Say before it: let the steam off for 5 minutes; or blend with the cap of the lid out, or with a "
                    "stick blender in the pan."
                ),
                sources=(SourceRef("common-practice", basis="common-practice"),),
            )
