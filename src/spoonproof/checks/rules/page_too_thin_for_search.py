"""A page lacks what search engines require before they show it as a recipe, or its film as a film.

Search engines document what a recipe and a video need at least: a name, a picture, and for a video the day it went
up. What is too thin is left out of the page's structured data, never half written; so the film that was so much
work is not found. Pictures and the site's address are the build's own business, which says so when they are missing.

Fails::

    video: {url: "https://video.example/plain-bowl", runs: 92 s}

Passes::

    video: {url: "https://video.example/plain-bowl", runs: 92 s, uploaded: 2026-11-02}
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy
from spoonproof.model.search_needs import recipe_lacks, video_lacks

AREA = "page"
LEVEL = "warning"
SOURCES = ("google-recipe-data", "google-video-data")


def check(dish: Dish) -> Iterator[Fault]:
    """One fault for the recipe and one for its film, each with all that is lacking."""
    recipe = dish.recipe
    # A page has a drawing where it has no photograph, so a picture is never what the recipe lacks.
    lacking = recipe_lacks(recipe.title.value, 1, True)
    if lacking:
        yield Fault(recipe.title.span, f"Search engines won't show this recipe: it lacks {' and '.join(lacking)}.")
    video = recipe.video
    if video is None:
        return
    lacking = video_lacks(recipe.title.value, 1, video.uploaded or recipe.published)
    if lacking:
        yield Fault(
            video.span,
            f"Search engines won't show this film: it lacks {' and '.join(lacking)}.",
            remedy=Remedy("Write uploaded: and the day (2026-11-02) with the video."),
        )
