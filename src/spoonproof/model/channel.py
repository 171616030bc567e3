"""The channel: whose desk this is, for which markets, in which kitchen."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.model.claim import Market, Paid
from spoonproof.model.record import dataclass, field
from spoonproof.model.text import Document, Span


@dataclass(frozen=True, slots=True)
class Kitchen:
    """What can be used at once."""

    cooks: int = 1
    rings: int = 2
    steamer_tiers: int = 1
    blender: int = 1
    oven: int = 1


@dataclass(frozen=True, slots=True)
class Away:
    """A part of the day when nobody cooks or films: minutes from midnight."""

    start: int
    end: int
    why: str = ""


@dataclass(frozen=True, slots=True)
class Day:
    """The filming day in minutes from midnight."""

    start: int = 570
    end: int = 870
    away: tuple[Away, ...] = ()


@dataclass(frozen=True, slots=True)
class Baby:
    """The baby of the calendar: ids of foods known, and ``advice`` ("severe eczema") or ""."""

    knows: tuple[str, ...] = ()
    advice: str = ""


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding lived with: rule, place (file or file:line), reason, and until when (ISO)."""

    rule: str
    place: str
    reason: str
    until: str
    span: Span


@dataclass(frozen=True, slots=True)
class Channel:
    """channel.yaml, read. ``measures`` is UK, US, metric or AU; ``speech`` words a minute."""

    document: Document
    title: str = "Untitled channel"
    base_url: str = ""
    language: str = "en-GB"
    measures: str = "metric"
    markets: tuple[Market, ...] = ("EU", "GB", "US")
    ages: tuple[int, int | None] = (6, 24)
    paid: Paid = "editorial"
    speech: float = 145.0
    presenters: Mapping[str, float] = field(default_factory=dict)
    kitchen: Kitchen = Kitchen()
    day: Day = Day()
    policies: Mapping[str, str] = field(default_factory=dict)
    policy_reasons: Mapping[str, str] = field(default_factory=dict)
    baby: Baby = Baby()
    accepted: tuple[Accepted, ...] = ()
    author: str = ""
    about: str = ""  # what the channel is, in a sentence, for the front page
    keys: Mapping[str, Span] = field(default_factory=dict)
