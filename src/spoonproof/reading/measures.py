"""Kitchen measures as exact fractions, by the measure system a channel declares.

A unit word is read the same way everywhere; what a cup or a tablespoon holds differs by system.
Pinch, dash, handful and their kin are approximations with a range (``common-practice``).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from spoonproof.model.record import dataclass
from spoonproof.model.table import Row
from spoonproof.reading.cuts import Cuts
from spoonproof.reading.preparations import Preparations

SYSTEMS = ("UK", "US", "metric", "AU")


@dataclass(frozen=True, slots=True)
class Measure:
    """What one ``unit`` is: ``value`` (exact) in ``per`` (g, ml, mm, C), between ``low`` and ``high``.

    ``kind``: mass, volume, about (an approximation), count (its weight is the food's matter),
    length or oven. ``value`` is None for counts. ``source`` is a source id, ``locator`` the place in it.
    """

    unit: str
    kind: str
    value: Fraction | None
    low: Fraction | None
    high: Fraction | None
    per: str
    source: str
    locator: str = ""


@dataclass(frozen=True, slots=True)
class Measures:
    """The measures of one system, with the closed word lists that stand beside them on a food line."""

    system: str
    units: Mapping[str, Measure]
    words: Mapping[str, str]
    cuts: Cuts
    preparations: Preparations

    @classmethod
    def from_rows(
        cls, rows: Sequence[Row], system: str, cut_rows: Sequence[Row] = (), preparation_rows: Sequence[Row] = ()
    ) -> Measures:
        """Measures of ``system`` (UK, US, metric or AU) from the rows of measures.csv, and the words of
        cuts.csv and preparations.csv.

        Raises ValueError for an unknown system, or naming file and line when a value is no number.
        """
        if system not in SYSTEMS:
            raise ValueError(f"measures should be one of {', '.join(SYSTEMS)}, not {system!r}")
        units: dict[str, Measure] = {}
        words: dict[str, str] = {}
        for row in rows:
            unit = row.text("unit")
            for word in row.items("words"):
                words[word] = unit
            if row.text("system") in ("any", system):
                value = _fraction(row, "value")
                units[unit] = Measure(
                    unit,
                    row.text("kind"),
                    value,
                    value if (low := _fraction(row, "low")) is None else low,
                    value if (high := _fraction(row, "high")) is None else high,
                    row.text("per"),
                    row.text("source"),
                    row.text("locator"),
                )
        return cls(system, units, words, Cuts.from_rows(cut_rows), Preparations.from_rows(preparation_rows))

    def get(self, unit: str) -> Measure | None:
        """The measure of a unit id; None when this system has none."""
        return self.units.get(unit)

    def kind(self, unit: str) -> str:
        """The kind of a unit ("mass", "count" ...); "" when this system has no such unit."""
        measure = self.units.get(unit)
        return measure.kind if measure else ""

    def ratio(self, one: str, two: str) -> Fraction | None:
        """How many of the unit ``two`` one of ``one`` is; None where they don't measure the same."""
        a, b = self.units.get(one), self.units.get(two)
        return a.value / b.value if a and b and a.value and b.value and a.per == b.per else None

    def ml(self, unit: str) -> Fraction | None:
        """Exact millilitres of one ``unit``; None when it is no volume (or this system has no such unit)."""
        return self._value(unit, "ml")

    def grams(self, unit: str) -> Fraction | None:
        """Exact grams of one ``unit``; None when it is no mass. A handful or a knob is an approximation:
        ask the food's own portions first."""
        return self._value(unit, "g")

    def range(self, unit: str) -> tuple[Fraction, Fraction] | None:
        """Low and high of one ``unit`` in its own ``per`` (equal for exact measures)."""
        measure = self.units.get(unit)
        if measure is None or measure.low is None or measure.high is None:
            return None
        return measure.low, measure.high

    def source(self, unit: str) -> str:
        """The source id of a unit; "" when there is no such unit."""
        measure = self.units.get(unit)
        return measure.source if measure else ""

    def unit(self, word: str) -> str | None:
        """The unit id that a written word means ("Tablespoons" -> "tbsp"); None when it is no unit.

        ``T`` and ``t`` (tablespoon or teaspoon) and ``Mg`` are no unit here: they are ambiguous.
        """
        if word in ("T", "t", "Mg", "MG"):
            return None
        plain = word.replace(".", "").lower()
        return self.words.get(word) or self.words.get(plain)

    def gas_mark(self, mark: str) -> float | None:
        """Degrees Celsius of a gas mark ("4", "1/2"); None when there is no such mark."""
        measure = self.units.get(f"gas-{mark}")
        return float(measure.value) if measure and measure.value is not None else None

    def _value(self, unit: str, per: str) -> Fraction | None:
        measure = self.units.get(unit)
        return measure.value if measure and measure.per == per else None


def _fraction(row: Row, column: str) -> Fraction | None:
    cell = row.text(column)
    if not cell:
        return None
    try:
        return Fraction(cell)
    except (ValueError, ZeroDivisionError):
        raise ValueError(f"{row.file}:{row.line}: {column} should be a number, not {cell!r}") from None
