"""Talk of a bottle read with the bottle named: "Let's talk about bottles. When you are tired, prop it on a towel"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from spoonproof.feeding.tables import FeedingTables
from spoonproof.model.record import NamedTuple

_BOTTLE = re.compile(r"\b(?:bottles?|formula|feeds)\b(?! (?:of (?!formula|milk)|opener|bank))", re.I)
_IT = re.compile(r"\bit(?= (?:on|against|with|up|in|into|down|by|under|so|for|and|out|back|until|till)\b|\W*$)", re.I)
"""The bottle as what something is done to: "prop it on", not "it rains"."""
_IN = re.compile(
    r"\b(?:add|tip|stir|pop|shake|put|spoon|sprinkle|mix|tipped|stirred|popped|shook|spooned) in(?= (?:an?|some|one|two"
    r"|half)\b)",
    re.I,
)
"""Where nothing is said to be put into, it is the bottle: "tip in a spoon of oats"."""
_OTHER = re.compile(r"\b(?:bowl|plate|cup|beaker|pan|pot|jar|tub|tin|tray|bib|chair|nappy|cot)s?\b", re.I)
_SENTENCE = re.compile(r"[^.!?;\n]+")
_NAME = "the bottle"
_FADES = 8
"""Sentences after which a bottle that nobody speaks of is forgotten."""

ROWS = frozenset({"bottle-propped", "food-in-bottle", "food-poured", "formula-measured", "bottle-kept", "lying-back"})
"""What is told of bottles."""


class Named(NamedTuple):
    """``text`` with the bottle named: where each name begins and ends in it (``puts``), and in what was ``said`` the
    word or place that it stands for."""

    text: str
    puts: Sequence[tuple[int, int]]
    said: Sequence[tuple[int, int]]

    def place(self, start: int, end: int) -> tuple[int, int] | None:
        """The place in what was said of one in ``text``; None where the bottle was not named near it."""
        if not any(start - _AROUND <= first and last <= end + _AROUND for first, last in self.puts):
            return None
        return self._back(start, 0), self._back(end, 1)

    def _back(self, at: int, which_end: int) -> int:
        shift = 0
        for (first, last), said in zip(self.puts, self.said, strict=True):
            if first < at < last:
                return said[which_end]
            if last <= at:
                shift = said[1] - last
        return at + shift


_AROUND = 30
"""Characters around what is told in which the bottle stands that it is told of."""


def with_bottle(text: str, tables: FeedingTables) -> Named | None:
    """``text`` with its bottle named where it says "it", until it speaks of other food; None where it says none."""
    out, length, last = [], 0, 0
    puts: list[tuple[int, int]] = []
    said: list[tuple[int, int]] = []
    for start, end in _spoken_of(text, tables):
        out += [text[last:start], _NAME if end > start else f" {_NAME}"]
        length += start - last
        puts.append((length, length + len(out[-1])))
        length += len(out[-1])
        said.append((start, end))
        last = end
    return Named("".join([*out, text[last:]]), puts, said) if puts else None


def _spoken_of(text: str, tables: FeedingTables) -> Iterator[tuple[int, int]]:
    """The places of words that stand for the bottle, or where it is left out."""
    since = _FADES
    for sentence in _SENTENCE.finditer(text):
        since = 0 if _BOTTLE.search(sentence[0]) else since + 1
        if not 0 < since <= _FADES:
            continue
        found = _IT.search(text, *sentence.span())
        put_in = _IN.search(text, *sentence.span())
        lead = text[sentence.start() : found.start()] if found else "" if put_in else sentence[0]
        into_it = lead.rstrip().endswith((" to", " in", " into"))
        if _OTHER.search(sentence[0]) or (tables.phrases.find(lead) and not into_it):
            since = _FADES
        elif found:
            since = 0
            yield found.span()
        elif put_in:
            since = 0
            yield put_in.end(), put_in.end()
