"""The texture is too coarse for the youngest age.

Ages are a range and a parent may start at its beginning: food the family eats is for about 12 months, minced and
chopped food for about 9 to 10. Too coarse too early is a danger; soft finger food beside purées is not, from about
six months.

Fails::

    ages: 7-9 months
    texture: family food

Passes::

    ages: 7-9 months
    texture: mashed
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_feeding import of_texture
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish

AREA = "baby"
LEVEL = "error"
SOURCES = ("paho-2003", "uk-10-12")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault where the texture word does not suit the youngest age."""
    yield from of_texture(dish, "too-coarse")
