"""Takes laid end to end: how long each runs, the cautions that are heard, and where every super stands."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.film.screen import Super, spread, super_of, timed
from spoonproof.film.script import PICTURE_LEAST_SECONDS, Material, Script, Shown, Take
from spoonproof.model.record import replace
from spoonproof.reading.spoken import seconds

TAIL_SECONDS = 0.5  # after the last word of a segment; common practice, no source
MAY_BE_EMPTY = ("cautions", "sources")  # takes that are left out when nothing is said or shown in them


def laid_out(takes: Sequence[Take], material: Material) -> Script:
    """Takes with their times, the cautions that are heard, and all their supers."""
    full = [replace(take, say=f"{take.say} {take.heard}".strip()) for take in takes]
    base = [least_seconds(take, material) for take in full]
    room = [max(0.0, long - take.shown_seconds) for take, long in zip(full, base, strict=True)]
    loose = [each for shown in material.shown if (each := _loose(shown, full, material)) is not None]
    words = [f"{take.say} {take.chapter}" for take in full]
    placed = spread([take.role for take in full], words, room, loose)
    timed_takes: list[Take] = []
    clock = 0.0
    for take, more, long in zip(full, placed, base, strict=True):
        supers = (*take.supers, *(each for n, each in enumerate(more) if each.text not in {m.text for m in more[:n]}))
        if take.role in MAY_BE_EMPTY and not supers and not take.say:
            continue
        runs = round(max(long, sum(each.needs for each in supers)), 2)
        timed_takes.append(replace(take, start=round(clock, 3), runs=runs, supers=timed(supers, clock, runs)))
        clock += runs
    return Script(material.title, material.channel, tuple(timed_takes), round(clock, 3), material.target)


def least_seconds(take: Take, material: Material) -> float:
    """Seconds that its words, its own supers or its author need; a picture with neither still stands a moment."""
    moment = 0.0 if take.role in MAY_BE_EMPTY else PICTURE_LEAST_SECONDS
    return max(said_seconds(take.say, take, material), take.shown_seconds, take.least, moment)


def said_seconds(words: str, take: Take, material: Material) -> float:
    """Seconds for words in a take, with the moment after the last one."""
    said = seconds(words, material.rate(take.presenter))
    return said + TAIL_SECONDS if said else 0.0


def _loose(shown: Shown, takes: Sequence[Take], material: Material) -> Super | None:
    """What must be shown as a super, tied to the take of its quote where it has one; None when nobody says that."""
    if not shown.quote:
        return super_of(shown.text, shown.kind, shown.where, about=shown.full)
    for number, take in enumerate(takes):
        if shown.quote in take.say or any(shown.quote in each.text for each in take.supers):
            lead = take.say.partition(shown.quote)[0] if shown.quote in take.say else ""
            before = seconds(lead, material.rate(take.presenter))
            return replace(super_of(shown.text, shown.kind, shown.where, number), after=before)
    return None
