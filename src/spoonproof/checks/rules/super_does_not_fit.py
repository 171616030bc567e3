"""Text over the picture that does not fit it.

Two lines of 37 characters stay inside the part of the picture that every screen shows, in type that can be read from a
sofa. More is cut off at the edge or set so small that nobody reads it twice before it goes.

Fails::

    film:
      runs: 60 s
      segments:
        - name: Hook
          say: "Potatoes, crushed."
          super: "Potatoes and courgette, boiled until they are soft and crushed with a fork and a little oil"

Passes::

    film:
      runs: 60 s
      segments:
        - {name: Hook, say: "Potatoes, crushed.", super: "Potatoes, crushed with a fork · from 7 months"}
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy

AREA = "film"
LEVEL = "warning"
SOURCES = ("bbc-subtitle-guidelines", "smpte-st-2046-1")

LINE_CHARACTERS = 37
LINES = 2


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each super that needs more than two lines."""
    film = dish.recipe.film
    for segment in film.segments if film is not None else ():
        if segment.super is None or len(segment.super.value) <= LINE_CHARACTERS:
            continue
        import textwrap

        lines = textwrap.wrap(segment.super.value, LINE_CHARACTERS, break_on_hyphens=False)
        if len(lines) > LINES:
            yield Fault(
                segment.super.span,
                f"This text takes {len(lines)} lines of {LINE_CHARACTERS} characters over the picture; {LINES} fit.",
                remedy=Remedy("Say it in fewer words, or over two segments."),
            )
