"""Patterns of what words tell a reader to do, as the table of contradictions spells them.

A phrase keeps its order: "leave … overnight", where "…" stands for up to five words of the same clause. A gathering
does not: "STANDS & WARM & LONG" is found where a word of each stands near the others in one sentence, in any order,
and "!COLD" refuses a sentence that holds a word of it. In both, "/" parts words of which any will do, "_" joins the
words of one of them, and a name in capitals is a row of ``told_words``.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from spoonproof.feeding.words import Word, words
from spoonproof.model.record import NamedTuple
from spoonproof.model.remembered import Remembered

END = re.compile(r"[.!?;:]")
"""What ends a clause that a phrase may not run across."""
_STOP = re.compile(r"[.!?;]")
"""What ends a sentence that a gathering may not run across: "the trick is the tablet: he opens up"."""
_NEAR = 22
"""Words that all the parts of a gathering lie within."""

_Part = tuple[Mapping[str, tuple[tuple[str, ...], ...]], ...]
"""The places of an unbroken stretch of words; each holds its alternatives, an alternative one or more folded words, by
their first word: a place may have a hundred."""


class Hit(NamedTuple):
    """``text[start:end]`` holds a pattern of the table row ``value``; ``own`` are its own words where others may stand
    between them (a gathering), () where what stands between belongs to it (a phrase)."""

    start: int
    end: int
    value: str
    own: tuple[tuple[int, int], ...] = ()


class _Phrase(NamedTuple):
    """A phrase of the table row ``value``: the stretches between its "…", and the first words of what any text that
    holds it must hold."""

    value: str
    parts: tuple[_Part, ...]
    needed: tuple[frozenset[str], ...]


class _Gathering(NamedTuple):
    """A gathering of the table row ``value``: its parts, their first words, and the parts that refuse a sentence."""

    value: str
    parts: tuple[_Part, ...]
    needed: tuple[frozenset[str], ...]
    refused: tuple[_Part, ...]


class Patterns:
    """The patterns of a table's rows."""

    def __init__(self, entries: Mapping[str, Sequence[str]], classes: Mapping[str, Sequence[str]]) -> None:
        """``entries``: the row to report -> its patterns as written; ``classes``: the words of each class by name."""
        self._found: Remembered[str, list[Hit]] = Remembered()
        self._by_word: dict[str, list[int]] = {}  # so that a text is gone through once
        phrases: list[_Phrase] = []
        gatherings: list[_Gathering] = []
        for value, patterns in entries.items():
            for written in patterns:
                if " & " in written:
                    gatherings.append(_gathering(value, written, classes))
                    continue
                parts = tuple(_part(stretch, classes) for stretch in written.split("…"))
                needed = tuple(frozenset(place) for part in parts for place in part)
                for word in needed[0]:
                    self._by_word.setdefault(word, []).append(len(phrases))
                phrases.append(_Phrase(value, parts, needed[1:]))
        self._phrases: Sequence[_Phrase] = phrases
        self._gatherings: Sequence[_Gathering] = gatherings
        self._needed = [phrase.needed for phrase in phrases]
        self._gathered = [gathering.needed for gathering in gatherings]

    def lay_out(self, pack_row: Callable[[Sequence[Any]], Sequence[Any]]) -> None:
        """Hold the patterns as ``pack_row`` makes them; what a text must hold of each stays at hand."""
        self._phrases, self._gatherings = pack_row(self._phrases), pack_row(self._gatherings)

    def find(self, text: str) -> Sequence[Hit]:
        """Every pattern in ``text``, in order; of those of one row that overlap the first tells it."""
        known = self._found.get(text)
        return known if known is not None else self._found.keep(text, self._look_for(text))

    def _look_for(self, text: str) -> list[Hit]:
        row = words(text)
        keys = tuple([word.key for word in row])
        said = frozenset(keys)
        found: list[Hit] = []
        for at, one in enumerate(keys):
            for which in self._by_word.get(one, ()):
                if not _holds_all(said, self._needed[which]):
                    continue
                phrase = self._phrases[which]
                end = _end(text, row, keys, at, phrase.parts, 0)
                if end is not None:
                    found.append(Hit(row[at].start, row[end - 1].end, phrase.value))
        held = [self._gatherings[which] for which, parts in enumerate(self._gathered) if _holds_all(said, parts)]
        if held:
            for first, last in _sentences(text, row):
                for gathering in held:
                    found += _gathered(row, keys, first, last, gathering)
        kept: list[Hit] = []
        for hit in sorted(found, key=lambda h: (h.start, -h.end, h.value)):
            if not any(hit.value == one.value and hit.start < one.end for one in kept):
                kept.append(hit)
        return sorted(kept, key=lambda h: (h.start, h.value))


def _holds_all(said: frozenset[str], parts: Sequence[frozenset[str]]) -> bool:
    """Whether a text of these words holds a word of each part: asked of hundreds of patterns for each text."""
    for needed in parts:  # noqa: SIM110 - a generator would take three times as long
        if said.isdisjoint(needed):
            return False
    return True


def _gathering(value: str, written: str, classes: Mapping[str, Sequence[str]]) -> _Gathering:
    parts: list[_Part] = []
    refused: list[_Part] = []
    for one in written.split(" & "):
        one = one.strip()
        (refused if one.startswith("!") else parts).append(_part(one.removeprefix("!"), classes))
    needed = tuple(frozenset(part[0]) for part in parts)
    return _Gathering(value, tuple(parts), needed, tuple(refused))


def _part(stretch: str, classes: Mapping[str, Sequence[str]]) -> _Part:
    places = []
    for token in stretch.split():
        options: list[str] = []
        for one in token.split("/"):
            options += _spelled(one, classes) if one in classes else [one.replace("_", " ")]
        read = (tuple(word.key for word in words(one)) for one in options)
        place: dict[str, tuple[tuple[str, ...], ...]] = {}
        for option in dict.fromkeys(folded for folded in read if folded):
            place[option[0]] = (*place.get(option[0], ()), option)
        places.append(place)
    return tuple(places)


def _spelled(name: str, classes: Mapping[str, Sequence[str]]) -> list[str]:
    """The words of a class; it may hold classes."""
    found: list[str] = []
    for one in classes[name]:
        found += _spelled(one, classes) if one in classes else [one]
    return found


def _sentences(text: str, row: Sequence[Word]) -> Iterator[tuple[int, int]]:
    """Where each sentence begins and ends, in words."""
    first = 0
    for at in range(1, len(row)):
        if _STOP.search(text, row[at - 1].end, row[at].start):
            yield first, at
            first = at
    if row:
        yield first, len(row)


def _gathered(
    row: Sequence[Word], keys: tuple[str, ...], first: int, last: int, gathering: _Gathering
) -> Iterator[Hit]:
    """The gathering in the sentence of the words ``first`` to ``last``, once: of its closest words."""
    places = []
    for part in gathering.parts:
        here = _occurrences(keys, first, last, part)
        if not here:
            return
        places.append(here)
    if any(_occurrences(keys, first, last, part) for part in gathering.refused):
        return
    best: tuple[int, list[tuple[int, int]]] | None = None
    for begin in places[0]:
        low, high = (begin[0] - _NEAR, 0), (begin[0] + _NEAR + 1, 0)
        near = [here[bisect_left(here, low) : bisect_left(here, high)] for here in places[1:]]
        taken = _closest(begin, [begin], near)
        if taken is not None:
            wide = max(end for _, end in taken) - min(start for start, _ in taken)
            if wide <= _NEAR and (best is None or wide < best[0]):
                best = wide, taken
    if best is not None:
        own = tuple((row[start].start, row[end - 1].end) for start, end in sorted(best[1]))
        yield Hit(own[0][0], max(end for _, end in own), gathering.value, own)


def _closest(
    begin: tuple[int, int], taken: list[tuple[int, int]], places: Sequence[list[tuple[int, int]]]
) -> list[tuple[int, int]] | None:
    """A place of each part, none over another, the near ones first: "off formula" is left for "formula" where no other
    word tells of it; None where the parts only stand in one another's words."""
    if not places:
        return taken
    for one in sorted(places[0], key=lambda one: abs(one[0] - begin[0])):
        if all(one[1] <= other[0] or other[1] <= one[0] for other in taken):
            found = _closest(begin, [*taken, one], places[1:])
            if found is not None:
                return found
    return None


def _occurrences(keys: tuple[str, ...], first: int, last: int, part: _Part) -> list[tuple[int, int]]:
    found = []
    begin = part[0]
    for at in range(first, last):
        if keys[at] not in begin:
            continue
        ends = [end for end in _ends(keys, at, part) if end <= last]
        if ends:
            found.append((at, max(ends)))
    return found


def _ends(keys: tuple[str, ...], at: int, part: _Part, place: int = 0) -> Iterator[int]:
    """Where ``part`` may end that begins at word ``at``."""
    if place == len(part):
        yield at
        return
    for one in part[place].get(keys[at], ()) if at < len(keys) else ():
        if keys[at : at + len(one)] == one:
            yield from _ends(keys, at + len(one), part, place + 1)


def _end(
    text: str, row: Sequence[Word], keys: tuple[str, ...], at: int, parts: tuple[_Part, ...], which: int
) -> int | None:
    """Where the parts from ``which`` on end, the first of them at word ``at``, each within five words of the last."""
    for end in _ends(keys, at, parts[which]):
        if which + 1 == len(parts):
            return end
        for start in range(end, min(end + 6, len(row))):
            if END.search(text[row[end - 1].end : row[start].start]) or "never" in keys[end:start]:
                break  # "on a spoon, never in a bottle"
            last = _end(text, row, keys, start, parts, which + 1)
            if last is not None:
                return last
    return None
