"""A food that is not for a baby of this age is in the baby's bowl.

Honey (also cooked), stock and salty seasonings, juice, milk as a drink, rice drink, raw or runny egg, unpasteurised
and mould-ripened cheese, high-mercury fish, raw shellfish, tea, brown seaweed and more: each row names its age, its
authority and the authority that says otherwise. A needless ban harms too, so leafy greens get a caution and no ban,
and pasteurised full-fat cheese, yoghurt and milk in cooking are no fault.

Fails::

    ages: 7-9 months
    foods:
      - 150 g plain yoghurt
      - 1 tsp honey
    steps:
      - Stir the honey into the yoghurt.

Passes::

    ages: 7-9 months
    foods:
      - 150 g plain yoghurt
      - 80 g honeydew melon, puréed
    steps:
      - Stir the melon into the yoghurt.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import SALT_ROWS, SUGAR_ROWS, of_hazards
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "baby"
LEVEL = "error"
SOURCES = ("nhs-avoid", "espghan-2017")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each food not yet, but for salt and sugar, which have rules of their own."""
    yield from of_hazards(
        dish, lambda hazard: hazard.kind == "not-yet" and hazard.id not in SALT_ROWS and hazard.id not in SUGAR_ROWS
    )
