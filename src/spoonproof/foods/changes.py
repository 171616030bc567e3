"""What cooking changes: the share of vitamins and minerals that is kept, and the weight that is left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from spoonproof.model.food import Food
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.table import Row
from spoonproof.model.treatment import Heat, Treatment

# A way of cooking that the tables do not know for a kind of food is read as the next of these that they know.
_NEXT = {
    "grilled": ("baked", "fried"),
    "baked": ("grilled",),
    "fried": ("grilled", "baked"),
    "stewed": ("boiled-kept",),
    "pressure": ("boiled-kept",),
    "microwaved": ("steamed", "boiled-kept"),
    "steamed": ("boiled-kept",),
    "boiled-drained": ("boiled-kept",),
    "boiled-kept": ("stewed",),
}
_BY_MEDIUM = {
    "steam": "steamed",
    "water": "boiled",
    "oven": "baked",
    "fat": "fried",
    "pan": "boiled",
    "microwave": "microwaved",
    "pressure": "pressure",
}
NO_FACTOR = ("selenium_ug", "vitamin_d_ug", "vitamin_e_mg", "vitamin_k_ug")
"""Nutrients that cooking may touch and for which no factor is published: all is counted as kept, and said so."""


class Yield(NamedTuple):
    """Cooked weight for a raw weight of 1, between ``low`` and ``high``."""

    factor: float
    low: float
    high: float
    source: str
    locator: str


class Kept(NamedTuple):
    """The share of each nutrient that is kept (1 where absent), the way of cooking read, and what was assumed."""

    shares: Mapping[str, float]
    methods: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Changes:
    """The retention factors and yields that are published, and the assumptions for what is not."""

    factors: Mapping[tuple[str, str], Mapping[str, float]]
    notes: Mapping[tuple[str, str], str]
    yields: Mapping[tuple[str, str], Yield]

    @classmethod
    def from_rows(cls, retention: Sequence[Row], yields: Sequence[Row]) -> Changes:
        """From the rows of retention.csv and yields.csv. Raises ValueError with file and line for a factor that is
        no percentage or a yield out of its own range."""
        factors: dict[tuple[str, str], dict[str, float]] = {}
        notes: dict[tuple[str, str], str] = {}
        for row in retention:
            place = row.text("group"), row.text("method")
            factors[place] = dict(_shares(row))
            notes[place] = row.text("note")
        found: dict[tuple[str, str], Yield] = {}
        for row in yields:
            factor, low, high = row.number("yield_pct"), row.number("low"), row.number("high")
            if factor is None or low is None or high is None or not 0 < low <= factor <= high:
                raise ValueError(f"{row.file}:{row.line}: a yield needs yield_pct between its low and high")
            found[row.text("what"), row.text("method")] = Yield(
                factor / 100, low / 100, high / 100, row.text("source"), row.text("locator")
            )
        return cls(factors, notes, found)

    def kept(self, food: Food, treatment: Treatment) -> Kept:
        """What ``food`` keeps through all its heats: of each nutrient the smallest share that any heat leaves.
        (Factors are of whole ways of cooking; multiplying them would take the same loss twice.)"""
        methods = cooking(treatment)
        if not methods or not food.retention:
            return Kept({})
        shares: dict[str, float] = {}
        assumed: list[str] = []
        for method in methods:
            place = self._place(food, method, treatment)
            if place is None:
                assumed.append(f"{food.name}, {method}: no published factor, all vitamins and minerals counted as kept")
                continue
            for nutrient, share in self.factors[place].items():
                shares[nutrient] = min(share, shares.get(nutrient, 1.0))
            if self.notes[place]:
                assumed.append(f"{food.name}: {self.notes[place]}")
        if len(methods) > 1:
            assumed.append(f"{food.name}, cooked in {len(methods)} ways: the larger loss counted once")
        return Kept(shares, methods, tuple(assumed), ("usda-retention-6",) if shares else ())

    def _place(self, food: Food, method: str, treatment: Treatment) -> tuple[str, str] | None:
        if food.retention == "milk" and method != "reheated":
            time = treatment.heated_minutes
            minutes = time.high if time is not None else 10
            method = "heated-10" if minutes <= 20 else "heated-30" if minutes <= 45 else "heated-60"
        return next((p for p in _tries(food.retention, method) if p in self.factors), None)

    def yields_of(self, food: Food, method: str) -> Yield | None:
        """What is left of the weight of ``food`` when cooked by ``method``; None when nothing tells."""
        for what in (f"food:{food.id}", food.retention):
            place = next((p for p in _tries(what, method) if p in self.yields), None) if what else None
            if place is not None:
                return self.yields[place]
        return None

    def liquid(self, treatment: Treatment) -> Yield | None:
        """What is left of a liquid that was cooked in: assumed, by whether it was covered."""
        methods = cooking(treatment)
        if not methods:
            return None
        covered = any(heat.covered for heat in treatment.heats)
        method = "covered" if covered else "baked" if "baked" in methods else "boiled-kept"
        return self.yields.get(("liquid", method))


def cooking(treatment: Treatment) -> tuple[str, ...]:
    """The ways a food was cooked, each once, in order: steamed, boiled-kept, boiled-drained, stewed, baked,
    grilled, fried, microwaved, pressure or reheated (only when that is all)."""
    found = dict.fromkeys(method for heat in treatment.heats if (method := method_of(heat)))
    if len(found) > 1:
        found.pop("reheated", None)
    return tuple(found)


def method_of(heat: Heat) -> str:
    """The tables' word for one stretch of heat; "" when it does not cook."""
    method = heat.retention or _BY_MEDIUM.get(heat.medium, "")
    if method == "boiled":
        return "boiled-drained" if heat.water == "drained" else "boiled-kept"
    return method


def _tries(what: str, method: str) -> Iterator[tuple[str, str]]:
    yield what, method
    for other in _NEXT.get(method, ()):
        yield what, other


def _shares(row: Row) -> Iterator[tuple[str, float]]:
    for column in row.cells:
        if column in ("group", "method", "source", "locator", "note"):
            continue
        percent = row.number(column)
        if percent is None:
            continue
        if not 0 <= percent <= 100:
            raise ValueError(f"{row.file}:{row.line}: {column} should be from 0 to 100")
        yield column, percent / 100
        if column == "vitamin_a_rae_ug":
            yield "retinol_ug", percent / 100
