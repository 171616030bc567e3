"""The segment script: what is seen, what is said, what stands on the screen, and when.

From the recipe alone a complete script exists; segments the author wrote replace and reorder it. Cautions, sources
and disclosures are never dropped. Where a target is set, what the author did not write is said in fewer words, or
shown in silence, until the film fits.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from spoonproof.film.screen import Super, needed_seconds, spread, super_of, timed
from spoonproof.model.recipe import Segment
from spoonproof.model.record import dataclass, field, replace
from spoonproof.reading.spoken import seconds

__all__ = [
    "Heard",
    "Material",
    "Script",
    "Shorter",
    "Shown",
    "Super",
    "Take",
    "Twin",
    "needed_seconds",
    "super_of",
    "write_script",
]

PICTURE_LEAST_SECONDS = 2.5  # the shortest a picture stands; common practice, no source
TAIL_SECONDS = 0.5  # after the last word of a segment; common practice, no source
MAY_BE_EMPTY = ("cautions", "sources")  # takes that are left out when nothing is said or shown in them
FILLED = ("tasting", "cautions")  # takes in which cautions on the screen are said too, while there is time
TRIED_TAKES = 60  # with more takes than this the cuts are not weighed one by one
WORTH_SECONDS = 0.5  # less than this is not worth a cut


@dataclass(frozen=True, slots=True)
class Twin:
    """A pan or bowl made ahead because cooking takes longer than the screen.

    ``step`` from 0, at whose end it must be; ``state`` what it must look like; ``minutes`` from its first cut of the
    knife to that state; ``waits`` the minutes of it that nobody films.
    """

    step: int
    state: str
    minutes: float
    waits: float

    @property
    def text(self) -> str:
        """One sentence: what, and when to start it."""
        return f"{self.state}; start it {self.minutes:.0f} minutes before this shot"


@dataclass(frozen=True, slots=True)
class Shown:
    """A statement that must stand on the screen; ``full`` the same in a whole sentence, said where there is time.

    ``where`` is the part of the film it belongs to (opening, foods, step, tasting, close); ``quote`` the words it
    belongs to instead: it stands over the take that says or shows them, and nowhere when none does.
    """

    text: str
    kind: str
    where: str = ""
    quote: str = ""
    full: str = ""


@dataclass(frozen=True, slots=True)
class Heard:
    """A caution that must be heard, and the part of the film it belongs to."""

    text: str
    where: str = "tasting"


class Shorter(NamedTuple):
    """Other words for a take ("" for silence), what then stands on the screen instead ("" for nothing), and how much
    the film loses by it, from 1 (hardly missed) to 3 (a step that is only seen)."""

    say: str
    test: str = ""
    loss: int = 1


@dataclass(frozen=True, slots=True)
class Take:
    """One segment of the finished script; ``start`` and ``runs`` in seconds from the film's first frame.

    ``role`` is opening, foods, step, tasting, cautions, sources, close or own; ``step`` from 0; ``segment`` the number
    of the author's segment it is, None where it was made from the recipe; ``shorter`` other words for it, longest
    first; ``least`` the seconds its author wants; ``said`` the seconds its words take;
    ``heard`` the cautions that close its words and are never cut; ``chapter`` its name for the audience.
    """

    role: str
    name: str
    shot: str
    say: str
    supers: tuple[Super, ...] = ()
    step: int | None = None
    start: float = 0.0
    runs: float = 0.0
    twin: Twin | None = None
    segment: int | None = None
    presenter: str = ""
    shorter: tuple[Shorter, ...] = ()
    least: float = 0.0
    heard: str = ""
    chapter: str = ""
    said: float = 0.0

    @property
    def end(self) -> float:
        """When the next one begins."""
        return round(self.start + self.runs, 3)

    @property
    def written(self) -> bool:
        """Whether the author wrote it."""
        return self.segment is not None


@dataclass(frozen=True, slots=True)
class Material:
    """What the script is made from; texts are ready to be read or shown.

    ``step_shots``, ``step_tests`` (the end point, or the time) and ``twins`` belong to ``steps``; ``heard`` are the
    cautions that must be heard; ``shown`` everything that must stand on the screen, most needful first; ``keeping`` how
    long it keeps, as a sentence; ``presenters`` words a minute by name.
    """

    title: str
    channel: str
    ages: str
    texture: str
    foods: tuple[str, ...]
    steps: tuple[str, ...]
    segments: tuple[Segment, ...] = ()
    target: float | None = None
    words_a_minute: float = 145.0
    summary: str = ""
    step_shots: tuple[str, ...] = ()
    step_tests: tuple[str, ...] = ()
    twins: Mapping[int, Twin] = field(default_factory=dict)
    heard: tuple[Heard, ...] = ()
    shown: tuple[Shown, ...] = ()
    keeping: str = ""
    disclosure: str = ""
    presenters: Mapping[str, float] = field(default_factory=dict)

    def rate(self, presenter: str) -> float:
        """Words a minute of a presenter; the channel's where the name is not known."""
        return self.presenters.get(presenter, self.words_a_minute)


@dataclass(frozen=True, slots=True)
class Script:
    """The script in order, its length, and its target in seconds."""

    title: str
    channel: str
    takes: tuple[Take, ...]
    runs: float
    target: float | None

    @property
    def over(self) -> float:
        """Seconds over the target; negative when there is room, 0.0 with no target."""
        return round(self.runs - self.target, 3) if self.target is not None else 0.0

    @property
    def supers(self) -> tuple[Super, ...]:
        """Every super in the order in which they stand; no two at once."""
        return tuple(each for take in self.takes for each in take.supers)

    @property
    def twins(self) -> tuple[Twin, ...]:
        """Everything that is made ahead, in the order of the film."""
        return tuple(take.twin for take in self.takes if take.twin is not None)

    def trim_first(self) -> tuple[Take, ...]:
        """Takes to shorten first, longest first: spoken ones whose supers leave room to do so."""
        free = [(take.runs - max(_shown_seconds(take), PICTURE_LEAST_SECONDS), take) for take in self.takes if take.say]
        ranked = sorted(free, key=lambda pair: (-pair[0], pair[1].start))
        return tuple([take for spare, take in ranked if spare > WORTH_SECONDS and take.say != take.heard][:3])


def write_script(material: Material) -> Script:
    """The whole script, timed, its supers placed; shortened towards the target where nobody wrote the words."""
    from spoonproof.film.takes import all_takes

    takes = all_takes(material)
    script = _laid_out(takes, material)
    for loss in (1, 2, 3):
        if script.over <= 0:
            break
        all_cut = [_cut_down(take, material, loss) for take in takes]
        shortest = _laid_out(all_cut, material)
        if shortest.over > 0 or len(takes) > TRIED_TAKES:
            takes, script = all_cut, shortest  # every cut is needed, or there are too many to weigh each
            continue
        while script.over > 0 and (cut := _best_cut(takes, material, script, loss)) is not None:
            takes, script = cut
    return _filled(script, material)


def _cut_down(take: Take, material: Material, loss: int) -> Take:
    """A take in the fewest words that lose no more than ``loss``, where that saves time."""
    ways = [take, *(_with(take, depth) for depth, other in enumerate(take.shorter, 1) if other.loss <= loss)]
    return min(ways, key=lambda way: round(_least(way, material) / WORTH_SECONDS))


def _with(take: Take, depth: int) -> Take:
    """A take in its ``depth``-th shorter words (from 1), with what then stands on the screen."""
    other = take.shorter[depth - 1]
    supers = (*take.supers, super_of(other.test, "step")) if other.test else take.supers
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
            laid = _laid_out(tried, material)
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
            if longer != say and full[each.text] not in say and _said(longer, take, material) <= take.runs:
                say = longer
        takes.append(replace(take, say=say, said=round(seconds(say, material.rate(take.presenter)), 3)))
    return replace(script, takes=tuple(takes))


def _laid_out(takes: Sequence[Take], material: Material) -> Script:
    """Takes with their times, the cautions that are heard, and all their supers."""
    full = [replace(take, say=f"{take.say} {take.heard}".strip()) for take in takes]
    base = [_least(take, material) for take in full]
    room = [max(0.0, long - _shown_seconds(take)) for take, long in zip(full, base, strict=True)]
    loose = [each for shown in material.shown if (each := _loose(shown, full)) is not None]
    words = [f"{take.say} {take.chapter}" for take in full]
    placed = spread([take.role for take in full], words, room, loose)
    timed_takes: list[Take] = []
    clock = 0.0
    for take, more, long in zip(full, placed, base, strict=True):
        supers = (*take.supers, *(each for n, each in enumerate(more) if each.text not in {m.text for m in more[:n]}))
        if take.role in MAY_BE_EMPTY and not supers and not take.say:
            continue
        runs = round(max(long, sum(each.needs for each in supers)), 2)
        timed_takes.append(replace(take, start=round(clock, 3), runs=runs, supers=timed(supers, clock)))
        clock += runs
    return Script(material.title, material.channel, tuple(timed_takes), round(clock, 3), material.target)


def _least(take: Take, material: Material) -> float:
    """Seconds that its words, its own supers or its author need; a picture with neither still stands a moment."""
    moment = 0.0 if take.role in MAY_BE_EMPTY else PICTURE_LEAST_SECONDS
    return max(_said(take.say, take, material), _shown_seconds(take), take.least, moment)


def _said(words: str, take: Take, material: Material) -> float:
    """Seconds for words in a take, with the moment after the last one."""
    said = seconds(words, material.rate(take.presenter))
    return said + TAIL_SECONDS if said else 0.0


def _loose(shown: Shown, takes: Sequence[Take]) -> Super | None:
    """What must be shown as a super, tied to the take of its quote where it has one; None when nobody says that."""
    if not shown.quote:
        return super_of(shown.text, shown.kind, shown.where, about=shown.full)
    for number, take in enumerate(takes):
        if shown.quote in take.say or any(shown.quote in each.text for each in take.supers):
            return super_of(shown.text, shown.kind, shown.where, number)
    return None


def _shown_seconds(take: Take) -> float:
    return sum(each.needs for each in take.supers)
