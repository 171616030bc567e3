"""The rows of the cook-time table."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.cooking.heat import Shape
from spoonproof.model.finding import Basis
from spoonproof.model.recipe import Minutes
from spoonproof.model.record import dataclass
from spoonproof.model.table import Row

STRETCH = (1.5, 3.0)  # crisp-tender to baby-soft
SOFT = frozenset(("soft", "wilted"))


@dataclass(frozen=True, slots=True)
class TimeRow:
    """One published or customary time: ``mm`` and ``shape`` None where the source gives no thickness."""

    foods: tuple[str, ...]
    cut: str
    mm: float | None
    shape: Shape | None
    method: str
    minutes: Minutes
    doneness: str
    spent: float | None
    source: str
    basis: Basis
    note: str = ""

    @property
    def soft(self) -> Minutes:
        """Minutes to baby-soft at the row's own thickness."""
        if self.doneness in SOFT:
            return self.minutes
        return Minutes(self.minutes.low * STRETCH[0], self.minutes.high * STRETCH[1])


METHODS = ("steam", "boil", "oven", "fry", "microwave", "pressure", "soak")
_DONENESS = ("unsaid", "crisp-tender", "just-tender", "tender", "soft", "wilted")
_BASES: Mapping[str, Basis] = {"read": "read", "common-practice": "common-practice", "from-memory": "from-memory"}


def time_row(row: Row) -> TimeRow:
    """A row of the table read; ValueError with file and line when it makes no sense."""
    where = f"{row.file}:{row.line}"
    low, high = row.number("minutes_low"), row.number("minutes_high")
    if low is None or high is None or not 0 <= low <= high:
        raise ValueError(f"{where}: a cook time needs minutes_low and minutes_high, the smaller first")
    shape = row.optional("shape")
    if shape not in (None, "slab", "cylinder", "cube", "sphere"):
        raise ValueError(f"{where}: the shape {shape!r} is not slab, cylinder, cube or sphere")
    for column, known in (("method", METHODS), ("doneness", _DONENESS), ("basis", tuple(_BASES))):
        if row.text(column) not in known:
            raise ValueError(f"{where}: {column} is one of {', '.join(known)}, not {row.text(column)!r}")
    if not row.text("source") or not row.items("foods"):
        raise ValueError(f"{where}: a cook time needs its foods and a source")
    return TimeRow(
        foods=row.items("foods"),
        cut=row.text("cut"),
        mm=row.number("mm"),
        shape=shape,  # type: ignore[arg-type]  # checked above
        method=row.text("method"),
        minutes=Minutes(low, high),
        doneness=row.text("doneness"),
        spent=row.number("spent"),
        source=row.text("source"),
        basis=_BASES[row.text("basis")],
        note=row.text("note"),
    )
