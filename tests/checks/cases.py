"""Cases of rules: recipes with the findings expected beside the faulty lines.

``tests/checks/rules/<rule>.md`` holds sections ``## what the case is about``, each with a fenced block ``recipe``
(a piece of a recipe head or a whole file), for channel rules several, and at times a block ``channel``.
Below a faulty line stands ``#> level: words of the message`` (words may be left out); such lines are
taken out before the text is read. A case without them expects nothing of this rule.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

_BLOCK = re.compile(r"^```(recipe|channel)[^\n]*\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_EXPECTED = re.compile(r"^\s*#>\s*(error|warning|note)(?::\s*(.*?))?\s*$")


@dataclass(frozen=True)
class Expected:
    """A finding expected on ``line`` (from 1, of the text as given) with ``words`` in its message."""

    line: int
    level: str
    words: str


@dataclass(frozen=True)
class Case:
    """One case: its name, recipe texts with what each expects, and the channel's text."""

    name: str
    recipes: tuple[tuple[str, tuple[Expected, ...]], ...]
    channel: str


def cases(path: Path) -> list[Case]:
    """The cases of a Markdown file."""
    found = []
    for section in re.split(r"^## ", path.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]:
        name = section.partition("\n")[0].strip()
        blocks = _BLOCK.findall(section)
        recipes = tuple(_without_expectations(text) for kind, text in blocks if kind == "recipe")
        found.append(Case(name, recipes, "".join(text for kind, text in blocks if kind == "channel")))
    return found


def _without_expectations(text: str) -> tuple[str, tuple[Expected, ...]]:
    kept: list[str] = []
    expected = []
    for line in text.split("\n"):
        match = _EXPECTED.match(line)
        if match:
            expected.append(Expected(len(kept), match[1], match[2] or ""))
        else:
            kept.append(line)
    return "\n".join(kept), tuple(expected)


def docstring_block(doc: str, heading: str) -> str | None:
    """The indented block under ``Fails::`` or ``Passes::`` of a rule's docstring."""
    match = re.search(rf"^{heading}::\n\n((?:[ \t]+[^\n]*\n|\n)+)", doc.rstrip() + "\n", re.MULTILINE)
    if match is None:
        return None
    lines = match[1].rstrip("\n").split("\n")
    margin = min(len(line) - len(line.lstrip()) for line in lines if line.strip())
    return "\n".join(line[margin:] for line in lines) + "\n"
