"""Five thousand recipes, each a food of the one before."""

from pathlib import Path

TEXT = """---
title: Pot {n}
ages: 7-9 months
texture: mashed
foods:
  - 200 g leeks, sliced
  - {{recipe: pot-{next}, amount: 100 g}}
steps:
  - Boil the leeks for 15 minutes.
  - Mash the leeks with pot {next}.
---
"""


def make(place: Path) -> None:
    (place / "recipes").mkdir()
    for n in range(5000):
        (place / "recipes" / f"pot-{n}.md").write_text(TEXT.format(n=n, next=n + 1))
