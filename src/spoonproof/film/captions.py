"""Captions from the script: broken where a sentence breathes, inside published reading rates and line lengths.

Limits: at most 37 characters a line and two lines, 160-180 words a minute and no cue under about 0.3 s a word
(source: bbc-subtitle-guidelines); no cue shorter than 1 s nor longer than 7 s (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spoonproof.film.script import Script, Take
from spoonproof.reading.spoken import word_count

LINE_CHARACTERS = 37
LINES = 2
LEAST_SECONDS = 1.0
MOST_SECONDS = 7.0
SECONDS_A_WORD = 0.33

_SENTENCE_END = re.compile(r"(?<=[.!?…])\s+|(?<=[.!?…][\"”’)])\s+")
_BREATH = re.compile(r"(?<=[,;:—])\s+|\s+(?=(?:and|but|or|so|because|until|when|while|if|then|which|that)\s)")


@dataclass(frozen=True, slots=True)
class Caption:
    """One caption: seconds from the film's first frame, and its one or two lines."""

    start: float
    end: float
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """The lines as one string."""
        return " ".join(self.lines)


def captions(script: Script) -> tuple[Caption, ...]:
    """Captions of all that is said, inside the times of the takes."""
    return tuple(caption for take in script.takes if take.say for caption in _of_take(take))


def _of_take(take: Take) -> Iterator[Caption]:
    chunks = [chunk for sentence in sentences(take.say) for chunk in _fitting(sentence)]
    weights = [max(1, word_count(chunk)) for chunk in chunks]
    said = max(take.runs, LEAST_SECONDS)
    clock = take.start
    for chunk, weight in zip(chunks, weights, strict=True):
        length = said * weight / sum(weights)
        end = min(clock + length, clock + MOST_SECONDS)
        yield Caption(round(clock, 3), round(end, 3), tuple(_lines(chunk)))
        clock += length


def sentences(text: str) -> list[str]:
    """The sentences of a spoken line; a full stop inside a number does not end one."""
    guarded = re.sub(r"(?<=\d)\.(?=\d)", "\u2024", " ".join(text.split()))
    return [part.replace("\u2024", ".") for part in _SENTENCE_END.split(guarded) if part]


def _fitting(sentence: str) -> list[str]:
    """``sentence`` cut where it breathes into chunks that fit two lines."""
    if _fits(sentence):
        return [sentence]
    best = _best_break(sentence)
    return [*_fitting(sentence[:best].rstrip()), *_fitting(sentence[best:].lstrip())]


def _fits(text: str) -> bool:
    return len(_lines(text)) <= LINES


def _best_break(sentence: str) -> int:
    """The breath nearest the middle; else the word gap nearest the middle."""
    middle = len(sentence) / 2
    breaths = [m.end() for m in _BREATH.finditer(sentence) if 8 <= m.end() <= len(sentence) - 8]
    gaps = breaths or [m.end() for m in re.finditer(r"\s+", sentence)] or [len(sentence) // 2]
    return min(gaps, key=lambda at: (abs(at - middle), at))


def _lines(text: str) -> list[str]:
    """``text`` in lines of at most ``LINE_CHARACTERS``, balanced when it takes two."""
    if len(text) <= LINE_CHARACTERS:
        return [text]
    gaps = [m.start() for m in re.finditer(r"\s", text)]
    halves = [at for at in gaps if at <= LINE_CHARACTERS and len(text) - at - 1 <= LINE_CHARACTERS]
    if halves:
        breaths = {m.start() for m in _BREATH.finditer(text)}
        middle = len(text) / 2
        best = min(halves, key=lambda at: (abs(at - middle) - (8 if at in breaths else 0), at))
        return [text[:best], text[best + 1 :]]
    lines: list[str] = []
    for word in text.split():
        if lines and len(lines[-1]) + 1 + len(word) <= LINE_CHARACTERS:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def webvtt(cues: Sequence[Caption]) -> str:
    """The captions as WebVTT (W3C): ``&`` and ``<`` escaped, no ``-->`` inside a cue."""
    blocks = ["WEBVTT"]
    for number, cue in enumerate(cues, 1):
        text = "\n".join(vtt_escaped(line) for line in cue.lines)
        blocks.append(f"{number}\n{vtt_time(cue.start)} --> {vtt_time(cue.end)}\n{text}")
    return "\n\n".join(blocks) + "\n"


def vtt_escaped(line: str) -> str:
    """A line as WebVTT has it: ``&``, ``<`` and ``>`` escaped."""
    return line.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def vtt_time(seconds: float) -> str:
    """``HH:MM:SS.mmm``."""
    thousandths = round(seconds * 1000)
    minutes, thousandths = divmod(thousandths, 60_000)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02d}:{minutes:02d}:{thousandths // 1000:02d}.{thousandths % 1000:03d}"


def subrip(cues: Sequence[Caption]) -> str:
    """The captions as SubRip text: counter, times with a comma, lines."""
    blocks = [
        f"{number}\n{vtt_time(cue.start).replace('.', ',')} --> {vtt_time(cue.end).replace('.', ',')}\n"
        + "\n".join(line.replace("-->", "→") for line in cue.lines)
        for number, cue in enumerate(cues, 1)
    ]
    return "\n\n".join(blocks) + "\n"
