"""Sentences that take a caution back: coaxing, leaving a baby alone, food left standing, no doctor needed."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import Phrases, words
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.text import Passage, Span

_LEVELS: dict[str, Level] = {"error": "error", "warning": "warning", "note": "note"}
_END = re.compile(r"[.!?;:]")
# Words before the phrase in its clause that turn it round: "do not coax her to finish the bowl".
_TURNED = frozenset(
    "not never dont no without nobody avoid stop rather nor needn neednt shouldnt isnt arent wont myth wrong cannot".split()
)


@dataclass(frozen=True, slots=True)
class Contradiction:
    """One statement against a caution: ``caution`` is its id, ``span`` the words in the passage's document."""

    caution: str
    level: Level
    message: str
    remedy: str
    span: Span
    source: SourceRef
    passage: Passage


def contradictions(passages: Iterable[Passage], tables: FeedingTables) -> list[Contradiction]:
    """Every statement of ``passages`` that contradicts a caution; those marked ``leave`` and those turned
    round in their own clause ("never leave her alone") are none."""
    rows = {row.text("id"): row for row in tables.rows.get("contradictions", ())}
    phrases = Phrases({key: row.items("phrases") for key, row in rows.items()})
    found: list[Contradiction] = []
    for passage in passages:
        if passage.leave is not None or passage.kind == "shows":
            continue
        for hit in phrases.find(passage.text, negated=True):
            if _turned(passage.text, hit.start):
                continue
            row = rows[hit.value]
            found.append(
                Contradiction(
                    row.text("caution"),
                    _LEVELS.get(row.text("level"), "warning"),
                    f"“{passage.text[hit.start : hit.end]}”: {row.text('message')}",
                    row.text("remedy"),
                    passage.span(hit.start, hit.end),
                    tables.source(row),
                    passage,
                )
            )
    return found


def _turned(text: str, start: int) -> bool:
    clause = 0
    for match in _END.finditer(text, max(0, start - 200), start):
        clause = match.end()
    return any(word.key in _TURNED for word in words(text[max(clause, start - 200) : start]))
