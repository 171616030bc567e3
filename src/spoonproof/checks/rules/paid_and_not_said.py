"""A paid film does not say in its own words that it is paid for.

Whoever watches weighs words by who pays for them. Where a recipe is gifted, sponsored, of the maker's own or holds
paid links, the first words of the film, the text over its first picture, its description and its post say so, plainly
and before anything else. What the desk writes by itself does; words of yours that stand in its place must too.

Fails::

    paid: sponsored
    film:
      runs: 90 s
      segments:
        - {name: Hook, say: "Potatoes again, and this time with oil."}

Passes::

    paid: sponsored
    film:
      runs: 90 s
      segments:
        - {name: Hook, say: "This is an ad: a farm paid for this film. Potatoes again.", super: "Paid partnership"}
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef
from spoonproof.model.text import Text
from spoonproof.reading.disclosure import DISCLOSURE, disclosed

AREA = "film"
LEVEL = "warning"
SOURCES = ("ftc-255",)


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each text of the author's that opens a part of the film and does not say that it is paid for."""
    words = DISCLOSURE.get(dish.paid)
    film = dish.recipe.film
    if not words or film is None:
        return
    first = film.segments[0] if film.segments else None
    parts: list[tuple[str, Text | None]] = [
        ("The first words of the film", first.say if first is not None else None),
        ("The text over the first picture", first.super if first is not None else None),
        ("The description", film.description),
        ("The post", film.social),
    ]
    for name, text in parts:
        if text is not None and not disclosed(text.value):
            yield Fault(
                text.span,
                f"{name} should say that this is paid for ({dish.paid}): “{words}”",
                remedy=Remedy("Say it first, in plain words: advertisement, sponsored, paid for by. Till then the desk "
                              "puts its own words before yours."),
                sources=(SourceRef("ftc-255"),),
            )  # fmt: skip
