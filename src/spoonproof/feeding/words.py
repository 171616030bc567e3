"""Food words in a cook's lines and steps: whole words and phrases only, the longest first.

Whole words are what keep "honeydew" from being honey, "butternut" from being a nut, "eggplant" from
being an egg; the longest phrase is what keeps "sugar snap" from being sugar. Words that say a thing is
left out ("salt-free", "no added sugar", "without honey") take the phrase away.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Container, Iterable, Mapping, Sequence
from functools import lru_cache
from typing import Any

from spoonproof.model.plural import singular
from spoonproof.model.record import NamedTuple
from spoonproof.model.remembered import Remembered

Pack = Callable[[Mapping[str, Any]], Mapping[str, Any]]
"""Makes of a mapping one whose values are taken out when they are first asked for."""

_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
_BREAK = re.compile(r"[.;:!?,()]")

_NEGATORS = frozenset({"no", "without", "not", "never", "dont", "avoid", "skip", "omit", "nor", "zero"})
_FILLERS = frozenset(
    """a add added adding and any baby be extra ever food for from honey in into it more need of or our pinch put
    salt season stir sugar sweeten syrup the their to use want with your using putting further drop
    spoonful all""".split()
)
_APART = re.compile(r"[,;:.!?](?! ?(?:in|on|with)\b)")  # "mussels, in the shell"
_FREE_AFTER = frozenset({"free", "less", "coloured", "colored", "substitute"})


class Word(NamedTuple):
    """One word: as compared (folded, singular), and where it stands in the text."""

    key: str
    start: int
    end: int
    plain: str  # in lower case, otherwise as written


_word = tuple.__new__  # for every word of every text: the class's own way of making one takes twice as long


class Found(NamedTuple):
    """``text[start:end]`` is the phrase of the entry ``value``; ``phrase`` in folded words."""

    start: int
    end: int
    value: str
    phrase: tuple[str, ...]


@lru_cache(maxsize=20_000)
def fold(word: str) -> str:
    """A word in lower case, without accents and apostrophes, in the singular; the same for text and table."""
    plain = word.lower()
    if not plain.isascii():
        plain = "".join(c for c in unicodedata.normalize("NFKD", plain) if not unicodedata.combining(c))
    plain = plain.replace("'", "").replace("’", "").replace("œ", "oe")
    if len(plain) > 4 and plain.endswith("ie"):
        return plain[:-2] + "y"  # "cookie" as "cookies"
    return plain if plain.endswith("is") else singular(plain)  # "this"


@lru_cache(maxsize=500)  # texts of a few dishes: what is asked again is asked soon
def words(text: str) -> tuple[Word, ...]:
    """The words of ``text`` in order; a hyphen parts two words."""
    return tuple([_word(Word, (fold(word := m.group()), *m.span(), word.lower())) for m in _WORD.finditer(text)])


@lru_cache(maxsize=500)
def keys(text: str) -> frozenset[str]:
    """The set of folded words of ``text``."""
    return frozenset(word.key for word in words(text))


class Phrases:
    """Phrases of a table, found in text as whole words, longest first, never overlapping."""

    def __init__(self, entries: Mapping[str, Iterable[str]]) -> None:
        """``entries``: the value to report -> its phrases in ordinary spelling; "=sweets" is that very word
        and not its singular ("sweet" says nothing of sweets)."""
        first: dict[str, list[tuple[tuple[str, ...], str]]] = {}
        for value, phrases in entries.items():
            for phrase in phrases:
                key = ("=" + phrase[1:].lower(),) if phrase.startswith("=") else tuple(w.key for w in words(phrase))
                if key:
                    first.setdefault(key[0], []).append((key, value))
        for options in first.values():
            options.sort(key=lambda option: (-len(option[0]), option[0], option[1]))
        self._first: Mapping[str, list[tuple[tuple[str, ...], str]]] = first
        self._found: Remembered[tuple[str, bool], tuple[Found, ...]] = Remembered()

    def lay_out(self, pack: Pack) -> None:
        """Hold what stands behind each first word as ``pack`` makes it."""
        self._first = pack(self._first)

    def find(self, text: str, *, negated: bool = False) -> list[Found]:
        """Every phrase in ``text``; those the text says are left out only when ``negated`` is asked for."""
        known = self._found.get((text, negated))
        if known is None:
            known = self._found.keep((text, negated), tuple(self._look_for(text, negated)))
        return list(known)

    def _look_for(self, text: str, negated: bool) -> list[Found]:
        row = words(text)
        known: Container[str] = getattr(self._first, "known", self._first)
        found: list[Found] = []
        at = 0
        while at < len(row):
            word = row[at]
            begins = word.key in known or "=" + word.plain in known
            hit = self._at(text, row, at) if begins else None
            if hit is None:
                at += 1
                continue
            phrase, value = hit
            end = at + len(phrase)
            if negated or not _left_out(text, row, at, end):
                found.append(Found(row[at].start, row[end - 1].end, value, phrase))
            at = end
        return found

    def _at(self, text: str, row: Sequence[Word], at: int) -> tuple[tuple[str, ...], str] | None:
        exact = self._first.get("=" + row[at].plain)
        for phrase, value in self._first.get(row[at].key, ()):
            if exact and len(phrase) == 1:
                break  # "clove oil" before the very word "clove", and that before "cloves"
            end = at + len(phrase)
            if end > len(row) or any(row[at + i].key != key for i, key in enumerate(phrase)):
                continue
            if len(phrase) == 1 or not _APART.search(text, row[at].end, row[end - 1].end):
                return phrase, value  # "simmer rice, milk and cinnamon" names no rice milk
        return exact[0] if exact else None


_NO_REASON = frozenset("why reason cause point harm sense".split())
_NOR = frozenset({"not", "never", "hardly"})


def _undone(row: Sequence[Word], at: int) -> bool:
    """Whether the "no" at this word is none: "why not", "no reason not to", "not a day goes by without"."""
    if row[at].key == "not":
        return at > 0 and row[at - 1].key in _NO_REASON
    return row[at].key == "without" and not _NOR.isdisjoint(word.key for word in row[max(0, at - 5) : at])


def _left_out(text: str, row: Sequence[Word], at: int, end: int) -> bool:
    """Whether the words around ``row[at:end]`` say that the thing is absent."""
    if end < len(row) and row[end].key in _FREE_AFTER and row[end].start - row[end - 1].end == 1:
        return True
    if at >= 2 and (row[at - 2].key, row[at - 1].key) in {("instead", "of"), ("rather", "than"), ("free", "from")}:
        return True
    back = at - 1
    while back >= 0 and at - back <= 7:
        if _BREAK.search(text, row[back].end, row[back + 1].start):
            return False
        if row[back].key in _NEGATORS:
            return not _undone(row, back)
        if row[back].key not in _FILLERS:
            return False
        back -= 1
    return False


MINE = (
    r"(?<!so will )(?<!so does )(?<!so did )(?<!so do )(?<!so has )mine(?! (?:always |only |just |even "
    r"|happily |now )?(?:eats|loves|likes|adores|gets|gobbles|devours|wolfs|scoffs"
    r"|munches|nibbles|sucks|sips|drinks|prefers|enjoys|chews|gnaws|woke|wakes|slept|refuses|wants)\b"
    r"| (?:has|['’]s) been \w+ing\b| (?:won['’]t|is|was) (?:eat|touch|take|drink|\w+ months)\b)"
)
"""The speaker's own share, and not her child: "*mine* eats it cold"."""
