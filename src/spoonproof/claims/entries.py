"""What one entry of the register says: its key, its truth, and what each market's law answers."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from spoonproof.claims.conditions import Condition
from spoonproof.model.claim import Answer, Kind, Market
from spoonproof.model.finding import SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document, Span

TruthWord = Literal["true", "overstated", "false", "unproven", "computed"]
"""``computed``: the entry's condition decides (yes: true, no: false or overstated, unknown: unproven)."""

Stance = Literal["", "permits", "warns", "dismisses"]
"""What a safety statement says of a food: that it may be given, that it may not (yet), or that there is no danger."""

Interval = tuple[int, int | None]
"""Months from birth, both ends included; None is open."""

ANY: Interval = (0, None)


@dataclass(frozen=True, slots=True)
class Allowance:
    """What the law of some markets answers a food business. ``condition`` must hold for yes or
    with-wording; ``guidance``: public-health advice that stands in any speech, said with its source."""

    markets: tuple[Market, ...]
    answer: Answer
    refs: tuple[SourceRef, ...]
    ages: Interval = ANY
    condition: Condition | None = None
    wording: tuple[str, ...] = ()
    why: str = ""
    guidance: bool = False


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry. An empty tuple in the key means "any".

    ``about`` are ids of foods, nutrients, substances or ``set:NAME``; ``said`` words of which one must stand
    in the statement's clause, ``also`` others of which one must, ``unless`` words that must not. ``lesser``: a
    weaker condition that makes a failed one overstated instead of false. ``negation``: the entry judges the
    sentence as it stands, a "no" in it included. ``points_at`` names the row of ``shared/`` that a safety
    entry rests on ("foods_not_yet: honey"). ``valid`` are ISO dates, "" open. ``harm`` 0 to 3 when the
    statement is not true.
    """

    id: str
    document: Document
    span: Span
    about: tuple[str, ...] = ()
    kinds: tuple[Kind, ...] = ()
    levels: tuple[str, ...] = ()
    effects: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    unless: tuple[str, ...] = ()
    stance: Stance = ""
    negation: bool = False
    ages: Interval = ANY
    valid: tuple[str, str] = ("", "")
    truth: TruthWord | None = None
    refs: tuple[SourceRef, ...] = ()
    condition: Condition | None = None
    lesser: Condition | None = None
    allowed: tuple[Allowance, ...] = ()
    wording: tuple[str, ...] = ()
    add: str = ""
    why: str = ""
    harm: int | None = None
    points_at: str = ""
    checked: str = ""
    due: str = ""

    @property
    def rank(self) -> tuple[int, int, int]:
        """How specific the key is: the more it names the higher, then narrower ages, then bounded dates.

        Words that must be said count most, then a subject by name, a set of subjects a little less, then
        effect, level and stance, then the kind.
        """
        low, high = self.ages
        named = min((3 if item.startswith("set:") else 4 for item in self.about), default=0)
        points = named + 5 * bool(self.said) + bool(self.also) + 2 * bool(self.effects) + 2 * bool(self.levels)
        points += 2 * bool(self.stance) + bool(self.kinds)
        return points, -(9999 if high is None else high - low), int(self.valid != ("", ""))

    def says(self, market: Market | None) -> tuple[object, ...] | None:
        """What this entry answers for truth (None) or for a market; None when it does not answer it."""
        if market is None:
            # Two true entries under different conditions don't contradict; two that compute differently do.
            return None if self.truth is None else (self.truth, self.condition if self.truth == "computed" else None)
        for allowance in self.allowed:
            if market in allowance.markets:
                return (allowance.answer, allowance.condition or self.condition)
        return None


@dataclass(frozen=True, slots=True)
class Wording:
    """An authorised wording: the exact words of the law, quoted, for whom and on what terms, with where they stand."""

    id: str
    market: Market
    article: str
    text: str
    population: str
    conditions: str
    ref: SourceRef


@dataclass(frozen=True, slots=True)
class Key:
    """What a claim asks the register for. ``subjects`` are ids; ``words`` the statement's, ``near``
    those of its clause, normalised; ``foods`` the ids of its foods."""

    kind: Kind
    subjects: frozenset[str]
    effect: str | None
    level: str | None
    words: str
    months: int
    today: str
    stance: str = ""
    near: str = ""
    foods: tuple[str, ...] = ()


def overlap(a: tuple[str, ...], b: tuple[str, ...]) -> bool:
    """Whether two key parts can both match; an empty part matches all."""
    return not a or not b or bool(set(a) & set(b))


def ages_overlap(a: Interval, b: Interval) -> bool:
    """Whether two intervals of months share a month."""
    return (b[1] is None or a[0] <= b[1]) and (a[1] is None or b[0] <= a[1])


def within(months: int, ages: Interval) -> bool:
    """Whether a month lies in an interval."""
    return ages[0] <= months and (ages[1] is None or months <= ages[1])


def expand(about: tuple[str, ...], sets: Mapping[str, frozenset[str]]) -> frozenset[str]:
    """The ids that ``about`` names, sets opened; an unknown set is empty."""
    found: set[str] = set()
    for item in about:
        if item.startswith("set:"):
            found |= sets.get(item[4:], frozenset())
        else:
            found.add(item)
    return frozenset(found)
