"""Commands measured in turn: each round runs each once, so that a busy moment of the machine falls on all of them."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

OURS = (sys.executable, "-m", "spoonproof")
BARE = "python -c pass"

_COUNTER = """
import resource, subprocess, sys, time
start = time.perf_counter()
done = subprocess.run(sys.argv[1:], stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
wall = time.perf_counter() - start
used = resource.getrusage(resource.RUSAGE_CHILDREN)
sys.stderr.buffer.write(done.stderr[-300:])
print(done.returncode, wall, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)
"""


@dataclass(frozen=True)
class Job:
    """A command, where it runs, what is done before each run (not measured), and the exit codes that are an answer."""

    command: Sequence[str]
    folder: Path
    before: Callable[[], object] = lambda: None
    more: Mapping[str, str] = field(default_factory=dict)
    answers: tuple[int, ...] = (0, 1)


@dataclass(frozen=True)
class Run:
    """Seconds on the clock, seconds of all processors, and peak MB of the largest process."""

    wall: float
    cpu: float
    peak: float


def interleaved(jobs: Mapping[str, Job], rounds: int) -> dict[str, Run]:
    """The median of each job's runs. A first round that isn't counted leaves compiled modules and tables behind."""
    runs: dict[str, list[Run]] = {name: [] for name in jobs}
    for number in range(rounds + 1):
        for name, job in jobs.items():
            job.before()
            found = once(job)
            if number:
                runs[name].append(found)
    return {
        name: Run(*(statistics.median(getattr(run, part) for run in found) for part in ("wall", "cpu", "peak")))
        for name, found in runs.items()
    }


def once(job: Job) -> Run:
    """One run of a job. Raises SystemExit with what it said where it gave no answer."""
    # The peak of all children so far can't be taken apart, so each run gets a process of its own to count in.
    env = {**os.environ, "SOURCE_DATE_EPOCH": "1780000000", **job.more}
    env.pop("PYTHONDONTWRITEBYTECODE", None)  # nobody's installation compiles its modules at every start
    counting = [sys.executable, "-c", _COUNTER, *job.command]
    done = subprocess.run(counting, cwd=job.folder, env=env, capture_output=True, text=True, check=True)
    code, wall, cpu, peak = done.stdout.split()
    if int(code) not in job.answers:
        raise SystemExit(f"{' '.join(job.command)} ended with {code}: {done.stderr}")
    return Run(float(wall), float(cpu), float(peak))


def table(runs: Mapping[str, Run], beside: str, words: int = 0) -> None:
    """Print the medians, each as a multiple of ``beside``; with ``words`` also how many a second."""
    base = runs[beside]
    for name, run in runs.items():
        speed = f"{words / run.wall:12,.0f} words/s" if words else ""
        print(
            f"  {name:34s}{run.wall:9.3f} s {run.wall / base.wall:7.2f} x   cpu {run.cpu:9.3f} s "
            f"{run.cpu / base.cpu:7.2f} x {run.peak:7.0f} MB{speed}",
            flush=True,
        )


def tools(folder: Path | None, names: Sequence[str]) -> dict[str, str]:
    """The tools of these names that are there, in ``folder`` or on the path; those that aren't are said."""
    import shutil

    found = {}
    for name in names:
        path = (shutil.which(name, path=str(folder.resolve())) if folder else None) or shutil.which(name)
        if path:
            found[name] = path
        else:
            print(f"  {name}: not installed, not compared")
    return found
