"""All that is heard in speech that belongs to no recipe: its claims, judged, and what it says that endangers a baby.

Claims and feeding know nothing of each other; this joins what the two hear in the same words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from spoonproof.feeding.advised import advised
from spoonproof.feeding.contradictions import contradictions
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import Claim, JudgedClaim
from spoonproof.model.finding import Level, SourceRef
from spoonproof.model.text import Passage

_HARM = {"error": 3, "warning": 2, "note": 1}
_MARKETS = ("EU", "GB", "US")
_SENTENCE = 180
"""Characters: in a longer stretch without a full stop nobody can say which words hand which food to whom."""
YOUNGEST = 6
"""Months: the age that speech is taken to be for, where nothing says another (about when solid food begins)."""


def hear(
    passages: Sequence[Passage],
    knowledge: Knowledge,
    judge: Callable[[Claim], JudgedClaim],
    *,
    apart: bool = False,
    months: int = YOUNGEST,
) -> list[JudgedClaim]:
    """The claims of ``passages`` by ``judge``, and each statement that endangers a baby of ``months`` ("leave it out
    overnight", "let her gnaw on raw apple") that no claim to be mended stands on already, in the order they are said.
    ``apart``: no subject is carried from one passage to the next."""
    from spoonproof.claims.find import find_claims

    judged = [judge(claim) for claim in find_claims(passages, knowledge.lexicon, apart=apart)]
    more: list[JudgedClaim] = []
    for one in _dangers(passages, knowledge, months):
        if not any(other.advice != "keep" and _overlap(other.claim, one.claim) for other in (*judged, *more)):
            more.append(one)
    if not more:
        return judged
    place = {id(passage): at for at, passage in enumerate(passages)}
    return sorted([*judged, *more], key=lambda one: (place[id(one.claim.passage)], one.claim.start))


def _overlap(one: Claim, two: Claim) -> bool:
    return one.passage is two.passage and one.start < two.end and two.start < one.end


def _dangers(passages: Sequence[Passage], knowledge: Knowledge, months: int) -> Iterator[JudgedClaim]:
    tables = knowledge.feeding
    for one in contradictions(passages, tables):
        why = f"{one.why} {one.remedy}"
        yield _as_judged(one.passage, (one.start, one.end), one.caution, one.level, why, (one.source,))
    for told in advised(passages, months, tables, {}, _MARKETS, by_shape=True):
        start, end = told.sentence
        if end - start <= _SENTENCE:
            why = f"{told.message} {told.remedy.text}"
            yield _as_judged(told.passage, told.sentence, told.id, told.level, why, told.sources)


def _as_judged(
    passage: Passage, within: tuple[int, int], about: str, level: Level, why: str, sources: tuple[SourceRef, ...]
) -> JudgedClaim:
    claim = Claim(
        passage=passage,
        start=within[0],
        end=within[1],
        kind="safety-age",
        relates_to=about,
        effect="danger",
        steps=(f"endangers a baby: {about}",),
    )
    return JudgedClaim(
        claim=claim,
        truth="false",
        allowed=(),
        advice="cut-untrue",
        harm=_HARM[level],
        why=why,
        sources=sources,
        trail=(*claim.steps, "advice: false -> cut-untrue"),
    )
