"""Salt goes into the baby's portion.

A baby's kidneys cannot cope with much salt: UK advice is less than 1 g a day in all up to 12 months, and none added.
Salt that goes into the family's pot after the baby's portion was lifted out is no fault; salted cooking water and
"season to taste" before that are.

Fails::

    ages: 8-10 months
    foods:
      - 300 g potatoes, peeled, 1 cm dice
      - 1 pinch salt
    steps:
      - Boil the potatoes with the salt for 25 minutes.
      - Mash the potatoes.

Passes::

    ages: 8-10 months
    foods:
      - 300 g potatoes, peeled, 1 cm dice
      - 1 tsp unsalted butter
    steps:
      - Boil the potatoes for 25 minutes.
      - Mash the potatoes with the butter.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import SALT_ROWS, of_hazards
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "baby"
LEVEL = "error"
SOURCES = ("nhs-foods-to-avoid-older", "espghan-2017", "fsa-salt")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each salt that reaches the baby."""
    yield from of_hazards(dish, lambda hazard: hazard.id in SALT_ROWS)
