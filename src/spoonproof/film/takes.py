"""The takes of a script before they are timed: those the recipe gives, and the author's in their place."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.film.briefly import aloud, briefly, chapter_of, listed, named, sentence, small_eaters
from spoonproof.film.screen import super_of
from spoonproof.film.script import Material, Shorter, Take
from spoonproof.model.recipe import Segment
from spoonproof.model.record import replace
from spoonproof.model.text import Text
from spoonproof.reading.disclosure import disclosed

_TITLE_PAUSE = re.compile(r":\s|\s[–—-]\s")
_TASTING = "Some days it is a spoonful, some days the whole bowl: both are fine."
_TASTING_BRIEFLY = "A little or a lot: both are fine."
_UNDER_THE_FILM = "Everything you need is written under the film."
_SOURCES = "The recipe and its sources are written out under the film."
_ORDER = ("opening", "foods", "step", "tasting", "cautions", "sources", "close")
_NAMED_ROLES = {
    "hook": "opening", "opening": "opening", "intro": "opening", "foods": "foods", "tasting": "tasting",
    "taste": "tasting", "cautions": "cautions", "before you serve": "cautions", "good to know": "cautions",
    "sources": "sources", "close": "close", "goodbye": "close", "outro": "close",
}  # fmt: skip


def all_takes(material: Material) -> list[Take]:
    """The recipe's takes with the author's in the author's order, each in place of what it replaces; steps nobody
    wrote come after the step before them. Cautions that must be heard close the take they belong to; a paid film
    says so first."""
    takes = _from_recipe(material)
    if material.segments:
        own = [_written(segment, number, takes) for number, segment in enumerate(material.segments)]
        replaced = {(take.role, take.step) for take in own}
        tells = any(take.role == "step" for take in own)
        result = list(own)
        for take in takes:
            if (take.role, take.step) not in replaced:
                # Whoever tells the method tells it in their own way: what they pass over is seen, and not read out.
                result.insert(_place_for(take, result), _in_silence(take) if tells and take.role == "step" else take)
        takes = result
    return _with_disclosure(_with_cautions(takes, material), material.disclosure)


FINGER_FOOD = "soft finger food"
_ON_A_PLATE = {
    "CU finished bowl, spoon going in": "CU finished plate, a small hand reaching in",
    "CU bowl and spoon": "CU plate, laid out",
    "CU bowl, steam going off": "CU plate, steam going off",
    "CU bowl, text over": "CU plate, text over",
}
"""How what is eaten with the fingers is filmed: no spoon goes into it."""


def _from_recipe(material: Material) -> list[Take]:
    short = f"Today: {sentence(_titled(material.title))} {_for_whom(material)}".strip()
    face = " · ".join(part for part in (material.ages, material.texture) if part)
    takes = [
        Take(
            "opening",
            "Opening",
            "CU finished bowl, spoon going in",
            f"{short} {sentence(material.summary)}".strip(),
            (super_of(face, "ages", take=0),) if face else (),
            shorter=(Shorter(short, loss=2),) if material.summary else (),
        )
    ]
    if material.foods:
        heard = f"You need {listed(material.foods)}."
        shorter = (Shorter(_UNDER_THE_FILM, loss=2),) if len(heard) > len(_UNDER_THE_FILM) else ()
        takes.append(Take("foods", "Foods", "Top shot, foods laid out on the board", heard, shorter=shorter,
                          chapter="What you need"))  # fmt: skip
    takes += [_step(number, material) for number in range(len(material.steps))]
    fingers = material.texture == FINGER_FOOD  # no spoonful, no bowl
    takes.append(Take("tasting", "Tasting", "MS baby upright in the high chair, adult beside",
                      _TASTING_BRIEFLY if fingers else _TASTING,
                      shorter=() if fingers else (Shorter(_TASTING_BRIEFLY),)))  # fmt: skip
    takes.append(Take("cautions", "Good to know", "CU bowl, text over", material.keeping))
    takes.append(Take("sources", "Sources", "CU bowl, text over", _SOURCES, shorter=(Shorter(""),)))
    close = f"Until next time, from {material.channel}."
    takes.append(Take("close", "Close", "WS kitchen", close, shorter=(Shorter(""),)))
    if fingers:
        return [replace(take, shot=_ON_A_PLATE.get(take.shot, take.shot)) for take in takes]
    return takes


def _titled(title: str) -> str:
    """A title as it is said: after "Today:" no second colon or dash is heard, only a pause."""
    return _TITLE_PAUSE.sub(", ", title)


def _for_whom(material: Material) -> str:
    """ "For babies from 7 months, mashed." as far as it is known."""
    youngest = re.search(r"\d+", material.ages)
    return f"For {small_eaters(int(youngest[0]))} from {youngest[0]} months." if youngest else ""


def _step(number: int, material: Material) -> Take:
    """A step as a take: in full, briefly, or when time is short only named, or in silence, and then its end point
    stands on the screen."""
    text = aloud(material.steps[number])
    brief = aloud(briefly(material.steps[number]))  # brackets are left out before they are read out
    test = material.step_tests[number] if number < len(material.step_tests) else ""
    name = named(material.steps[number])
    shorter = [Shorter(brief)] if brief != text else []
    shorter += [Shorter(name, test, 3)] if name and name != brief else []
    shorter += [Shorter("", test, 3)]
    return Take(
        "step",
        f"Step {number + 1}",
        material.step_shots[number] if number < len(material.step_shots) else "MS hands and bowl",
        text,
        step=number,
        twin=material.twins.get(number),
        shorter=tuple(shorter),
        chapter=chapter_of(brief),
    )


def _in_silence(take: Take) -> Take:
    """A take with nothing said; its end point or time stands on the screen."""
    test = take.shorter[-1].test if take.shorter else ""
    return replace(take, say="", supers=(*take.supers, *([super_of(test, "step")] if test else [])), shorter=())


def _written(segment: Segment, number: int, takes: Sequence[Take]) -> Take:
    role = "step" if segment.step is not None else _NAMED_ROLES.get(segment.name.strip().lower(), "own")
    step = segment.step - 1 if segment.step is not None else None
    default = next((take for take in takes if take.role == role and take.step == step), None)
    supers = default.supers if default is not None else ()
    if segment.super is not None:
        supers = (super_of(segment.super.value, "author"),)
    return Take(
        role=role,
        name=segment.name or (default.name if default else f"Segment {number + 1}"),
        shot=segment.shot or (default.shot if default else "MS presenter to camera"),
        say=_text(segment.say) or (default.say if default is not None and segment.say is None else ""),
        supers=supers,
        step=step,
        twin=default.twin if default else None,
        segment=number,
        presenter=segment.presenter,
        shorter=default.shorter if default is not None and segment.say is None else (),
        least=segment.runs or 0.0,
    )


def _with_cautions(takes: list[Take], material: Material) -> list[Take]:
    """Each caution that must be heard at the end of the take it belongs to: the last such take."""
    result = list(takes)
    for heard in material.heard:
        at = [n for n, take in enumerate(result) if take.role == heard.where]
        at = at or [n for n, take in enumerate(result) if take.role == "cautions"] or [len(result) - 1]
        take = result[at[-1]]
        result[at[-1]] = replace(take, heard=f"{take.heard} {heard.text}".strip())
    return result


def _with_disclosure(takes: list[Take], words: str) -> list[Take]:
    """A paid film says so in its first words and shows it over its first picture, unless its author already does."""
    if not words or not takes:
        return takes
    first = takes[0]
    said = first.say if disclosed(first.say) else f"{words} {first.say}".strip()
    shorter = tuple(
        other if disclosed(other.say) else other._replace(say=f"{words} {other.say}".strip()) for other in first.shorter
    )
    supers = first.supers
    if not any(disclosed(each.text) for each in supers):
        supers = (super_of(words, "disclosure"), *supers)
    return [replace(first, say=said, supers=supers, shorter=shorter), *takes[1:]]


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
    return " ".join(text.value.split()) if text is not None else ""
