"""Which steps, and which of their words, touch the baby's food."""

from __future__ import annotations

import re
from functools import lru_cache

from spoonproof.feeding.words import keys, words
from spoonproof.model.recipe import Recipe, Step
from spoonproof.model.shares import of_the_grown_ups
from spoonproof.model.treatment import Treatment


def steps_of(recipe: Recipe, line: int, treatment: Treatment | None, name: str) -> list[Step]:
    """The steps before or in the baby's bowl that touch this food line: linked to it, or naming its food."""
    named = set(_long(name))
    # "hard-boil the eggs" boils no egg yolk that stands on a line of its own
    shorter = [key for at, one in enumerate(recipe.foods) if at != line and (key := _long(one.name)) < named]
    named -= set().union(*shorter)
    if "egg" in named and not any("yolk" in _long(one.name) for one in recipe.foods):
        named.add("yolk")  # "let the yolk run into it"
    touched: list[Step] = []
    joined = treatment.joined if treatment else None
    twins = {at for at, one in enumerate(recipe.foods) if at != line and one.name.lower() == name.lower()}
    for step in recipe.steps:
        if only_family(step):
            continue
        linked = any(
            line in action.foods or (action.everything and (joined is None or joined <= step.index))
            for action in step.actions
            if (action.bowl or step.bowl) != "family"
        )
        twin = any(twins & set(action.foods) for action in step.actions)  # "squeeze the grated cucumber": no sticks
        if linked or (named & keys(step.text) and not twin):
            touched.append(step)
    return touched


@lru_cache(maxsize=500)  # each food line is held against all others
def _long(name: str) -> frozenset[str]:
    return frozenset(word.key for word in words(name) if len(word.key) > 2)


def only_family(step: Step) -> bool:
    """Whether a step is about the family's bowl alone."""
    return step.bowl == "family" or (
        bool(step.actions) and not step.splits and all((a.bowl or step.bowl) == "family" for a in step.actions)
    )


def baby_text(step: Step) -> str:
    """The words of a step that touch the baby's food: without what is done to the family's bowl.

    A step that lifts out the baby's portion counts up to there, and on from there where it goes on with the baby's
    ("lift out the baby's portion and blend it"), but not past "before" ("before the salt goes in").
    """
    if step.lifted_at is None:
        return _without_familys(step)
    if step.bowl == "baby":
        later = re.search(r"\bbefore\b", step.text, re.I)
        return step.text[: later.start()] if later else step.text
    return step.text[: step.lifted_at]


def _without_familys(step: Step) -> str:
    """The step with the words of the family's actions blanked out, where they can be told apart by their places."""
    if step.bowl is not None or step.span.end - step.span.start != len(step.text):
        return step.text
    own = step.span.start
    places = [(a.span.start - own, a.span.end - own) for a in step.actions if a.bowl == "family"]
    text = step.text
    for start, end in (*places, *of_the_grown_ups(text)):
        text = text[:start] + " " * (end - start) + text[end:]
    return text
