"""What a reader of the method carries from step to step."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.model.finding import Bowl, Finding
from spoonproof.model.recipe import FoodLine
from spoonproof.model.record import dataclass, field
from spoonproof.model.text import Document, Span
from spoonproof.reading.instruction import Tables
from spoonproof.reading.mentions import Names


@dataclass(slots=True)
class StepReader:
    """What is carried from step to step."""

    document: Document
    lines: Sequence[FoodLine]
    tables: Tables
    names: Names
    findings: list[Finding] = field(default_factory=list)
    used: set[int] = field(default_factory=set)
    pair: tuple[int, ...] = ()  # the two lines that the last step with two names
    excused: set[int] = field(default_factory=set)  # not used by name, and yet not to be asked for
    split: bool = False
    cooked: bool = False  # whether anything was heated so far
    lifts_later: bool = False  # whether this step or a later one lifts out the baby's portion
    shared_out: bool = False  # whether the baby's share was taken without that
    oven: bool = False  # whether any step of the method speaks of one
    turn: Bowl | None = None  # whose bowl the words before in this step were about
    last_foods: tuple[int, ...] = ()  # what "it" and "them" mean; none: all that is in the pot
    unlisted: dict[str, tuple[int, Span, str]] = field(default_factory=dict)
    shared: set[str] = field(default_factory=set)  # unlisted foods that are not the family's bowl's alone
    also: dict[str, list[Span]] = field(default_factory=dict)
    asked: set[tuple[int, ...]] = field(default_factory=set)
    title: str = ""
    made: set[str] = field(default_factory=set)  # foods that the steps make
    pieces: set[tuple[str, int]] = field(default_factory=set)  # pieces that the steps cut: "slice" of which line
    later: set[int] = field(default_factory=set)  # lines of a head that may be made here, named in full further on
    to_come: set[int] = field(default_factory=set)  # lines that some later step names
    apart: frozenset[int] = frozenset()  # the grown-ups' lines, till the baby's portion is out
    held: set[int] = field(default_factory=set)  # what "everything but ..." left out
