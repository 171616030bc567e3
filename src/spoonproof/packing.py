"""Values of the model as plain data that JSON can hold, and back: what the cache keeps.

Only the types listed here come back, and nothing that is stored can name another: no code comes from content. An
object that stood in several places is one object again, since claims are told apart by the passage they stand in.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import cache
from operator import attrgetter
from typing import Any

from spoonproof.model import channel, claim, finding, recipe, text
from spoonproof.model.record import names_and_defaults
from spoonproof.model.text import Document

_TYPES: tuple[type, ...] = (
    text.Span, text.Spanned, text.Passage, text.Piece, text.Cue,
    recipe.AgeRange, recipe.Minutes, recipe.Amount, recipe.Cut, recipe.FoodLine, recipe.Action, recipe.Step,
    recipe.Makes, recipe.Next, recipe.Keeps, recipe.Trial, recipe.Segment, recipe.Film, recipe.Picture, recipe.Video,
    recipe.Correction, recipe.Review, recipe.Recipe,
    finding.SourceRef, finding.Related, finding.Edit, finding.Remedy, finding.Finding,
    claim.Quantity, claim.Claim,
    channel.Kitchen, channel.Away, channel.Day, channel.Baby, channel.Accepted, channel.Channel,
)  # fmt: skip
_TUPLE, _LIST, _MAPPING, _SET, _FRACTION, _AGAIN, _DOCUMENT = range(-1, -8, -1)
_PLAIN = (str, int, float, bool, type(None))


class NotPackable(TypeError):
    """A value of a type that the cache does not hold."""


def pack(value: object, document: Document) -> object:
    """``value`` as lists, strings and numbers; ``document`` is left out of it. Raises NotPackable."""
    return _Packing(document).packed(value)


class _Packing:
    """No function within a function: one that knows itself waits for the collector, and its document with it."""

    __slots__ = ("_document", "_seen", "_types")

    def __init__(self, document: Document) -> None:
        self._document = document
        self._seen: dict[int, int] = {}
        self._types = _numbered()

    def packed(self, value: Any) -> object:
        """``value`` without the document."""
        kind = value.__class__
        if kind in _PLAIN:
            return value
        if kind is tuple:
            return [_TUPLE, *map(self.packed, value)]
        known = self._types.get(kind)
        if known is not None:
            return self._record(value, *known)
        if value is self._document:
            return [_DOCUMENT]
        if kind is Fraction:
            return [_FRACTION, value.numerator, value.denominator]
        if kind is list:
            return [_LIST, *map(self.packed, value)]
        if isinstance(value, Mapping):
            return [_MAPPING, *[self.packed(item) for pair in value.items() for item in pair]]
        if kind is frozenset:
            return [_SET, *sorted(map(self.packed, value))]  # type: ignore[type-var]  # sets hold texts alone
        raise NotPackable(kind.__name__)

    def _record(
        self, value: object, number: int, values: Callable[[Any], tuple[Any, ...]], rest: tuple[object, ...]
    ) -> object:
        seen = self._seen
        if id(value) in seen:
            return [_AGAIN, seen[id(value)]]
        row = list(values(value))
        at = len(row)
        while at > len(row) - len(rest) and _same(row[at - 1], rest[at - 1 - len(row)]):
            at -= 1  # what stands at its default need not be kept
        packed = self.packed
        made = [number, *[item if item.__class__ in _PLAIN else packed(item) for item in row[:at]]]
        seen[id(value)] = len(seen)
        return made


def unpack(data: object, document: Document) -> Any:
    """What ``pack`` was given, its document being ``document``. Raises ValueError for data that it did not make."""
    if data.__class__ is not list:
        return data
    try:
        return _unpacked(data, document, [])
    except (TypeError, IndexError, KeyError, ZeroDivisionError, RecursionError) as error:
        raise ValueError(f"not packed here: {error}") from None


def _unpacked(node: Any, document: Document, seen: list[object]) -> Any:
    number = node[0]
    values = [item if item.__class__ is not list else _unpacked(item, document, seen) for item in node[1:]]
    if number >= 0:
        made = _TYPES[number](*values)
        seen.append(made)
        return made
    if number == _TUPLE:
        return tuple(values)
    if number == _AGAIN:
        return seen[values[0]]
    if number == _DOCUMENT:
        return document
    if number == _FRACTION:
        return Fraction(*values)
    if number == _LIST:
        return values
    if number == _MAPPING:
        return dict(zip(values[::2], values[1::2], strict=True))
    if number == _SET:
        return frozenset(values)
    raise ValueError(number)


def _same(value: object, default: object) -> bool:
    return value is default or (value == default and value.__class__ is default.__class__)


@cache
def _numbered() -> Mapping[type, tuple[int, Callable[[Any], tuple[Any, ...]], tuple[object, ...]]]:
    """By type: its number, what gives its values in order, and the defaults of its last values."""
    out: dict[type, tuple[int, Callable[[Any], tuple[Any, ...]], tuple[object, ...]]] = {}
    for number, kind in enumerate(_TYPES):
        if hasattr(kind, "__record_fields__"):
            names, defaults = names_and_defaults(kind)
        else:
            names = kind._fields  # type: ignore[attr-defined]  # a NamedTuple
            defaults = tuple(kind._field_defaults.values())  # type: ignore[attr-defined]  # a NamedTuple
        out[kind] = number, attrgetter(*names), defaults
    return out
