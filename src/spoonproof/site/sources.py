"""The numbered sources of one page: a number for each source the first time it is named."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from spoonproof.model.citation import full, web_link
from spoonproof.model.finding import SourceRef
from spoonproof.model.remembered import Remembered
from spoonproof.site.view import Citation

BASES = {"common-practice": "common practice", "from-memory": "recalled, not yet read again", "own": "the author’s own"}
"""How a source is known, where it was not read."""

_UNPUBLISHED = {
    "common-practice": "Common practice in the kitchen; there is no publication.",
    "from-memory": "Recalled, and not read again in its source yet.",
    "own": "The author’s own.",
}


class Numbered:
    """Sources in the order they were first cited. Unknown ids keep their id as their text: never dropped."""

    def __init__(
        self, known: Mapping[str, Mapping[str, object]], own: Mapping[str, Mapping[str, object]] | None = None
    ) -> None:
        """``known``: CSL-JSON items by id. ``own``: the recipe's own, which stand in for those of the same id."""
        self._known = known
        self._own = own or {}
        self._numbers: dict[str, int] = {}
        self._basis: dict[str, str] = {}

    def number(self, ref: SourceRef | str) -> int:
        """The number of a source on this page, from 1."""
        source = ref if isinstance(ref, str) else ref.id
        basis = "read" if isinstance(ref, str) else ref.basis
        self._basis.setdefault(source, basis)
        return self._numbers.setdefault(source, len(self._numbers) + 1)

    def numbers(self, refs: Iterable[SourceRef | str]) -> tuple[int, ...]:
        """The numbers of several sources, each once, in order."""
        return tuple(dict.fromkeys(self.number(ref) for ref in refs if (ref if isinstance(ref, str) else ref.id)))

    def citations(self) -> tuple[Citation, ...]:
        """All that were cited."""
        return tuple(
            citation(source, self._own.get(source) or self._known.get(source), number, self._basis[source])
            for source, number in self._numbers.items()
        )


def citation(source: str, item: Mapping[str, object] | None, number: int = 0, basis: str = "read") -> Citation:
    """A source as people read it; its own ``custom.basis`` wins over a reference that says "read"."""
    if item is None:
        return Citation(
            number,
            source,
            _UNPUBLISHED.get(source, source),
            basis="" if source in _UNPUBLISHED else BASES.get(basis, ""),
        )
    custom = item.get("custom")
    own = str(custom.get("basis", "")) if isinstance(custom, Mapping) else ""
    return Citation(number, source, *_told(item), BASES.get(basis) or BASES.get(own, ""))


def _told(item: Mapping[str, object]) -> tuple[str, str]:
    """The words and the link of a source, worked out once: page after page cites the same."""
    kept = _TOLD.get(id(item))
    if kept is None:  # the item is held with its answer, so that no other can come to have its number
        kept = _TOLD.keep(id(item), (item, full(item), web_link(item)))
    return kept[1:]


_TOLD: Remembered[int, tuple[Mapping[str, object], str, str]] = Remembered()
