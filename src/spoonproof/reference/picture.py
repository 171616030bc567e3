"""The import picture: which room knows which, read from the code's own import statements."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from textwrap import wrap

ROOT = Path(__file__).parents[1]
OPENING = "<!-- picture of imports: made by python -m spoonproof.reference -->"
CLOSING = "<!-- end of the picture -->"


@cache  # the code does not change while it runs
def rooms() -> Mapping[str, frozenset[str]]:
    """Each room (a package or module right under ``spoonproof``) with the rooms it imports."""
    found: dict[str, frozenset[str]] = {}
    for path in sorted(ROOT.iterdir()):
        files = sorted(path.rglob("*.py")) if path.is_dir() else [path] if path.suffix == ".py" else []
        name = path.stem
        if not files or name.startswith("__"):
            continue
        trees = (ast.parse(file.read_text(encoding="utf-8")) for file in files)
        found[name] = frozenset(room for tree in trees for room in _imported(tree)) - {name}
    return {name: known & found.keys() for name, known in found.items()}


def _imported(tree: ast.Module) -> Iterator[str]:
    """Rooms imported anywhere in a module, for types alone included."""
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            parts = node.module.split(".")
            if parts[0] == "spoonproof":
                yield from [parts[1]] if len(parts) > 1 else (alias.name for alias in node.names)
        elif isinstance(node, ast.Import):
            yield from (a.name.split(".")[1] for a in node.names if a.name.startswith("spoonproof."))


def storeys(known: Mapping[str, frozenset[str]]) -> list[list[str]]:
    """Rooms from the top down: each stands above all that it imports; rooms that import each other share a storey."""
    reach = {name: _reach(name, known) for name in known}
    height: dict[str, int] = {}

    def rise(name: str) -> int:
        if name not in height:
            below = [other for other in reach[name] if name not in reach[other]]
            height[name] = 1 + max(map(rise, below), default=0)
        return height[name]

    for name in known:
        rise(name)
    return [sorted(n for n in known if height[n] == storey) for storey in range(max(height.values()), 0, -1)]


def _reach(start: str, known: Mapping[str, frozenset[str]]) -> frozenset[str]:
    seen: set[str] = set()
    waiting = [start]
    while waiting:
        for other in known[waiting.pop()] - seen:
            seen.add(other)
            waiting.append(other)
    return frozenset(seen)


def picture() -> str:
    """The storeys as text: a room and the rooms it imports (the model, known to all, is left out)."""
    known = rooms()
    lines = ["```text"]
    for storey in storeys(known):
        for name in storey:
            named = ", ".join(sorted(known[name] - {"model"}))
            lines += wrap(f"{name:<12} knows {named}", 116, subsequent_indent=" " * 19) if named else [name]
        lines.append("")
    return "\n".join([*lines[:-1], "```"])


def with_picture(text: str) -> str:
    """``text`` with the picture between its marks drawn anew. Raises ValueError when a mark is missing."""
    before, _, rest = text.partition(OPENING)
    _, closing, after = rest.partition(CLOSING)
    if not closing:
        raise ValueError(f"the marks {OPENING} and {CLOSING} should both be there")
    return f"{before}{OPENING}\n{picture()}\n{CLOSING}{after}"
