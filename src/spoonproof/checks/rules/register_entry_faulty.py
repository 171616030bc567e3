"""The claims register contradicts itself, cites nothing, or is due.

An entry without a source or its place, two equally specific entries that disagree, a wording that the table of
authorised wordings does not have, a date gone by: what rests on it cannot be trusted.
"""

from __future__ import annotations

from collections.abc import Iterator

from spoonproof.checks.rule import Fault
from spoonproof.knowledge import Knowledge

SCOPE = "register"
AREA = "words"
LEVEL = "error"
SOURCES = ("own",)


def check(knowledge: Knowledge) -> Iterator[Fault]:
    """A fault for each thing the register finds wrong with itself."""
    for found in knowledge.register_faults:
        yield Fault(
            found.span, found.message, found.level, document=found.document, related=found.related, remedy=found.remedy
        )
