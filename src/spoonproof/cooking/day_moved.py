"""A filming day with tasks moved by hand: what breaks."""

from __future__ import annotations

from collections.abc import Mapping

from spoonproof.cooking.day import SOON_MINUTES, DayProblem, DayTask

_NAMES = {"hands": "pairs of hands", "ring": "rings", "steamer": "steamer tiers", "oven": "ovens"}


def broken(problem: DayProblem, starts: Mapping[str, int]) -> list[str]:
    """What can't be so when each task starts at the minute given (from the start of the day); [] when all of it can.

    A task that ``starts`` does not name is left out.
    """
    tasks = {task.id: task for task in problem.tasks if task.id in starts}
    ends = {name: starts[name] + task.minutes for name, task in tasks.items()}
    said: list[str] = []
    for name, task in tasks.items():
        if starts[name] < 0 or ends[name] > problem.length:
            said.append(f"{_words(task)} lies outside the filming day.")
        for before in task.after:
            if before in tasks and ends[before] > starts[name]:
                late = ends[before] - starts[name]
                said.append(f"{_words(task)} starts {late} min before this is done: {_words(tasks[before])}.")
            elif before in task.soon and before in tasks and starts[name] - ends[before] > SOON_MINUTES:
                said.append(f"{_words(task)} lets a hot pan wait {starts[name] - ends[before]} min.")
        if task.present and any(starts[name] < until and begin < ends[name] for begin, until in problem.away):
            said.append(f"{_words(task)} needs somebody while nobody is in the kitchen.")
    return said + _crowded(problem, tasks, starts)


def _crowded(problem: DayProblem, tasks: Mapping[str, DayTask], starts: Mapping[str, int]) -> list[str]:
    said = []
    for resource, most in problem.capacity.items():
        uses = [
            (starts[name], starts[name] + use.minutes, use.units, task)
            for name, task in tasks.items()
            for use in task.uses
            if use.resource == resource
        ]
        told: set[tuple[str, ...]] = set()
        for at, _, _, _ in sorted(uses, key=lambda use: (use[0], use[3].id)):
            together = [use for use in uses if use[0] <= at < use[1]]
            names = tuple(sorted(use[3].id for use in together))
            if sum(use[2] for use in together) > most and names not in told:
                told.add(names)
                what = _NAMES.get(resource, f"{resource}s")
                said.append(
                    f"Too few {what} (there {'is' if most == 1 else 'are'} {most}) for: "
                    f"{'; '.join(_words(use[3]) for use in together)}."
                )
    return said


def _words(task: DayTask) -> str:
    return f"“{task.label}” ({task.recipe})"
