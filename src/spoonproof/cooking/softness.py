"""How long until it is soft enough for a baby: always a range, with the source of each end.

Published steaming times fit about half the firmness left (crisp-tender); soft enough to squash takes one and a half to
three times as long, so rows that do not say "soft" are stretched by that and marked. Between and beyond the
thicknesses of the rows only the time to heat the middle is added or taken off: it goes with the square of the
thickness, and below about 12 mm it hardly counts, so that the softening itself rules there. No time is ever shorter
than it takes to heat the middle. A range always ends on a squash test: kitchens and roots differ more than any table.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from spoonproof.cooking.heat import ALPHA, ALPHA_FAST, Shape, minutes_to_heat
from spoonproof.cooking.time_row import METHODS, SOFT, STRETCH, TimeRow, time_row
from spoonproof.model.recipe import Cut, Minutes
from spoonproof.model.record import dataclass, field
from spoonproof.model.table import Row

SCALE = 2.0  # a row speaks for pieces from half to twice its own thickness
THICKEST = 80  # mm: beyond this nothing is asked
PRESSURE_C = 118.0

# The method whose rows stand in where a food has none of its own: boiling water and steam both hold 100 °C.
_STAND_INS: Mapping[str, tuple[str, ...]] = {"boil": ("steam",), "steam": ("boil",), "pan": ("boil", "steam")}

# How thick a cut is when nothing better is known, mm: the middle of what cooks mean by the word.
_USUAL_MM: Mapping[str, float] = {
    "dice": 10, "chunk": 25, "baton": 12, "strip": 7, "coin": 5, "slice": 6, "wedge": 25, "chopped": 15,
    "shredded": 3, "grated": 2, "minced": 3, "ground": 1, "flaked": 10, "crumbled": 6, "torn": 3,
}  # fmt: skip
_SHAPES: Mapping[str, Shape] = {
    "slice": "slab", "coin": "slab", "strip": "slab", "shredded": "slab", "baton": "cylinder", "flaked": "slab",
    "torn": "slab",
}  # fmt: skip
_WHOLE_MM = {"half": 1.0, "quarter": 1.0, "whole": 1.0}


@dataclass(frozen=True, slots=True)
class Need:
    """What makes a food soft by one method, in minutes.

    ``crisp`` is the range to crisp-tender (equal to ``soft`` where the row says soft already); ``stretched`` when
    the bounded factor was used at either end; ``stand_in`` the method whose rows stood in, or ""; ``floor`` the time to
    heat the middle; ``mm`` the thickness judged, None when it played no part; ``beyond`` when no row is near it.
    """

    soft: Minutes
    crisp: Minutes
    low_row: TimeRow
    high_row: TimeRow
    method: str
    floor: float = 0.0
    mm: float | None = None
    stand_in: str = ""
    spent: float | None = None
    beyond: bool = False

    @property
    def stretched(self) -> bool:
        """Whether a crisp-tender row was stretched for a baby."""
        return self.low_row.doneness not in SOFT or self.high_row.doneness not in SOFT

    @property
    def sources(self) -> tuple[str, ...]:
        """The source ids of both ends, low first."""
        return tuple(dict.fromkeys((self.low_row.source, self.high_row.source)))

    @property
    def published(self) -> bool:
        """Whether both ends rest on something that was read."""
        return self.low_row.basis == self.high_row.basis == "read"


@dataclass(frozen=True)
class CookTimes:
    """The cook-time table by food (the food record's ``softens_as``) and method."""

    rows: Mapping[tuple[str, str], tuple[TimeRow, ...]] = field(default_factory=dict)

    @classmethod
    def from_rows(cls, rows: Iterable[Row]) -> CookTimes:
        """Columns: id, foods, cut, mm, shape, method, minutes_low, minutes_high, doneness, spent, source, basis, note.

        Raises ValueError naming file and line when a row has no time, no source, a reversed range or an unknown word.
        """
        held: dict[tuple[str, str], list[TimeRow]] = {}
        for row in rows:
            read = time_row(row)
            for food in read.foods:
                held.setdefault((food, read.method), []).append(read)
        return cls({key: tuple(found) for key, found in held.items()})

    def knows(self, food: str) -> bool:
        """Whether any row is about this food."""
        return any((food, method) in self.rows for method in METHODS)

    def needed(self, food: str, cut: Cut | None, method: str) -> Need | None:
        """Minutes that make ``food``, cut as ``cut``, soft by ``method``; None when the table cannot say.

        ``food`` is a ``softens_as`` id; ``method`` steam, boil, pan, oven, fry, microwave, pressure or soak. A finer
        cut never needs longer than a coarser one of the same shape.
        """
        mm, shape = thickness(cut)
        for stand_in in ("", *_STAND_INS.get(method, ())):
            rows = self.rows.get((food, stand_in or method), ())
            if rows:
                return _need(rows, cut.shape if cut else "", mm, shape, method, stand_in)
        return None


def thickness(cut: Cut | None) -> tuple[float | None, Shape]:
    """The thickness in mm that decides when a piece is hot (the larger end of a range), and its shape."""
    if cut is None or cut.shape in _WHOLE_MM:
        return (cut.high_mm if cut else None), "cube"
    shape = _SHAPES.get(cut.shape, "cube")
    return cut.high_mm or cut.low_mm or _USUAL_MM.get(cut.shape), shape


def _need(
    rows: tuple[TimeRow, ...], cut: str, mm: float | None, shape: Shape, method: str, stand_in: str
) -> Need | None:
    sized = tuple(row for row in rows if row.mm is not None)
    named = tuple(row for row in rows if row.cut == cut and row.mm is None)
    if cut in ("whole", "half", "wedge", "floret") and named:
        return _unsized(named, method, stand_in)
    if mm is not None and sized:
        return _envelope(sized, min(max(1, round(mm)), THICKEST), mm, shape, method, stand_in)
    own = tuple(row for row in rows if row.mm is None and row.cut not in ("half", "wedge"))
    pieces = own if cut in ("", "whole") else tuple(row for row in own if row.cut != "whole") or own
    small = tuple(row for row in pieces if row.cut in ("leaf", "grain", "floret", "piece")) or pieces
    if small:
        return _unsized(small if cut != "whole" else pieces, method, stand_in)
    # the size was not said: any of the sizes of the table may be meant
    return _unsized(sized or rows, method, stand_in)


def _unsized(rows: tuple[TimeRow, ...], method: str, stand_in: str) -> Need:
    low = min(rows, key=lambda row: row.soft.low)
    high = max(rows, key=lambda row: row.soft.high)
    return Need(
        soft=Minutes(low.soft.low, high.soft.high),
        crisp=Minutes(min(r.minutes.low for r in rows), max(r.minutes.high for r in rows)),
        low_row=low,
        high_row=high,
        method=method,
        stand_in=stand_in,
        spent=_spent(rows),
    )


@lru_cache(maxsize=1024)
def _envelope(rows: tuple[TimeRow, ...], top: int, mm: float, shape: Shape, method: str, stand_in: str) -> Need:
    """The range at ``mm``: never less than at any finer cut, millimetre by millimetre."""
    need: Need | None = None
    for size in (*range(1, top), mm):
        if size > mm:
            break
        here = _scaled(rows, size, shape, method, stand_in)
        need = here if need is None else _at_least(here, need)
    assert need is not None
    return need


def _at_least(here: Need, finer: Need) -> Need:
    low_from, high_from = (here if here.soft.low >= finer.soft.low else finer), here
    if finer.soft.high > here.soft.high:
        high_from = finer
    return Need(
        soft=Minutes(low_from.soft.low, high_from.soft.high),
        crisp=Minutes(max(here.crisp.low, finer.crisp.low), max(here.crisp.high, finer.crisp.high)),
        low_row=low_from.low_row,
        high_row=high_from.high_row,
        method=here.method,
        floor=here.floor,
        mm=here.mm,
        stand_in=here.stand_in,
        spent=here.spent,
        beyond=here.beyond,
    )


def _scaled(rows: tuple[TimeRow, ...], mm: float, shape: Shape, method: str, stand_in: str) -> Need:
    near = tuple(row for row in rows if row.mm and row.mm / SCALE <= mm <= row.mm * SCALE)
    beyond = not near
    if beyond:
        closest = min(_apart(row, mm) for row in rows)
        near = tuple(row for row in rows if _apart(row, mm) <= closest + 1e-9)
    floor = _floor(method, shape, mm)
    at_size = [(row, _moved(row, mm, shape, method)) for row in near]
    soft = [(row, _stretch(row, crisp)) for row, crisp in at_size]
    low_row, low = min(soft, key=lambda pair: pair[1].low)
    high_row, high = max(soft, key=lambda pair: pair[1].high)
    return Need(
        soft=Minutes(max(low.low, floor), max(high.high, floor)),
        crisp=Minutes(
            max(floor, min(crisp.low for _, crisp in at_size)), max(floor, max(crisp.high for _, crisp in at_size))
        ),
        low_row=low_row,
        high_row=high_row,
        method=method,
        floor=floor,
        mm=mm,
        stand_in=stand_in,
        spent=_spent(rows),
        beyond=beyond,
    )


def _apart(row: TimeRow, mm: float) -> float:
    assert row.mm is not None
    return max(row.mm / mm, mm / row.mm)


def _moved(row: TimeRow, mm: float, shape: Shape, method: str) -> Minutes:
    """The row's own minutes at another thickness: the time to heat the middle is exchanged, the softening stays.

    At least half of the row's time is kept for the softening, so that a thinner piece is never done at once.
    """
    assert row.mm is not None
    if method in ("microwave", "soak"):  # heat comes from within, or not at all
        return row.minutes
    medium = PRESSURE_C if method == "pressure" else 100.0
    heating = minutes_to_heat(row.shape or "cube", row.mm, medium_c=medium, alpha=ALPHA)
    there = minutes_to_heat(shape, mm, medium_c=medium, alpha=ALPHA)
    low, high = (max(minutes / 2, minutes - heating) for minutes in row.minutes)
    return Minutes(low + there, high + there)


def _stretch(row: TimeRow, minutes: Minutes) -> Minutes:
    if row.doneness in SOFT:
        return minutes
    return Minutes(minutes.low * STRETCH[0], minutes.high * STRETCH[1])


def _floor(method: str, shape: Shape, mm: float) -> float:
    if method in ("microwave", "soak"):
        return 0.0
    return minutes_to_heat(shape, mm, medium_c=PRESSURE_C if method == "pressure" else 100.0, alpha=ALPHA_FAST)


def _spent(rows: tuple[TimeRow, ...]) -> float | None:
    stated = [row.spent for row in rows if row.spent is not None]
    return max(stated) if stated else None
