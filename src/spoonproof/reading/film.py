"""The parts of a head about the camera and the record: film, pictures, video, trials, corrections, review."""

from __future__ import annotations

from collections.abc import Callable

from spoonproof.model.recipe import Correction, Film, Picture, Review, Segment, Trial, Video
from spoonproof.model.record import replace
from spoonproof.model.text import Text
from spoonproof.model.tree import Scalar
from spoonproof.reading import recipe_keys as keys
from spoonproof.reading.statements import LEAVE, Statement
from spoonproof.reading.typed import Sink, Values, short

Add = Callable[[Statement | None, str, str, Scalar | None], Text | None]
"""Keeps a statement as a passage (kind, where, a mark around it) and gives its text."""


def film(values: Values | None, add: Add, sink: Sink, steps: int) -> Film | None:
    """The author's film block; its statements go to ``add``. A segment's ``step`` must be one of ``steps``."""
    if values is None:
        return None
    segments = []
    for part in values.or_else(keys.FILM_SEGMENTS, ()):
        leave = part.get(LEAVE)
        name = part.or_else(keys.SEG_NAME, "")
        where = f"film, {name}" if name else "film"
        number = part.get(keys.SEG_STEP)
        if number is not None and steps and number > steps:
            at = part.span(keys.SEG_STEP) or part.mapped.span
            sink.add("number-out-of-range", short(at), f"There is no step {number}: this recipe has {steps}.")
            number = None
        plain = Segment(name, part.mapped.span, step=number)
        said, over = part.get(keys.SEG_SAY), part.get(keys.SEG_SUPER)
        shown = replace(plain, say=add(said, "say", where, leave), super=add(over, "super", where, leave))
        segments.append(part.put_into(shown, shot=keys.SEG_SHOT, runs=keys.SEG_RUNS, presenter=keys.SEG_WHO))
    return Film(
        span=values.mapped.span,
        runs=values.get(keys.FILM_RUNS),
        segments=tuple(segments),
        title=add(values.get(keys.FILM_TITLE), "title", "film title", None),
        description=add(values.get(keys.FILM_TEXT), "description", "film description", None),
        social=add(values.get(keys.FILM_SOCIAL), "social", "social text", None),
    )


def pictures(values: Values, add: Add) -> tuple[Picture, ...]:
    """The pictures; what they show and their texts are statements."""
    found = []
    for part in values.or_else(keys.PICTURES, ()):
        if not isinstance(part, Values):
            found.append(Picture(part.value, None, (), part.span))
            continue
        leave = part.get(LEAVE)
        file = part.or_else(keys.PIC_FILE, "")
        words = add(part.get(keys.PIC_TEXT), "picture", f"picture {file}", leave)
        shows = [add(shown, "shows", f"picture {file}", leave) for shown in part.or_else(keys.PIC_SHOWS, ())]
        found.append(Picture(file, words, tuple(text for text in shows if text is not None), part.mapped.span))
    return tuple(found)


def video(values: Values | None, sink: Sink) -> Video | None:
    """A finished video; None when it has neither an address nor a file that can be used."""
    if values is None:
        return None
    address, file = values.or_else(keys.VIDEO_URL, ""), values.or_else(keys.VIDEO_FILE, "")
    if not (address or file):
        if not (values.node(keys.VIDEO_URL) or values.node(keys.VIDEO_FILE)):
            sink.add("missing-key", short(values.mapped.span), "The video needs 'url' or 'file'.")
        return None
    plain = Video(address, values.mapped.span, file=file)
    return values.put_into(plain, uploaded=keys.VIDEO_DAY, seconds=keys.VIDEO_RUNS, captions=keys.VIDEO_CAPTIONS)


def trials(values: Values) -> tuple[Trial, ...]:
    """The weighed trials, as written down."""
    fields = {"on": keys.TRIAL_ON, "grams": keys.TRIAL_WEIGHED, "squash": keys.TRIAL_SQUASH, "note": keys.TRIAL_NOTE}
    parts = values.or_else(keys.TRIALS, ())
    return tuple(part.put_into(Trial("", None, None, "", part.mapped.span), **fields) for part in parts)


def corrections(values: Values, add: Add) -> tuple[Correction, ...]:
    """The corrections; what holds now is a statement, what was said before is not said any more."""
    found = []
    for part in values.or_else(keys.CORRECTIONS, ()):
        holds = add(part.get(keys.FIX_HOLDS), "note", "correction", None)
        text = holds.value if holds is not None else ""
        found.append(Correction(part.or_else(keys.FIX_ON, ""), part.or_else(keys.FIX_SAID, ""), text, part.mapped.span))
    return tuple(found)


def review(values: Values | None) -> Review | None:
    """Who looked at which version."""
    if values is None:
        return None
    plain = Review("", "", "", values.mapped.span)
    return values.put_into(plain, who=keys.REVIEW_WHO, on=keys.REVIEW_ON, version=keys.REVIEW_VERSION)
