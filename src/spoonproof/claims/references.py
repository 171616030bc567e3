"""Reference amounts (NRVs, daily values), label tolerances and the allergen lists, by name."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.model.finding import SourceRef
from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.model.table import Row


class Reference(NamedTuple):
    """A day's reference amount in the nutrient key's unit."""

    amount: float
    ref: SourceRef


class Tolerance(NamedTuple):
    """How far a declared value may lie from the true one: ``low``/``high`` are added to it,
    as an amount (``percent`` False) or as percent of it, for amounts from ``start`` to ``end`` per 100 g."""

    low: float
    high: float
    percent: bool
    start: float
    end: float
    ref: SourceRef


def _ref(row: Row) -> SourceRef:
    basis = row.text("basis")
    return SourceRef(row.text("source"), row.text("locator"), "from-memory" if basis == "from-memory" else "read")


@dataclass(frozen=True, slots=True)
class ReferenceAmounts:
    """``shared/claim_references.csv``: columns list, nutrient, amount, unit, low, high, from, to, source,
    locator, basis.

    ``list`` is the reference's name ("EU NRV", "EU baby-food NRV", "US DV adults", "US DV 1-3 years",
    "US DV infants"), or "tolerance" for the rows that say how exact a label must be.
    """

    amounts: Mapping[tuple[str, str], Reference] = field(default_factory=dict)
    tolerances: Mapping[str, tuple[Tolerance, ...]] = field(default_factory=dict)

    @classmethod
    def from_rows(cls, rows: Sequence[Row]) -> ReferenceAmounts:
        """Build from the table's rows; a cell that is no number raises ValueError with file and line."""
        amounts: dict[tuple[str, str], Reference] = {}
        tolerances: dict[str, list[Tolerance]] = {}
        for row in rows:
            nutrient = row.text("nutrient")
            if row.text("list") == "tolerance":
                tolerances.setdefault(nutrient, []).append(
                    Tolerance(
                        row.number("low") or 0.0,
                        row.number("high") or 0.0,
                        row.text("unit") == "%",
                        row.number("from") or 0.0,
                        row.number("to") or float("inf"),
                        _ref(row),
                    )
                )
                continue
            amount = row.number("amount")
            if amount is not None:
                amounts[row.text("list"), nutrient] = Reference(amount, _ref(row))
        return cls(amounts, {nutrient: tuple(found) for nutrient, found in tolerances.items()})

    def amount(self, reference: str, nutrient: str) -> float | None:
        """The day's reference amount; None when the list has none for this nutrient."""
        found = self.amounts.get((reference, nutrient))
        return found.amount if found else None

    def ref(self, reference: str, nutrient: str) -> SourceRef | None:
        """Where that amount stands."""
        found = self.amounts.get((reference, nutrient))
        return found.ref if found else None

    def lists(self) -> tuple[str, ...]:
        """Names of the lists, in the table's order."""
        return tuple(dict.fromkeys(name for name, _ in self.amounts))

    def tolerance(self, nutrient: str, per_100g: float) -> Tolerance | None:
        """The tolerance of a nutrient at an amount per 100 g."""
        return next((t for t in self.tolerances.get(nutrient, ()) if t.start <= per_100g < t.end), None)


@dataclass(frozen=True, slots=True)
class AllergenLists:
    """``shared/allergen_lists.csv``: columns market, allergen, words, threshold, note, source, locator, basis."""

    lists: Mapping[str, Mapping[str, SourceRef]] = field(default_factory=dict)
    words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @classmethod
    def from_rows(cls, rows: Sequence[Row]) -> AllergenLists:
        """Build from the table's rows."""
        lists: dict[str, dict[str, SourceRef]] = {}
        words: dict[str, dict[str, None]] = {}
        for row in rows:
            lists.setdefault(row.text("market"), {})[row.text("allergen")] = _ref(row)
            words.setdefault(row.text("allergen"), {}).update(dict.fromkeys(row.items("words")))
        return cls(lists, {allergen: tuple(found) for allergen, found in words.items()})

    def named(self, market: str) -> Mapping[str, SourceRef]:
        """The allergens a market's law names, each with its source."""
        return self.lists.get(market, {})
