"""Smooth food for nine months and more says nothing about what comes next.

Children who were given lumps only after nine months took fewer foods at seven years and had more feeding problems.
A smooth dish whose ages reach nine months says how the same dish becomes mashed or lumpy.

Fails::

    ages: 7-10 months
    texture: smooth
    next:
    foods:
      - 300 g parsnips, peeled, 1 cm dice
    steps:
      - Steam the parsnips for 25 minutes.
      - Blend the parsnips until smooth.

Passes::

    ages: 7-10 months
    texture: smooth
    next: {texture: mashed, from: 8 months, how: mash with a fork instead of blending}
    foods:
      - 300 g parsnips, peeled, 1 cm dice
    steps:
      - Steam the parsnips for 25 minutes.
      - Blend the parsnips until smooth.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import of_texture
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "baby"
LEVEL = "warning"
SOURCES = ("coulthard-2009", "northstone-2001")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault where smooth food has no next texture by nine to ten months."""
    yield from of_texture(dish, "no-next")
