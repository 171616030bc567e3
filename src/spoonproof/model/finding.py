"""Findings: what is wrong, where, how sure we are, and how to put it right."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from spoonproof.model.claim import JudgedClaim
from spoonproof.model.record import NamedTuple, dataclass
from spoonproof.model.text import Document, Span

Area = Literal["baby", "words", "cooking", "film", "page"]
Level = Literal["error", "warning", "note"]
Basis = Literal["read", "common-practice", "from-memory", "own"]
Bowl = Literal["baby", "family"]

LEVELS: tuple[Level, ...] = ("error", "warning", "note")
AREAS: tuple[Area, ...] = ("baby", "words", "cooking", "film", "page")


class SourceRef(NamedTuple):
    """A source by its id, the place in it, and whether it was read."""

    id: str
    locator: str = ""
    basis: Basis = "read"


class Related(NamedTuple):
    """Another place that belongs to a finding, and what is there."""

    document: Document
    span: Span
    message: str


class Edit(NamedTuple):
    """Replace ``span`` of the finding's own document by ``replacement``."""

    span: Span
    replacement: str


@dataclass(frozen=True, slots=True)
class Remedy:
    """How to put it right. ``safe``: may be applied without asking."""

    text: str
    safe: bool = False
    edits: tuple[Edit, ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault, at one place. ``rule`` is the rule's name; ``span`` is in ``document``."""

    rule: str
    area: Area
    level: Level
    message: str
    document: Document
    span: Span
    bowl: Bowl | None = None
    related: Sequence[Related] = ()
    remedy: Remedy | None = None
    sources: tuple[SourceRef, ...] = ()
    claim: JudgedClaim | None = None
