"""A weight with its range, and one step of weighing on the way to it."""

from __future__ import annotations

from spoonproof.model.record import NamedTuple


class Grams(NamedTuple):
    """A weight in grams between ``low`` and ``high``."""

    mid: float
    low: float
    high: float

    def times(self, factor: float, low: float | None = None, high: float | None = None) -> Grams:
        """The weight times a factor, with the factor's own range where it has one."""
        return Grams(
            self.mid * factor,
            self.low * (factor if low is None else low),
            self.high * (factor if high is None else high),
        )


class Step(NamedTuple):
    """Grams found so far, with what was assumed and the source ids behind them."""

    grams: Grams
    edible: bool  # whether these grams are without waste already
    assumed: tuple[str, ...]
    sources: tuple[str, ...]
