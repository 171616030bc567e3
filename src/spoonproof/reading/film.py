"""The parts of a head about the camera and the record: film, pictures, video, trials, corrections, review."""

from __future__ import annotations

from collections.abc import Callable

from spoonproof.model.recipe import Correction, Film, Picture, Review, Segment, Trial, Video
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
        segments.append(
            Segment(
                name=name,
                span=part.mapped.span,
                say=add(part.get(keys.SEG_SAY), "say", where, leave),
                shot=part.or_else(keys.SEG_SHOT, ""),
                super=add(part.get(keys.SEG_SUPER), "super", where, leave),
                step=number,
                runs=part.get(keys.SEG_RUNS),
                presenter=part.or_else(keys.SEG_WHO, ""),
            )
        )
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
    return Video(
        address,
        values.mapped.span,
        values.or_else(keys.VIDEO_DAY, ""),
        values.get(keys.VIDEO_RUNS),
        values.or_else(keys.VIDEO_CAPTIONS, ""),
        file,
    )


def trials(values: Values) -> tuple[Trial, ...]:
    """The weighed trials, as written down."""
    return tuple(
        Trial(
            part.or_else(keys.TRIAL_ON, ""),
            part.get(keys.TRIAL_WEIGHED),
            part.get(keys.TRIAL_SQUASH),
            part.or_else(keys.TRIAL_NOTE, ""),
            part.mapped.span,
        )
        for part in values.or_else(keys.TRIALS, ())
    )


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
    return Review(
        values.or_else(keys.REVIEW_WHO, ""),
        values.or_else(keys.REVIEW_ON, ""),
        values.or_else(keys.REVIEW_VERSION, ""),
        values.mapped.span,
    )
