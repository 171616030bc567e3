"""A channel's findings, put away as they are met and taken out in order: a few hundred bytes are held of each.

The same statement judged alike in several places is one finding: the first place leads, the others stand beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import IO, TYPE_CHECKING, overload

from spoonproof.cache import hashed
from spoonproof.model.finding import AREAS, LEVELS, Finding, Level, Related
from spoonproof.model.record import NamedTuple, replace
from spoonproof.model.text import Document

if TYPE_CHECKING:
    from spoonproof.checks.accepted import Acceptance

AT_HAND = 500
"""Findings that are held as they are; more lie in a file without a name, gone when nobody has it open."""


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
        self._file: IO[bytes] | None = None
        self._end = 0
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

    def _laid(self, one: Finding | Related) -> Finding | Related | int:
        """Where it lies from now on; itself where there is no room for it."""
        from spoonproof.crew import packed

        try:
            if self._file is None:
                from tempfile import TemporaryFile

                self._file = TemporaryFile(buffering=0)  # noqa: SIM115 - as long as there are findings to take out
            return self._written(packed(one, self._place_of))
        except OSError:
            return one

    def _place_of(self, part: object) -> int | None:
        """Where the text of a document lies: once for all that stands in it."""
        if not isinstance(part, Document):
            return None
        known = self._documents.get(id(part))
        if known is None:
            if len(self._documents) >= AT_HAND:
                self._documents.clear()
            text = f"{part.path}\0{part.text}".encode("utf-8", "surrogatepass")
            known = self._documents[id(part)] = part, self._written(text)
        return known[1]

    def _written(self, body: bytes) -> int:
        assert self._file is not None
        at = self._file.seek(self._end)
        whole = len(body).to_bytes(8, "big") + body
        if self._file.write(whole) != len(whole):
            raise OSError("the disk is full")
        self._end += len(whole)
        return at

    def _taken(self, number: int) -> Finding | Related:
        from spoonproof.crew import unpacked

        held = self._held[number]
        if not isinstance(held, int):
            return held
        taken: Finding | Related = unpacked(self._body(held), self._document)
        return taken

    def _document(self, at: int) -> Document:
        return Document(*self._body(at).decode("utf-8", "surrogatepass").split("\0", 1))

    def _body(self, at: int) -> bytes:
        assert self._file is not None
        self._file.seek(at)
        return self._file.read(int.from_bytes(self._file.read(8), "big"))


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
        return replace(finding, related=Places(self._drawer, finding.related, again)) if again else finding

    def at_least(self, level: Level) -> Findings:
        """Those of this level and worse."""
        least = LEVELS.index(level)
        return Findings(self._drawer, [one for one in self._slips if one.level <= least], self._again)


class Places(Sequence[Related]):
    """The places that belong to a finding, those where it was said too taken out when they are asked for."""

    def __init__(self, drawer: Drawer, own: Sequence[Related], again: Sequence[int]) -> None:
        self._drawer, self._own, self._again = drawer, own, again

    def __len__(self) -> int:
        return len(self._own) + len(self._again)

    @overload
    def __getitem__(self, at: int) -> Related: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Related]: ...
    def __getitem__(self, at: int | slice) -> Related | Sequence[Related]:
        if isinstance(at, slice):
            return [self[number] for number in range(*at.indices(len(self)))]
        return self._own[at] if at < len(self._own) else self._drawer.related(self._again[at - len(self._own)])


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
    return hashed(finding.rule, finding.level, finding.claim.claim.kind, finding.claim.advice, words)
