"""Twins: what must stand ready made because cooking takes longer than the screen, from the dish's plan."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.dish import Dish
from spoonproof.film.script import Twin

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
        cooks = any(task.hands < HANDS_OFF and not _only_water(dish, step.index) for task in tasks)
        stated = [action.time.high for action in step.actions if action.time is not None]
        if tasks and cooks and min(waits, max(stated, default=waits)) >= LEAST_MINUTES:
            made[step.index] = Twin(step.index, _state(dish, step.index), max(task.end for task in tasks), waits)
    return made


def _only_water(dish: Dish, step: int) -> bool:
    """Whether the step puts on nothing but water or an oven: a second pan shows no difference."""
    return not any(action.foods or action.everything or action.until for action in dish.recipe.steps[step].actions)


def _state(dish: Dish, step: int) -> str:
    """What it must look like: the step's own end point, else how long it has been at it."""
    actions = dish.recipe.steps[step].actions
    until = next((action.until for action in reversed(actions) if action.until), "")
    if until:
        return f"Made ahead to the end of step {step + 1}: {until}"
    times = [action.time for action in actions if action.time is not None]
    if times:
        longest = max(times, key=lambda time: time.high)
        span = f"{longest.low:g}" if longest.low == longest.high else f"{longest.low:g}–{longest.high:g}"
        return f"Made ahead to the end of step {step + 1}, after {span} {'minute' if longest.high == 1 else 'minutes'}"
    return f"Made ahead to the end of step {step + 1}"
