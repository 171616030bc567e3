"""The version of what a reviewer reads: it changes when, and only when, the reviewed part of a recipe changes."""

from __future__ import annotations

import hashlib

from spoonproof.model.recipe import Recipe


def version_of(recipe: Recipe) -> str:
    """Twelve hex digits over the words of the reviewed part; blanks and line breaks don't count."""
    texture = recipe.texture.value if recipe.texture else ""
    parts = [f"{recipe.ages.low}-{recipe.ages.high}", texture, recipe.title.value]
    parts.append(recipe.summary.value if recipe.summary else "")
    parts += [f"{recipe.next.texture} {recipe.next.from_months} {recipe.next.how}"] if recipe.next else [""]
    for line in recipe.foods:
        parts.append(" or ".join((line.text, *(choice.text for choice in line.choices))))
    parts += [step.text for step in recipe.steps]
    keeps = recipe.keeps
    parts.append(f"{keeps.fridge_hours} {keeps.freezer_days}" if keeps else "")
    parts.append(recipe.story)
    words = "\n".join(" ".join(part.split()) for part in parts)
    return hashlib.sha256(words.encode("utf-8")).hexdigest()[:12]
