"""Hundreds of faulty lines in two recipes, more than are shown at once."""

from pathlib import Path

HEAD = "---\ntitle: Bowl {n}\nages: 7-9 months\ntexture: mashed\nfoods:\n"
TAIL = "steps:\n  - Mash all of it.\n---\n"


def make(place: Path) -> None:
    (place / "recipes").mkdir()
    for n in range(2):
        lines = "".join(f"  - 1,{m:03} g leek\n" for m in range(250))
        (place / "recipes" / f"bowl-{n}.md").write_text(HEAD.format(n=n) + lines + TAIL)
