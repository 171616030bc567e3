"""More words than the film has time for.

Spoken at the channel's rate, what the author wrote takes longer than the film may run. Then it is hurried, or cut
in the edit, and a caution is what goes first. Shorten what is said, or give the film more time.

Fails::

    film:
      runs: 5 s
      segments:
        - name: Hook
          say: "Potatoes again, I hear you say, and you are right, but these are crushed with oil and eaten warm."

Passes::

    film:
      runs: 30 s
      segments:
        - {name: Hook, say: "Potatoes, crushed with oil and eaten warm."}
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy
from spoonproof.reading.spoken import seconds

AREA = "film"
LEVEL = "warning"
SOURCES = ("common-practice",)


def check(dish: Dish) -> Iterator[Fault]:
    """One fault, on the first segment at whose end the words have run over."""
    film = dish.recipe.film
    if film is None or film.runs is None:
        return
    clock = 0.0
    speech, presenters = dish.channel.speech, dish.channel.presenters
    said = [(s, seconds(s.say.value, presenters.get(s.presenter, speech))) for s in film.segments if s.say]
    total = sum(length for _, length in said)
    for segment, length in said:
        clock += length
        if clock > film.runs and segment.say is not None:
            longest = max(said, key=lambda pair: pair[1])[0].name or "the longest segment"
            yield Fault(
                segment.say.span,
                f"The words take about {total:.0f} s at {_pace(dish)}, and the film runs {film.runs:g} s.",
                remedy=Remedy(f"Shorten what is said ({longest} first), or let the film run longer."),
            )
            return


def _pace(dish: Dish) -> str:
    film, presenters = dish.recipe.film, dish.channel.presenters
    named = {segment.presenter for segment in (film.segments if film else ())} & presenters.keys()
    return "their presenters' own pace" if named else f"{dish.channel.speech:g} words a minute"
