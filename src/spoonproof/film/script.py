"""The segment script: what is seen, what is said, what stands on the screen, and when.

From the recipe alone a complete script exists; segments the author wrote replace and reorder it. Cautions, sources
and disclosures are never dropped. Where a target is set, what the author did not write is said in fewer words, or
shown in silence, until the film fits.
"""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.film.screen import Super
from spoonproof.model.recipe import Segment
from spoonproof.model.record import NamedTuple, dataclass, field

PICTURE_LEAST_SECONDS = 2.5  # the shortest a picture stands; common practice, no source
WORTH_SECONDS = 0.5  # less than this is not worth a cut


@dataclass(frozen=True, slots=True)
class Twin:
    """A pan or bowl made ahead because cooking takes longer than the screen.

    ``step`` from 0, at whose end it must be; ``state`` what it must look like; ``minutes`` from its first cut of the
    knife to that state.
    """

    step: int
    state: str
    minutes: float

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
    def shown_seconds(self) -> float:
        """How long its supers stand, one after the other."""
        return sum(each.needs for each in self.supers)

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
    """The script in order, its length, and its target in seconds; ``silent`` how long it would run with its method
    only seen, where that would not bring it to length either (else None)."""

    title: str
    channel: str
    takes: tuple[Take, ...]
    runs: float
    target: float | None
    silent: float | None = None

    @property
    def over(self) -> float:
        """Seconds over the target; negative when there is room, 0.0 with no target."""
        return round(self.runs - self.target, 3) if self.target is not None else 0.0

    @property
    def supers(self) -> tuple[Super, ...]:
        """Every super in the order in which they stand; no two at once."""
        return tuple(each for take in self.takes for each in take.supers)

    def trim_first(self) -> tuple[Take, ...]:
        """The author's takes to shorten first, longest first: spoken ones whose supers leave room to do so. Of our own
        words no more can go, or would bring it to length."""
        free = [
            (take.runs - max(take.shown_seconds, PICTURE_LEAST_SECONDS), take)
            for take in self.takes
            if take.written and take.say != take.heard
        ]
        ranked = sorted(free, key=lambda pair: (-pair[0], pair[1].start))
        return tuple([take for spare, take in ranked if spare > WORTH_SECONDS][:3])
