"""Supers: text over the picture, how long it must stand, and where in the film there is room for it.

A super is read twice before it goes (common practice, no source): at 183 words a minute, reading aloud
(source: brysbaert-2019), never under three seconds, and half a second for the fades. It stands inside the title-safe
part of the picture, 90 % of its width and height (source: smpte-st-2046-1): two lines of at most 37 characters.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from functools import lru_cache

from spoonproof.model.record import dataclass, replace

LEAST_SECONDS = 3.0
FADES_SECONDS = 0.5
READ_WORDS_A_MINUTE = 183.0
LINE_CHARACTERS = 37
LINES = 2
TITLE_SAFE = 0.9
"""Share of the picture's width and height inside which text stands."""

CHARACTER_WIDTH = 0.6
"""Width of an average letter as a share of the type's height (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Super:
    """Text over the picture; ``needs`` the seconds it must stand; ``start`` from the film's first frame.

    ``kind`` is author, ages, allergens, caution, source, disclosure or step. ``where`` is the role of the take it would
    stand best in (opening, foods, step, tasting, close or ""); ``take`` the take it belongs to and no other, by its
    number in the script before the supers are placed; ``about`` the whole sentence it is short for;
    ``after`` the seconds into its take at which its statement is made.
    """

    text: str
    kind: str
    needs: float
    start: float = 0.0
    where: str = ""
    take: int | None = None
    about: str = ""
    after: float = 0.0

    @property
    def end(self) -> float:
        """When it goes."""
        return round(self.start + self.needs, 3)

    @property
    def lines(self) -> tuple[str, ...]:
        """The text as it stands on the picture."""
        return tuple(screen_lines(self.text))


def needed_seconds(text: str) -> float:
    """How long a super must stand to be read twice at an unhurried rate; figures count as they are read."""
    from spoonproof.reading.spoken import word_count

    words = max(len(text.split()), word_count(text))
    return round(max(LEAST_SECONDS, 2 * words * 60.0 / READ_WORDS_A_MINUTE) + FADES_SECONDS, 2)


def super_of(text: str, kind: str, where: str = "", take: int | None = None, about: str = "") -> Super:
    """A super with the time it needs."""
    return Super(text, kind, needed_seconds(text), where=where, take=take, about=about)


def screen_lines(text: str) -> list[str]:
    """``text`` in lines of at most ``LINE_CHARACTERS``, even where it takes two."""
    lines = textwrap.wrap(text, LINE_CHARACTERS, break_on_hyphens=False)
    if len(lines) != LINES:
        return lines
    for width in range(len(text) // 2, LINE_CHARACTERS):
        even = textwrap.wrap(text, width, break_on_hyphens=False)
        if len(even) == LINES and max(map(len, even)) <= LINE_CHARACTERS:
            return even
    return lines


def fits_screen(text: str) -> bool:
    """Whether it stands in two lines inside the title-safe part."""
    lines = screen_lines(text)
    return len(lines) <= LINES and all(len(line) <= LINE_CHARACTERS for line in lines)


def type_height(width: int, height: int) -> int:
    """The largest type in pixels at which a full line stays title-safe in a picture of ``width`` x ``height``."""
    across = width * TITLE_SAFE / (LINE_CHARACTERS * CHARACTER_WIDTH)
    return int(min(across, height * TITLE_SAFE / 12))


PLACES = {
    "opening": ("opening", "foods", "cautions"),
    "foods": ("foods", "step"),
    "step": ("step",),
    "tasting": ("tasting", "cautions"),
    "close": ("cautions", "sources", "close", "tasting"),
}
"""Where a super may stand, by the part of the film it belongs to, the best place first."""


_COMMON = frozenset(
    "your baby with befo unti from that this them food cook into eats then when more the and for are not its her his"
    " all any one two has out off you can let may day new too was who per own set put get way".split()
)


def spread(
    roles: Sequence[str], words: Sequence[str], room: Sequence[float], supers: Sequence[Super]
) -> list[list[Super]]:
    """Supers a take, in order, one after the other: in their own take, else in the first take with room of the places
    of their ``where``; what finds none goes where the film grows least by it, so that they do not pile up over one
    silent picture. What is about a step stands over the step that speaks of the same things.

    ``words`` of each take, and ``room``: the seconds free in it.
    """
    free = list(room)
    placed: list[list[Super]] = [[] for _ in roles]
    for each in supers:
        at = each.take if each.take is not None else _with_room(roles, words, free, each)
        placed[at].append(each)
        free[at] -= each.needs
    return placed


def _with_room(roles: Sequence[str], words: Sequence[str], free: Sequence[float], each: Super) -> int:
    shared = [len(_roots(said) & _roots(f"{each.text} {each.about}")) for said in words]
    places = [
        # the step that speaks of the same things comes before the others
        sorted((n for n, other in enumerate(roles) if other == role), key=lambda n: -shared[n] * (role == "step"))
        for role in PLACES.get(each.where, ("cautions", "tasting", "close"))
    ]
    if each.where == "step" and places[0] and (most := shared[places[0][0]]):
        places = [[number for number in places[0] if shared[number] == most]]
    costs = [(_cost(free[number], each, off), number) for off, place in enumerate(places) for number in place]
    return min(costs, key=lambda pair: pair[0], default=(0.0, len(roles) - 1))[1]


def _cost(free: float, each: Super, off: int) -> float:
    """Seconds by which a take with so many free grows by the super: none while there is room. To be longer further
    ``off`` from where it belongs must be worth a super's time: how warm it is, is said before the baby eats."""
    longer = round(each.needs - max(free, 0.0), 2)
    return longer + off * LEAST_SECONDS if longer > 0 else 0.0


@lru_cache(maxsize=4096)
def _roots(text: str) -> frozenset[str]:
    """The first letters of the words: enough to see that "bones" and "boned" are one thing."""
    return frozenset(word[:4] for word in re.findall(r"[a-z]{3,}", text.lower())) - _COMMON


def timed(supers: Sequence[Super], start: float, runs: float) -> tuple[Super, ...]:
    """The supers of a take that begins at ``start`` and runs so long, each after the one before, and as near to its
    statement as the take has room for."""
    clock = start
    rest = sum(each.needs for each in supers)
    result = []
    for each in supers:
        latest = start + runs - rest
        clock = max(clock, min(start + each.after, latest))
        result.append(replace(each, start=round(clock, 3)))
        clock += each.needs
        rest -= each.needs
    return tuple(result)
