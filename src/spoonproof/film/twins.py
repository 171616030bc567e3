"""Twins: what must stand ready made because cooking takes longer than the screen, from the dish's plan."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.dish import Dish
from spoonproof.film.script import Twin
from spoonproof.model.recipe import Step

LEAST_MINUTES = 3.0  # a shorter wait is filmed and cut; common practice, no source
HANDS_OFF = 0.75  # from this share of hands on, the work itself is what is filmed


def twins(dish: Dish) -> Mapping[int, Twin]:
    """A twin for each step in which something cooks or stands longer than ``LEAST_MINUTES``, by the step's index.

    ``minutes`` is the plan's time from the first cut to the end of that step.
    """
    made: dict[int, Twin] = {}
    for step in dish.recipe.steps:
        tasks = [task for task in dish.plan.tasks if task.step == step.index]
        waits = sum(task.minutes for task in tasks if task.hands < HANDS_OFF)
        cooks = not _only_water(step) and any(task.hands < HANDS_OFF for task in tasks)
        stated = step.longest.high if step.longest is not None else waits
        if tasks and cooks and min(waits, stated) >= LEAST_MINUTES:
            made[step.index] = Twin(step.index, _state(step), max(task.end for task in tasks))
    return made


def _only_water(step: Step) -> bool:
    """Whether the step puts on nothing but water or an oven: a second pan shows no difference."""
    return not any(action.foods or action.everything or action.until for action in step.actions)


def _state(step: Step) -> str:
    """What it must look like: the step's own end point, else how long it has been at it."""
    made = f"Made ahead to the end of step {step.index + 1}"
    if step.until:
        return f"{made}: {step.until}"
    return f"{made}, after {step.longest.told}" if step.longest is not None else made
