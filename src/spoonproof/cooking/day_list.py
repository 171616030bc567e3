"""A list schedule: tasks one by one, each as early as its predecessors and the resources allow."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from spoonproof.cooking.day import DayProblem, DayTask


def list_schedule(problem: DayProblem) -> Mapping[str, int]:
    """Start minutes by task id: the best of a few customary priorities. Never fails: the day may come out too long."""
    tails = _tails(problem)
    work = {task.id: sum(use.minutes * use.units for use in task.uses) for task in problem.tasks}
    priorities: tuple[Callable[[DayTask], tuple[float, str]], ...] = (
        lambda task: (-tails[task.id], task.id),
        lambda task: (-work[task.id] - tails[task.id], task.id),
        lambda task: (-work[task.id], task.id),
        lambda task: (task.minutes, task.id),
    )
    best: Mapping[str, int] | None = None
    ends = {task.id: task.minutes for task in problem.tasks}
    for priority in priorities:
        starts = place_in_order(problem, _ordered(problem, priority))
        if best is None or _end(starts, ends) < _end(best, ends):
            best = starts
    return best or {}


def place_in_order(problem: DayProblem, order: Sequence[DayTask]) -> Mapping[str, int]:
    """Each task of ``order`` (predecessors first) at its earliest feasible minute: an active schedule."""
    taken: dict[str, dict[int, int]] = {name: {} for name in problem.capacity}
    starts: dict[str, int] = {}
    ends: dict[str, int] = {}
    for task in order:
        start = max((ends[before] for before in task.after), default=0)
        while not _fits(problem, taken, task, start):
            start += 1
        starts[task.id] = start
        ends[task.id] = start + task.minutes
        for use in task.uses:
            held = taken[use.resource]
            for minute in range(start, start + use.minutes):
                held[minute] = held.get(minute, 0) + use.units
    return starts


def _fits(problem: DayProblem, taken: Mapping[str, Mapping[int, int]], task: DayTask, start: int) -> bool:
    if task.present and any(start < end and begin < start + task.minutes for begin, end in problem.away):
        return False
    for use in task.uses:
        held, most = taken[use.resource], problem.capacity[use.resource] - use.units
        if any(held.get(minute, 0) > most for minute in range(start, start + use.minutes)):
            return False
    return True


def _ordered(problem: DayProblem, priority: Callable[[DayTask], tuple[float, str]]) -> list[DayTask]:
    waiting = sorted(problem.tasks, key=priority)
    done: set[str] = set()
    order: list[DayTask] = []
    while waiting:
        chosen = next(task for task in waiting if done.issuperset(task.after))
        waiting.remove(chosen)
        done.add(chosen.id)
        order.append(chosen)
    return order


def _tails(problem: DayProblem) -> dict[str, int]:
    """Minutes from a task's start to the end of the longest chain behind it."""
    tails: dict[str, int] = {}
    for task in reversed(problem.tasks):
        behind = [tails[other.id] for other in problem.tasks if task.id in other.after and other.id in tails]
        tails[task.id] = task.minutes + max(behind, default=0)
    return tails


def _end(starts: Mapping[str, int], minutes: Mapping[str, int]) -> int:
    return max((start + minutes[name] for name, start in starts.items()), default=0)
