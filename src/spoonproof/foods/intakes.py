"""A day's reference intakes by authority and age. Never mixed; what a share leaves out is always said with it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal

from spoonproof.model.food import NUTRIENT_UNITS
from spoonproof.model.numbers import Estimate
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.table import Row

Authority = Literal["EFSA", "US"]
AUTHORITIES: tuple[Authority, ...] = ("EFSA", "US")
_BY_MARKET: Mapping[str, Authority] = {"EU": "EFSA", "GB": "EFSA", "US": "US"}
_EXACT_KINDS = ("PRI", "RDA")


class Intake(NamedTuple):
    """One reference value for a day. ``kind``: PRI or RDA (covers nearly all children), AI (what healthy children
    are seen to eat: a weaker kind of knowledge), or another kind in words. ``counted_in``: RE, DFE or ""."""

    nutrient: str
    kind: str
    value: float
    unit: str
    counted_in: str
    source: str
    note: str


class Share(NamedTuple):
    """An amount beside its reference value: ``share`` 0 to 1 and beyond, between ``low`` and ``high``."""

    intake: Intake
    share: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Reference:
    """The reference values of one authority for one age band. ``leaves_out`` says, in words, what must stand
    beside every share; ``nutrients`` is empty where the authority has none for the age."""

    authority: Authority
    age_band: str
    nutrients: Mapping[str, Intake]
    leaves_out: tuple[str, ...]

    def share(self, nutrient: str, amount: Estimate) -> Share | None:
        """``amount`` (of a portion) as a share of the day; None where there is no reference value."""
        intake = self.nutrients.get(nutrient)
        if intake is None or not intake.value:
            return None
        return Share(intake, amount.amount / intake.value, amount.low / intake.value, amount.high / intake.value)


class _Band(NamedTuple):
    authority: str
    low: int
    high: int
    name: str


class Intakes:
    """All reference values."""

    def __init__(self, values: Mapping[_Band, Mapping[str, Intake]]) -> None:
        self._values = values

    @classmethod
    def from_rows(cls, rows: Sequence[Row]) -> Intakes:
        """From the rows of intakes.csv. Raises ValueError with file and line for a nutrient or a number that is
        none, or a value above 0 that stands twice."""
        found: dict[_Band, dict[str, Intake]] = {}
        for row in rows:
            low, high, value = row.number("from_months"), row.number("to_months"), row.number("value")
            nutrient = row.text("nutrient")
            if low is None or high is None or value is None or not value > 0 or nutrient not in NUTRIENT_UNITS:
                raise ValueError(f"{row.file}:{row.line}: a row needs an age, a known nutrient and a value above 0")
            band = found.setdefault(_Band(row.text("authority"), int(low), int(high), row.text("age_band")), {})
            if nutrient in band:
                raise ValueError(f"{row.file}:{row.line}: {nutrient} stands twice for this age")
            band[nutrient] = Intake(
                nutrient,
                row.text("kind"),
                value,
                NUTRIENT_UNITS[nutrient],
                row.text("counted_in"),
                row.text("source"),
                row.text("note"),
            )
        return cls(found)

    def reference(self, months: int, authority: Authority) -> Reference:
        """The values of ``authority`` for a child of ``months`` months. At six months no authority has any for
        foods beside milk: the answer is empty and says so."""
        for band, nutrients in self._values.items():
            if band.authority == authority and band.low <= months <= band.high:
                return Reference(authority, band.name, nutrients, _leaves_out(nutrients, months))
        years = "under 7 months" if months < 7 else f"{months} months"
        none = f"{authority} sets no reference intakes for {years}" + (
            ": before seven months milk is the measure, and first foods are for learning" if months < 7 else ""
        )
        return Reference(authority, years, {}, (none,))

    def energy_from_foods(self, months: int) -> Intake | None:
        """kcal a day from foods beside breast milk, by WHO; None for an age it gives no figure for."""
        for band, nutrients in self._values.items():
            if band.authority == "WHO" and band.low <= months <= band.high:
                return nutrients.get("energy_kcal")
        return None


def authority_for(markets: Sequence[str]) -> Authority:
    """Whose values a channel's first market goes by: the US for the US, EFSA for the others."""
    return next((_BY_MARKET[market] for market in markets if market in _BY_MARKET), "EFSA")


def _leaves_out(nutrients: Mapping[str, Intake], months: int) -> tuple[str, ...]:
    milk = "the rest of the day's food, and milk, which brings a large part of most nutrients"
    said = [f"a share of a day leaves out {milk}: it is no aim for one portion. Follow the baby's appetite"]
    if months < 12:
        said.append("in the first year milk stays the main food")
    if "sodium_mg" in nutrients:
        said.append("of sodium, the salt in food, less is better")
    adequate = [i for i in nutrients.values() if i.kind not in _EXACT_KINDS]
    if adequate:
        said.append("AI is what healthy children are seen to eat, a weaker basis than PRI or RDA")
    if any(i.source == "from-memory" for i in nutrients.values()):
        said.append("values marked † were not read in their source and decide nothing")
    return tuple(said)
