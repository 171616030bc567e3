"""Foods that stand in a row, each with its own state and shape: "whole grapes, raw carrot sticks, cheese cubes".

What is asked of the words around a food would take the sticks for the grapes' own. So where a sentence lists foods, it
is also read once for each food: what leads up to the list, that food with its own words, and what follows the list.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from spoonproof.feeding.words import Found

_STATES = (
    "soft|raw|whole|cold|frozen|hard|crisp|crunchy|dried|salted|steamed|boiled|cooked|roasted|mashed|grated"
    "|chopped|sliced"
    "|quartered|halved|peeled|unpeeled|uncut"
)
_LEAST = 3
"""Foods in a row that make a list."""
_GAP = re.compile(
    r"\s*(?:(?P<own>(?:sticks?|batons?|cubes?|chunks?|wedges?|spears?|fingers|rounds?|coins?|slices|halves"
    r"|quarters|strips"
    r"|florets|pieces|crisps?)\b)\s*)?(?:,\s*(?:and |or )?|\b(?:and|or|plus|then)\s+)?"
    rf"(?:(?:an?|the|some|few|little|nice|big|small|fresh|ripe|{_STATES}"
    r"|handfuls? of|bits? of|sticks? of|cubes? of|slices? of|chunks? of|wedges? of)\s+){0,3}",
    re.I,
)
"""What may stand between two foods of a list: the shape of the one, a mark, the state of the other."""


def apart(said: str, hits: Sequence[Found]) -> Iterator[tuple[Found, str, Found]]:
    """Each food of a list of three or more in ``said``, the sentence as it is about that food alone, and its place
    there."""
    run: list[Found] = []
    for hit in (*hits, None):
        if run and hit is not None and run[-1].end <= hit.start and _GAP.fullmatch(said, run[-1].end, hit.start):
            run.append(hit)
            continue
        if len(run) >= _LEAST:
            yield from _alone(said, run)
        run = [hit] if hit is not None else []


def _alone(said: str, run: Sequence[Found]) -> Iterator[tuple[Found, str, Found]]:
    begins, ends = [], []
    for at, hit in enumerate(run):
        own = _GAP.match(said, hit.end)
        ends.append(own.end("own") if own and own["own"] else hit.end)
        begins.append(ends[at - 1] if at else hit.start)
    lead, tail = said[: run[0].start], said[ends[-1] :]
    for hit, begin, end in zip(run, begins, ends, strict=True):
        state = re.sub(r"^[\s,]*(?:and|or|plus|then)?\b", "", said[begin : hit.start]).lstrip(" ,")
        first = lead if hit is run[0] else _STATE_OF_FIRST.sub("", lead)
        start = len(first) + len(state)
        alone = first + state + said[hit.start : end] + tail
        yield hit, alone, Found(start, start + hit.end - hit.start, hit.value, hit.phrase)


_STATE_OF_FIRST = re.compile(rf"(?:\b(?:{_STATES})\s+)+$", re.I)
"""The state of the first food of a list, which is none of the others'."""
