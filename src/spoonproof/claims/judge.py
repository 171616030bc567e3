"""The door of judging: one claim in, both answers out. Pure: same question, same answer. Not legal advice."""

from __future__ import annotations

from spoonproof.claims.judging.advice import SERIOUS, advise, harm_of, level_of
from spoonproof.claims.judging.asking import key_of_claim, probe_of
from spoonproof.claims.judging.context import Context, own_sources
from spoonproof.claims.judging.danger import ill_spoken_of, warned
from spoonproof.claims.judging.direction import turned
from spoonproof.claims.judging.markets import answers
from spoonproof.claims.judging.offered import as_offered
from spoonproof.claims.judging.overreach import overreached
from spoonproof.claims.judging.placed import unplaced
from spoonproof.claims.judging.polarity import read_again
from spoonproof.claims.judging.reading import around
from spoonproof.claims.judging.truth import truth_of
from spoonproof.claims.judging.unheeded import unheeded
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.trail import describe_key, in_words
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim, JudgedClaim, MarketAnswer
from spoonproof.model.finding import SourceRef
from spoonproof.model.numbers import Numbers
from spoonproof.model.record import replace


def judge(claim: Claim, register: Register, numbers: Numbers | None, context: Context) -> JudgedClaim:
    """Is it true, and may it be said here: two questions, answered apart, with the trail of both.

    ``numbers`` None: nothing can be computed, and what hangs on it is unproven.
    """
    return _guarded(_backed(_each(claim, register, numbers, context), context))


_SEVERITY = ("keep", "add", "source-it", "soften", "cut-not-allowed", "cut-untrue")


def _each(claim: Claim, register: Register, numbers: Numbers | None, context: Context) -> JudgedClaim:
    """A statement that names several nutrients is as good as the worst of them: "calcium, protein and vitamin D"."""
    if claim.kind != "nutrient-content" or len(claim.nutrients) < 2:
        return _judge(claim, register, numbers, context)
    parts = [_judge(replace(claim, nutrients=(one,)), register, numbers, context) for one in claim.nutrients]
    worst = max(range(len(parts)), key=lambda at: (_SEVERITY.index(parts[at].advice), -at))
    others = tuple(f"{nutrient}: {part.advice}" for nutrient, part in zip(claim.nutrients, parts, strict=True))
    judged = parts[worst]
    whole = replace(judged.claim, nutrients=claim.nutrients)
    trail = (*judged.trail, f"of its nutrients the worst decides ({'; '.join(others)})")
    return replace(judged, claim=whole, trail=trail)


def _judge(claim: Claim, register: Register, numbers: Numbers | None, context: Context) -> JudgedClaim:
    claim = read_again(claim, register)
    key = key_of_claim(claim, context, register)
    matching = register.matching(key)
    probe = probe_of(claim, numbers, register, context)
    steps = [*claim.steps, describe_key(key)]
    verdict = truth_of(claim, key, matching, probe, numbers, register, context)
    warned(claim, key, verdict, register)
    ill_spoken_of(claim, key, verdict, register)
    as_offered(claim, key, verdict, register, context)
    overreached(claim, key, verdict, register)
    unplaced(claim, key, verdict, register)
    turned(claim, key, verdict, register)
    unheeded(claim, verdict, register)
    steps += verdict.steps
    allowed, behind, more = answers(claim, key, matching, probe, register, context, verdict.steps)
    steps += more
    advice = advise(claim, verdict, allowed, behind, steps, register.words)
    wording = verdict.wording if advice not in ("keep", "cut-not-allowed") else None
    if verdict.add and advice == "add":
        known = verdict.entry is not None and verdict.entry.truth == "true" and verdict.why
        wording = verdict.wording or f"{(known or claim.quote).strip().rstrip('.')}; {verdict.add}"
    return JudgedClaim(
        claim=claim,
        truth=verdict.truth,
        allowed=allowed,
        advice=advice,
        harm=harm_of(claim, verdict, key.stance),
        why=_why(verdict, allowed, advice),
        wording=wording,
        entry=verdict.entry.id if verdict.entry else _deciding(allowed, advice),
        sources=_sources(verdict, allowed, advice),
        trail=tuple(in_words(step) for step in steps),
    )


def _backed(judged: JudgedClaim, context: Context) -> JudgedClaim:
    """A statement on no list that the author backs with a source of her own is shown with it, as hers; on
    safety and illness her source is shown and the question stays open."""
    words = plain(around(judged.claim))
    own = next((o for o in context.own if has_any(words, o.supports)), None)
    cut_for_want_of_it = judged.advice == "cut-untrue" and judged.truth in ("unproven", "unlisted")
    if own is None or not (judged.advice == "source-it" or cut_for_want_of_it):
        return judged
    sources = (*judged.sources, SourceRef(own.id, "the author's own source", "own"))
    trail = (*judged.trail, f"the author cites {own.id}")
    if judged.truth != "unlisted" or judged.claim.kind in SERIOUS:
        return replace(judged, advice="source-it", sources=sources, trail=trail)
    why = f"On no list here; the author cites {own.id}. Show it beside the statement."
    return replace(judged, advice="add", sources=sources, trail=trail, why=why)


def _why(verdict: Verdict, allowed: tuple[MarketAnswer, ...], advice: str) -> str:
    if advice == "cut-not-allowed":
        refused = next(answer for answer in allowed if answer.bound and answer.answer == "no")
        why = refused.why or f"{refused.market} law does not allow it in paid speech."
        return why if verdict.truth == "true" or verdict.why in why else f"{why} {verdict.why}".strip()
    if advice == "add" and verdict.add:
        return f"{verdict.why} Add: {verdict.add}."
    if verdict.truth == "unlisted":
        # What a market was told of just this says more than that no list has it ("for children from three on").
        told = (a.why for a in allowed if a.why and a.answer == "no" and a.entry and not a.entry.startswith("law-"))
        return next(told, verdict.why)
    return verdict.why or "It agrees with the evidence listed here."


def _deciding(allowed: tuple[MarketAnswer, ...], advice: str) -> str | None:
    if advice != "cut-not-allowed":
        return None
    return next((answer.entry for answer in allowed if answer.bound and answer.answer == "no"), None)


def _sources(verdict: Verdict, allowed: tuple[MarketAnswer, ...], advice: str) -> tuple[SourceRef, ...]:
    """The deciding source first: a level may rest on it."""
    law = [answer.source for answer in allowed if answer.source is not None]
    if advice == "cut-not-allowed":
        deciding = [a.source for a in allowed if a.bound and a.answer == "no" and a.source is not None]
        return tuple(dict.fromkeys([*deciding, *verdict.refs]))
    return tuple(dict.fromkeys([*verdict.refs, *(ref for ref in law if not verdict.refs)]))


def _guarded(judged: JudgedClaim) -> JudgedClaim:
    """Nothing but a true statement that is not refused where it is bound comes out as keep."""
    if judged.advice != "keep":
        return judged
    asks = judged.claim.polarity == "asks"
    if judged.truth != "true" and not asks:
        return replace(judged, advice="source-it", trail=(*judged.trail, "guard: not shown to be true, so not kept"))
    return judged


def statement_key(judged: JudgedClaim) -> tuple[str, ...]:
    """What makes two statements one: the same words, or the same relation judged alike."""
    claim = judged.claim
    about = "|".join(sorted({*claim.foods, *claim.nutrients, *claim.allergens})) or plain(" ".join(claim.subjects))
    number = "" if claim.number is None else f"{claim.number.value:g}{claim.number.unit}/{claim.number.basis}"
    target = claim.effect or plain(claim.relates_to or "").strip()
    if claim.effect == "danger":  # each danger of a baby is mended for itself
        target = f"{plain(claim.relates_to or '').strip()} {judged.why}"
    if not about and not target:
        target = plain(claim.quote).strip()
    return (claim.kind, about, target, claim.level or "", number, claim.polarity, judged.advice, judged.entry or "")


__all__ = ["Context", "judge", "level_of", "own_sources", "statement_key"]
