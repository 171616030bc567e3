"""Talk of a bottle read with the bottle named: "Let's talk about bottles. When you are tired, prop it on a towel"."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence

from spoonproof.feeding.tables import FeedingTables
from spoonproof.model.record import NamedTuple

_BOTTLE = re.compile(r"\b(?:bottles?|formula|feeds)\b(?! (?:of (?!formula|milk)|opener|bank))", re.I)
_IT = re.compile(r"\bit(?= (?:on|against|with|up|in|into|down|by|under|so|for|and|out|back|until|till)\b|\W*$)", re.I)
"""The bottle as what something is done to: "prop it on", not "it rains"."""
_OTHER = re.compile(r"\b(?:bowl|plate|cup|beaker|pan|pot|jar|tub|tin|tray|bib|chair|nappy|cot)s?\b", re.I)
_SENTENCE = re.compile(r"[^.!?;\n]+")
_NAME = "the bottle"
_FADES = 8
"""Sentences after which a bottle that nobody speaks of is forgotten."""

ROWS = frozenset({"bottle-propped", "food-in-bottle", "formula-measured", "bottle-kept", "lying-back"})
"""What is told of bottles."""


class Named(NamedTuple):
    """``text`` with the bottle named, and the places in it (``puts``) and in what was said (``said``) of each "it"."""

    text: str
    puts: Sequence[int]
    said: Sequence[tuple[int, int]]

    def place(self, start: int, end: int) -> tuple[int, int] | None:
        """The place in what was said of one in ``text``; None where no "it" was read as the bottle near it."""
        if not any(start - _AROUND <= put <= end + _AROUND for put in self.puts):
            return None
        return self._back(start, last=False), self._back(end, last=True)

    def _back(self, at: int, *, last: bool) -> int:
        which = bisect_right(self.puts, at - last) - 1
        if which < 0:
            return at
        within = at - self.puts[which]
        start, end = self.said[which]
        return (end if last else start) if within < len(_NAME) + last else end + within - len(_NAME)


_AROUND = 30
"""Characters around what is told in which the "it" stands that it is told of."""


def with_bottle(text: str, tables: FeedingTables) -> Named | None:
    """``text`` with its bottle named where it says "it", until it speaks of other food; None where it says none."""
    out: list[str] = []
    puts: list[int] = []
    said: list[tuple[int, int]] = []
    last, length, since = 0, 0, _FADES
    for sentence in _SENTENCE.finditer(text):
        if _BOTTLE.search(sentence[0]):
            since = 0
            continue
        since += 1
        if since > _FADES:
            continue
        found = _IT.search(text, *sentence.span())
        lead = text[sentence.start() : found.start()] if found else sentence[0]
        if _OTHER.search(lead) or (tables.phrases.find(lead) and not lead.rstrip().endswith((" to", " in", " into"))):
            since = _FADES
        elif found:
            since = 0
            out += [text[last : found.start()], _NAME]
            puts.append(length + found.start() - last)
            length += found.start() - last + len(_NAME)
            said.append(found.span())
            last = found.end()
    return Named("".join([*out, text[last:]]), puts, said) if puts else None
