"""Methods side by side: minutes to soft, and what is published about the vitamins kept. Softness comes first.

No share is ever given without its method, its time and its source; where nothing was found, that is said; shares for
another food are not carried over. No method is advised below the time that makes it soft.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal, cast

from spoonproof.cooking.softness import CookTimes, Need
from spoonproof.model.finding import Basis
from spoonproof.model.recipe import Cut
from spoonproof.model.record import dataclass, field
from spoonproof.model.table import Row

Method = Literal["steam", "microwave", "boil", "pressure", "oven"]
METHODS: tuple[Method, ...] = ("steam", "microwave", "boil", "pressure", "oven")
NUTRIENTS = ("vitamin C", "folate", "carotenoids")
METHOD_WORDS: Mapping[str, str] = {
    "steam": "steam",
    "microwave": "microwave",
    "boil": "boil",
    "pressure": "pressure-cook",
    "oven": "roast",
}
# What stands in the sink afterwards, by custom.
POTS: Mapping[str, tuple[str, ...]] = {
    "steam": ("pan", "steamer basket", "lid"),
    "microwave": ("covered dish",),
    "boil": ("pan", "lid", "colander"),
    "pressure": ("pressure pan", "trivet"),
    "oven": ("roasting tin",),
}


@dataclass(frozen=True, slots=True)
class Kept:
    """One published share: percent of the raw amount kept, at a time.

    ``minutes`` is (low, high) or None where the source gives none; shares may pass 100 where heat sets more free.
    """

    food: str
    nutrient: str
    method: str
    minutes: tuple[float, float] | None
    low: float
    high: float
    source: str
    basis: Basis
    note: str = ""

    @property
    def words(self) -> str:
        """ "44 % after boiling for 5 min", the time always said, or said to be missing."""
        share = f"{self.low:g} %" if self.low == self.high else f"{self.low:g}-{self.high:g} %"
        if self.minutes is None:
            return f"{share} ({METHOD_WORDS[self.method]}, time not given)"
        low, high = self.minutes
        time = f"{low:g}" if low == high else f"{low:g}-{high:g}"
        return f"{share} ({METHOD_WORDS[self.method]}, {time} min)"


@dataclass(frozen=True, slots=True)
class MethodRow:
    """One food by one method. ``need`` is None where the cook-time table can't say."""

    food: str
    method: Method
    need: Need | None
    kept: Mapping[str, tuple[Kept, ...]]
    pots: tuple[str, ...]

    def range(self, nutrient: str) -> tuple[float, float] | None:
        """Lowest and highest published share for a nutrient; None where nothing was found."""
        found = self.kept.get(nutrient, ())
        return (min(k.low for k in found), max(k.high for k in found)) if found else None


@dataclass(frozen=True)
class VitaminsKept:
    """The published shares by food and method."""

    kept: Mapping[tuple[str, str], tuple[Kept, ...]] = field(default_factory=dict)

    @classmethod
    def from_rows(cls, rows: Iterable[Row]) -> VitaminsKept:
        """Columns: id, foods, nutrient, method, minutes_low, minutes_high, kept_low, kept_high, source, basis, note.

        Raises ValueError naming file and line when a share, a source or a known method is missing.
        """
        held: dict[tuple[str, str], list[Kept]] = {}
        for row in rows:
            where = f"{row.file}:{row.line}"
            low, high = row.number("kept_low"), row.number("kept_high")
            if low is None or high is None or not 0 <= low <= high:
                raise ValueError(f"{where}: kept_low and kept_high are percents, the smaller first")
            if row.text("method") not in METHODS or row.text("nutrient") not in NUTRIENTS or not row.text("source"):
                raise ValueError(f"{where}: a share needs a known method, a known nutrient and a source")
            first, last = row.number("minutes_low"), row.number("minutes_high")
            minutes = None if first is None else (first, first if last is None else last)
            for food in row.items("foods"):
                held.setdefault((food, row.text("method")), []).append(
                    Kept(
                        food,
                        row.text("nutrient"),
                        row.text("method"),
                        minutes,
                        low,
                        high,
                        row.text("source"),
                        cast(Basis, row.text("basis")),
                        row.text("note"),
                    )
                )
        return cls({key: tuple(found) for key, found in held.items()})

    def of(self, food: str, method: str, nutrient: str) -> tuple[Kept, ...]:
        """Every published share of ``nutrient`` in ``food`` by ``method``."""
        return tuple(kept for kept in self.kept.get((food, method), ()) if kept.nutrient == nutrient)


def side_by_side(food: str, cut: Cut | None, times: CookTimes, vitamins: VitaminsKept) -> tuple[MethodRow, ...]:
    """Every method for one food (a ``softens_as`` id), in a fixed order: none is left out for keeping less."""
    return tuple(
        MethodRow(
            food,
            method,
            times.needed(food, cut, method),
            {nutrient: vitamins.of(food, method, nutrient) for nutrient in NUTRIENTS},
            POTS[method],
        )
        for method in METHODS
    )
