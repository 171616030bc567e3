"""Sentences that take a caution back: coaxing, leaving a baby alone, food left standing, no doctor needed."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import product
from typing import cast

from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import Found, Word, words
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.record import dataclass
from spoonproof.model.remembered import Remembered
from spoonproof.model.text import Passage, Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
_END = re.compile(r"[.!?;:]")
# Words before the phrase in its clause that turn it round: "do not coax her to finish the bowl".
_TURNED = frozenset(
    """not never dont no without nobody avoid stop rather nor needn neednt shouldnt isnt arent wont myth wrong
    cannot pharmacist""".split()
)

# "If he will not open his mouth, ...": that denies the condition, not the advice.
_CONDITION_DENIED = re.compile(r"\b(?:if|when)\b[^,.;:]{0,20}?\b(?:not|\w+n['’]t|never)\b", re.I)


@dataclass(frozen=True, slots=True)
class Contradiction:
    """One statement against a caution: ``caution`` is its id, ``start`` and ``end`` its words in the passage."""

    caution: str
    level: Level
    why: str
    remedy: str
    start: int
    end: int
    source: SourceRef
    passage: Passage

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
            if _turned(passage.text, hit.start):
                continue
            row = rows[hit.value]
            found.append(
                Contradiction(
                    row.text("caution"),
                    _LEVELS.get(row.text("level"), "warning"),
                    row.text("message"),
                    row.text("remedy"),
                    hit.start,
                    hit.end,
                    tables.source(row),
                    passage,
                )
            )
    return found


def _patterns(tables: FeedingTables) -> _Patterns:
    """The phrases of the table, spelled out once."""
    if "contradictions" not in tables.spelled_out:
        rows = tables.by_id("contradictions")
        tables.spelled_out["contradictions"] = _Patterns({key: row.items("phrases") for key, row in rows.items()})
    return cast("_Patterns", tables.spelled_out["contradictions"])


class _Patterns:
    """Phrases in which "…" stands for up to five words of the same clause ("leave … overnight"), and "/" parts words of
    which any will do ("eat/nibble … pram/car_seat")."""

    def __init__(self, entries: Mapping[str, Sequence[str]]) -> None:
        heads = {}
        for value, phrases in entries.items():
            for phrase in (one for written in phrases for one in _spelled_out(written)):
                first, *rest = (tuple(w.key for w in words(part)) for part in phrase.split("…"))
                heads[f"{value}\t{phrase}"] = (first, tuple(rest))
        # What comes after the first part, and the words of it: a text that lacks one of them is not looked at closely.
        self._rest = {
            key: (rest, frozenset(word for part in rest for word in part)) for key, (_, rest) in heads.items()
        }
        self._found: Remembered[str, list[Found]] = Remembered()
        # By the first word, so that a text is gone through once.
        self._by_word: dict[str, list[tuple[tuple[str, ...], str]]] = {}
        for key, (first, _) in heads.items():
            self._by_word.setdefault(first[0], []).append((first, key))

    def find(self, text: str) -> Sequence[Found]:
        known = self._found.get(text)
        return known if known is not None else self._found.keep(text, self._look_for(text))

    def _look_for(self, text: str) -> list[Found]:
        row = words(text)
        said = {word.key for word in row}
        found: list[Found] = []
        for at, word in enumerate(row):
            for first, key in self._by_word.get(word.key, ()):
                if len(first) > 1 and tuple(other.key for other in row[at : at + len(first)]) != first:
                    continue
                rest, needed = self._rest[key]
                end = self._end(text, row, at + len(first), rest) if needed <= said else None
                if end is not None:
                    value = key.partition("\t")[0]
                    found.append(Found(row[at].start, row[end - 1].end, value, first))
        kept: list[Found] = []
        for hit in sorted(found, key=lambda h: (h.start, -h.end, h.value)):
            if not any(hit.value == one.value and hit.start < one.end for one in kept):
                kept.append(hit)  # of those of one row that overlap the first tells it
        return sorted(kept, key=lambda h: (h.start, h.value))

    @staticmethod
    def _end(text: str, row: Sequence[Word], at: int, rest: tuple[tuple[str, ...], ...]) -> int | None:
        for part in rest:
            for start in range(at, min(at + 6, len(row) - len(part) + 1)):
                gap = text[row[at - 1].end : row[start].start]
                if _END.search(gap):
                    return None
                if tuple(word.key for word in row[start : start + len(part)]) == part:
                    at = start + len(part)
                    break
            else:
                return None
        return at


def _spelled_out(phrase: str) -> Iterator[str]:
    """A phrase once for each choice of its words."""
    for chosen in product(*(word.split("/") for word in phrase.split())):
        yield " ".join(chosen).replace("_", " ")


def _turned(text: str, start: int) -> bool:
    clause = 0
    for match in _END.finditer(text, max(0, start - 200), start):
        clause = match.end()
    before = _CONDITION_DENIED.sub(" ", text[max(clause, start - 200) : start])
    return any(word.key in _TURNED for word in words(before))
