"""From start to findings: one recipe checked by a fresh process, beside a bare interpreter.

    python benchmarks/cold.py [--rounds 9]

"kept": the recipe was read before (its findings are judged afresh); "new": nothing was kept.
"""

from __future__ import annotations

import argparse
import shutil
import tempfile
from pathlib import Path

from timing import BARE, OURS, Job, interleaved, table

ROOT = Path(__file__).resolve().parents[1]
RECIPE = "parsnip-and-pear-spoon-mash.md"


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--rounds", type=int, default=9)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="cold-") as name:
        folder = Path(name)
        (folder / "recipes").mkdir()
        shutil.copy(ROOT / "channel.yaml", folder)
        shutil.copy(ROOT / "recipes" / RECIPE, folder / "recipes")
        check = [*OURS, "check", f"recipes/{RECIPE}"]
        jobs = {
            BARE: Job([OURS[0], "-c", "pass"], folder),
            "--version": Job([*OURS, "--version"], folder),
            "check one recipe, kept": Job(check, folder),
            "check one recipe, new": Job(check, folder, more={"SPOONPROOF_CACHE": "off"}),
        }
        print(f"Medians of {options.rounds} interleaved runs")
        table(interleaved(jobs, options.rounds), BARE)


if __name__ == "__main__":
    main()
