"""The script written: all takes, cut towards the target where nobody wrote the words, filled where there is time."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.film.laying import laid_out, least_seconds, said_seconds
from spoonproof.film.screen import super_of
from spoonproof.film.script import WORTH_SECONDS, Material, Script, Take
from spoonproof.film.takes import all_takes
from spoonproof.model.record import replace
from spoonproof.reading.spoken import seconds

FILLED = ("tasting", "cautions")  # takes in which cautions on the screen are said too, while there is time
SILENT = 3  # the loss of a step that is only named, or only seen
TRIED_TAKES = 60  # with more takes than this the cuts are not weighed one by one


def write_script(material: Material) -> Script:
    """The whole script, timed, its supers placed; shortened towards the target where nobody wrote the words.

    A step is no more than named, or shown in silence, only where that brings the film to length: else the method keeps
    its words, and ``Script.silent`` says how long the film would run without them.
    """
    takes = all_takes(material)
    script = laid_out(takes, material)
    silent: float | None = None
    for loss in (1, 2, SILENT):
        if script.over <= 0:
            break
        all_cut = [_cut_down(take, material, loss) for take in takes]
        shortest = laid_out(all_cut, material)
        if loss == SILENT and shortest.over > 0:
            silent = min(shortest.runs, script.runs)
            break
        if shortest.over > 0 or len(takes) > TRIED_TAKES:
            takes, script = all_cut, shortest  # every cut is needed, or there are too many to weigh each
            continue
        while script.over > 0 and (cut := _best_cut(takes, material, script, loss)) is not None:
            takes, script = cut
    return replace(_filled(script, material), silent=silent)


def _cut_down(take: Take, material: Material, loss: int) -> Take:
    """A take in the fewest words that lose no more than ``loss``, where that saves time."""
    ways = [take, *(_with(take, depth) for depth, other in enumerate(take.shorter, 1) if other.loss <= loss)]
    return min(ways, key=lambda way: round(least_seconds(way, material) / WORTH_SECONDS))


def _with(take: Take, depth: int) -> Take:
    """A take in its ``depth``-th shorter words (from 1), with what then stands on the screen."""
    other = take.shorter[depth - 1]
    new = other.test and all(each.text != other.test for each in take.supers)
    supers = (*take.supers, super_of(other.test, "step")) if new else take.supers
    return replace(take, say=other.say, supers=supers, shorter=take.shorter[depth:])


def _best_cut(takes: Sequence[Take], material: Material, script: Script, loss: int) -> tuple[list[Take], Script] | None:
    """The takes with one of them in fewer words: the smallest cut that is enough, else the largest; None when no cut
    of this loss is worth it."""
    tries: list[tuple[float, int, list[Take], Script]] = []
    for at, take in enumerate(takes):
        for depth, other in enumerate(take.shorter, 1):
            if other.loss > loss:
                break
            tried = [*takes[:at], _with(take, depth), *takes[at + 1 :]]
            laid = laid_out(tried, material)
            if laid.runs < script.runs - WORTH_SECONDS:
                tries.append((laid.runs, at, tried, laid))
    if not tries:
        return None
    enough = [each for each in tries if each[3].over <= 0]
    best = max(enough, key=lambda each: (each[0], -each[1])) if enough else min(tries, key=lambda each: each[:2])
    return best[2], best[3]


def _filled(script: Script, material: Material) -> Script:
    """The same takes, with cautions that only stand on the screen said as well where the picture stands anyway."""
    full = {each.text: each.full for each in material.shown if each.full}
    takes = []
    for take in script.takes:
        say = take.say
        for each in take.supers if take.segment is None and take.role in FILLED else ():
            longer = f"{say} {full.get(each.text, '')}".strip()
            if longer != say and full[each.text] not in say and said_seconds(longer, take, material) <= take.runs:
                say = longer
        takes.append(replace(take, say=say, said=round(seconds(say, material.rate(take.presenter)), 3)))
    return replace(script, takes=tuple(takes))
