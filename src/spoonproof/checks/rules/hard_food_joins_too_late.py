"""A hard food joins the pot too late to get soft with the rest.

Harder foods go in first. What joins in the last minutes has only those minutes: a root that follows the fruit stays
hard in a bowl that is otherwise done, and the cook who tests the wrong piece never notices.

Fails::

    foods:
      - 200 g pears, peeled, cored, 1 cm dice
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the pears for 16 minutes.
      - Add the carrots and steam for 4 minutes more.
      - Mash everything.

Passes::

    foods:
      - 200 g pears, peeled, cored, 1 cm dice
      - 300 g carrots, peeled, 1 cm dice
    steps:
      - Steam the carrots for 16 minutes.
      - Add the pears and steam for 4 minutes more, until a cube of carrot squashes between finger and thumb.
      - Mash everything.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.from_cooking import cooked, late, minutes_words, need_sources, need_words, severity
from spoonproof.checks.rule import Fault
from spoonproof.dish import Dish
from spoonproof.model.finding import Related, Remedy

AREA = "cooking"
LEVEL = "warning"
SOURCES = ("common-practice", "steamer-manual-rc")


def check(dish: Dish) -> Iterator[Fault]:
    """A fault for each food that the pot's whole time would have softened, but its own time does not."""
    kitchen = dish.walked
    for line, (first, need) in late(dish, kitchen).items():
        story = kitchen.stories[line]
        time = cooked(story)
        if time is None or story.joined is None:
            continue
        level, bowl = severity(dish, story, need)
        step = next(step for step in dish.recipe.steps if step.index == story.joined)
        span = next((e.action.span for e in kitchen.events if e.step == step.index and line in e.lines), step.span)
        name, before = story.line.name, first.line.name
        yield Fault(
            span,
            f"In after the {before}, the {name} will be hard: {minutes_words(time)} are too few, {need_words(need)}.",
            level,
            area="baby" if bowl == "baby" else "cooking",
            bowl=bowl,
            related=(Related(dish.recipe.document, first.line.span, f"before it goes in: {before}"),),
            remedy=Remedy(f"Put the {name} in first and let the {before} join when it is nearly soft."),
            sources=need_sources(need),
        )
