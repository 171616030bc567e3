"""A channel's findings, put away as they are met and taken out in order: a few hundred bytes are held of each.

The same statement judged alike in several places is one finding: the first place leads, the others stand beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import TYPE_CHECKING, overload

from spoonproof.cache import hashed
from spoonproof.model.finding import AREAS, LEVELS, Finding, Level, Related
from spoonproof.model.record import NamedTuple, replace
from spoonproof.model.text import Document
from spoonproof.pile import Pile, Taken

if TYPE_CHECKING:
    from spoonproof.checks.accepted import Acceptance

AT_HAND = 500
"""Findings that are held as they are; more lie on a pile."""


class Slip(NamedTuple):
    """Where a finding comes in the order in which a person should meet them, and its number in the drawer."""

    area: int
    level: int
    path: str
    start: int
    end: int
    rule: str
    number: int


def slip(finding: Finding, number: int = 0) -> Slip:
    """The baby's findings first, then words, cooking, film and page; worst first; then by place."""
    area, level = AREAS.index(finding.area), LEVELS.index(finding.level)
    return Slip(area, level, finding.document.path, *finding.span, finding.rule, number)


class Drawer:
    """Findings, and places that belong to them, by number."""

    def __init__(self) -> None:
        self._held: list[Finding | Related | int] = []  # as it is, or where it lies
        self._pile = Pile()
        self._documents: dict[int, tuple[Document, int]] = {}  # those that were put away last, by identity

    def put(self, one: Finding | Related) -> int:
        """Put it away; its number."""
        self._held.append(one if len(self._held) < AT_HAND else self._laid(one))
        return len(self._held) - 1

    def finding(self, number: int) -> Finding:
        """The finding of a number."""
        one = self._taken(number)
        assert isinstance(one, Finding)
        return one

    def related(self, number: int) -> Related:
        """The place of a number."""
        one = self._taken(number)
        assert isinstance(one, Related)
        return one

    def _laid(self, one: Finding | Related) -> int:
        """Where it lies from now on."""
        from spoonproof.crew import packed

        return self._pile.put(packed(one, self._place_of))

    def _place_of(self, part: object) -> int | None:
        """Where the text of a document lies: once for all that stands in it."""
        if not isinstance(part, Document):
            return None
        known = self._documents.get(id(part))
        if known is None:
            if len(self._documents) >= AT_HAND:
                self._documents.clear()
            text = f"{part.path}\0{part.text}".encode("utf-8", "surrogatepass")
            known = self._documents[id(part)] = part, self._pile.put(text)
        return known[1]

    def _taken(self, number: int) -> Finding | Related:
        from spoonproof.crew import unpacked

        held = self._held[number]
        if not isinstance(held, int):
            return held
        taken: Finding | Related = unpacked(self._pile.get(held), self._document)
        return taken

    def _document(self, at: int) -> Document:
        return Document(*self._pile.get(at).decode("utf-8", "surrogatepass").split("\0", 1))


class Findings(Sequence[Finding]):
    """Findings in order, each taken out when it is asked for."""

    def __init__(self, drawer: Drawer, slips: Sequence[Slip], again: Mapping[int, Sequence[int]]) -> None:
        """``again``: the numbers of the places where a finding was said too, by its own."""
        self._drawer, self._slips, self._again = drawer, slips, again

    def __len__(self) -> int:
        return len(self._slips)

    @overload
    def __getitem__(self, at: int) -> Finding: ...
    @overload
    def __getitem__(self, at: slice) -> Findings: ...
    def __getitem__(self, at: int | slice) -> Finding | Findings:
        if isinstance(at, slice):
            return Findings(self._drawer, self._slips[at], self._again)
        number = self._slips[at].number
        finding, again = self._drawer.finding(number), self._again.get(number)
        return replace(finding, related=self._places(finding.related, again)) if again else finding

    def _places(self, own: Sequence[Related], again: Sequence[int]) -> Sequence[Related]:
        """A finding's own places, and those where it was said too."""
        whole = range(len(own) + len(again))
        return Taken(whole, lambda at: own[at] if at < len(own) else self._drawer.related(again[at - len(own)]))

    def at_least(self, level: Level) -> Findings:
        """Those of this level and worse."""
        least = LEVELS.index(level)
        return Findings(self._drawer, [one for one in self._slips if one.level <= least], self._again)


class Gathering:
    """Findings as they are met."""

    def __init__(self) -> None:
        self._drawer = Drawer()
        self._slips: list[Slip] = []
        self._firsts: dict[str, int | None] = {}
        self._again: dict[int, list[int]] = {}

    def add(self, findings: Iterable[Finding], accepted: Acceptance | None = None) -> None:
        """Put these away but for those ``accepted``; where the same is said again, its first place decides."""
        for finding in findings:
            key = _repeat_key(finding)
            if key not in self._firsts:
                hidden = accepted is not None and accepted.covers(finding)
                number = None if hidden else self._drawer.put(finding)
                if key:
                    self._firsts[key] = number
                if number is not None:
                    self._slips.append(slip(finding, number))
            elif (first := self._firsts[key]) is not None:
                place = Related(finding.document, finding.span, "said here too")
                self._again.setdefault(first, []).append(self._drawer.put(place))

    def found(self) -> Findings:
        """All of them in order."""
        return Findings(self._drawer, list(self._in_order()), self._again)

    def _in_order(self) -> Iterator[Slip]:
        for _, group in groupby(sorted(self._slips), key=lambda one: one[:-1]):
            alike = list(group)  # at one place by one rule: by their words
            if len(alike) > 1:
                alike.sort(key=lambda one: self._drawer.finding(one.number).message)
            yield from alike


def gathered(findings: Iterable[Finding]) -> list[Finding]:
    """A few findings in order, each statement once."""
    gathering = Gathering()
    gathering.add(findings)
    return list(gathering.found())


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """Findings in the order in which a person should meet them."""
    return sorted(findings, key=lambda finding: (slip(finding), finding.message))


def _repeat_key(finding: Finding) -> str:
    """What a statement judged so has in common wherever it stands; "" for what is no statement."""
    if finding.claim is None:
        return ""
    words = " ".join(
        "".join(c if c.isalnum() or c in "%½¼¾" else " " for c in finding.claim.claim.quote.lower()).split()
    )
    # What is denied is broken in each dish by a food of its own.
    broken_by = finding.claim.why if finding.claim.claim.level in ("free", "none") else ""
    return hashed(finding.rule, finding.level, finding.claim.claim.kind, finding.claim.advice, words, broken_by)
