"""A page shows a film of its own without captions.

Who can't hear, or has a baby asleep on one arm, gets nothing of what is said, the cautions included. Captions are the
first thing the accessibility guidelines ask of a recorded video (success criterion 1.2.2). `spoonproof shoot` writes
the file.

Fails::

    video: {file: plain-bowl.mp4, uploaded: 2026-11-02}

Passes::

    video: {file: plain-bowl.mp4, uploaded: 2026-11-02, captions: plain-bowl.vtt}
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy

AREA = "page"
LEVEL = "warning"
SOURCES = ("wcag-22",)


def check(dish: Dish) -> Iterator[Fault]:
    """One fault where the page itself shows the film; on a host for videos the captions are there."""
    video = dish.recipe.video
    if video is not None and video.file and not video.captions:
        yield Fault(
            video.span,
            "The page shows this film without captions.",
            remedy=Remedy("Write captions: and the name of a WebVTT file; spoonproof shoot makes one."),
        )
