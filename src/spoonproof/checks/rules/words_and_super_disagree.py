"""The words say one thing and the text over the picture another.

A viewer who hears "from six months" and reads "from 9 months" trusts neither, and may act on the wrong one. Ages,
times and amounts in one segment should be the same in both.

Fails::

    film:
      runs: 30 s
      segments:
        - {name: Hook, say: "This is for babies from six months.", super: "From 9 months"}

Passes::

    film:
      runs: 30 s
      segments:
        - {name: Hook, say: "This is for babies from seven months.", super: "From 7 months"}
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Related, Remedy
from spoonproof.reading.spoken import as_spoken

AREA = "film"
LEVEL = "warning"
SOURCES = ("common-practice",)

_NUMBER_WORDS = (
    "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|"
    "eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|point|and a half|a half"
)
_STATED = re.compile(
    rf"\b((?:(?:{_NUMBER_WORDS})\s)+)"
    r"(month|minute|hour|day|second|gram|kilogram|millilitre|degree|centimetre|teaspoon|tablespoon|spoon|portion)s?\b"
)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each segment whose words and super state different numbers of the same thing."""
    for segment in dish.recipe.film.segments if dish.recipe.film else ():
        if segment.say is None or segment.super is None:
            continue
        said, shown = stated(segment.say.value), stated(segment.super.value)
        for unit in sorted(said.keys() & shown.keys()):
            if not shown[unit] <= said[unit]:
                yield Fault(
                    segment.super.span,
                    f"The picture says {_list(shown[unit])} {unit}s, the words say {_list(said[unit])} {unit}s.",
                    related=(Related(dish.recipe.document, segment.say.span, "said here"),),
                    remedy=Remedy("Make both say the same."),
                )


def stated(text: str) -> dict[str, set[str]]:
    """The numbers that a text states, in words, by the unit they are of."""
    found: dict[str, set[str]] = {}
    for match in _STATED.finditer(as_spoken(text).lower()):
        found.setdefault(match[2], set()).add(match[1].strip())
    return found


def _list(numbers: set[str]) -> str:
    return " and ".join(sorted(numbers))
