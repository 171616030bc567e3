"""The day solved by OR-Tools CP-SAT (the extra ``day``): the shortest day, proven or with its bound.

One worker with a fixed seed, and an effort counted in the solver's own deterministic time: the same input gives the
same day on every machine.
"""

from __future__ import annotations

from collections.abc import Mapping

from ortools.sat.python import cp_model

from spoonproof.cooking.day import SOON_MINUTES, DayPlan, DayProblem, DayTask, Slot, by_start, kept_out, lower_bound
from spoonproof.cooking.day_list import list_schedule, place_in_order
from spoonproof.model.record import replace


def solve(problem: DayProblem, effort: float) -> tuple[DayPlan | None, bool]:
    """The shortest schedule within the day, None when none is found; and whether it is proven that there is none.

    ``effort`` is deterministic time, about seconds of one core.
    """
    if not problem.tasks:
        return DayPlan((), "optimal", 0), False
    hint = list_schedule(problem)
    listed = max(hint[task.id] + task.minutes for task in problem.tasks)
    prompt = any(task.soon for task in problem.tasks)
    # a list schedule within the day is a day to beat, where it need not mind what waits
    horizon = problem.length if prompt else min(problem.length, listed)
    bound = lower_bound(problem)
    if bound > horizon:
        return None, True
    if any(task.minutes > horizon for task in problem.tasks):
        return None, True
    model, starts = _model(problem, bound, horizon, hint)
    solver = cp_model.CpSolver()
    solver.parameters.random_seed = 1
    solver.parameters.num_workers = 1  # several workers race, and a race ends differently every time
    solver.parameters.max_deterministic_time = effort
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        if prompt:  # better a pan that waits than a recipe that is dropped
            return solve(replace(problem, tasks=tuple(replace(task, soon=()) for task in problem.tasks)), effort)
        return None, status == cp_model.INFEASIBLE
    found = {name: solver.value(start) for name, start in starts.items()}
    if not prompt:  # pushed as early as the found order allows, so that equal days look the same
        order = sorted(problem.tasks, key=lambda task: (found[task.id], task.id))
        found = dict(place_in_order(problem, _topological(order)))
    slots = tuple(sorted((Slot(task, found[task.id]) for task in problem.tasks), key=by_start))
    how = "optimal" if status == cp_model.OPTIMAL else "feasible"
    return DayPlan(slots, how, round(solver.best_objective_bound)), False  # type: ignore[arg-type]  # how: a known word


def _model(
    problem: DayProblem, bound: int, horizon: int, hint: Mapping[str, int]
) -> tuple[cp_model.CpModel, dict[str, cp_model.IntVar]]:
    """The day as constraints, to end as early as may be between ``bound`` and ``horizon``; each task's start."""
    model = cp_model.CpModel()
    starts = {task.id: model.new_int_var(0, horizon - task.minutes, task.id) for task in problem.tasks}
    end = model.new_int_var(bound, horizon, "end")
    for task in problem.tasks:
        start = starts[task.id]
        model.add(end >= start + task.minutes)
        for before in task.after:
            model.add(start >= starts[before] + _minutes(problem, before))
            if before in task.soon:
                model.add(start <= starts[before] + _minutes(problem, before) + SOON_MINUTES)
        if task.id in hint:
            model.add_hint(start, hint[task.id])
    for first, second in _twins(problem):
        model.add(starts[first] <= starts[second])
    _share_hands_and_hobs(model, problem, starts)
    model.minimize(end)
    return model, starts


def _share_hands_and_hobs(model: cp_model.CpModel, problem: DayProblem, starts: Mapping[str, cp_model.IntVar]) -> None:
    """No more of anything in use at once than there is, and nobody at work who is away."""
    absent = [model.new_fixed_size_interval_var(begin, last - begin, f"away{begin}") for begin, last in problem.away]
    demands: dict[str, list[tuple[cp_model.IntervalVar, int]]] = {}
    for task in problem.tasks:
        start = starts[task.id]
        for use in task.uses:
            interval = model.new_fixed_size_interval_var(start, use.minutes, f"{task.id}:{use.resource}")
            demands.setdefault(use.resource, []).append((interval, use.units))
        if task.present:
            whole = model.new_fixed_size_interval_var(start, task.minutes, f"{task.id}:whole")
            for gap in absent:
                model.add_no_overlap([whole, gap])
    for name, used in demands.items():
        if kept_out(problem, name):  # said once more where it helps the search most
            used = [*used, *((gap, problem.capacity[name]) for gap in absent)]
        intervals, units = [interval for interval, _ in used], [unit for _, unit in used]
        if problem.capacity[name] == 1:
            model.add_no_overlap(intervals)
        else:
            model.add_cumulative(intervals, units, problem.capacity[name])


def _twins(problem: DayProblem) -> list[tuple[str, str]]:
    """Pairs of tasks that are alike and wait for the same: the one that others wait for may go first at no loss."""
    behind: dict[str, set[str]] = {task.id: set() for task in problem.tasks}
    for task in problem.tasks:
        for before in task.after:
            behind[before].add(task.id)
    pairs = []
    for at, one in enumerate(problem.tasks):
        for other in problem.tasks[at + 1 :]:
            alike = (one.minutes, one.uses, one.after, one.present) == (
                other.minutes, other.uses, other.after, other.present,
            )  # fmt: skip
            if alike and behind[other.id] <= behind[one.id]:
                pairs.append((one.id, other.id))
    return pairs


def _minutes(problem: DayProblem, name: str) -> int:
    return next(task.minutes for task in problem.tasks if task.id == name)


def _topological(order: list[DayTask]) -> list[DayTask]:
    """Predecessors first where two start in the same minute (a task of no length)."""
    placed: set[str] = set()
    known = {task.id for task in order}
    result: list[DayTask] = []
    waiting = list(order)
    while waiting:
        task = next(t for t in waiting if all(b in placed or b not in known for b in t.after))
        waiting.remove(task)
        placed.add(task.id)
        result.append(task)
    return result
