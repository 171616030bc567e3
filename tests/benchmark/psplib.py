"""Check the day solver against published scheduling instances with known optima.

    python -m tests.benchmark.psplib FOLDER

FOLDER holds instances ``*.sm`` of PSPLIB (R. Kolisch and A. Sprecher, set j30: thirty jobs, four resources) and a file
of their optimal makespans (``*opt*``, lines of: parameter, instance, makespan, or a CSV with file name and makespan).
The library has no open licence: get it from its authors; it is not part of the project.
"""

from __future__ import annotations

import re
import sys
import time
from pathlib import Path

from spoonproof.cooking.day import DayProblem, DayTask, Use, schedule_day


def read_instance(text: str) -> DayProblem:
    """A ``.sm`` file as a problem of the day solver; the first and last job are dummies of no length."""
    jobs = _section(text, "PRECEDENCE RELATIONS")
    after: dict[int, list[int]] = {}
    for cells in jobs:
        for successor in cells[3 : 3 + cells[2]]:
            after.setdefault(successor, []).append(cells[0])
    capacity = _section(text, "RESOURCEAVAILABILITIES")[0]
    tasks: dict[int, DayTask] = {}
    for cells in _section(text, "REQUESTS/DURATIONS"):
        job, minutes, demand = cells[0], cells[2], cells[3:]
        uses = tuple(Use(f"R{i}", minutes, units) for i, units in enumerate(demand) if units and minutes)
        tasks[job] = DayTask(str(job), "all", str(job), minutes, uses, tuple(map(str, after.get(job, []))))
    ordered = _ordered(tasks)
    length = sum(task.minutes for task in ordered)
    return DayProblem(ordered, {f"R{i}": units for i, units in enumerate(capacity)}, length)


def _ordered(tasks: dict[int, DayTask]) -> tuple[DayTask, ...]:
    placed: dict[str, DayTask] = {}
    while len(placed) < len(tasks):
        for task in tasks.values():
            if task.id not in placed and all(before in placed for before in task.after):
                placed[task.id] = task
    return tuple(placed.values())


def _section(text: str, heading: str) -> list[list[int]]:
    body = text.split(heading, 1)[1].split("*****", 1)[0]
    return [[int(cell) for cell in line.split()] for line in body.split("\n") if re.match(r"\s*\d+[\s\d]*$", line)]


def optima(folder: Path) -> dict[str, int]:
    """Known optimal makespans by instance name."""
    found: dict[str, int] = {}
    for path in sorted(folder.iterdir()):
        if path.suffix == ".sm":
            continue
        for line in path.read_text(encoding="utf-8", errors="replace").split("\n"):
            if match := re.match(r"\s*(\d+)\s+(\d+)\s+(\d+)\b", line):
                found[f"j30{match[1]}_{match[2]}"] = int(match[3])
            elif match := re.match(r'"?(j30\d+_\d+)(?:\.sm)?"?[,;\s]+(\d+)', line):
                found[match[1]] = int(match[2])
    return found


def main(folder: Path) -> int:
    """Solve every instance; exit code 1 when one is not proven at its known optimum."""
    known = optima(folder)
    wrong = 0
    times = []
    for path in sorted(folder.glob("*.sm")):
        started = time.perf_counter()
        plan = schedule_day(read_instance(path.read_text(encoding="utf-8", errors="replace")), effort=60)
        times.append(time.perf_counter() - started)
        listed = schedule_day(read_instance(path.read_text(encoding="utf-8", errors="replace")), solver=False)
        right = plan.how == "optimal" and plan.makespan == known.get(path.stem) and listed.makespan >= plan.makespan
        wrong += not right
        print(f"{path.stem}: {plan.makespan} ({plan.how}), known {known.get(path.stem)}, list {listed.makespan}")
    times.sort()
    print(f"{len(times)} instances, {wrong} wrong; median {times[len(times) // 2]:.3f} s, longest {times[-1]:.1f} s")
    return 1 if wrong or not times else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
