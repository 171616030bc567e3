"""Judged claims of a dish as the faults that rules yield."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from spoonproof.checks.rule import Fault
from spoonproof.claims.judge import level_of
from spoonproof.dish import Dish
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import Area, Edit, Remedy

_SERIOUS = frozenset({"safety-age", "allergen"})
_HINTS = ("say ", "name ", "give ", "bring ", "one part", "from six", "from twelve")
_DO = {
    "cut-untrue": "Take it out.",
    "cut-not-allowed": "Take it out, or say it in speech that nobody pays for.",
    "soften": "Say less.",
    "source-it": "Bring a source that a reader can look up, or take it out.",
    "add": "Keep it, and add what is missing.",
}


def of_claims(dish: Dish, wanted: Callable[[JudgedClaim], bool]) -> Iterator[Fault]:
    """A fault for each claim that is ``wanted`` and not to be kept; the level is the contract's."""
    for judged in dish.claims:
        level = level_of(judged)
        if level is None or not wanted(judged):
            continue
        area: Area = "baby" if judged.claim.kind in _SERIOUS and judged.harm == 3 else "words"
        yield Fault(
            judged.claim.span,
            message(judged),
            level,
            area,
            remedy=remedy(judged),
            sources=judged.sources,
            claim=judged,
        )


def message(judged: JudgedClaim) -> str:
    """What is wrong with it, in one or two sentences."""
    return f"“{_short(judged.claim.quote)}”: {judged.why}"


def remedy(judged: JudgedClaim) -> Remedy:
    """What to do; an edit where the wording is a whole sentence that can stand in its place."""
    text = _DO[judged.advice]
    wording = judged.wording
    if not wording:
        return Remedy(text)
    if wording.startswith(_HINTS):
        return Remedy(f"{text} {wording[:1].upper()}{wording[1:]}.")
    edits: tuple[Edit, ...] = ()
    if wording[:1].isupper():
        edits = (Edit(judged.claim.span, wording),)
    return Remedy(f"{text} This stands: “{wording}”.", False, edits)


def _short(quote: str) -> str:
    words = " ".join(quote.split())
    return words if len(words) <= 90 else words[:87].rstrip() + "..."
