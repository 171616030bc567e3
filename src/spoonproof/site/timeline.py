"""The cook's timeline as rows of bars, and the same in sentences."""

from __future__ import annotations

from spoonproof.cooking.timeline import Plan, Task
from spoonproof.site.view import Bar, Lane, Timeline

_ROWS = ("hands", "steamer", "ring", "oven", "microwave", "blender", "")
_NAMES = {"hands": "by hand", "steamer": "steamer", "ring": "ring", "oven": "oven", "microwave": "microwave",
          "blender": "blender", "": "by itself"}  # fmt: skip


def timeline(plan: Plan) -> Timeline | None:
    """Rows by what is used (a second row where two run at once); None for a recipe with nothing to time."""
    total = round(plan.total)
    if total < 5 or not plan.tasks:
        return None
    lanes: list[Lane] = []
    for row in _ROWS:
        rows: list[list[Task]] = []
        for task in (t for t in plan.tasks if t.lane == row and t.minutes > 0):
            free = next((r for r in rows if r[-1].end <= task.start + 1e-9), None)
            if free is None:
                rows.append([task])
            else:
                free.append(task)
        for at, tasks in enumerate(rows):
            lanes.append(Lane(_name(row, at, len(rows)), tuple(_bar(task) for task in tasks)))
    return Timeline(total, tuple(lanes), _ticks(total), tuple(_told(task) for task in plan.tasks if task.minutes > 0))


def _name(row: str, at: int, rows: int) -> str:
    if rows > 1 and row == "hands":
        return "first cook" if at == 0 else "second cook" if at == 1 else f"cook {at + 1}"
    return _NAMES[row] + (f" {at + 1}" if rows > 1 and row in ("ring", "oven") else "")


def _bar(task: Task) -> Bar:
    return Bar(task.start, task.end, task.label, _kind(task), task.step + 1 if task.step is not None else 0)


def _kind(task: Task) -> str:
    if task.heat:
        return "heat"
    return "rest" if task.unattended else "hands"


def _ticks(total: int) -> tuple[int, ...]:
    step = next((s for s in (5, 10, 15, 30, 60, 120) if total / s <= 7), 240)
    ticks = [t for t in range(0, total, step) if total - t >= step * 0.6]
    return (*ticks, total)


def _told(task: Task) -> str:
    span = (
        f"{round(task.start)} to {round(task.end)} min"
        if round(task.end) > round(task.start)
        else f"{round(task.start)} min"
    )
    return f"{span}: {task.label}{' (time assumed)' if task.assumed and task.step is not None else ''}"
