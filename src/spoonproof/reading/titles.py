"""Recipes used as foods by their titles: "Galley stock" for the file with this title, whatever the file is called."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from spoonproof.model.recipe import Recipe
from spoonproof.model.record import replace
from spoonproof.reading.slugs import suggested

_HEAD = 4_000  # characters of a file in which its title stands


def title_in(text: str) -> str:
    """The title in the head of a recipe's text, found without reading the rest; "" where none stands on its line."""
    for line in text[:_HEAD].split("\n"):
        if line.startswith("title:"):
            return line[6:].strip().strip("\"'").strip()
    return ""


def slugs_by_title(titles: Iterable[tuple[str, str]]) -> Mapping[str, tuple[str, ...]]:
    """From pairs of slug and title, the slugs that have a title: keyed by the title as a slug, capitals evened out."""
    found: dict[str, tuple[str, ...]] = {}
    for slug, title in titles:
        name = suggested(title)
        if name:
            found[name] = (*found.get(name, ()), slug)
    return found


def with_slugs(recipe: Recipe, by_title: Mapping[str, tuple[str, ...]], slugs: Mapping[str, object]) -> Recipe:
    """``recipe`` with the slug in the place of each title that one recipe alone has; the rest as it stands."""
    foods = tuple(
        replace(line, recipe=named[0])
        if line.recipe and line.recipe not in slugs and len(named := by_title.get(line.recipe, ())) == 1
        else line
        for line in recipe.foods
    )
    return replace(recipe, foods=foods) if foods != recipe.foods else recipe
