"""What happens to each food on its way from the board to the bowl."""

from __future__ import annotations

from typing import Literal

from spoonproof.model.finding import Bowl
from spoonproof.model.kitchen import Medium
from spoonproof.model.recipe import Cut, Minutes
from spoonproof.model.record import dataclass

Softness = Literal["raw", "hard", "crisp-tender", "maybe-soft", "soft", "spent", "not-judged"]


@dataclass(frozen=True, slots=True)
class Heat:
    """One stretch of cooking: how, how long (None when not said), in which step."""

    verb: str
    medium: Medium
    step: int
    minutes: Minutes | None
    water: str = "none"  # kept, drained, driven-off, absorbed, none
    retention: str = ""
    covered: bool | None = None


@dataclass(frozen=True, slots=True)
class Treatment:
    """The story of one food line. ``line`` is its index in ``Recipe.foods``.

    ``joined`` is the step it first appears in (None: never used); ``bowl`` whose bowl it ends in (None:
    both); ``heats`` in order; ``cuts`` as cut at each time, the last one as served; ``made`` the texture
    word its blending, mashing or mincing gives ("" when it is left in pieces); ``softness`` against the
    cook-time table at the age's need, ``needed`` the minutes (low, high) that make it soft.
    """

    line: int
    joined: int | None
    bowl: Bowl | None = None
    heats: tuple[Heat, ...] = ()
    cuts: tuple[Cut, ...] = ()
    made: str = ""
    made_step: int | None = None
    soaked_minutes: float = 0.0
    softness: Softness = "not-judged"
    needed: Minutes | None = None
    left_out: bool = False  # drained away or lifted out for good: in nobody's bowl

    @property
    def heated_minutes(self) -> Minutes | None:
        """Total time in the heat; None when no stretch has a stated time."""
        timed = [heat.minutes for heat in self.heats if heat.minutes is not None]
        if not timed:
            return None
        return Minutes(sum(t.low for t in timed), sum(t.high for t in timed))
