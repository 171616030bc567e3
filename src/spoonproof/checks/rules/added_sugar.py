"""Sugar, syrup or a sugary food goes into the baby's portion.

No sugar is to be added to a baby's food in the first year, and US guidelines keep added sugars out before two. Syrups,
jam and chocolate count; ripe fruit does not. Fruit pastes that only sweeten are a warning, and no page may say
"no added sugar" over them.

Fails::

    ages: 7-9 months
    foods:
      - 150 g plain yoghurt
      - 1 tsp maple syrup
    steps:
      - Stir the maple syrup into the yoghurt.

Passes::

    ages: 7-9 months
    foods:
      - 150 g plain yoghurt
      - 1 ripe pear, peeled, grated
    steps:
      - Stir the pear into the yoghurt.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import SUGAR_ROWS, of_hazards
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "baby"
LEVEL = "error"
SOURCES = ("espghan-2017", "nhs-avoid")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each sugar that reaches the baby."""
    yield from of_hazards(dish, lambda hazard: hazard.id in SUGAR_ROWS)
