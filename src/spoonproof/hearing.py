"""All that is heard in speech that belongs to no recipe: its claims, judged, and what it says against a caution.

Claims and feeding know nothing of each other; this joins what the two hear in the same words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from spoonproof.feeding.contradictions import Contradiction, contradictions
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import Claim, JudgedClaim
from spoonproof.model.text import Passage

_HARM = {"error": 3, "warning": 2, "note": 1}


def hear(
    passages: Sequence[Passage],
    knowledge: Knowledge,
    judge: Callable[[Claim], JudgedClaim],
    *,
    apart: bool = False,
) -> list[JudgedClaim]:
    """The claims of ``passages`` by ``judge``, and each statement against a caution ("leave it out overnight") that
    no claim to be mended stands on already, in the order they are said. ``apart``: no subject is carried from one
    passage to the next."""
    from spoonproof.claims.find import find_claims

    judged = [judge(claim) for claim in find_claims(passages, knowledge.lexicon, apart=apart)]
    more = list(_against_cautions(passages, knowledge, judged))
    if not more:
        return judged
    place = {id(passage): at for at, passage in enumerate(passages)}
    return sorted([*judged, *more], key=lambda one: (place[id(one.claim.passage)], one.claim.start))


def _against_cautions(
    passages: Sequence[Passage], knowledge: Knowledge, judged: Sequence[JudgedClaim]
) -> Iterator[JudgedClaim]:
    for one in contradictions(passages, knowledge.feeding):
        told = any(
            other.advice != "keep"
            and other.claim.passage is one.passage
            and other.claim.start < one.end
            and one.start < other.claim.end
            for other in judged
        )
        if not told:
            yield _as_judged(one)


def _as_judged(one: Contradiction) -> JudgedClaim:
    claim = Claim(
        passage=one.passage,
        start=one.start,
        end=one.end,
        kind="safety-age",
        relates_to=one.caution,
        effect="danger",
        steps=(f"said against the caution {one.caution}",),
    )
    return JudgedClaim(
        claim=claim,
        truth="false",
        allowed=(),
        advice="cut-untrue",
        harm=_HARM[one.level],
        why=f"{one.why} {one.remedy}",
        sources=(one.source,),
        trail=(*claim.steps, "advice: false -> cut-untrue"),
    )
