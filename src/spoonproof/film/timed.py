"""After the edit: the timed text of the finished film keeps its times and takes its words from the script.

What was said off script is found, word by word, and checked like any other statement.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence

from spoonproof.film.aligned import Alignment, align, only_filler, only_hesitation, script_tokens
from spoonproof.film.breathing import LINE_CHARACTERS, LINES, lines
from spoonproof.film.captions import Caption
from spoonproof.film.script import Script, Take
from spoonproof.model.finding import Finding
from spoonproof.model.record import NamedTuple, dataclass, replace
from spoonproof.model.text import Document, Passage
from spoonproof.reading.speech import read_statements
from spoonproof.reading.spoken import Token, tokens

_END = re.compile(r"[.!?…](?=\s)")
WIDER = (37, 42)  # characters a line: bbc-subtitle-guidelines; what caption editors let through (common practice)
MOST_WORDS = 20_000  # two hours of speech and more
_FAR = 200  # characters of speech without a full stop that are shown either side
TOLD_SHARE = 0.6
"""Share of a caution's words that must be said for it to count as said."""


@dataclass(frozen=True, slots=True)
class OffScript:
    """A sentence (or stretch of speech) with words that the script does not have.

    ``start``/``end`` are offsets into ``passage.text``; ``words`` the spans in it that are off script; ``instead`` what
    the script has in their place ("" for nothing).
    """

    passage: Passage
    start: int
    end: int
    words: tuple[tuple[int, int], ...]
    instead: str = ""

    @property
    def text(self) -> str:
        """The whole sentence, as it was said."""
        return self.passage.text[self.start : self.end]

    @property
    def said(self) -> str:
        """The words that are off script."""
        return " … ".join(self.passage.text[start:end] for start, end in self.words)

    def touches(self, start: int, end: int) -> bool:
        """Whether any of its words lies in this stretch of the passage."""
        return any(a < end and start < b for a, b in self.words)


@dataclass(frozen=True, slots=True)
class Edited:
    """The finished film's words: its captions, what was said off script, the script with the times of the film, the
    cautions that were to be heard and were not (with the name of their take), and what of the file can't be read."""

    passages: tuple[Passage, ...]
    captions: tuple[Caption, ...]
    off_script: tuple[OffScript, ...]
    script: Script
    unsaid: tuple[tuple[str, str], ...]
    faults: tuple[Finding, ...] = ()


def edited(document: Document, script: Script) -> Edited:
    """The timed text of a finished film (WebVTT or SubRip) laid beside its script.

    Raises ValueError, with words for a person, when the file has no timed speech.
    """
    read, faults = read_statements(document)
    passages = [passage for passage in read if passage.cues]
    said = [(token, number) for number, passage in enumerate(passages) for token in tokens(passage.text)]
    if not any(token.words for token, _ in said):
        raise ValueError(f"{document.path}: no timed speech was found; give the WebVTT or SubRip captions of the film")
    if len(said) > MOST_WORDS:
        raise ValueError(f"{document.path}: more than {MOST_WORDS} words are said in it; give the film of one recipe")
    ours = script_tokens([take.say for take in script.takes])
    found = align([token for token, _ in said], [token for token, _ in ours])
    laid = _Laid(passages, said, ours, found)
    return Edited(
        tuple(passages),
        tuple(_captions(laid)),
        tuple(_off_script(laid)),
        _with_times(script, laid),
        tuple(_unsaid(script, ours, found)),
        tuple(faults),
    )


class _Laid(NamedTuple):
    """The film's words, each with the number of its passage, beside the script's, each with the number of its take."""

    passages: Sequence[Passage]
    said: Sequence[tuple[Token, int]]
    ours: Sequence[tuple[Token, int]]
    found: Alignment


def _captions(laid: _Laid) -> Iterator[Caption]:
    """A caption for each cue of the file, at its own time, in the script's words where they were said."""
    passages, said, ours, found = laid
    last = None
    for number, passage in enumerate(passages):
        begin, end = _share(said, number)
        starts = [token.start for token, _ in said[begin:end]]
        for at, cue in enumerate(passage.cues):
            until = passage.cues[at + 1].at if at + 1 < len(passage.cues) else len(passage.text) + 1
            words: list[str] = []
            for place in range(begin + bisect_left(starts, cue.at), begin + bisect_left(starts, until)):
                token, own = said[place][0], found.said[place]
                if only_hesitation(token.words):
                    continue
                if own is None:
                    words.append(token.text)
                elif own != last:
                    text = ours[own][0].text
                    if text[:1].isupper() and words and only_filler(tokens(words[-1])[0].words):
                        words.pop()  # "so" before the script's sentence
                    words.append(text)
                    last = own
            if words:
                yield Caption(cue.start, cue.end, tuple(_set(" ".join(words))), cue.voice)


def _share(said: Sequence[tuple[Token, int]], number: int) -> tuple[int, int]:
    """Where a passage's words stand among all: they come passage by passage."""
    return bisect_left(said, number, key=lambda pair: pair[1]), bisect_right(said, number, key=lambda pair: pair[1])


def _set(text: str) -> list[str]:
    """A cue in two lines of ``LINE_CHARACTERS``, in wider ones where those are not enough: its time is the film's."""
    for width in (LINE_CHARACTERS, *WIDER):
        made = lines(text, width)
        if len(made) <= LINES:
            break
    return made


def _off_script(laid: _Laid) -> Iterator[OffScript]:
    passages, said, ours, found = laid
    for number, passage in enumerate(passages):
        runs: list[tuple[tuple[int, int], str]] = []
        begin, end = _share(said, number)
        for run in _runs([own is None for own in found.said[begin:end]]):
            first, last = run[0] + begin, run[1] + begin
            words = [word for token, _ in said[first:last] for word in token.words]
            if words and not only_filler(words):
                runs.append(((said[first][0].start, said[last - 1][0].end), _instead(first, last, ours, found)))
        grouped: dict[tuple[int, int], list[tuple[tuple[int, int], str]]] = {}
        for away in runs:
            grouped.setdefault(_sentence(passage.text, *away[0]), []).append(away)
        for (start, stop), inside in grouped.items():
            instead = " … ".join(text for _, text in inside if text)
            yield OffScript(passage, start, stop, tuple(words for words, _ in inside), instead)


def _runs(flags: Sequence[bool]) -> Iterator[tuple[int, int]]:
    """First and past-the-last of every stretch of true flags."""
    first = None
    for at, flag in enumerate([*flags, False]):
        if flag and first is None:
            first = at
        elif not flag and first is not None:
            yield first, at
            first = None


def _instead(first: int, last: int, ours: Sequence[tuple[Token, int]], found: Alignment) -> str:
    """What the script has between the words said before and after a stretch that is off script."""
    before = next((own for own in reversed(found.said[:first]) if own is not None), -1)
    after = next((own for own in found.said[last:] if own is not None), len(ours))
    gap = [ours[at][0].text for at in range(before + 1, after) if at not in found.told]
    return " ".join(gap) if len(gap) <= 12 else ""


def _sentence(text: str, start: int, end: int) -> tuple[int, int]:
    """The sentence around a stretch; where nothing ends a sentence, some words either side."""
    first = max((match.end() for match in _END.finditer(text, 0, start)), default=0)
    after = _END.search(text, max(start, end - 1))
    last = after.end() if after else len(text)
    if start - first > _FAR:
        first = text.rfind(" ", 0, start - _FAR) + 1
    if last - end > _FAR:
        last = text.find(" ", end + _FAR)
    while first < start and text[first].isspace():
        first += 1
    return first, last if last >= end else len(text)


def _unsaid(script: Script, ours: Sequence[tuple[Token, int]], found: Alignment) -> Iterator[tuple[str, str]]:
    for number, take in enumerate(script.takes):
        if not take.heard:
            continue
        heard = len(tokens(take.heard))
        mine = [at for at, (_, of) in enumerate(ours) if of == number]
        begin = len(tokens(take.say.partition(take.heard)[0]))
        caution = mine[begin : begin + heard]
        if sum(at in found.told for at in caution) < TOLD_SHARE * len(caution):
            yield take.heard, take.name


def _with_times(script: Script, laid: _Laid) -> Script:
    """The script with each take where its first words are said; a silent one where the words before it end."""
    passages, said, ours, found = laid
    first: dict[int, float] = {}
    last: dict[int, float] = {}
    for (token, of), own in zip(said, found.said, strict=True):
        seconds = passages[of].seconds(token.start, token.end)
        if own is not None and seconds is not None:
            spoken_in = ours[own][1]
            first.setdefault(spoken_in, seconds[0])
            last[spoken_in] = seconds[1]
    ends = [cue.end for passage in passages for cue in passage.cues]
    runs = max(ends, default=0.0)
    starts: list[float] = []
    clock = 0.0
    for number in range(len(script.takes)):
        start = max(clock, first.get(number, clock)) if number else 0.0
        starts.append(round(start, 3))
        clock = max(start, last.get(number, start))
    takes: list[Take] = []
    for number, take in enumerate(script.takes):
        end = starts[number + 1] if number + 1 < len(starts) else max(runs, starts[number])
        supers = tuple(replace(each, start=starts[number]) for each in take.supers)
        takes.append(replace(take, start=starts[number], runs=round(end - starts[number], 3), supers=supers))
    return replace(script, takes=tuple(takes), runs=round(runs, 3))
