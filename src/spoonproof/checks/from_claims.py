"""Judged claims of a dish as the faults that rules yield."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence

from spoonproof.checks.rule import Fault
from spoonproof.claims.judge import level_of
from spoonproof.claims.wording import is_hint
from spoonproof.dish import Dish
from spoonproof.model.claim import Claim, JudgedClaim
from spoonproof.model.finding import Area, Edit, Remedy

_SERIOUS = frozenset({"safety-age", "allergen"})
_BEFORE = re.compile(r"[\w,;–—-]\s{0,4}$")
_BEHIND = re.compile(r"\s{0,4}[\w,;:–—-]")
_DO = {
    "cut-untrue": "Take it out.",
    "cut-not-allowed": "Take it out, or say it in speech that nobody pays for.",
    "soften": "Say less.",
    "source-it": "Bring a source that a reader can look up, or take it out.",
    "add": "Keep it, and add what is missing.",
}


def of_claims(dish: Dish, wanted: Callable[[JudgedClaim], bool]) -> Iterator[Fault]:
    """A fault for each claim that is ``wanted`` and not to be kept; the level is the contract's."""
    for judged in once(dish.claims):
        level = level_of(judged)
        if level is None or not wanted(judged):
            continue
        yield Fault(
            judged.claim.span,
            message(judged),
            level,
            area_of(judged),
            remedy=remedy(judged),
            sources=judged.sources,
            claim=judged,
        )


def area_of(judged: JudgedClaim) -> Area:
    """Whether it is about the baby's safety, or about words alone."""
    return "baby" if judged.claim.kind in _SERIOUS and judged.harm == 3 else "words"


def once(claims: Sequence[JudgedClaim]) -> list[JudgedClaim]:
    """Each statement once: of claims that overlap and rest on the same entry the longest, and none that nothing is
    known of beside one that something is said of. One that is kept says nothing of what is claimed beside it: "cod is
    packed with iodine and keeps their eyes healthy"."""
    by_passage: dict[int, list[JudgedClaim]] = {}  # claims of two passages never overlap
    for judged in sorted(claims, key=lambda j: j.claim.start - j.claim.end):
        kept = by_passage.setdefault(id(judged.claim.passage), [])
        beside = [other for other in kept if judged.claim.overlaps(other.claim)]
        same = any(_alike(judged, other) for other in beside)
        known = judged.truth == "unlisted" and any(_told(other) for other in beside)
        if same or known:
            continue
        if _told(judged):
            kept[:] = [one for one in kept if one.truth != "unlisted" or not judged.claim.overlaps(one.claim)]
        kept.append(judged)
    chosen = {id(judged) for kept in by_passage.values() for judged in kept}
    return [judged for judged in claims if id(judged) in chosen]


def _alike(one: JudgedClaim, two: JudgedClaim) -> bool:
    """Whether one of two says all that is to be said of both."""
    return one.entry == two.entry and one.advice == two.advice and not one.claim.is_another_danger(two.claim)


def _told(judged: JudgedClaim) -> bool:
    return judged.entry is not None and judged.advice != "keep"


def message(judged: JudgedClaim) -> str:
    """What is wrong with it, in one or two sentences."""
    return f"{quoted(judged)}: {judged.why}"


def quoted(judged: JudgedClaim) -> str:
    """The statement in quotation marks, shortened where it is long."""
    return f"“{_short(judged.claim.quote)}”"


def remedy(judged: JudgedClaim) -> Remedy:
    """What to do; an edit where the wording is a whole sentence that can stand in its place."""
    text = _DO[judged.advice]
    wording = judged.wording
    if not wording:
        return Remedy(text)
    if is_hint(wording):
        return Remedy(f"{text} {wording[:1].upper()}{wording[1:]}.")
    edits = (Edit(judged.claim.span, wording),) if wording[:1].isupper() and _whole_sentence(judged.claim) else ()
    return Remedy(f"{text} This stands: “{wording}”.", False, edits)


def _whole_sentence(claim: Claim) -> bool:
    """Whether the statement is all of its sentence: in the middle of one another sentence can't stand."""
    text = claim.passage.text
    return not _BEFORE.search(text[max(0, claim.start - 6) : claim.start]) and not _BEHIND.match(text, claim.end)


def _short(quote: str) -> str:
    words = " ".join(quote.split())
    return words if len(words) <= 90 else words[:87].rstrip() + "..."
