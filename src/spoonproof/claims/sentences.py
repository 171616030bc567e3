"""Cut a passage into sentences, and long unpunctuated speech into breaths, only where it is asked.

Written text goes to a maintained splitter; a stretch with nothing to decide is not sent there. Speech
without punctuation is cut before words that open a clause, so that a claim keeps its own subject.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

_PARAGRAPH = re.compile(r"\n[ \t]*(?:\n[ \t]*)+|\n(?=[ \t]*(?:[-*•#>]|\d+[.)])[ \t])")
_MAYBE_END = re.compile(r"[.!?…][\"'”’)\]*_]*\s+(?=\S)")
_NO_END = re.compile(r"[.!?;:]")
_STOPS = ".!?;"
_WORD = re.compile(r"\S+")
# A stretch of this many words without punctuation is speech as it was typed by a machine.
_LONG = 45
_BREATH = 9
_OPENERS = frozenset(
    "and so but because well okay ok then also now it it's its they they're this these that's there he she we we're "
    "we've i i'm i've you you're if when what why who where while although since plus or another first second "
    "next finally remember let's here here's".split()
)


class Sentence(NamedTuple):
    """``text[start:end]`` of a passage."""

    start: int
    end: int


def cut_points(text: str) -> list[int]:
    """Starts of the paragraphs of ``text``: 0 and after each blank line or before each list item."""
    return [0, *(m.end() for m in _PARAGRAPH.finditer(text))]


def sentences(text: str, start: int, end: int) -> Iterator[Sentence]:
    """The sentences of the paragraph ``text[start:end]``, in order, without surrounding blanks."""
    part = text[start:end]
    if _MAYBE_END.search(part) is None:
        yield from _breaths(text, start, end)
        return
    offsets = _split(part)
    for left, right in zip(offsets, [*offsets[1:], len(part)], strict=True):
        yield from _breaths(text, start + left, start + right)


def _split(part: str) -> list[int]:
    """Offsets where sentences begin, by the splitter; tokens know where they stand."""
    import syntok.segmenter as segmenter

    starts = [
        sentence[0].offset for paragraph in segmenter.analyze(part) for sentence in paragraph if len(sentence) > 0
    ]
    return [0, *(s for s in starts if s > 0)]


def _breaths(text: str, start: int, end: int) -> Iterator[Sentence]:
    part = text[start:end]
    left = len(part) - len(part.lstrip())
    right = len(part.rstrip())
    if right <= left:
        return
    words = part.count(" ")
    if words < _LONG or len(_NO_END.findall(part)) * _LONG > words:
        yield Sentence(start + left, start + right)
        return
    since, begin = 0, left
    for match in _WORD.finditer(part):
        if since >= _BREATH and match.group().lower() in _OPENERS:
            yield Sentence(start + begin, start + match.start() - 1)
            begin, since = match.start(), 0
        since += 1
    yield Sentence(start + begin, start + right)


@lru_cache(maxsize=512)
def breath(text: str, at: int) -> Sentence:
    """The breath of unpunctuated speech in which ``at`` stands; the whole stretch between stops where it is short."""
    start = max(text.rfind(mark, 0, at) + 1 for mark in _STOPS)
    end = min((found for mark in _STOPS if (found := text.find(mark, at)) >= 0), default=len(text))
    return next((found for found in _breaths(text, start, end) if at < found.end), Sentence(start, end))


def around(text: str, hits: list[int]) -> Iterator[Sentence]:
    """The sentences of ``text`` that hold at least one offset of ``hits`` (ascending)."""
    cuts = cut_points(text)
    done = -1
    for hit in hits:
        index = bisect_right(cuts, hit) - 1
        if index == done:
            continue
        done = index
        begin = cuts[index]
        stop = cuts[index + 1] if index + 1 < len(cuts) else len(text)
        inside = [h for h in hits if begin <= h < stop] if len(cuts) > 1 else hits
        at = 0
        for sentence in sentences(text, begin, stop):
            while at < len(inside) and inside[at] < sentence.start:
                at += 1
            if at < len(inside) and inside[at] < sentence.end:
                yield sentence
