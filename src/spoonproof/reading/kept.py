"""What was read of a file's food lines and steps, kept for when the file is read again with a little of it changed.

A reading is used again where all that it rests on is the same: the entry's words, as text and as written, and what was
carried to it from the entries before. Its place and the document of its faults are made new. A reading that points
outside its own entry, or that asked for one of the file's few hints, is not kept.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from typing import TYPE_CHECKING, TypeVar

from spoonproof.model.finding import Finding
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine, Step
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Scalar
from spoonproof.reading.food_lines import read_entry
from spoonproof.reading.mentions import Names
from spoonproof.reading.placing import FewHints, Page

if TYPE_CHECKING:
    from spoonproof.reading.instruction import StepReader as Reader

T = TypeVar("T")
Lines = tuple[FoodLine, ...]
Read = Callable[["Reader", int, Scalar], Step]

CARRIED = tuple(
    "split oven turn last_foods used excused unlisted shared asked made pieces pair held later to_come not_in_yet "
    "apart cooked lifts_later shared_out".split()
)
"""What a reader of steps carries from step to step, beside what it reads with; a test holds that there is no more."""


class _Read(NamedTuple):
    """One step as read: where it stood, what it gave, what it added to ``unlisted``, and what was carried on."""

    at: int
    step: Step
    findings: tuple[Finding, ...]
    unlisted: tuple[tuple[str, tuple[tuple[Span, str], ...]], ...]
    rest: dict[str, object]


class Kept:
    """The readings of one file, those of its last state alone; the tables stay the same while it is used."""

    def __init__(self) -> None:
        self._lines: dict[Hashable, Lines] = {}
        self._steps: dict[Hashable, _Read] = {}
        self._new_lines: dict[Hashable, Lines] = {}
        self._new_steps: dict[Hashable, _Read] = {}
        self._ground: tuple[object, ...] = ()
        self._names: Names | None = None

    def begin(self) -> None:
        """The file is read again."""
        self._lines, self._new_lines = self._new_lines, {}
        self._steps, self._new_steps = self._new_steps, {}

    def entry(self, scalar: Scalar, page: Page, foods: FewHints) -> tuple[Lines, list[Finding]]:
        """The food lines of one entry; kept where they stand where they stood and were read without a fault."""
        key = (scalar.value, scalar.span, scalar.pieces, page.document.at(scalar.span))
        lines = self._lines.get(key)
        if lines is None:
            asked = foods.asked
            lines, found = read_entry(scalar, page)
            if found or foods.asked != asked:
                return lines, found
        self._new_lines[key] = lines
        return lines, []

    def names(self, lines: Sequence[FoodLine], foods: Foods, title: str, document: Document) -> Names:
        """By what names the steps call the lines; where lines or title are others than before, no step is kept."""
        written = tuple(document.at(line.amount.span) if line.amount is not None else "" for line in lines)
        ground = (tuple(lines), title, written)
        if self._names is None or ground != self._ground:
            self._names, self._ground = Names.of(lines, foods), ground
            self._steps = {}
        return self._names

    def step(self, reader: Reader, index: int, scalar: Scalar, read: Read) -> Step:
        """A step as ``read`` gives it, and the reader as it is afterwards."""
        start = scalar.span.start
        pieces = tuple((at, offset - start, length) for at, offset, length in scalar.pieces)
        carried = tuple(_frozen(getattr(reader, name)) for name in CARRIED)
        key = (index, scalar.value, pieces, reader.document.at(scalar.span), carried)
        known = self._steps.get(key)
        if known is None:
            return self._afresh(key, reader, index, scalar, read)
        document, by = reader.document, start - known.at
        known = known._replace(findings=_moved(known.findings, by, document))
        if by:
            step, unlisted = _moved((known.step, known.unlisted), by, document)
            known = known._replace(at=start, step=step, unlisted=unlisted)
        self._new_steps[key] = known
        reader.findings += known.findings
        for food, told in known.unlisted:
            reader.unlisted.setdefault(food, []).extend(told)
        for name, value in known.rest.items():
            setattr(reader, name, set(value) if isinstance(value, frozenset) else value)
        return known.step

    def _afresh(self, key: Hashable, reader: Reader, index: int, scalar: Scalar, read: Read) -> Step:
        found, before = len(reader.findings), {food: len(told) for food, told in reader.unlisted.items()}
        step = read(reader, index, scalar)
        added = ((food, tuple(told[before.get(food, 0) :])) for food, told in reader.unlisted.items())
        unlisted = tuple((food, told) for food, told in added if told)
        rest = {name: _frozen(getattr(reader, name)) for name in CARRIED if name != "unlisted"}
        new = _Read(scalar.span.start, step, tuple(reader.findings[found:]), unlisted, rest)
        least, most = scalar.span
        if all(least <= span.start <= span.end <= most for span in _spans(new[1:4])):
            self._new_steps[key] = new
        return step


def _frozen(value: object) -> Hashable:
    """What is carried, as it can be compared; of what it holds by food, the foods: where they stand is only told on."""
    if isinstance(value, set):
        return frozenset(value)
    return tuple(value) if isinstance(value, dict) else value


def _moved(value: T, by: int, document: Document) -> T:
    """The same with every span in it ``by`` further on, and ``document`` for the document."""
    return _move(value, by, document)  # type: ignore[return-value]


def _move(value: object, by: int, document: Document) -> object:
    kind = value.__class__
    if isinstance(value, Span):
        return Span(value.start + by, value.end + by)
    if isinstance(value, Document):
        return document
    if isinstance(value, tuple):
        parts = [_move(part, by, document) for part in value]
        return tuple(parts) if kind is tuple else kind(*parts)
    fields: Sequence[str] = getattr(kind, "__record_fields__", ())
    return kind(*[_move(getattr(value, name), by, document) for name in fields]) if fields else value


def _spans(value: object) -> Iterator[Span]:
    if isinstance(value, Span):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _spans(part)
    elif not isinstance(value, Document):
        for name in getattr(value.__class__, "__record_fields__", ()):
            yield from _spans(getattr(value, name))
