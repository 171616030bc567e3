"""Frame counts and time codes: 25 frames non-drop, 29.97 drop-frame.

Drop-frame leaves out the numbers ;00 and ;01 of every minute that ten does not divide, so that the numbers keep step
with the clock: 1 798 numbers in such a minute, 17 982 in ten minutes, 107 892 in an hour, 2 589 408 in a day.
"""

from __future__ import annotations

from fractions import Fraction

from spoonproof.model.record import dataclass

MINUTE_DROPPED = 2
TEN_MINUTES = 17_982
MINUTE = 1_798


@dataclass(frozen=True, slots=True)
class Rate:
    """Frames a second, exactly; ``nominal`` is how many numbers a second holds."""

    name: str
    frames: Fraction
    nominal: int
    drop: bool

    def frame(self, seconds: float) -> int:
        """The frame nearest to a moment."""
        return round(Fraction(round(seconds * 1000), 1000) * self.frames)

    def code(self, frame: int) -> str:
        """``HH:MM:SS:FF``, ``HH:MM:SS;FF`` in drop-frame. Raises ValueError for a negative frame."""
        if frame < 0:
            raise ValueError("a frame count is never negative")
        if self.drop:
            frame += _dropped(frame)
        rest, frames = divmod(frame, self.nominal)
        rest, seconds = divmod(rest, 60)
        hours, minutes = divmod(rest, 60)
        mark = ";" if self.drop else ":"
        return f"{hours % 24:02d}:{minutes:02d}:{seconds:02d}{mark}{frames:02d}"


def _dropped(frame: int) -> int:
    """How many numbers were left out before ``frame``."""
    tens, rest = divmod(frame, TEN_MINUTES)
    # The first minute of ten keeps all its numbers: 1 800 frames; then 1 798 each.
    minutes = 0 if rest < MINUTE + MINUTE_DROPPED else (rest - MINUTE_DROPPED) // MINUTE
    return MINUTE_DROPPED * (9 * tens + minutes)


PAL = Rate("25", Fraction(25), 25, False)
NTSC_DROP = Rate("29.97 drop-frame", Fraction(30_000, 1001), 30, True)
