"""Sentences that take a caution back: coaxing, leaving a baby alone, food left standing, no doctor needed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import cast

from spoonproof.feeding.clauses import names_child
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.told_patterns import Classes, Hit, Patterns
from spoonproof.feeding.turned import sentence_of, turned
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.text import Passage, Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}


@dataclass(frozen=True, slots=True)
class Contradiction:
    """One statement against a caution: ``caution`` is its id ("" where no caution says it), ``row`` the table's row,
    ``start`` and ``end`` its words in the passage."""

    caution: str
    level: Level
    why: str
    remedy: str
    start: int
    end: int
    source: SourceRef
    passage: Passage
    row: str

    @property
    def span(self) -> Span:
        """The words in the passage's document."""
        return self.passage.span(self.start, self.end)

    @property
    def message(self) -> str:
        """The words, and what is wrong with them."""
        return f"“{self.passage.text[self.start : self.end]}”: {self.why}"


def contradictions(passages: Iterable[Passage], tables: FeedingTables) -> list[Contradiction]:
    """Every statement of ``passages`` that contradicts a caution; those marked ``leave`` and those turned
    round in their own clause ("never leave her alone") are none."""
    rows = tables.by_id("contradictions")
    patterns = _patterns(tables)
    found: list[Contradiction] = []
    for passage in passages:
        if passage.leave is not None or passage.kind == "shows":
            continue
        for hit in patterns.find(passage.text):
            if passage.kind in ("step", "title") and hit.value in _OF_FOODS:
                continue
            if turned(passage.text, hit, tables):
                continue
            if hit.value in _WHERE_A_CHILD_IS and not names_child(_around(passage.text, hit), tables):
                continue
            row = rows[hit.value]
            last = found[-1] if found and found[-1].passage is passage else None
            if last and row.text("caution") and last.caution == row.text("caution") and hit.start < last.end:
                continue  # another row has told it
            level = _LEVELS.get(row.text("level"), "warning")
            why, remedy, source = row.text("message"), row.text("remedy"), tables.source(row)
            place = hit.start, hit.end
            found.append(Contradiction(row.text("caution"), level, why, remedy, *place, source, passage, hit.value))
    return found


def _around(text: str, hit: Hit) -> str:
    """The sentence of what is told, with what stands before its colon: "for our nine-month-old: raw dough"."""
    start, end = sentence_of(text, hit)
    return text[max(text.rfind(mark, 0, max(0, start - 1)) for mark in ".!?\n") + 1 : end]


_OF_FOODS = frozenset({"beans-unboiled", "bone-to-gnaw", "milk-too-soon", "frozen-fruit", "allergen-late"})
"""Rows on foods, for which a dish's own title and steps are judged by what the dish is made of."""
_WHERE_A_CHILD_IS = frozenset({"left-rare", "raw-batter"})
"""Rows on food that grown-ups eat as well: whose it is the sentence says."""


def _patterns(tables: FeedingTables) -> Patterns:
    """The phrases of the table, spelled out once."""
    if "contradictions" not in tables.spelled_out:
        rows = tables.by_id("contradictions")
        listed = tables.by_id("told_words")
        classes = Classes(
            {key: row.items("words") for key, row in listed.items()},
            {key: row.items("but") for key, row in listed.items()},
            _names_by_kind(tables),
        )
        tables.spelled_out["contradictions"] = Patterns(
            {key: row.items("phrases") for key, row in rows.items()},
            classes,
            {key: row.items("unless") for key, row in rows.items()},
        )
    return cast("Patterns", tables.spelled_out["contradictions"])


def _names_by_kind(tables: FeedingTables) -> Mapping[str, Sequence[str]]:
    """What the foods of each kind are called; "food" is any of them."""
    found: dict[str, list[str]] = {}
    for key, row in tables.by_id("feeding_foods").items():
        names = [name for name in row.items("names") if not name.startswith("=")]
        for kind in (*tables.kinds[key], "food"):
            found.setdefault(kind, []).extend(names)
    return found
