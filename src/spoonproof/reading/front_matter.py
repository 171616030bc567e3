"""The head of a recipe between two lines of ``---``, and the story after it."""

from __future__ import annotations

import re

from spoonproof.model.finding import Edit, Finding, Remedy
from spoonproof.model.text import Document, Span
from spoonproof.reading import limits
from spoonproof.reading.faults import fault

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
            return None, whole, [fault("front-matter-missing", document, at, message, remedy=remedy)]
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
