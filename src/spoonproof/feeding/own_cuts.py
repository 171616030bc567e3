"""Whose cut it is: this food's, its neighbour's, a part's, or the whole dish's."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.feeding.parts import of_a_part
from spoonproof.feeding.step_words import CLAUSE
from spoonproof.feeding.words import keys
from spoonproof.model.food import Food
from spoonproof.model.recipe import Cut, FoodLine, Recipe
from spoonproof.model.shares import of_the_grown_ups
from spoonproof.model.treatment import Treatment


def clause_of(cut: Cut, recipe: Recipe) -> str:
    """The clause of a step that a cut stands in; "" where no step has it."""
    for step in recipe.steps:
        at = cut.span.start - step.span.start
        if 0 <= at < step.span.end - step.span.start:
            return next((m.group() for m in CLAUSE.finditer(step.text) if m.start() <= at < m.end()), step.text)
    return ""


def made_of_a_part(treatment: Treatment, recipe: Recipe, names: frozenset[str]) -> bool:
    """Whether the step that gives the food its texture works on a part of it alone."""
    made = (step for step in recipe.steps if step.index == treatment.made_step)
    return any(of_a_part(clause.group(), names) for step in made for clause in CLAUSE.finditer(step.text))


def own_cut(cut: Cut, recipe: Recipe, names: frozenset[str]) -> bool:
    """Whether a cut that a step makes is this food's: not where its clause names another food and not this one."""
    for step in recipe.steps:
        if step.span.start <= cut.span.start < step.span.end:
            at = cut.span.start - step.span.start
            if any(start <= at < end for start, end in of_the_grown_ups(step.text)):
                return False
            whole = (a for a in step.actions if a.everything and not a.foods)
            if any(a.span.start <= cut.span.start < a.span.end for a in whole):
                return True  # "take the garlic out and mince it all"
            here = keys(clause_of(cut, recipe))
            others = {key for one in recipe.foods for key in keys(one.name) if len(key) > 2} - names
            return bool(names & here) or not others & here
    return True


_OF_THE_DISH = frozenset({"baton", "strip", "slice", "dice", "chunk", "wedge", "half", "quarter"})
_SMALL_TRAITS = frozenset({"round", "whole-nut", "seed-whole", "has-stone", "sausage-shaped"})
_CUT_UP = re.compile(r"\W*(?:then |and )?(?:cut|slice|divide|break|snap|portion)", re.I)


def cuts_the_dish(cut: Cut, index: int, recipe: Recipe, food: Food | None) -> bool:
    """Whether a step cuts the whole dish into bars or fingers: the olives on the pizza stay as they were."""
    if food is not None and not food.traits & _SMALL_TRAITS:
        return False
    for step in recipe.steps:
        for action in step.actions:
            if action.span.start <= cut.span.start < action.span.end:
                whole = cut.shape in _OF_THE_DISH or _CUT_UP.match(recipe.document.at(action.span)) is not None
                return whole and (index not in action.foods or _wrapped_up(cut, index, recipe))
    return False


_WRAPPED = frozenset({"wrap", "sprinkle", "spread", "shape"})
_OBJECT = re.compile(r"\b(?:it|them|each|these|those)\b", re.I)


def _wrapped_up(cut: Cut, index: int, recipe: Recipe) -> bool:
    """Whether it was strewn on or rolled up in something before a cut without an object: "roll up. Cut in two"."""
    clause = clause_of(cut, recipe)
    if _OBJECT.search(clause) or keys(recipe.foods[index].name) & keys(clause):
        return False
    before = (action for step in recipe.steps for action in step.actions if action.span.end <= cut.span.start)
    return any(action.verb in _WRAPPED and (index in action.foods or action.everything) for action in before)


def without_namesakes(texts: Sequence[str], line: FoodLine, recipe: Recipe) -> Sequence[str]:
    """The texts without what calls another line that shares a word with this one: "ground almonds" by whole ones."""
    mine = keys(line.name)
    twins: list[str] = []
    for one in recipe.foods:
        if one is not line and keys(one.name) & mine:
            twins += [f"{word} {one.name}" for word, _ in one.prepared if word not in line.text]
            if not keys(one.name) <= mine and len(keys(one.name)) > 1:
                twins.append(one.name)
    for twin in twins:
        texts = [re.sub(rf"\b{re.escape(twin)}\b", " ", text, flags=re.I) for text in texts]
    return texts
