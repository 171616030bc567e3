"""Grains or pulses are simmered in nothing.

Rice, oats and lentils soften by drinking: without water, stock or milk in the pot, in the foods or in the step, they
burn. Usually the liquid was only forgotten in writing, but a reader can't guess how much.

Fails::

    foods:
      - 150 g red lentils
      - 200 g carrots, peeled, 1 cm dice
    steps:
      - Simmer the lentils and the carrots for 25 minutes, until a cube squashes.
      - Mash everything.

Passes::

    foods:
      - 150 g red lentils
      - 200 g carrots, peeled, 1 cm dice
    steps:
      - Simmer the lentils and the carrots in 600 ml water for 25 minutes, until a cube squashes.
      - Mash everything.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.from_cooking import names
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice",)

_VERBS = ("simmer", "stew", "braise", "cook", "slow-cook", "pressure-cook")  # boiling is always in water
_TOASTED = 4  # minutes: "stir in the rice and cook for 1 minute", before the stock
_LIQUID = re.compile(
    r"\b(?:water|stock|broth|milk|juice|liquid|sauce|passata|tomatoes|packet|drain(?:s|ed)?)\b", re.IGNORECASE
)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each simmering of dry grains with no liquid in sight."""
    kitchen = dish.walked
    in_steps = {line for event in kitchen.events for line in event.action.foods}
    listed = any(s.food and s.food.hardness == "liquid" and s.index not in in_steps for s in kitchen.stories)
    said: set[tuple[int, ...]] = set()
    for event in kitchen.events:
        time = event.action.time
        if event.verb.id not in _VERBS or (time is not None and time.high <= _TOASTED):
            continue
        pot = [kitchen.stories[i] for i in event.pot]
        grains = [s for s in pot if s.food and s.food.hardness == "grain" and s.food.state not in ("cooked", "canned")]
        key = tuple(story.index for story in grains)
        wet = any(s.food is not None and s.food.hardness == "liquid" and s.food.group != "oil" for s in pot)
        wet = wet or any(_LIQUID.search(s.line.text) for s in pot) or any(s.line.recipe for s in pot)
        told = any(_LIQUID.search(step.text) for step in dish.recipe.steps[: event.step + 1])
        if not grains or wet or told or listed or event.action.with_liquid or event.action.water_ml or key in said:
            continue
        said.add(key)
        yield Fault(
            event.action.span,
            f"There is no liquid to simmer the {names(grains)} in.",
            remedy=Remedy("Add the water, stock or milk to the foods or say how much goes in."),
            sources=(SourceRef("common-practice", basis="common-practice"),),
        )
