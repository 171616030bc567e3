"""The segment script: what is seen, what is said, what stands on the screen, and when.

From the recipe alone a complete script exists; segments the author wrote replace and reorder it. Cautions and
sources are never dropped.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from spoonproof.model.recipe import Segment
from spoonproof.model.text import Text
from spoonproof.reading.spoken import seconds

SUPER_LEAST_SECONDS = 3.0  # common practice, no source: long enough to be read twice
READ_WORDS_A_MINUTE = (
    183.0  # silent reading, DOI 10.1016/j.jml.2019.104047 gives 238 for adults; kept lower for screens
)
PICTURE_LEAST_SECONDS = 2.5  # the shortest a picture stands; common practice, no source
CAUTIONS_A_TAKE = 4  # more than this nobody reads; every caution stands in the words under the film
TAIL_SECONDS = 0.5  # after the last word of a segment; common practice, no source


@dataclass(frozen=True, slots=True)
class Super:
    """Text over the picture, how long it must stand, and what it is: caution, allergens, source, disclosure, author."""

    text: str
    kind: str
    needs: float


@dataclass(frozen=True, slots=True)
class Take:
    """One segment of the finished script; ``start`` and ``runs`` in seconds from the film's first frame.

    ``role`` is opening, foods, step, tasting, sources, close or own; ``twin`` says what must be
    ready made because the cooking is longer than the screen.
    """

    role: str
    name: str
    shot: str
    say: str
    supers: tuple[Super, ...] = ()
    step: int | None = None
    start: float = 0.0
    runs: float = 0.0
    twin: str = ""
    written: bool = False


@dataclass(frozen=True, slots=True)
class Warned:
    """A caution as a film carries it: its few words for the screen, what must be heard as well ("" where reading
    it is enough), and the role of the take it belongs to."""

    screen: str
    spoken: str = ""
    where: str = "tasting"


@dataclass(frozen=True, slots=True)
class Material:
    """What the script is made from; texts are ready to be read or shown."""

    title: str
    channel: str
    ages: str
    texture: str
    foods: tuple[str, ...]
    steps: tuple[str, ...]
    step_minutes: tuple[float, ...]
    segments: tuple[Segment, ...]
    target: float | None
    words_a_minute: float
    cautions: tuple[Warned, ...] = ()
    allergens: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    disclosure: str = ""


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
        return self.runs - self.target if self.target is not None else 0.0

    def trim_first(self) -> tuple[Take, ...]:
        """Takes to shorten first, longest spoken ones that no caution or source hangs on."""
        free = [take for take in self.takes if take.role in ("opening", "foods", "tasting", "own", "step", "close")]
        return tuple(sorted(free, key=lambda take: (-take.runs, take.start))[:3])


def needed_seconds(text: str) -> float:
    """How long a super must stand to be read twice at an unhurried rate."""
    words = len(text.split())
    return round(max(SUPER_LEAST_SECONDS, 2 * words * 60.0 / READ_WORDS_A_MINUTE) + 0.5, 2)


def super_of(text: str, kind: str) -> Super:
    """A super with the time it needs."""
    return Super(text, kind, needed_seconds(text))


def write_script(material: Material) -> Script:
    """The whole script, timed."""
    last_step = len(material.steps) - 1
    takes = [_cautioned(take, material, last_step) for take in _merged(_from_recipe(material), material)]
    timed: list[Take] = []
    clock = 0.0
    for take in takes:
        runs = _run_time(take, material.words_a_minute)
        timed.append(replace(take, start=round(clock, 3), runs=runs))
        clock += runs
    return Script(material.title, material.channel, tuple(timed), round(clock, 3), material.target)


def _run_time(take: Take, words_a_minute: float) -> float:
    said = seconds(take.say, words_a_minute)
    shown = sum(each.needs for each in take.supers)
    return round(max(said + TAIL_SECONDS if said else 0.0, shown, PICTURE_LEAST_SECONDS), 2)


def _from_recipe(material: Material) -> list[Take]:
    opening = [super_of(_ages_and_texture(material), "author")]
    if material.disclosure:
        opening.append(super_of(material.disclosure, "disclosure"))
    said = f"{material.disclosure} " if material.disclosure else ""
    takes = [
        Take(
            "opening", "Opening", "CU finished bowl, spoon going in", f"{said}Today: {material.title}.", tuple(opening)
        ),
        Take("foods", "Foods", "Top shot, foods laid out", _foods_said(material.foods), _allergen_supers(material)),
    ]
    for number, step in enumerate(material.steps):
        minutes = material.step_minutes[number] if number < len(material.step_minutes) else 0.0
        twin = f"a twin made ahead, at the end of step {number + 1} ({minutes:g} minutes)" if minutes >= 1 else ""
        takes.append(Take("step", f"Step {number + 1}", "MS hands and pan, CU detail", step, step=number, twin=twin))
    takes.append(Take("tasting", "Tasting", "MS baby upright in the chair, adult beside", _TASTING))
    if material.sources:
        takes.append(
            Take(
                "sources",
                "Where it comes from",
                "Still of the bowl, text over",
                "Where these statements come from is written on the recipe page.",
                tuple(super_of(text, "source") for text in material.sources),
            )
        )
    takes.append(Take("close", "Close", "WS kitchen", f"The recipe is written out on the page. {material.channel}."))
    return takes


def _cautioned(take: Take, material: Material, last_step: int) -> Take:
    """``take`` with the cautions that belong to it: over the picture, and in words where they must be heard."""
    if take.role == "step" and take.step != last_step:
        return take
    mine = [caution for caution in material.cautions if caution.where == take.role]
    shown = list(dict.fromkeys(caution.screen for caution in mine if caution.screen))[:CAUTIONS_A_TAKE]
    heard = " ".join(caution.spoken for caution in mine if caution.spoken)
    return replace(
        take,
        say=f"{take.say} {heard}".strip(),
        supers=(*take.supers, *(super_of(text, "caution") for text in shown)),
    )


_TASTING = "Let appetite lead: a little or a lot, both are fine."


def _foods_said(foods: Sequence[str]) -> str:
    if not foods:
        return ""
    if len(foods) == 1:
        return f"All you need: {foods[0]}."
    return f"You need {', '.join(foods[:-1])} and {foods[-1]}."


def _ages_and_texture(material: Material) -> str:
    return " · ".join(part for part in (material.ages, material.texture) if part)


def _allergen_supers(material: Material) -> tuple[Super, ...]:
    return (super_of("Contains " + ", ".join(material.allergens), "allergens"),) if material.allergens else ()


_NAMED_ROLES = {
    "hook": "opening", "opening": "opening", "intro": "opening", "foods": "foods", "tasting": "tasting",
    "taste": "tasting", "cautions": "tasting", "before you serve": "tasting", "sources": "sources", "close": "close",
    "goodbye": "close",
}  # fmt: skip


def _merged(takes: list[Take], material: Material) -> list[Take]:
    """The author's segments in the author's order, each taking the place of what it replaces; steps nobody
    wrote come after the step before them; cautions, sources and the rest stay."""
    if not material.segments:
        return takes
    own = [_written(segment, takes) for segment in material.segments]
    replaced = {(take.role, take.step) for take in own}
    left = [take for take in takes if (take.role, take.step) not in replaced]
    if any(take.role == "step" for take in own):
        # The author tells the method in her own words: what she passes over is seen, not read out.
        left = [replace(take, say="") if take.role == "step" else take for take in left]
    result = list(own)
    for take in left:
        result.insert(_place_for(take, result), take)
    return result


def _written(segment: Segment, takes: Sequence[Take]) -> Take:
    role = "step" if segment.step is not None else _NAMED_ROLES.get(segment.name.strip().lower(), "own")
    step = segment.step - 1 if segment.step is not None else None
    default = next((take for take in takes if take.role == role and take.step == step), None)
    supers = tuple(default.supers) if default is not None else ()
    if segment.super is not None:
        supers = (super_of(segment.super.value, "author"), *(s for s in supers if s.kind != "author"))
    say = _text(segment.say) or (default.say if default is not None and segment.say is None else "")
    return Take(
        role=role,
        name=segment.name or (default.name if default else "Segment"),
        shot=segment.shot or (default.shot if default else "MS"),
        say=say,
        supers=supers,
        step=step,
        twin=default.twin if default else "",
        written=True,
    )


_ORDER = ("opening", "foods", "step", "tasting", "sources", "close")


def _place_for(take: Take, result: Sequence[Take]) -> int:
    """Before the first later role; a step after the last written step that comes before it."""
    if take.role == "step":
        number = take.step or 0
        before = [n for n, other in enumerate(result) if other.step is not None and other.step < number]
        if before:
            return before[-1] + 1
        after = [n for n, other in enumerate(result) if other.step is not None and other.step > number]
        if after:
            return after[0]
    rank = _ORDER.index(take.role)
    for number, other in enumerate(result):
        if other.role != "own" and _ORDER.index(other.role) > rank and not _inside_earlier(result, number, rank):
            return number
    return len(result)


def _inside_earlier(result: Sequence[Take], number: int, rank: int) -> bool:
    return any(other.role != "own" and _ORDER.index(other.role) <= rank for other in result[number + 1 :])


def _text(text: Text | None) -> str:
    return text.value.strip() if text is not None else ""
