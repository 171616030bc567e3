"""A presenter's pace, measured from the captions of an earlier film in which they speak."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spoonproof.model.record import NamedTuple
from spoonproof.model.text import Document, Passage
from spoonproof.reading.speech import read_statements
from spoonproof.reading.spoken import BREATH_SECONDS, PAUSE_SECONDS, pauses, word_count

BREAK_SECONDS = 0.7
"""Silence between two captions from which on the speaker is taken to have stopped (common practice, no source)."""

ENOUGH_WORDS = 150
"""Fewer words than this are too few to go by: about a minute of speech (common practice, no source)."""


class Pace(NamedTuple):
    """Words a minute of a presenter ("" where the file names nobody), and the words and minutes it rests on."""

    presenter: str
    words_a_minute: float
    words: int
    minutes: float


def paces(document: Document) -> list[Pace]:
    """The pace of each presenter in a caption file, by name; [] when nobody speaks in it.

    It is the pace at which ``seconds`` gives the time that was taken: pauses at sentence ends do not count as speech.
    """
    words: dict[str, int] = {}
    spent: dict[str, float] = {}
    for passage in read_statements(document)[0]:
        for who, text, length in _stretches(passage):
            count = word_count(text)
            talking = length - BREATH_SECONDS - pauses(text) * PAUSE_SECONDS
            if count and talking > 0:
                words[who] = words.get(who, 0) + count
                spent[who] = spent.get(who, 0.0) + talking
    return [Pace(who, 60 * words[who] / spent[who], words[who], spent[who] / 60) for who in sorted(words)]


def _stretches(passage: Passage) -> Iterator[tuple[str, str, float]]:
    """Who, what and how long, for each stretch in which one person speaks on without stopping."""
    cues = passage.cues
    first = 0
    for at in range(1, len(cues) + 1):
        ended = at == len(cues) or cues[at].voice != cues[at - 1].voice
        if ended or cues[at].start - cues[at - 1].end > BREAK_SECONDS:
            until = cues[at].at if at < len(cues) else len(passage.text)
            yield cues[first].voice, passage.text[cues[first].at : until].strip(), cues[at - 1].end - cues[first].start
            first = at


def channel_lines(found: Sequence[Pace], file: str) -> list[str]:
    """What to write into channel.yaml, with what it rests on."""
    rests = {pace.presenter: f"{file}: {pace.words} words in {pace.minutes:.1f} minutes of speech" for pace in found}
    named = [pace for pace in found if pace.presenter]
    made = [f"speech: {pace.words_a_minute:.0f} words a minute  # {rests['']}" for pace in found if not pace.presenter]
    if named:
        made.append("presenters:")
        made += [
            f"  {_key(pace.presenter)}: {pace.words_a_minute:.0f} words a minute  # {rests[pace.presenter]}"
            for pace in named
        ]
    return made


def _key(name: str) -> str:
    """A name as a YAML key that is read back as it is."""
    if name.replace(" ", "").isalpha() and name.lower() not in ("yes", "no", "on", "off", "true", "false", "null"):
        return name
    import json

    return json.dumps(name, ensure_ascii=False)
