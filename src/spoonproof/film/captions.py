"""Captions from the script, in the time in which they are said, within published reading rates.

A caption stands at least two seconds (source: dcmp-guidelines) and at most six (common practice, no source). Between
two captions there is a second or nothing, and one hangs on for at most a second and a half after its words (source:
bbc-subtitle-guidelines). At most 180 words a minute (source: bbc-subtitle-guidelines; dcmp-guidelines asks for 150 to
160 for grown-ups with a special interest, up to 225 verbatim): who speaks faster is told, since speech is not cut.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from spoonproof.film.breathing import chunks, lines, sentences
from spoonproof.film.script import Script, Take
from spoonproof.model.record import dataclass, replace
from spoonproof.reading.spoken import PAUSE_SECONDS, word_count

LEAST_SECONDS = 2.0
MOST_SECONDS = 6.0
MOST_SAID = MOST_SECONDS - 0.9  # what is left is for the pause after the last word
LEAST_GAP = 1.0
MOST_LAG = 1.5
MOST_WORDS_A_MINUTE = 180.0


@dataclass(frozen=True, slots=True)
class Caption:
    """One caption: seconds from the film's first frame, its one or two lines, and who speaks ("" where there is but
    one presenter)."""

    start: float
    end: float
    lines: tuple[str, ...]
    voice: str = ""

    @property
    def text(self) -> str:
        """The lines as one string."""
        return " ".join(self.lines)

    @property
    def words_a_minute(self) -> float:
        """How fast it must be read."""
        return len(self.text.split()) * 60.0 / max(0.001, self.end - self.start)


def captions(script: Script) -> tuple[Caption, ...]:
    """Captions of all that is said, inside the times of the takes."""
    return spaced((caption for take in script.takes if take.say for caption in _of_take(take)), script.runs)


def _of_take(take: Take) -> Iterator[Caption]:
    """The captions of one take, end to end over the time in which it is said."""
    said = take.said or take.runs
    whole = sum(_weight(sentence) for sentence in sentences(take.say))
    pace = said / whole if whole else 0.0
    clock = take.start

    def lasts(text: str) -> float:
        return pace * sum(map(_weight, sentences(text)))

    parts = chunks(take.say, lasts, LEAST_SECONDS, MOST_SAID, _needed, MOST_LAG)
    weights = [max(0.001, sum(map(_weight, sentences(part)))) for part in parts]
    floors = [_needed(part) for part in parts]
    lengths = _borrowed([said * weight / sum(weights) for weight in weights], floors)
    for part, length in zip(parts, lengths, strict=True):
        yield Caption(round(clock, 3), round(clock + length, 3), tuple(lines(part)), take.presenter)
        clock += length


def _needed(part: str) -> float:
    """Seconds in which a part can be read in peace."""
    return max(LEAST_SECONDS, len(part.split()) * 60.0 / MOST_WORDS_A_MINUTE)


def _borrowed(lengths: list[float], floors: list[float]) -> list[float]:
    """Lengths of captions end to end, one below its floor taking what the one after or before it can spare."""
    result = list(lengths)
    pairs = [(at, at + 1) for at in range(len(result) - 1)]
    for short, other in [*pairs, *((other, short) for short, other in reversed(pairs))]:
        taken = min(floors[short] - result[short], result[other] - floors[other], MOST_LAG)
        if taken > 0:
            result[short] += taken
            result[other] -= taken
    return result


def _weight(part: str) -> float:
    """How long a part takes beside others: its words, and the pause where a sentence ends."""
    return word_count(part) + (2.4 * PAUSE_SECONDS if part[-1:] in ".!?…" else 0.0)


def spaced(cues: Iterable[Caption], runs: float) -> tuple[Caption, ...]:
    """Captions in order with their ends so that each stands long enough and the gaps are a second or none."""
    made = list(cues)
    result: list[Caption] = []
    for number, cue in enumerate(made):
        following = made[number + 1].start if number + 1 < len(made) else runs
        end = min(max(cue.end, min(cue.start + LEAST_SECONDS, cue.end + MOST_LAG)), following)
        if 0 < following - end < LEAST_GAP:
            end = following if following - cue.end <= MOST_LAG else max(cue.end, following - LEAST_GAP)
        result.append(replace(cue, end=round(max(end, cue.start + 0.001), 3)))
    return tuple(result)


def too_fast(cues: Sequence[Caption]) -> list[Caption]:
    """Captions that must be read faster than ``MOST_WORDS_A_MINUTE``."""
    return [cue for cue in cues if round(cue.words_a_minute) > MOST_WORDS_A_MINUTE]


def webvtt(cues: Sequence[Caption]) -> str:
    """The captions as WebVTT (source: webvtt): ``&`` and ``<`` escaped, no ``-->`` inside a cue, voices by name."""
    blocks = ["WEBVTT"]
    for number, cue in enumerate(cues, 1):
        voice = f"<v {_name(cue.voice)}>" if cue.voice else ""
        text = voice + "\n".join(vtt_escaped(line) for line in cue.lines)
        blocks.append(f"{number}\n{vtt_time(cue.start)} --> {vtt_time(cue.end)}\n{text}")
    return "\n\n".join(blocks) + "\n"


def _name(voice: str) -> str:
    return " ".join(vtt_escaped(voice).split())


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
