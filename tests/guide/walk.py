"""A page of the guide as what a reader does: files she writes, commands she runs, words she should then see.

A fenced block right after a paragraph that ends in a file's name and a colon is that file. A fenced ``text`` block
right after a command names words of its output, line by line. Commands are indented lines that start with the tool.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

_PARTS = re.compile(
    r"(?P<file>`(?P<path>[\w./-]+)`:\n\n```\w*\n(?P<text>.*?)^```$)"
    r"|(?P<shows>^```text\n(?P<words>.*?)^```$)"
    r"|(?P<block>^```.*?^```$)"
    r"|^    (?P<run>(?:spoonproof|cd) [^\n]+)$",
    re.MULTILINE | re.DOTALL,
)


@dataclass(frozen=True)
class Doing:
    """One thing done: a file written (``name`` its path), a command run, or words seen."""

    kind: Literal["file", "run", "shows"]
    name: str
    text: str = ""


def doings(page: str) -> list[Doing]:
    """Everything done on a page, in its order."""
    found = []
    for part in _PARTS.finditer(page):
        if part["file"]:
            found.append(Doing("file", part["path"], part["text"]))
        elif part["shows"]:
            found.append(Doing("shows", "", part["words"]))
        elif part["run"]:
            found.append(Doing("run", part["run"].rstrip()))
    return found
