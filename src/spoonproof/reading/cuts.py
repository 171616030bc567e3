"""Words for how a food is cut, to a shape and millimetres.

A size that was written ("1 cm dice") is the author's; a size that a word implies ("finely chopped",
1 to 4 mm) is common practice and stands in the table of cuts.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import get_args

from spoonproof.model.kitchen import Verb
from spoonproof.model.recipe import Cut, CutShape
from spoonproof.model.record import NamedTuple, dataclass, field, replace
from spoonproof.model.remembered import Remembered
from spoonproof.model.table import Row
from spoonproof.model.text import Passage, Span
from spoonproof.reading.numbers import number_at, range_sign
from spoonproof.reading.runs import begins_of, listed

_LENGTH = re.compile(
    r"[ \t]{0,9}[-‑]?[ \t]{0,9}(cms?|mms?|centimet(?:re|er)s?|millimet(?:re|er)s?|inch(?:es)?|ins?|[\"”″])(?![\w])"
)
_BY = re.compile(  # blanks are counted: four free runs of them in a row would take the fourth power of their length
    r" ?[-‑]?(cms?|mms?|inch(?:es)?|ins?|[\"”″])?(?: (?:thick|wide))? ?(?:[x×]|by) ?(?=[0-9])"
)
_SAME_AGAIN = re.compile(r" ?(?:[/(]|or\b) ?(?=[0-9½⅓⅔¼¾⅛⅜⅝⅞])")  # "3 cm / 1¼ in", "1 cm (½ in)"
_SAME = 1.5  # how far apart two roundings of one length may be
_LONG_MM = 35.0  # a stick is not as thick as that: the size that stands beside it is its length
_NUMBER_WORDS = {"half": Fraction(1, 2), "quarter": Fraction(1, 4), "one": Fraction(1), "two": Fraction(2)}
_BEGUN = re.compile(r"(?<![^\W_])(?<![.,/⁄])[^\W_]")
_HALF = re.compile(r"(?i)(half|quarter|one|two)(?:[ -]an?)?(?:[ -]of[ -]an?)?(?=[ -]*(?:cm|mm|inch|centimet|millimet))")
_LENGTHWAYS = re.compile(
    r"(?i)[ \t,]{0,9}\b(lengthways|lengthwise|length-ways|length-wise|long[ -]ways|along (?:the|their|its) length)\b"
)
_FINGER = re.compile(r"(?i)(?:(?:adult|little|your)[- ])?finger[- ](?:length|long|sized?|thick|width)[ ]$")
_FINGER_AFTER = re.compile(  # "sticks the length of a finger", "batons as long as your little finger"
    r"(?i)[ ,]{1,2}(?:about |roughly )?(?:the (?:length|size|width|thickness) of|as (?:long|thick|wide|big) as)"
    r" (?:an?|your|an adult'?s?|a grown-up'?s?)(?: (?:adult|little))? finger\b"
)
_LENGTHWAYS_INTO = re.compile(r"(?i)\b(?:lengthways|lengthwise)[ \t]{1,9}(?:into|in)[ \t]{1,9}$")
_INTO = re.compile(r"(?i)[ \t]{0,9}(?:lengthways|lengthwise)?[ \t]{0,9}(?:into|in)[ \t]{1,9}(?:[a-z]+[ \t]{1,9})?")
_NEEDS_SIZE = frozenset(("pieces", "lengths", "bits"))
_FILL = re.compile(
    r"(?i)[ \t]{0,9}(?:,|thick|thin|long|wide|sized?|even|neat|equal|square|small|chunky|soft|rough|about|roughly"
    r"|or so)(?![\w])"
)
_MM = {"m": Fraction(1), "c": Fraction(10), "i": Fraction(254, 10)}
_SHAPES: frozenset[str] = frozenset(get_args(CutShape))


class CutWord(NamedTuple):
    """What a cut word means: the shape, and the millimetres it implies."""

    shape: CutShape
    low_mm: float | None
    high_mm: float | None


class FoundCut(NamedTuple):
    """A cut at ``text[start:end]``; its own span is the same two offsets."""

    start: int
    end: int
    cut: Cut


class Length(NamedTuple):
    """A length at ``text[start:end]`` in mm."""

    start: int
    end: int
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Cuts:
    """The closed list of cut words."""

    words: Mapping[str, CutWord] = field(default_factory=dict)
    verbs: Mapping[str, CutWord] = field(default_factory=dict)
    longest: int = 1
    begins: frozenset[str] = frozenset()
    _found: Remembered[tuple[str, bool], tuple[FoundCut, ...]] = field(
        default_factory=Remembered, compare=False, repr=False
    )

    @classmethod
    def from_rows(cls, rows: Sequence[Row]) -> Cuts:
        """The words of cuts.csv. Raises ValueError, naming file and line, on an unknown shape."""
        words: dict[str, CutWord] = {}
        verbs: dict[str, CutWord] = {}
        for row in rows:
            shape = row.text("shape")
            if shape not in _SHAPES:
                raise ValueError(f"{row.file}:{row.line}: {shape!r} is not a shape of cut")
            meaning = CutWord(shape, row.number("low_mm"), row.number("high_mm"))  # type: ignore[arg-type]  # one of _SHAPES
            words |= dict.fromkeys(row.items("words"), meaning)
            verbs |= dict.fromkeys(row.items("verbs"), meaning)
        longest = max((len(key.split()) for key in (*words, *verbs)), default=1)
        return cls(words, verbs, longest, begins_of((*words, *verbs)))

    def find(self, text: str, *, verbs: bool = False) -> tuple[FoundCut, ...]:
        """All cuts in ``text``, left to right: a shape word with or without a size, a bare size at an end
        of its own ("5 mm" between commas), "lengthways" beside it. ``verbs``: also the forms of steps ("halve")."""
        known = self._found.get((text, verbs))
        return known if known is not None else self._found.keep((text, verbs), self._look_for(text, verbs))

    def _look_for(self, text: str, verbs: bool) -> tuple[FoundCut, ...]:
        table = {**self.words, **self.verbs} if verbs else self.words
        lengths = find_lengths(text)
        found: list[FoundCut] = []
        taken: set[int] = set()
        for start, end, meaning in listed(text, self.longest, self.begins, table.get, " \t\r\n"):
            beside = _beside(text, lengths, start, end, taken)
            if beside is None and text[start:end].lower() in _NEEDS_SIZE:
                continue
            low, high = meaning.low_mm, meaning.high_mm
            left, right = start, end
            if beside is not None:
                taken.add(beside)
                size = lengths[beside]
                if meaning.shape not in ("baton", "strip") or size.low < _LONG_MM:
                    low, high = size.low, size.high
                left, right = min(left, size.start), max(right, size.end)
            finger = _FINGER.search(text[max(0, left - 24) : left])
            if finger:
                left -= len(finger[0])
            if found and _INTO.fullmatch(text, found[-1].end, left):
                left = found.pop().start  # "sliced into 5 mm rounds": the rounds count
            for says in (_FINGER_AFTER, _LENGTHWAYS):
                if after := says.match(text, right):
                    right = after.end()
            along = _LENGTHWAYS.search(text, end, right)
            before = _LENGTHWAYS_INTO.search(text[max(0, left - 40) : left])
            if before:
                left -= len(before[0])  # "cut lengthways into thin strips"
            within = _LENGTHWAYS.search(text, start, end)  # "split lengthways"
            lengthways = any(said is not None for said in (along, before, within))
            found.append(FoundCut(left, right, Cut(meaning.shape, Span(left, right), low, high, lengthways)))
        for index, size in enumerate(lengths):
            if index not in taken and _alone(text, size):
                cut = Cut("dice", Span(size.start, size.end), size.low, size.high)
                found.append(FoundCut(size.start, size.end, cut))
        return tuple(sorted(found, key=lambda one: one.start))


def find_lengths(text: str) -> list[Length]:
    """All lengths in ``text`` ("1 cm", "5-8 mm", "half-inch", "1 in"), left to right, in mm."""
    found: list[Length] = []
    at = 0
    while (begun := _BEGUN.search(text, at)) is not None:
        at, char = begun.start(), begun[0]
        size = _length_at(text, at) if char.isnumeric() or (char.isalpha() and _HALF.match(text, at)) else None
        if size is not None:
            found.append(size)
        at = at + 1 if size is None else size.end
    return found


def _length_at(text: str, at: int) -> Length | None:
    word = _HALF.match(text, at)
    if word:
        low = high = _NUMBER_WORDS[word[1].lower()]
        end = word.end()
    else:
        first = number_at(text, at)
        if first is None or first.value is None:
            return None
        low = high = first.value
        end = first.end
        by = _BY.match(text, end)
        if by is not None and (other := _length_at(text, by.end())) is not None:
            unit = by[1] or text[at : other.end].rstrip("s").rpartition(" ")[2].lstrip("0123456789./½¼¾-")
            thin = min(float(low * _MM.get(unit[:1].lower(), _MM["i"])), other.low)
            return Length(at, other.end, thin, thin)
        unit = _LENGTH.match(text, end)
        sign = range_sign(text, unit.end() if unit else end)
        if sign is not None:
            second = number_at(text, sign)
            high_value = second.value if second is not None and _LENGTH.match(text, second.end) else None
            if second is not None and high_value is not None and high_value >= low:
                high, end = high_value, second.end
    unit = _LENGTH.match(text, end)
    if unit is None:
        return None
    scale = _MM.get(unit[1][0].lower(), _MM["i"])
    size = Length(at, unit.end(), float(low * scale), float(high * scale))
    again = _SAME_AGAIN.match(text, size.end)
    other = _length_at(text, again.end()) if again is not None else None
    if other is None or not size.low / _SAME <= other.low <= size.low * _SAME:
        return size
    return size._replace(end=other.end + (text[other.end : other.end + 1] == ")"))


def _beside(text: str, lengths: Sequence[Length], start: int, end: int, taken: set[int]) -> int | None:
    """Index of the length right before, else right after a shape word, with only filling words between."""
    for index, size in enumerate(lengths):
        if index not in taken and 0 <= start - size.end < 40 and _only_filling(text[size.end : start]):
            return index
    for index, size in enumerate(lengths):
        if index not in taken and 0 <= size.start - end < 40 and _only_filling(text[end : size.start].lstrip(" (")):
            return index
    return None


def _only_filling(between: str) -> bool:
    at = 0
    while at < len(between):
        match = _FILL.match(between, at)
        if match is None:
            return not between[at:].strip(" -")
        at = match.end()
    return True


def _alone(text: str, size: Length) -> bool:
    """A size between commas, or closing the line: "parsnip, peeled, 5 mm"."""
    left = text[max(0, size.start - 8) : size.start].rstrip()
    right = text[size.end : size.end + 8].lstrip()
    return (not left or left[-1] in ",;(") and (not right or right[0] in ",;)")


_CUT_PHRASE = re.compile(
    r"(?i)\b(?:cut|sliced?|chopped|diced|torn|broken|flaked|halved|quartered)"
    r"(?:[ \t]{1,9}(?:up|in|into|lengthways)){0,3}[ \t]{0,9}$"
)
_PARTICIPLE = re.compile(  # "stir in the raisins, chopped small"
    r"(?i),[ \t]+(?:(?:very |quite )?(?:finely|roughly|thinly|coarsely) )?"
    r"(?:chopped|sliced|diced|grated|crushed|mashed|halved|quartered|shredded|flaked|crumbled|torn)[^,.;]{0,24}$"
)
_SERVED_AS = re.compile(r"(?i)\b(?:cut|sliced|chopped|in|into|as)[ \t]{1,9}(?:[a-z-]+[ \t]{1,9})?$")
_ADVERB = re.compile(r"(?i)\b(?:very finely|finely|thinly|thickly|roughly|coarsely)\b")
_FINE = re.compile(  # "chop the meat very fine", "dice it as small as you can"
    r"(?i)\b(?:(?:very |really |quite |nice and )?(?:fine|small)"
    r"(?=[ \t]{0,3}(?:[.,;)]|$|\b(?:and|before|for|then|with)\b))"
    r"|as (?:fine|finely|small) as (?:you can|possible))"
)
_OF_A_PERSON = re.compile(r"(?i)\b(?:your|my|clean|between|wet|both|her|his|their)[ \t]{1,9}(?:clean |wet )?$")


def cuts_of(passage: Passage, own: tuple[int, int], verb: Verb, known: Cuts) -> tuple[Cut, ...]:
    """The cuts that an instruction makes or gives; ``own``: where its words stand in the passage."""
    base, end = own
    part = passage.text[base:end]
    found = list(known.find(part, verbs=verb.role == "cut"))
    found = [f for f in found if not _OF_A_PERSON.search(part[max(0, f.start - 24) : f.start])]
    if verb.role != "cut":
        phrase = _SERVED_AS if verb.role == "serve" else _CUT_PHRASE
        asked = ((f, part[max(0, f.start - 40) : f.start], part[: f.end]) for f in found if f.cut.shape != "whole")
        found = [f for f, before, so_far in asked if phrase.search(before) or _PARTICIPLE.search(so_far)]
    elif len(found) > 1 and found[0].start == 0:
        found = found[1:]  # "slice into thin rounds": the shape counts, not the verb
    elif len(found) == 1 and found[0].start == 0:
        adverb = _ADVERB.search(part, found[0].end)
        said = adverb[0].lower() if adverb else "finely" if _FINE.search(part, found[0].end) else ""
        word = part[: found[0].end].split()[0].lower() if part else ""
        meaning = known.verbs.get(f"{said} {word}") if said else None
        if meaning is not None:
            cut = replace(found[0].cut, shape=meaning.shape, low_mm=meaning.low_mm, high_mm=meaning.high_mm)
            found = [found[0]._replace(cut=cut)]
    along = _LENGTHWAYS.search(part) is not None
    placed = ((f.cut, passage.span(base + f.start, base + f.end)) for f in found)
    return tuple(replace(cut, span=span, lengthways=cut.lengthways or along) for cut, span in placed)
