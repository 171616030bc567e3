"""The head of a recipe between two lines of ``---``, the story after it, and what can be read of a head that breaks.

Nothing is made of a head whose structure breaks at one place: all but the key, or the item, in which it breaks is read
on, so that its other faults are not hidden behind the first one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.model.finding import Edit, Finding, Remedy
from spoonproof.model.record import NamedTuple, replace
from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Mapped
from spoonproof.reading import limits
from spoonproof.reading.faults import fault
from spoonproof.reading.yaml_tree import read_yaml

_FENCE = re.compile(r"---[ \t]*")


def split_head(document: Document) -> tuple[Span | None, Span, list[Finding]]:
    """The spans of the head (without its fences; None when there is none) and of the story.

    The head opens with ``---`` on the first line and closes with the first line that is ``---`` again, from the
    first column; blanks after it do not matter. A ``---`` further down is a line in the story.
    """
    text = document.text
    whole = Span(0, len(text))
    starts = document.line_starts
    first = next((n for n, start in enumerate(starts) if document.line_text(n + 1).strip()), 0)
    opening = document.line_text(first + 1)
    at = Span(starts[first], starts[first] + max(1, len(opening)))
    findings: list[Finding] = []
    if not _FENCE.fullmatch(opening):
        if _FENCE.fullmatch(opening.strip()) or re.fullmatch(r"[-–—]{2,}", opening.strip()):
            message = "The first line should be exactly ---, three hyphens from the first column."
            remedy = Remedy("Write ---.", True, (Edit(Span(at.start, at.start + len(opening)), "---"),))
        else:
            message = "A recipe starts with a line of ---, then its keys (title, ages, foods, steps), then --- again."
            remedy = Remedy("Write --- on a line of its own above this one, and once more below the last step.")
        return None, whole, [fault("front-matter-missing", document, at, message, remedy=remedy)]
    if first > 0:
        message = "Blank lines stand before the opening ---. It should be the first line of the file."
        remedy = Remedy("Take the blank lines out.", True, (Edit(Span(0, starts[first]), ""),))
        findings.append(fault("front-matter-missing", document, at, message, level="warning", remedy=remedy))
    begin = starts[first + 1] if first + 1 < len(starts) else len(text)
    for number in range(first + 1, len(starts)):
        start = starts[number]
        if start - begin > limits.HEAD_CHARACTERS:
            message = f"The head is longer than {limits.HEAD_CHARACTERS >> 10} KiB: is its closing --- missing?"
            return None, whole, [*findings, fault("front-matter-too-long", document, at, message)]
        if text.startswith("---", start) and _FENCE.fullmatch(document.line_text(number + 1)):
            story = starts[number + 1] if number + 1 < len(starts) else len(text)
            return Span(begin, start), Span(story, len(text)), findings
    message = "The head opens here and never closes."
    remedy = Remedy("Write --- on a line of its own after the last key; the story, if any, follows it.")
    return None, whole, [*findings, fault("front-matter-not-closed", document, at, message, remedy=remedy)]


LOCAL = frozenset({"yaml-syntax", "tab-indentation", "alias-not-allowed"})
"""Faults that stop the reading of a structure, and lie in one place of it."""

OF_ABSENCE = frozenset({"missing-key", "food-not-listed", "food-never-used", "which-food"})
"""Faults that may come of nothing but what was passed over."""

JUDGED_BY = frozenset({"title", "ages", "texture", "foods", "steps", "makes"})
"""Keys without which a dish is another dish, so that nothing of it is judged."""

_MOST = 8  # places at which a head may break before it is given up
_TOP = re.compile(r"[^\s#\-]")
_ITEM = re.compile(r"[ ]*-(?=[ ]|$)")
_NAME = re.compile(r"[\w-]{1,40}")
_IN_ITEMS = ("foods", "steps")


class Rest(NamedTuple):
    """The tree of a head without its broken parts, the faults of its structure, and the keys passed over, by name."""

    root: Mapped
    faults: list[Finding]
    passed_over: tuple[str, ...]
    shown: tuple[str, ...]  # the parts passed over, in words


class _Part(NamedTuple):
    """Lines to pass over, the key they stand under, and what they are in words."""

    name: str
    span: Span
    shown: str


def read_rest(document: Document, head: Span, stopped: Sequence[Finding]) -> Rest | None:
    """The rest of ``head``, which ``stopped`` at the last of these faults; None where it can't be told from it."""
    faults = list(stopped)
    text = document.text
    parts: list[_Part] = []
    for _ in range(_MOST):
        part = _broken_part(document, text, head, faults[-1]) if faults and faults[-1].rule in LOCAL else None
        if part is None:
            return None
        text = text[: part.span.start] + re.sub(r"[^\r\n]", " ", document.at(part.span)) + text[part.span.end :]
        parts.append(part)
        root, more = read_yaml(Document(document.path, text), head)
        known = {(one.rule, one.span) for one in faults}
        new = [replace(one, document=document) for one in more if (one.rule, one.span) not in known]
        if isinstance(root, Mapped):
            names = tuple(dict.fromkeys(one.name for one in parts))
            return Rest(root, faults + new, names, tuple(dict.fromkeys(one.shown for one in parts)))
        if not new:
            return None
        faults += new
    return None


def _broken_part(document: Document, text: str, head: Span, fault: Finding) -> _Part | None:
    """The item of a list of foods or steps, else the whole key, in which a fault began, of what is not blank yet."""
    at = min([fault.span.start, *(other.span.start for other in fault.related)])
    starts = [start for start in document.line_starts if head.start <= start < head.end]
    tops = [start for start in starts if _TOP.match(text, start)]
    here = [start for start in tops if start <= at]
    if not here:
        return None
    begin = here[-1]
    end = next((start for start in tops if start > begin), head.end)
    named = _NAME.match(text, begin)
    name = named[0] if named is not None else ""
    items = [start for start in starts if begin < start < end and _ITEM.match(text, start)]
    mine = [start for start in items if start <= at]
    if name in _IN_ITEMS and mine and text.startswith(":", begin + len(name)):
        until = next((start for start in items if start > mine[-1]), end)
        return _Part(name, Span(mine[-1], until), f"one item of “{name}”")
    return _Part(name, Span(begin, end), f"“{name}”" if name else "this part")


def items_alone(rest: Rest) -> bool:
    """Whether all that a dish is judged by was read but for single foods or steps: what the other foods are stays."""
    items = {f"one item of “{name}”" for name in _IN_ITEMS}
    whole = {name for name in rest.passed_over if name in JUDGED_BY and f"“{name}”" in rest.shown}
    return bool(items & {*rest.shown}) and not whole and not JUDGED_BY & {*rest.passed_over} - {*_IN_ITEMS}


def told(rest: Rest | None) -> str:
    """What was looked at, to go with the fault that stopped the reading."""
    if rest is None:
        return "Nothing else of this head was looked at."
    names = " and ".join(rest.shown)
    if items_alone(rest):
        return f"All but {names} was read on; of the dish only what stands under foods is judged till then."
    if JUDGED_BY & {*rest.passed_over}:
        return f"All but {names} was read on, but the dish can't be judged before this is put right."
    return f"All but {names} was read on."
