"""Patterns of what words tell a reader to do, as the table of contradictions spells them.

A phrase keeps its order: "leave … overnight", where "…" stands for up to five words of the same clause. A gathering
does not: "STANDS & WARM & LONG" is found where a word of each stands near the others in one sentence, or in two, or up
to four, of which the last speaks on of the first ("It stays on the hob. He has it at tea"), in any order, and "!COLD"
refuses what holds a word of it ("!=FORMS" though a "no" stands before it: "no whole nuts"). In both, and in the rows
of ``told_words`` that names in capitals stand for, "/" parts words of which any will do, "_" joins those of one;
"@fish" is any food of that kind in the table of foods; "!~BOILED" refuses from the sentences around it too.

What a row says in ``unless`` refuses all its patterns, phrases too. A word that begins with "+" stands for all forms
of that verb, and "*" for any one word but those that the class of words says ("on the *", but "table"): what is told
has no list, and what is safe has a short one.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import pairwise, product
from types import MappingProxyType
from typing import Any

from spoonproof.feeding.words import Pack, Word, fold, words
from spoonproof.model.record import NamedTuple
from spoonproof.model.remembered import Remembered
from spoonproof.model.verb_forms import forms

END = re.compile(r"[.!?;:]")
"""What ends a clause that a phrase may not run across."""
_STOP = re.compile(r"[.!?;]")
"""What ends a sentence that a gathering may not run across: "the trick is the tablet: he opens up"."""
_NEAR = 22
"""Words that all the parts of a gathering lie within."""
_NEAR_IN_TWO = 34
"""The same over two sentences."""
_MARK = re.compile(r"[,;:.!?()–—]")
"""What no word of a gathering runs across: "I'm Pop, and I do Thursdays" pops nowhere."""
_AROUND = 14
"""Words before and behind a gathering within which a word refuses it: speech has no full stops for minutes."""
_DENIES = frozenset("""no not never without dont doesnt didnt wont cant cannot neednt hardly skip""".split())
_DENIED = 3
"""Words before one that refuses within which it is denied itself."""
_GLANCE = 12
"""Words of the next sentence among which one that speaks on is looked for."""
_SPEAKS_ON = frozenset("""it they them this that these those she he her him his then so one some and which""".split())
_OF_THINGS = frozenset("they them these those it".split())
_FEW = 4
"""Sentences over which one thing is told: "dried beans. Soak them. Rinse. Then they go straight in the pot"."""
Place = tuple[int, int]
_Token = str | frozenset[str]
"""A folded word, or for "*" the words that will not do."""
_Option = tuple[_Token, ...]
_Part = tuple[Mapping[str, tuple[_Option, ...]], ...]
"""The places of an unbroken stretch of words; each holds its alternatives, an alternative one or more folded words, by
their first word: a place may have a hundred."""


class Classes(NamedTuple):
    """``words`` of each class by its name, the words that a "*" in it is not (``but``), and the names of the foods of
    each ``kind``."""

    words: Mapping[str, Sequence[str]]
    but: Mapping[str, Sequence[str]] = {}
    kinds: Mapping[str, Sequence[str]] = {}


class Hit(NamedTuple):
    """``text[start:end]`` holds a pattern of the table row ``value``; ``own`` are its own words: others may stand
    between them."""

    start: int
    end: int
    value: str
    own: tuple[tuple[int, int], ...] = ()


class _Phrase(NamedTuple):
    """A phrase of the table row ``value``: the stretches between its "…"."""

    value: str
    parts: tuple[_Part, ...]


class _Gathering(NamedTuple):
    """A gathering of the table row ``value``: its parts, and the parts that refuse a sentence, as they are written:
    many gatherings have one in common."""

    value: str
    parts: tuple[str, ...]
    refused: tuple[str, ...]


class Patterns:
    """The patterns of a table's rows."""

    def __init__(
        self,
        entries: Mapping[str, Sequence[str]],
        classes: Classes,
        unless: Mapping[str, Sequence[str]] = MappingProxyType({}),
    ) -> None:
        """``entries``: the row to report -> its patterns as written; ``unless``: the parts that refuse any of them."""
        self._found: Remembered[str, list[Hit]] = Remembered()
        self._by_word: dict[str, list[int]] = {}  # so that a text is gone through once
        self._by_rarest: dict[str, list[int]] = {}  # gatherings, by the words of the part that has the fewest
        phrases: list[_Phrase] = []
        gatherings: list[_Gathering] = []
        self._unless = {value: tuple(parts) for value, parts in unless.items() if parts}
        parts_of = {one: _part(one.lstrip("=~"), classes) for parts in self._unless.values() for one in parts}
        # What a text must hold of each: the first words of its parts, each set of them held once.
        self._needed: list[tuple[frozenset[str], ...]] = []
        self._gathered: list[tuple[frozenset[str], ...]] = []
        once: dict[frozenset[str], frozenset[str]] = {}
        for value, patterns in entries.items():
            for written in patterns:
                if " & " in written:
                    gathering = _gathering(value, written)
                    new = {*gathering.parts, *gathering.refused} - parts_of.keys()
                    parts_of |= {one: _part(one.lstrip("=~"), classes) for one in sorted(new)}
                    needed = _needed([parts_of[one][0] for one in gathering.parts], once)
                    rarest = min(needed, key=len)
                    for word in sorted(rarest):
                        self._by_rarest.setdefault(word, []).append(len(gatherings))
                    gatherings.append(gathering)
                    self._gathered.append(needed)
                    continue
                parts = tuple(_part(stretch, classes) for stretch in written.split("…"))
                needed = _needed([place for part in parts for place in part], once)
                for word in needed[0]:
                    self._by_word.setdefault(word, []).append(len(phrases))
                phrases.append(_Phrase(value, parts))
                self._needed.append(needed[1:])
        self._phrases: Sequence[_Phrase] = phrases
        self._gatherings: Sequence[_Gathering] = gatherings
        self._parts: Mapping[str, _Part] = parts_of

    def lay_out(self, pack: Pack, pack_row: Callable[[Sequence[Any]], Sequence[Any]]) -> None:
        """Hold the patterns as ``pack`` and ``pack_row`` make them; what a text must hold of each stays at hand."""
        self._phrases, self._parts = pack_row(self._phrases), pack(self._parts)

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
                own = tuple(
                    (row[first].start, row[last - 1].end) for first, last in _places(text, row, keys, at, phrase.parts)
                )
                if own:
                    found.append(Hit(own[0][0], own[-1][1], phrase.value, own))
        may = {which for one in said & self._by_rarest.keys() for which in self._by_rarest[one]}
        held = [(which, self._gathered[which]) for which in sorted(may) if _holds_all(said, self._gathered[which])]
        if not held and not found:
            return found
        marked = [bool(_MARK.search(text, one.end, two.start)) for one, two in pairwise(row)]
        said_in = _Said(row, keys, [False, *marked], {})
        sentences = list(_sentences(text, row))
        if held:
            for first, last in sentences:
                for gathering in self._that_may_stand(held, keys[first:last]):
                    found += self._gather(said_in, first, last, gathering, _NEAR)
            for first, middle, last in _spoken_on(sentences, keys):
                for gathering in self._that_may_stand(held, keys[first:last]):
                    over = self._gather(said_in, first, last, gathering, _NEAR_IN_TWO)
                    found += [hit for hit in over if hit.start < row[middle].start < hit.end and _new(hit, found)]
        kept: list[Hit] = []
        for hit in sorted(found, key=lambda h: (h.start, -h.end, h.value)):
            if any(hit.value == one.value and hit.start < one.end for one in kept):
                continue
            if not self._refused(said_in, sentences, hit, self._unless.get(hit.value, ())):
                kept.append(hit)
        return sorted(kept, key=lambda h: (h.start, h.value))

    def _refused(self, said: _Said, sentences: Sequence[tuple[int, int]], hit: Hit, refused: Sequence[str]) -> bool:
        """Whether words of a part of ``refused`` stand in the sentence of ``hit``, near it."""
        inside = [at for at, word in enumerate(said.row) if hit.start <= word.start < hit.end] if refused else []
        if not inside:
            return False
        first = max(begin for begin, _ in sentences if begin <= inside[0])
        last = min(end for _, end in sentences if inside[-1] < end)
        return self._any_refused(said, (first, last), (inside[0], inside[-1] + 1), frozenset(inside), refused)

    def _any_refused(
        self, said: _Said, within: Place, around: Place, own: frozenset[int], refused: Sequence[str]
    ) -> bool:
        """Whether words of a part of ``refused`` stand ``around`` what is told in its ``own`` words, undenied."""
        near = max(within[0], around[0] - _AROUND), min(within[1], around[1] + _AROUND)
        far = max(0, around[0] - _NEAR_IN_TWO), min(len(said.keys), around[1] + _NEAR_IN_TWO)
        denied = frozenset(at for at in range(*far) if said.keys[at] in _DENIES) - own
        none = frozenset[int]()
        return any(
            self._stands(said, *(far if part[0] == "~" else near), part, none if part[0] == "=" else denied)
            for part in refused
        )

    def _stands(self, said: _Said, first: int, last: int, part: str, denials: frozenset[int]) -> bool:
        """Whether words of ``part`` stand there that no denial takes back: "no faffing with stirring" stirs nothing."""
        return any(
            not any(no in denials and not any(said.before[no + 1 : at + 1]) for no in range(at - _DENIED, at))
            for at, _ in self._occurrences(said, first, last, part)
        )

    def _occurrences(self, said: _Said, first: int, last: int, part: str) -> list[Place]:
        """Where ``part`` stands in the words ``first`` to ``last``: a text is gone through once for each part, though
        many gatherings and stretches of sentences ask for it."""
        whole = said.found.get(part)
        if whole is None:
            whole = said.found[part] = list(_everywhere(said, self._parts[part]))
        near = whole[bisect_left(whole, (first,)) : bisect_left(whole, (last,))]
        return [(at, max(end for end in ends if end <= last)) for at, ends in near if min(ends) <= last]

    def _that_may_stand(
        self, held: Sequence[tuple[int, Sequence[frozenset[str]]]], keys: Sequence[str]
    ) -> list[_Gathering]:
        """Those of ``held`` of which these words hold a word of each part: few of them are ever taken out."""
        here = frozenset(keys)
        return [self._gatherings[which] for which, parts in held if _holds_all(here, parts)]

    def _gather(self, said: _Said, first: int, last: int, gathering: _Gathering, room: int) -> Iterator[Hit]:
        """The gathering in the words ``first`` to ``last``, once: of its closest words, no more than ``room`` apart."""
        places = []
        for part in gathering.parts:
            here = self._occurrences(said, first, last, part)
            if not here:
                return
            places.append(here)
        best: tuple[int, list[tuple[int, int]]] | None = None
        for begin in places[0]:
            low, high = (begin[0] - room, 0), (begin[0] + room + 1, 0)
            near = [here[bisect_left(here, low) : bisect_left(here, high)] for here in places[1:]]
            taken = _closest(begin, [begin], near)
            if taken is not None:
                wide = max(end for _, end in taken) - min(start for start, _ in taken)
                if wide <= room and (best is None or wide < best[0]):
                    best = wide, taken
        if best is not None:
            around = min(start for start, _ in best[1]), max(end for _, end in best[1])
            words_of = frozenset(at for start, end in best[1] for at in range(start, end))
            if self._any_refused(said, (first, last), around, words_of, gathering.refused):
                return
            own = tuple((said.row[start].start, said.row[end - 1].end) for start, end in sorted(best[1]))
            yield Hit(own[0][0], max(end for _, end in own), gathering.value, own)


def _new(hit: Hit, found: Sequence[Hit]) -> bool:
    """Whether no hit of the same row stands where it does: one sentence that tells it by itself is the surer."""
    return not any(one.value == hit.value and one.start < hit.end and hit.start < one.end for one in found)


def _needed(places: Iterable[Iterable[str]], once: dict[frozenset[str], frozenset[str]]) -> tuple[frozenset[str], ...]:
    """The first words of each place, those that were met before as they are held in ``once``."""
    return tuple([once.setdefault(words, words) for words in map(frozenset, places)])


def _holds_all(said: frozenset[str], parts: Sequence[frozenset[str]]) -> bool:
    """Whether a text of these words holds a word of each part: asked of hundreds of patterns for each text."""
    for needed in parts:  # noqa: SIM110 - a generator would take three times as long
        if said.isdisjoint(needed):
            return False
    return True


def _gathering(value: str, written: str) -> _Gathering:
    parts = [one.strip() for one in written.split(" & ")]
    refused = tuple([one[1:] for one in parts if one.startswith("!")])
    return _Gathering(value, tuple([one for one in parts if not one.startswith("!")]), refused)


def _part(stretch: str, classes: Classes) -> _Part:
    places = []
    for token in stretch.split():
        place: dict[str, tuple[_Option, ...]] = {}
        for option in dict.fromkeys(_options(token.split("/"), classes)):
            first = option[0]
            assert isinstance(first, str), f"{token}: begins with any word"
            place[first] = (*place.get(first, ()), option)
        places.append(place)
    return tuple(places)


def _options(written: Iterable[str], classes: Classes, but: frozenset[str] = frozenset()) -> Iterator[_Option]:
    """The alternatives that words of a pattern or of a class stand for; a class may hold classes."""
    for one in written:
        if one in classes.words:
            yield from _options(classes.words[one], classes, frozenset(fold(w) for w in classes.but.get(one, ())))
        elif one.startswith("@"):
            yield from _options(classes.kinds.get(one[1:], ()), classes)
        elif "/" in one:
            yield from _options(map(" ".join, product(*[place.split("/") for place in one.split()])), classes, but)
        elif one.startswith("+"):
            verb, *rest = one[1:].replace("_", " ").split(" ", 1)
            for form in forms(verb):
                yield from _options([" ".join((form, *rest))], classes, but)
        elif option := tuple(_tokens(one.replace("_", " "), but)):
            yield option


def _tokens(written: str, but: frozenset[str]) -> Iterator[_Token]:
    for piece in written.split():
        yield from [but] if piece == "*" else [word.key for word in words(piece)]


def _sentences(text: str, row: Sequence[Word]) -> Iterator[tuple[int, int]]:
    """Where each sentence begins and ends, in words."""
    first = 0
    for at in range(1, len(row)):
        if _STOP.search(text, row[at - 1].end, row[at].start):
            yield first, at
            first = at
    if row:
        yield first, len(row)


def _spoken_on(sentences: Sequence[tuple[int, int]], keys: Sequence[str]) -> Iterator[tuple[int, int, int]]:
    """Stretches of two sentences, then of up to four, of which the last speaks on: where they begin, where the last
    does, and where they end."""
    for more in range(1, _FEW):
        for (first, ends), (middle, last) in zip(sentences, sentences[more:], strict=False):
            speaks_on = _SPEAKS_ON if more == 1 else _OF_THINGS
            if middle - ends <= _NEAR_IN_TWO and not speaks_on.isdisjoint(keys[middle : min(middle + _GLANCE, last)]):
                yield first, middle, last


class _Said(NamedTuple):
    """The words of a text, folded as ``keys``, whether a mark stands ``before`` each, and where the parts asked for
    so far were ``found``."""

    row: Sequence[Word]
    keys: tuple[str, ...]
    before: Sequence[bool]
    found: dict[str, list[tuple[int, tuple[int, ...]]]]


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


def _everywhere(said: _Said, part: _Part) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Where ``part`` begins in a text, and where it may end."""
    begin = part[0]
    for at, key in enumerate(said.keys):
        if key in begin:
            ends = tuple([end for end in _ends(said.keys, at, part) if not any(said.before[at + 1 : end])])
            if ends:
                yield at, ends


def _ends(keys: tuple[str, ...], at: int, part: _Part) -> list[int]:
    """Where ``part`` may end that begins at word ``at``."""
    ends = [at]
    for place in part:
        begun, ends = ends, []
        for begin in begun:
            for one in place.get(keys[begin], ()) if begin < len(keys) else ():
                end = begin + len(one)
                # The first word was looked up; most are the only one.
                if end == begin + 1 or (end <= len(keys) and all(map(_is, keys[begin + 1 : end], one[1:]))):
                    ends.append(end)
    return ends


def _is(key: str, token: _Token) -> bool:
    return key == token if isinstance(token, str) else key not in token


def _places(
    text: str, row: Sequence[Word], keys: tuple[str, ...], at: int, parts: tuple[_Part, ...]
) -> tuple[tuple[int, int], ...]:
    """Where each of the parts stands, the first at word ``at``, each within five words of the last; () where not."""
    for end in _ends(keys, at, parts[0]):
        if len(parts) == 1:
            return ((at, end),)
        for start in range(end, min(end + 6, len(row))):
            if END.search(text[row[end - 1].end : row[start].start]) or "never" in keys[end:start]:
                break  # "on a spoon, never in a bottle"
            if rest := _places(text, row, keys, start, parts[1:]):
                return ((at, end), *rest)
    return ()
