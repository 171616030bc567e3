"""English inflection of kitchen verbs, made once when the verb table is built."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from spoonproof.model.verb_forms import participle, past, third_person

Kind = Literal["base", "s", "ing", "past", "phrase"]

_IRREGULAR = ("cut", "put", "set", "spread", "let", "sit", "stand", "freeze", "grind", "tear", "beat", "break", "take")

_PARTICLES = frozenset(
    (
        *(
            "in",
            "out",
            "up",
            "on",
            "off",
            "down",
            "over",
            "into",
            "through",
            "away",
            "together",
            "well",
            "aside",
            "the",
        ),
        *("roughly", "apart", "with", "slightly", "and", "back", "under", "between", "finely", "to"),
    )
)


def inflections(base: str) -> Iterator[tuple[str, Kind]]:
    """All forms of ``base``; of a phrase ("stir in") its first word is inflected, of a compound verb that
    ends on the verb ("slow cook") its last. Irregular participles are not made: the table lists them.
    """
    head, _, tail = base.partition(" ")
    if tail and tail.split()[0] not in _PARTICLES:
        head, tail = base.rpartition(" ")[2], ""
        prefix, suffix = base[: len(base) - len(head)], ""
    else:
        prefix, suffix = "", f" {tail}" if tail else ""
    yield base, "base"
    yield f"{prefix}{third_person(head)}{suffix}", "s"
    yield f"{prefix}{participle(head)}{suffix}", "ing"
    if head not in _IRREGULAR:
        yield f"{prefix}{past(head)}{suffix}", "past"
