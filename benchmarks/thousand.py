"""A thousand recipes and ten thousand: check and publish as their number grows, and the memory they take.

    python benchmarks/thousand.py 100 1000 10000 [--rounds 3]

Prints medians of interleaved runs, and each figure a recipe, so that growth beyond the linear shows.
"""

from __future__ import annotations

import argparse
import shutil
import tempfile
from functools import partial
from pathlib import Path

from bowls import make
from timing import BARE, OURS, Job, interleaved, table


def main() -> None:
    """Make, measure, print a table for each count."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("counts", nargs="*", type=int, default=[100, 1000])
    parser.add_argument("--rounds", type=int, default=3)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="thousand-") as name:
        for count in options.counts:
            folder = make(Path(name) / str(count), count)
            afresh = partial(forget, folder)
            jobs = {
                BARE: Job([OURS[0], "-c", "pass"], folder),
                "check, all new": Job([*OURS, "check"], folder, afresh),
                "check, nothing new": Job([*OURS, "check"], folder),
                "publish, all new": Job(
                    [*OURS, "publish", "--with-errors", "--out", "pages"], folder, partial(forget, folder, "pages")
                ),
                "publish, nothing new": Job([*OURS, "publish", "--with-errors", "--out", "pages"], folder),
            }
            runs = interleaved(jobs, options.rounds)
            print(f"{count} recipes, medians of {options.rounds} interleaved runs")
            table(runs, BARE)
            for job in list(jobs)[1:]:
                print(f"    a recipe: {job:24s}{1000 * runs[job].cpu / count:8.2f} ms of processor")


def forget(folder: Path, *more: str) -> None:
    """Take away what was kept."""
    for name in (".spoonproof", *more):
        shutil.rmtree(folder / name, ignore_errors=True)


if __name__ == "__main__":
    main()
