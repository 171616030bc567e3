"""A thousand recipes: check and publish, cold start and memory, beside a general site builder, in one run.

    python benchmarks/thousand.py 100 1000 [--rounds 3] [--builder pelican=/path/to/pelican] [--keep DIR]

Recipes are varied (foods, amounts, ages, statements, film), each with a story of its own, and made from a fixed seed.
Each figure is the median of interleaved runs: processor seconds of the process and its children, and peak memory.
The builders get the same stories and titles as plain Markdown pages, nothing computed: a floor, not a rival.
"""

from __future__ import annotations

import argparse
import os
import random
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

ROOTS = (
    ("potatoes, peeled, 1 cm dice", "Boil the {} for 20-25 minutes, until a cube squashes between finger and thumb."),
    ("parsnips, peeled, 1 cm dice", "Steam the {} for 18-22 minutes, until a cube squashes between finger and thumb."),
    (
        "sweet potatoes, peeled, 1 cm dice",
        "Steam the {} for 18-20 minutes, until it squashes between finger and thumb.",
    ),
    (
        "butternut squash, peeled, 1 cm dice",
        "Steam the {} for 15-20 minutes, until it squashes between finger and thumb.",
    ),
    ("cauliflower, small florets", "Steam the {} for 15-18 minutes, until a floret squashes between finger and thumb."),
    ("courgettes, 1 cm dice", "Steam the {} for 10-12 minutes, until a cube squashes between finger and thumb."),
)
MORE = (
    "frozen peas",
    "red lentils",
    "cooked chickpeas",
    "millet",
    "plain yoghurt",
    "leeks, sliced",
    "broccoli florets",
)
SAID = (
    "{} are a source of vitamin C.", "{} keep well for a day.", "A bowl for a cold day.", "{} boost the immune system.",
    "Give small spoons and wait.", "There is iron in it.", "{} are high in fibre.", "My sister makes it with leeks.",
)  # fmt: skip
PLACES = ("market", "allotment", "back garden", "corner shop", "harbour", "kitchen drawer", "village fair", "old barn")


def recipe(number: int, dice: random.Random) -> tuple[str, str]:
    """The text of a recipe, and its story with its title as a page of any builder."""
    food, step = dice.choice(ROOTS)
    name = food.partition(",")[0]
    other = dice.choice(MORE)
    low = dice.choice((7, 8, 9, 10))
    title = f"{name.capitalize()} with {other.partition(',')[0]}, bowl {number}"
    said = " ".join(dice.choice(SAID).format(name.capitalize()) for _ in range(4))
    story = "\n\n".join(
        f"We found the {name} at the {dice.choice(PLACES)} on day {dice.randrange(1, 400)}, and carried them home past "
        f"the {dice.choice(PLACES)}. {dice.choice(SAID).format(name.capitalize())} Nobody at our table leaves any."
        for _ in range(4)
    )
    head = f"""title: {title}
summary: {name.capitalize()} and {other.partition(",")[0]}, crushed with a fork.
ages: {low}-{low + 3} months
texture: mashed
next: {{texture: lumpy, from: {low + 2} months, how: crush it less}}
makes: 6 x 60 g
foods:
  - {dice.randrange(20, 60) * 10} g {food}
  - {dice.randrange(5, 15) * 10} g {other}
  - {dice.choice((1, 2))} tsp rapeseed oil
steps:
  - {step.format(name)}
  - Add the {other.partition(",")[0]} and simmer for {dice.randrange(18, 26)} minutes more.
  - Mash the {name} with the oil.
keeps: fridge 48 h, freezer 1 month
film:
  segments:
    - {{name: Hook, say: "{said}", shot: the bowl}}
"""
    return f"---\n{head}---\n{story}\n", f"---\ntitle: {title}\ndate: 2026-01-01\n---\n{story}\n"


def make(folder: Path, count: int) -> Path:
    """A channel of ``count`` recipes, with the plain pages beside it in ``content``."""
    dice = random.Random(count)
    (folder / "recipes").mkdir(parents=True)
    (folder / "content").mkdir()
    (folder / "channel.yaml").write_text("title: A thousand bowls\nmeasures: UK\nmarkets: [GB]\n", "utf-8")
    for number in range(count):
        own, plain = recipe(number, dice)
        (folder / "recipes" / f"bowl-{number}.md").write_text(own, "utf-8")
        (folder / "content" / f"bowl-{number}.md").write_text(plain, "utf-8")
    return folder


def measured(command: list[str], folder: Path) -> tuple[float, float]:
    """Processor seconds and peak MB of one run."""
    # The peak of all children so far can't be taken apart, so each run gets a process of its own to count in.
    counter = (
        "import resource,subprocess,sys;"
        "d=subprocess.run(sys.argv[1:],stdout=subprocess.DEVNULL,stderr=subprocess.PIPE,text=True);"
        "u=resource.getrusage(resource.RUSAGE_CHILDREN);"
        "sys.stderr.write(d.stderr[-300:] if d.returncode not in (0,1) else '');"
        "print(d.returncode,u.ru_utime+u.ru_stime,u.ru_maxrss)"
    )
    done = subprocess.run(
        [sys.executable, "-c", counter, *command], cwd=folder, capture_output=True, text=True, check=True
    )
    code, seconds, peak = done.stdout.split()
    if code not in ("0", "1"):
        raise SystemExit(f"{command} ended with {code}: {done.stderr}")
    return float(seconds), float(peak) / 1024


def main() -> None:
    """Make, measure, print a table."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("counts", nargs="*", type=int, default=[100, 1000])
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--builder", action="append", default=[], metavar="NAME=COMMAND")
    options = parser.parse_args()
    ours = [sys.executable, "-m", "spoonproof"]
    os.environ["SOURCE_DATE_EPOCH"] = "1780000000"
    with tempfile.TemporaryDirectory(prefix="thousand-") as name:
        for count in options.counts:
            folder = make(Path(name) / str(count), count)
            jobs = {
                "python -c pass": [sys.executable, "-c", "pass"],
                "spoonproof --version": [*ours, "--version"],
                "spoonproof check, one": [*ours, "check", "recipes/bowl-0.md"],
                "spoonproof check": [*ours, "check"],
                "spoonproof publish": [*ours, "publish", "--out", "pages"],
            }
            for builder in options.builder:
                tool, _, command = builder.partition("=")
                jobs[tool] = command.split()
            runs: dict[str, list[tuple[float, float]]] = {job: [] for job in jobs}
            for _ in range(options.rounds):
                for job, command in jobs.items():
                    runs[job].append(measured(command, folder))
            base = statistics.median(seconds for seconds, _ in runs["python -c pass"])
            print(f"{count} recipes, medians of {options.rounds} interleaved runs")
            for job, found in runs.items():
                seconds = statistics.median(s for s, _ in found)
                peak = statistics.median(p for _, p in found)
                print(f"  {job:24s}{seconds:9.3f} s {seconds / base:8.1f} x bare {peak:8.0f} MB", flush=True)


if __name__ == "__main__":
    main()
