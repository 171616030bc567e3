"""A ground spice goes in after the heat.

Ground cumin, coriander, turmeric and their kind taste of dust until they have been warmed: cook them in the fat or in
the pot for the last minutes. It is a matter of taste and of the baby's no danger, so it is a note.

Fails::

    foods:
      - 300 g potatoes, peeled, 1 cm dice
      - 1 pinch ground cumin
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes.
      - Mash the potatoes and stir in the cumin.

Passes::

    foods:
      - 300 g potatoes, peeled, 1 cm dice
      - 1 pinch ground cumin
    steps:
      - Boil the potatoes for 20-25 minutes, until a cube squashes.
      - Stir in the cumin and cook for 2 minutes more.
      - Mash the potatoes.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Remedy, SourceRef

AREA = "cooking"
LEVEL = "note"
SOURCES = ("common-practice",)

# Those that belong at the end, or are good either way.
_FINISHING = frozenset(("black-pepper", "white-pepper", "vanilla-extract", "saffron", "garam-masala", "celery-seed"))


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each ground spice that meets no heat in a dish that is cooked."""
    kitchen = dish.walked
    if not any(story.heats for story in kitchen.stories):
        return
    for story in kitchen.stories:
        food = story.food
        if food is None or food.group != "spice" or story.heats or story.joined is None or food.id in _FINISHING:
            continue
        if food.hardness != "powder" or story.bowl == "family":
            continue  # what the grown-ups sprinkle at the table is their taste
        if any(
            e.verb.role == "heat" and e.action.everything and e.bowl == story.bowl and e.step >= story.joined
            for e in kitchen.events
        ):
            continue  # "stir the chilli powder into the rest and simmer for ten minutes"
        span = next((e.action.span for e in kitchen.events if story.index in e.lines), story.line.span)
        yield Fault(
            span,
            f"Added after the heat, the {story.line.name} will stay raw.",
            bowl=story.bowl,
            remedy=Remedy(f"Let the {story.line.name} cook with the rest for the last minute or two."),
            sources=(SourceRef("common-practice", basis="common-practice"),),
        )
