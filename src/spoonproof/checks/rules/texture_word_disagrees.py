"""The texture word and the method disagree.

A purée that ends on 2 cm cubes is not a purée, and a "lumpy" dish that is blended smooth teaches nobody to chew.
What the dish really is comes from its foods, their cuts and the blending or mashing steps, not from the typed word.

Fails::

    ages: 7-9 months
    texture: smooth
    next: {texture: mashed, from: 8 months, how: mash it}
    foods:
      - 300 g parsnips, peeled, 2 cm dice
    steps:
      - Steam the parsnips for 25 minutes.
      - Serve.

Passes::

    ages: 7-9 months
    texture: smooth
    next: {texture: mashed, from: 8 months, how: mash it}
    foods:
      - 300 g parsnips, peeled, 2 cm dice
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
SOURCES = ("paho-2003",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault where the bowl is coarser or finer than its word."""
    yield from of_texture(dish, "word-disagrees")
