"""The closed list of words that say how a food is prepared, in which state, and words that hold a line together."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.model.table import Row
from spoonproof.reading.runs import runs_at, tokens_of

KINDS = ("prepared", "state", "size", "ignored", "part")


class FoundWord(NamedTuple):
    """``text[start:end]`` is a form of ``word``, of ``kind``: prepared, state, size, ignored or part."""

    start: int
    end: int
    word: str
    kind: str


@dataclass(frozen=True, slots=True)
class Preparations:
    """The words of preparations.csv by form."""

    forms: Mapping[str, tuple[tuple[str, str], ...]] = field(default_factory=dict)
    longest: int = 1

    @classmethod
    def from_rows(cls, rows: Sequence[Row]) -> Preparations:
        """Raises ValueError, naming file and line, on an unknown kind."""
        forms: dict[str, tuple[tuple[str, str], ...]] = {}
        for row in rows:
            kind = row.text("kind")
            if kind not in KINDS:
                raise ValueError(f"{row.file}:{row.line}: kind should be one of {', '.join(KINDS)}, not {kind!r}")
            for form in row.items("forms"):
                forms[form.lower()] = (*forms.get(form.lower(), ()), (row.text("word"), kind))
        return cls(forms, max((len(form.split()) for form in forms), default=1))

    def find(self, text: str, kinds: Sequence[str] = KINDS) -> tuple[FoundWord, ...]:
        """All forms of these kinds in ``text``, left to right, longest first, not overlapping."""
        tokens = tokens_of(text)
        found: list[FoundWord] = []
        at = 0
        while at < len(tokens):
            for run in runs_at(text, tokens, at, self.longest):
                meaning = next(
                    (entry for entry in self.forms.get(" ".join(t[2] for t in run), ()) if entry[1] in kinds), None
                )
                if meaning is not None:
                    found.append(FoundWord(run[0][0], run[-1][1], *meaning))
                    at += len(run)
                    break
            else:
                at += 1
        return tuple(found)
