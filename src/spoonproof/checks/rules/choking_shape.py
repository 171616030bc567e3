"""A shape that can choke reaches the baby's bowl.

Shape, size, hardness and slip together make a food dangerous as it is served: whole grapes and cherry tomatoes, raw
hard produce, coins of sausage, cubes of cheese, whole nuts, bones, stones, sticky lumps. A young child's airway is
narrow and easily blocked. What is blended, grated, quartered lengthways or cooked soft is no danger of this kind. The
rows, their ages and their authorities are the table of choking shapes; where authorities differ the stricter is the
default and the other is named.

Fails::

    ages: 9-12 months
    foods:
      - 8 cherry tomatoes, halved
      - 100 g plain yoghurt
    steps:
      - Stir the cherry tomatoes into the yoghurt.

Passes::

    ages: 9-12 months
    foods:
      - 8 cherry tomatoes, quartered lengthways
      - 100 g plain yoghurt
    steps:
      - Stir the cherry tomatoes into the yoghurt.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import of_hazards
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "baby"
LEVEL = "error"
SOURCES = ("dfe-food-safety", "nhs-avoid", "illinois-choking")

TOLD_AT_THE_TIME = "underdone"
"""The row whose fault the rules of cooking times tell where the time is written: one cause, one finding."""


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each choking shape in the baby's bowl."""
    yield from of_hazards(dish, lambda hazard: hazard.kind == "choking" and hazard.id != TOLD_AT_THE_TIME)
