"""Kitchen measures as exact fractions, by the measure system a channel declares.

A unit word is read the same way everywhere; what a cup or a tablespoon holds differs by system.
Pinch, dash, handful and their kin are approximations with a range (``common-practice``).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.model.table import Row
from spoonproof.reading.cuts import Cuts
from spoonproof.reading.runs import begins_of, listed

_PARTS: Mapping[str, str] = {
    "skin": "skinned", "peel": "peeled", "core": "cored", "stone": "stoned", "pit": "stoned", "pip": "deseeded",
    "seed": "deseeded", "bone": "boned", "shell": "shelled", "stalk": "trimmed", "stem": "trimmed", "end": "trimmed",
    "root": "trimmed", "fat": "trimmed", "rind": "trimmed", "gristle": "trimmed", "sinew": "trimmed",
    "membrane": "trimmed", "string": "trimmed", "top": "trimmed", "pith": "trimmed",
    "rib": "trimmed", "husk": "shelled", "midrib": "trimmed", "tail": "trimmed",
}  # fmt: skip
_PART = "|".join(_PARTS)
_TAKEN_OFF = re.compile(  # "bones picked out", "skin and seeds taken off"
    rf"(?i)\b(?:(?:any|all|excess|visible)[ \t])?(?:pin[ -])?(?P<part>{_PART})s?"
    rf"(?:(?:,[ \t]?|[ \t](?:and|&)[ \t])(?:any[ \t]|the[ \t]|tough[ \t]|pin[ -])?(?P<also>{_PART})s?)?"
    r"[ \t](?:all[ \t]|carefully[ \t]|well[ \t])?"
    r"(?:(?:taken|stripped|thrown|picked|pulled|cut|scooped|scraped|snipped|sliced|peeled|pressed|squeezed|popped)"
    r"[ \t](?:out|off|away)|out|off|discarded|removed|trimmed)\b"
)

KINDS = ("prepared", "state", "size", "sort", "ignored", "part")


class FoundWord(NamedTuple):
    """``text[start:end]`` is a form of ``word``, of ``kind``: prepared, state, size, sort, ignored or part."""

    start: int
    end: int
    word: str
    kind: str


@dataclass(frozen=True, slots=True)
class Preparations:
    """The words of preparations.csv by form."""

    forms: Mapping[str, tuple[tuple[str, str], ...]] = field(default_factory=dict)
    longest: int = 1
    begins: frozenset[str] = frozenset()

    @classmethod
    def from_rows(cls, rows: Sequence[Row]) -> Preparations:
        """Raises ValueError, naming file and line, on an unknown kind."""
        forms: dict[str, tuple[tuple[str, str], ...]] = {}
        for row in rows:
            kind = row.text("kind")
            if kind not in KINDS:
                raise ValueError(f"{row.file}:{row.line}: kind should be one of {', '.join(KINDS)}, not {kind!r}")
            for form in row.items("forms"):
                forms[form.lower()] = (*forms.get(form.lower(), ()), (row.text("word"), kind))
        return cls(forms, max((len(form.split()) for form in forms), default=1), begins_of(forms))

    def find(self, text: str, kinds: Sequence[str] = KINDS) -> tuple[FoundWord, ...]:
        """All forms of these kinds in ``text``, left to right, longest first, not overlapping."""

        def meaning(form: str) -> tuple[str, str] | None:
            meanings = self.forms.get(form, ())  # a sort is none of its words: of "red skinned" nothing is skinned
            return next((one for kind in (kinds, ("sort",)) for one in meanings if one[1] in kind), None)

        listed_words = listed(text, self.longest, self.begins, meaning)
        found = [FoundWord(start, end, *word) for start, end, word in listed_words if word[1] in kinds]
        return _with_parts(text, found) if "prepared" in kinds else tuple(found)


def _with_parts(text: str, found: Sequence[FoundWord]) -> tuple[FoundWord, ...]:
    """The forms found with the parts that the words take off, where no form says the same."""
    parts = list(_taken_off(text))
    if not parts:
        return tuple(found)
    whole = [one for one in found if any(one.start <= a.start and a.end <= one.end for a in parts)]
    parts = [a for a in parts if not any(one.start <= a.start and a.end <= one.end for one in whole)]
    apart = [one for one in found if one in whole or not any(a.start <= one.start < a.end for a in parts)]
    return tuple(sorted([*apart, *parts]))


def _taken_off(text: str) -> Iterator[FoundWord]:
    for match in _TAKEN_OFF.finditer(text):
        yield FoundWord(*match.span(), _PARTS[match["part"].lower()], "prepared")
        if match["also"] is not None:
            yield FoundWord(match.start("also"), match.end(), _PARTS[match["also"].lower()], "prepared")


SYSTEMS = ("UK", "US", "metric", "AU")


@dataclass(frozen=True, slots=True)
class Measure:
    """What one ``unit`` is: ``value`` (exact) in ``per`` (g, ml, mm, C), between ``low`` and ``high``.

    ``kind``: mass, volume, about (an approximation), count (its weight is the food's matter),
    length or oven. ``value`` is None for counts.
    """

    unit: str
    kind: str
    value: Fraction | None
    low: Fraction | None
    high: Fraction | None
    per: str


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
