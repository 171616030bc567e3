"""The version of what a reviewer looks at: it changes when foods, steps, ages, texture or statements do."""

from __future__ import annotations

import json

from spoonproof.model.recipe import Recipe

_FILM = ("say", "super", "social")


def reviewed_version(recipe: Recipe) -> str:
    """Eight hexadecimal digits of the parts a review covers. What is only said in a film, and a reviewer's own line,
    are no part of it; spaces between words make no difference."""
    parts = [
        [recipe.ages.low, recipe.ages.high],
        recipe.texture.value if recipe.texture else "",
        [_plain(line.text) for line in recipe.foods],
        [_plain(step.text) for step in recipe.steps],
        [[p.kind, _plain(p.text)] for p in recipe.passages if p.kind not in _FILM],
    ]
    import hashlib

    return hashlib.sha256(json.dumps(parts, ensure_ascii=False).encode("utf-8")).hexdigest()[:8]


def _plain(text: str) -> str:
    return " ".join(text.split())
