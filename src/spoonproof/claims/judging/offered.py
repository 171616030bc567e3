"""Leave to give a food, held against the food's own dangers: what may be given may not be given in any shape."""

from __future__ import annotations

from spoonproof.claims.entries import Key
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.reading import place_of
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import KINDS_OF_MEAL, Register
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim
from spoonproof.model.record import replace

_BEHIND = 90
"""Characters behind a sentence in which it may be told how its food is served: "Apple from six months. Steam it"."""


_MARKS = " \n-–—•*\"'“”,"


def as_offered(claim: Claim, key: Key, verdict: Verdict, register: Register, context: Context) -> None:
    """Ask the hazard tables of a food that a statement lets a child have.

    Where its words show the danger ("cubes of cheddar are finger food") they are wrong or say too much; where they
    leave open how hard or round food is served ("celery is finger food") that is added; and where the rest of the
    sentence says how it is cut, that is heard ("grapes, quartered lengthways, are fine").
    """
    gives = claim.kind == "safety-age" and key.stance == "permits" and claim.polarity in ("asserts", "hedges", "asks")
    if context.dangers is None or not gives:
        return
    start, end = place_of(claim)
    text = claim.passage.text
    if _shape_was_missed(verdict):
        said = plain(text[start:end])
        known = register.truth(replace(key, words=said, near=said))
        if known is None or known.truth != "true" or known.stance == "warns":
            return
        verdict.truth, verdict.entry, verdict.why, verdict.refs = "true", known, known.why, known.refs
        verdict.wording, verdict.add, verdict.harm = None, "", None
        verdict.steps.append(f"the whole sentence says how it is served: entry {known.id} says true")
    if verdict.truth != "true" or (verdict.entry is not None and verdict.entry.points_at):
        return  # an entry that rests on a row of these tables knows its food better than words do
    within = max(0, claim.start - start), max(0, claim.end - start)
    danger = context.dangers(text[start:end], within, key.months, text[end : end + _BEHIND])
    if danger is None or (not danger.row and set(claim.foods) - KINDS_OF_MEAL):
        return
    if not danger.row:
        verdict.truth, verdict.wording, verdict.entry, verdict.refs = "unlisted", None, None, ()
        verdict.why = f"How hard or soft “{danger.food}” are is on no list here: bring the guidance it rests on."
        verdict.steps.append(f"given in pieces, and no table knows {danger.food}: not kept")
        return
    says = "its words show it" if danger.told else "its words leave it open"
    row = f"{danger.food.lower()}, {danger.row}"
    verdict.steps.append(f"asked of the hazard tables at {key.months} months: {row}: {says}")
    verdict.refs = tuple(dict.fromkeys([*danger.sources, *verdict.refs]))
    verdict.wording = None
    if not danger.told:
        remedy = danger.remedy.strip().rstrip(".")
        verdict.why = f"It leaves open how to serve {danger.food.lower()}."
        verdict.add = f"{remedy[:1].lower()}{remedy[1:]}"
        verdict.wording = f"{text[start:end].strip(_MARKS)}; {verdict.add}"
        return
    verdict.truth = "false" if danger.level == "error" else "overstated"
    verdict.why, verdict.add = f"{danger.why} {danger.remedy}", ""
    verdict.harm = max(verdict.harm or 0, 2)


def _shape_was_missed(verdict: Verdict) -> bool:
    """Whether the claim's own words gave a food that chokes, and said nothing of its shape."""
    entry = verdict.entry
    by_shape = entry is not None and entry.points_at.startswith("choking:") and entry.stance == "permits"
    return by_shape and verdict.truth == "overstated"
