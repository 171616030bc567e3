"""A recipe is named as a food, or linked to in the story, and the channel has none of that name.

What is in that food, its allergens with it, is then not counted, and the link on the page leads nowhere.

Fails::

    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
      - {recipe: stokc-pot, amount: 100 ml}
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes.

Passes::

    foods:
      - 300 g floury potatoes, peeled, 1 cm dice
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes between finger and thumb.
      - Mash the potatoes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Edit, Remedy
from spoonproof.model.text import Span
from spoonproof.reading.slugs import suggested
from spoonproof.reading.typed import nearest

AREA = "page"
LEVEL = "error"
SOURCES = ()

_LINK = re.compile(r"\]\(<?recipe:(?P<slug>[^\s()<>]{1,200})")


def check(dish: Dish) -> Iterator[Fault]:
    """One fault at each name that leads to no recipe. Nothing where there is no channel to look in."""
    if not dish.others:
        return
    recipe = dish.recipe
    for line in recipe.foods:
        if line.recipe and line.recipe not in dish.others:
            at = recipe.document.text.find(line.name, line.span.start, line.span.end)
            span = Span(at, at + len(line.name)) if at >= 0 else line.span
            yield _two_of_a_title(dish, line.recipe, span) or _fault(dish, line.recipe, span)
    for link in _LINK.finditer(recipe.document.text, recipe.story_span.start, recipe.story_span.end):
        if link["slug"] not in dish.others:
            yield _fault(dish, link["slug"], Span(*link.span("slug")))


def _two_of_a_title(dish: Dish, name: str, span: Span) -> Fault | None:
    """The fault of a title that several recipes have."""
    named = [slug for slug, title in dish.titles.items() if suggested(title) == name]
    if len(named) < 2:
        return None
    text = f"{len(named)} recipes have the title “{dish.recipe.document.at(span)}”: {' and '.join(sorted(named))}."
    return Fault(span, text, remedy=Remedy("Write the file's name without .md, for the one meant."))


def _fault(dish: Dish, slug: str, span: Span) -> Fault:
    near = nearest(slug, [name for name in dish.titles if name != slug])
    named = dish.recipe.document.at(span) == slug
    edits = (Edit(span, near),) if near and named else ()
    remedy = Remedy(
        f"Write {near}, if that is the one meant." if near else "Write the recipe, or take it out.", False, edits
    )
    return Fault(span, f"The channel has no recipe “{slug}”.", remedy=remedy)
