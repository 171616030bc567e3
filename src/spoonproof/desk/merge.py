"""Two edits of one text, laid together line by line."""

from __future__ import annotations

import re
from difflib import SequenceMatcher
from typing import Literal

from spoonproof.model.record import dataclass

_LINE = re.compile(r"[^\n]*\n|[^\n]+")
Kind = Literal["same", "gone", "new"]


@dataclass(frozen=True, slots=True)
class Merged:
    """``text`` holds both edits; where both changed the same lines (``clashes``) it holds mine."""

    text: str
    clashes: int


def merge(base: str, mine: str, theirs: str) -> Merged:
    """``mine`` and ``theirs``, both made from ``base``. Lines end at a line feed."""
    old, left, right = (_LINE.findall(text) for text in (base, mine, theirs))
    mine_at, theirs_at = _blocks(old, left), _blocks(old, right)
    out: list[str] = []
    clashes = 0
    at = i = j = 0
    while True:
        # the next line of the base that both kept
        both = next((n for n in range(at, len(old)) if n in mine_at and n in theirs_at), len(old))
        end_i = mine_at[both] if both < len(old) else len(left)
        end_j = theirs_at[both] if both < len(old) else len(right)
        before, a, b = old[at:both], left[i:end_i], right[j:end_j]
        if a == b or b == before:
            out += a
        elif a == before:
            out += b
        else:
            clashes += 1
            out += a
        if both == len(old):
            return Merged("".join(out), clashes)
        out.append(old[both])
        at, i, j = both + 1, end_i + 1, end_j + 1


def _blocks(old: list[str], new: list[str]) -> dict[int, int]:
    """Lines of ``old`` that stand in ``new``, each with its place there."""
    kept: dict[int, int] = {}
    for block in SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks():
        kept.update((block.a + n, block.b + n) for n in range(block.size))
    return kept


def changes(before: str, after: str, around: int = 1) -> list[tuple[Kind, str]]:
    """The lines that differ, with ``around`` lines about them, for a person to read."""
    old, new = before.split("\n"), after.split("\n")
    shown: list[tuple[Kind, str]] = []
    for group in SequenceMatcher(None, old, new, autojunk=False).get_grouped_opcodes(around):
        for tag, a, b, c, d in group:
            if tag == "equal":
                shown += [("same", line) for line in old[a:b]]
            else:
                shown += [("gone", line) for line in old[a:b]]
                shown += [("new", line) for line in new[c:d]]
    return shown
