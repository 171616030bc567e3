"""The closed list of words that say how a food is prepared, in which state, and words that hold a line together."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from spoonproof.model.record import NamedTuple, dataclass, field
from spoonproof.model.table import Row
from spoonproof.reading.runs import begins_of, listed

_PARTS: Mapping[str, str] = {
    "skin": "skinned", "peel": "peeled", "core": "cored", "stone": "stoned", "pit": "stoned", "pip": "deseeded",
    "seed": "deseeded", "bone": "boned", "shell": "shelled", "stalk": "trimmed", "stem": "trimmed", "end": "trimmed",
    "root": "trimmed", "fat": "trimmed", "rind": "trimmed", "gristle": "trimmed", "sinew": "trimmed",
    "membrane": "trimmed", "string": "trimmed", "top": "trimmed", "pith": "trimmed",
    "rib": "trimmed", "husk": "shelled", "midrib": "trimmed", "tail": "trimmed",
}  # fmt: skip
_PART = "|".join(_PARTS)
_TAKEN_OFF = re.compile(  # "bones picked out", "skin and seeds taken off"
    rf"(?i)\b(?:(?:any|all|excess|visible)[ \t])?(?:pin[ -])?(?P<part>{_PART})s?"
    rf"(?:(?:,[ \t]?|[ \t](?:and|&)[ \t])(?:any[ \t]|the[ \t]|tough[ \t]|pin[ -])?(?P<also>{_PART})s?)?"
    r"[ \t](?:all[ \t]|carefully[ \t]|well[ \t])?"
    r"(?:(?:taken|stripped|thrown|picked|pulled|cut|scooped|scraped|snipped|sliced|stripped|peeled|pressed|squeezed|popped)"
    r"[ \t](?:out|off|away)|out|off|discarded|removed|trimmed)\b",
)

KINDS = ("prepared", "state", "size", "sort", "ignored", "part")


class FoundWord(NamedTuple):
    """``text[start:end]`` is a form of ``word``, of ``kind``: prepared, state, size, sort, ignored or part."""

    start: int
    end: int
    word: str
    kind: str


@dataclass(frozen=True, slots=True)
class Preparations:
    """The words of preparations.csv by form."""

    forms: Mapping[str, tuple[tuple[str, str], ...]] = field(default_factory=dict)
    longest: int = 1
    begins: frozenset[str] = frozenset()

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
        return cls(forms, max((len(form.split()) for form in forms), default=1), begins_of(forms))

    def find(self, text: str, kinds: Sequence[str] = KINDS) -> tuple[FoundWord, ...]:
        """All forms of these kinds in ``text``, left to right, longest first, not overlapping."""

        def meaning(form: str) -> tuple[str, str] | None:
            meanings = self.forms.get(form, ())  # a sort is none of its words: of "red skinned" nothing is skinned
            return next((one for kind in (kinds, ("sort",)) for one in meanings if one[1] in kind), None)

        listed_words = listed(text, self.longest, self.begins, meaning)
        found = [FoundWord(start, end, *word) for start, end, word in listed_words if word[1] in kinds]
        return _with_parts(text, found) if "prepared" in kinds else tuple(found)


def _with_parts(text: str, found: Sequence[FoundWord]) -> tuple[FoundWord, ...]:
    """The forms found with the parts that the words take off, where no form says the same."""
    parts = list(_taken_off(text))
    if not parts:
        return tuple(found)
    whole = [one for one in found if any(one.start <= a.start and a.end <= one.end for a in parts)]
    parts = [a for a in parts if not any(one.start <= a.start and a.end <= one.end for one in whole)]
    apart = [one for one in found if one in whole or not any(a.start <= one.start < a.end for a in parts)]
    return tuple(sorted([*apart, *parts]))


def _taken_off(text: str) -> Iterator[FoundWord]:
    for match in _TAKEN_OFF.finditer(text):
        yield FoundWord(*match.span(), _PARTS[match["part"].lower()], "prepared")
        if match["also"] is not None:
            yield FoundWord(match.start("also"), match.end(), _PARTS[match["also"].lower()], "prepared")
