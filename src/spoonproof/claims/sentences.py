"""Cut a passage into sentences, and long unpunctuated speech into breaths, only where it is asked.

Written text is cut by ``ends``; a stretch with nothing to decide is not sent there. Speech
without punctuation is cut where the words around a place begin and end sentences more often than not
(``claims/lexicon/en/breaths.csv``, learned from sentences of our own by ``benchmarks/breaths.py``), so that a claim
keeps its own subject.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise

from spoonproof.claims.ends import starts_in
from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Passage

_PARAGRAPH = re.compile(r"\n[ \t]*(?:\n[ \t]*)+|\n(?=[ \t]*(?:[-*•#>]|\d+[.)])[ \t])")
_MAYBE_END = re.compile(r"[.!?…][\"'”’)\]*_]*\s+(?=\S)")
# "Sore gums? Chill a carrot.": what is asked in a word or two is what the next sentence is about.
_TOPIC_ASKED = re.compile(
    r"(?:\A|[.!?\n] *)(?!(?:is|are|can|does|do|did|what|why|how|when|which|who|where|should|will|would|so|really|yes"
    r"|no|right|ok)\b)[^\W\d_][\w'’-]*(?: [\w'’-]+){0,3}\?[ ]+\Z",
    re.IGNORECASE,
)
# "What has iron? Lentils and peas.": nor is a question that a word or two answer.
_ASKED = re.compile(r"(?:\A|[.!?\n] *)(?:what|which|where)\b[^.!?\n]{0,40}\?[ ]+\Z", re.IGNORECASE)
_ANSWER = re.compile(r"[\w'’-]+(?:,? (?:and |or )?[\w'’-]+){0,3}[.!]?\s*(?:\Z|\n)")
_TOPIC = 60  # characters
_NO_END = re.compile(r"[.!?;:]")
_WORD = re.compile(r"\S+")
# A stretch of this many words without punctuation is speech as it was typed by a machine.
_LONG = 45
_SHORTEST, _SHORT, _LONG_BREATH = 4, 6, 12
"""Words: no breath is shorter than the first; one shorter than the second must end plainly; past the third it may end
the more easily the longer it has lasted."""
_NEVER = 1000
_GOES_ON = frozenset("they're theyre it's he's she's shes i'm im we're you're the a an my our your".split())
_COUNTING = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_COUNTED = 3
# "One cup of oats": how much, and nothing is counted off.
_OF_THINGS = frozenset(
    "cup cups spoon spoons tablespoon tablespoons teaspoon teaspoons of or to and months month years year weeks week "
    "days day hours hour minutes minute grams ml more times portions eggs slices pieces handfuls".split()
)
_PLAINLY, _EASIER = 15, 0.8
_LINES, _FEW = 3, 6
_ENDS_OF_LINES, _ENDS_OF_FEW, _RUNS_ON = -19.0, -12.0, -35
"""What the words around the ends of lines must say, in the middle, for lines to be breaths; of few lines more is asked.
Lines of talk of our own lay between -15 and 3, the same words in lines of any other length between -40 and -23. A line
that says less than the last runs on all the same."""
BreathRow = tuple[str, int, str]
"""Of ``breaths.csv``: the place ("begins", "ends"; "otherwise" for everything else), its weight in tenths, and the
words or pairs of words, joined by semicolons."""


class Sentence(NamedTuple):
    """``text[start:end]`` of a passage."""

    start: int
    end: int


def cut_points(text: str, lines: Sequence[int] = ()) -> list[int]:
    """Starts of the paragraphs of ``text``: 0, after each blank line or before each list item, each of ``lines``."""
    return sorted({0, *(m.end() for m in _PARAGRAPH.finditer(text)), *lines})


def lines_apart(passage: Passage, rows: Sequence[BreathRow]) -> list[int]:
    """Where lines of a typed transcript begin that are breaths of their own; none where lines are broken anywhere.

    The words around all ends of lines decide it together: talk that is wrapped, or cut into captions, breaks after
    "the" as often as after "done".
    """
    if passage.kind != "speech" or passage.cues or len(passage.pieces) <= _LINES or not rows:
        return []
    weights = _weights(tuple(rows))
    said: list[str] = []
    starts: list[tuple[int, int]] = []  # of the line, and of its first word
    for piece in passage.pieces:
        starts.append((piece.at, len(said)))
        said += [word.strip(".,!?:;…") for word in passage.text[piece.at : piece.at + piece.length].lower().split()]
    told = [(_breaks(said, word, weights), at) for at, word in starts[1:] if word < len(said)]
    middle = sum(weight for weight, _ in told) / max(1, len(told))
    if middle < (_ENDS_OF_LINES if len(told) >= _FEW else _ENDS_OF_FEW):
        return []
    return [at for weight, at in told if weight > _RUNS_ON]


def sentences(text: str, start: int, end: int, rows: Sequence[BreathRow] = ()) -> Iterator[Sentence]:
    """The sentences of the paragraph ``text[start:end]``, in order, without surrounding blanks."""
    counted = _counted(text, start, end)
    if counted:
        for left, right in pairwise((start, *counted, end)):
            yield from sentences(text, left, right, rows)
        return
    part = text[start:end]
    if _MAYBE_END.search(part) is None:
        yield from _breaths(text, start, end, rows)
        return
    offsets = [at for at in starts_in(part) if not at or not _answers(part, at)]
    for left, right in zip(offsets, [*offsets[1:], len(part)], strict=True):
        yield from _breaths(text, start + left, start + right, rows)


def _answers(text: str, at: int) -> bool:
    """Whether what begins at ``at`` only answers the question before it."""
    before = text[max(0, at - _TOPIC) : at]
    asked = "?" in before and _ASKED.search(before) is not None and _ANSWER.match(text, at) is not None
    return asked or _TOPIC_ASKED.search(before) is not None


def _counted(text: str, start: int, end: int) -> list[int]:
    """Where the things counted off begin ("one rice cakes because ... two fruit juice it ... three ..."); nowhere
    unless there are three, each told in some words, and no mark says where they end."""
    if text.find(" two ", start, end) < 0 or text.find(" three ", start, end) < 0:
        return []
    words = list(_WORD.finditer(text, start, end))
    found: list[int] = []
    last = -_SHORTEST
    for at, word in enumerate(words[:-1]):
        said = word.group().lower()
        if len(found) == len(_COUNTING):
            break
        if len(found) == 1 and said == _COUNTING[0]:
            found.clear()  # "*this one* is hungry ... one ... two": the last before two
            last = -_SHORTEST
        if said == _COUNTING[len(found)] and at - last >= _SHORTEST and words[at + 1].group().lower() not in _OF_THINGS:
            begin = at - 1 if at and words[at - 1].group().lower() == "number" else at
            found.append(words[begin].start())
            last = at
    return [at for at in found if at > start] if len(found) >= _COUNTED else []


def _breaths(text: str, start: int, end: int, rows: Sequence[BreathRow]) -> Iterator[Sentence]:
    part = text[start:end]
    left = len(part) - len(part.lstrip())
    right = len(part.rstrip())
    if right <= left:
        return
    words = part.count(" ")
    if words < _LONG or len(_NO_END.findall(part)) * _LONG > words or not rows:
        yield Sentence(start + left, start + right)
        return
    weights = _weights(tuple(rows))
    found = list(_WORD.finditer(part))
    said = [word.group().lower() for word in found]
    begin, since = left, 0
    for at in range(1, len(said)):
        since += 1
        if since >= _SHORTEST and _breaks(said, at, weights) > _held(since):
            yield Sentence(start + begin, start + found[at].start() - 1)
            begin, since = found[at].start(), 0
    yield Sentence(start + begin, start + right)


def _held(words: int) -> float:
    """How much must speak for an end, in tenths, after a breath of so many words."""
    return _PLAINLY if words < _SHORT else -_EASIER * max(0, words - _LONG_BREATH)


def _breaks(said: Sequence[str], at: int, weights: dict[tuple[str, str], int]) -> int:
    """What speaks for a sentence that begins at word ``at``, in tenths of a log-odds."""
    get = weights.get
    word, last = said[at], said[at - 1]
    if last in _GOES_ON:
        return -_NEVER
    found = get(("", ""), 0) + get(("begins", word), 0) + get(("ends", last), 0)
    if at + 1 < len(said):
        found += get(("begins", f"{word} {said[at + 1]}"), 0)
    return found + (get(("ends", f"{said[at - 2]} {last}"), 0) if at > 1 else 0)


@cache
def _weights(rows: tuple[BreathRow, ...]) -> dict[tuple[str, str], int]:
    found: dict[tuple[str, str], int] = {}
    for place, weight, terms in rows:
        if place == "otherwise":
            found["", ""] = weight
        else:
            found.update({(place, term): weight for term in terms.split(";")})
    return found


def around(text: str, hits: list[int], rows: Sequence[BreathRow] = (), lines: Sequence[int] = ()) -> Iterator[Sentence]:
    """The sentences of ``text`` that hold at least one offset of ``hits``, ascending; ``lines`` of ``lines_apart``."""
    cuts = cut_points(text, lines)
    done = -1
    for hit in hits:
        index = bisect_right(cuts, hit) - 1
        if index == done:
            continue
        done = index
        begin = cuts[index]
        stop = cuts[index + 1] if index + 1 < len(cuts) else len(text)
        inside = hits[bisect_left(hits, begin) : bisect_left(hits, stop)]
        at = 0
        for sentence in sentences(text, begin, stop, rows):
            while at < len(inside) and inside[at] < sentence.start:
                at += 1
            if at < len(inside) and inside[at] < sentence.end:
                yield sentence
