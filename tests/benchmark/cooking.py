"""How long the kitchen takes: one recipe's plan, and a day of six recipes to proven optimality.

python -m tests.benchmark.cooking
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

from spoonproof.cooking.day import schedule_day
from spoonproof.cooking.day_work import day_problem
from spoonproof.model.channel import Away, Day, Kitchen
from tests.cooking.test_day import plans
from tests.cooking.test_plans import planned


def median(work: Callable[[], object], times: int) -> float:
    """Median milliseconds of ``times`` runs."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append((time.perf_counter() - start) * 1000)
    return statistics.median(taken)


def main() -> None:
    """Print the medians."""
    problem = day_problem(plans(), Kitchen(steamer_tiers=2), Day(540, 900, (Away(720, 780, "nap"),)))
    day = schedule_day(problem)
    print(f"one recipe's plan: {median(planned, 100):.2f} ms")
    solved = median(lambda: schedule_day(problem), 5)
    print(f"a day of six recipes, {len(problem.tasks)} tasks: {solved:.0f} ms, {day.how}")
    print(f"its list schedule: {median(lambda: schedule_day(problem, solver=False), 5):.0f} ms")


if __name__ == "__main__":
    main()
