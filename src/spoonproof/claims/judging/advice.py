"""From truth and law to advice, level and harm. In doubt never keep."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from spoonproof.claims.entries import Allowance
from spoonproof.claims.judging.reading import around
from spoonproof.claims.judging.refused import not_given
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Advice, Claim, JudgedClaim, MarketAnswer
from spoonproof.model.finding import Level

_WHAT_TO_DO: dict[Advice, str] = {
    "keep": "keep it",
    "add": "keep it, and add what it needs beside it",
    "soften": "say less",
    "source-it": "bring a source",
    "cut-untrue": "cut it",
    "cut-not-allowed": "cut it",
}
_HARMFUL = 3
SERIOUS = frozenset({"safety-age", "disease"})


def advise(
    claim: Claim,
    verdict: Verdict,
    allowed: Sequence[MarketAnswer],
    behind: Sequence[Allowance],
    steps: list[str],
    words: Mapping[str, Sequence[str]] = MappingProxyType({}),
) -> Advice:
    """What to do with the words; ``steps`` gets the reason. Of the register's ``words``: "medicine" promises to
    prevent or cure (a trailing * matches any ending), "cures" promises a cure, "harm told" warns instead."""
    guidance = any(allowance.guidance for allowance in behind)
    advice = _by_truth(claim, verdict)
    if promises_a_cure(claim, verdict, words):
        steps.append("advice: it promises a cure, or a cleverer child, and nothing listed here shows it")
        advice = "cut-untrue"
    if verdict.warning is not None:
        steps.append("advice: it praises what a child of this age must not have")
        advice = "cut-untrue"
    bound = [answer for answer in allowed if answer.bound]
    refused = [answer.market for answer in bound if answer.answer == "no"]
    if claim.polarity == "asks":
        if refused and not guidance:
            # A claim is what a message suggests or implies, too (Reg. 1924/2006 Art 2(2)(1)).
            steps.append(f"advice: {', '.join(refused)} bind this speech, and a question suggests the answer")
            return "cut-not-allowed"
        put: Advice = "keep" if advice == "keep" else "add"
        steps.append(f"a question asserts nothing: said outright, {_WHAT_TO_DO[advice]}; asked, {_WHAT_TO_DO[put]}")
        return put
    # What takes a statement back makes no claim for the food; guidance is never silenced.
    claims_it = claim.polarity not in ("denies", "refutes") and not guidance
    if refused and claims_it and advice != "cut-untrue":
        steps.append(f"advice: {', '.join(refused)} bind this speech and say no")
        return "cut-not-allowed"
    worded = verdict.wording is not None and plain(verdict.wording).strip() in plain(around(claim))
    asked = any(answer.answer == "with-wording" for answer in bound)
    if advice == "keep" and asked and not guidance and not worded:
        steps.append("advice: it may be said in the authorised words")
        return "soften"
    steps.append(f"advice: {verdict.truth}, so {_WHAT_TO_DO[advice]}")
    return advice


def _by_truth(claim: Claim, verdict: Verdict) -> Advice:
    match verdict.truth:
        case "true":
            return "add" if verdict.add else "keep"
        case "overstated":
            return "soften"
        case "false":
            return "cut-untrue"
        case "unproven":
            loose = claim.kind in ("general-benefit", "function", "nutrient-content", "process", "comparative")
            return "soften" if verdict.wording is not None or (verdict.evidence and loose) else "source-it"
        case _:
            return "source-it"


def promises_a_cure(claim: Claim, verdict: Verdict, lists: Mapping[str, Sequence[str]]) -> bool:
    """Whether a statement asserts that food prevents, treats or cures, or makes clever, and nothing listed supports it.

    Of an illness a plain verb is enough; elsewhere it takes a word of medicine ("heals the gut"). Such a statement
    can do harm while its source is looked for, so it is cut and not softened; a hedge or a mild verb asks for the
    source instead.
    """
    if claim.polarity != "asserts" or verdict.truth not in ("unproven", "unlisted", "overstated"):
        return False
    if not_given(claim, lists):
        return False
    words = plain(claim.quote)
    strong = has_any(words, lists.get("medicine", ()))
    told = has_any(words, lists.get("harm told", ())) or (claim.kind == "disease" and _GIVES_IT.search(words))
    if not strong and told:
        return False  # "leads to kidney damage" warns of an illness and promises nothing
    if claim.kind == "disease":
        if verdict.truth == "overstated":
            return has_any(words, lists.get("cures", ()))
        return strong or (claim.strength in ("plain", "strong", "absolute") and verdict.wording is None)
    if claim.kind == "allergen":
        # "These prevent peanut allergy": what is quoted is the allergy, the promise stands in the entry's own words.
        of_allergy = claim.effect == "allergy" and claim.level not in ("free", "none")
        return of_allergy and verdict.truth == "unproven" and verdict.harm == _HARMFUL
    # What is promised to make a child cleverer is sold on a hope as strong as health.
    strong = strong or has_any(words, lists.get("makes clever", ()))
    return strong and claim.kind in ("function", "general-benefit") and verdict.truth != "overstated"


_GIVES_IT = re.compile(
    r" (?:gives?|gave|giving|given) (?:him|her|them|you|us|babies|children|kids|toddlers|people"
    r"|(?:a|the|your|my) (?:baby|child)) (?:a|an|the|bad|terrible|awful|such) (?!relief|help|break|rest|boost|good)"
)
"""Words that tell of an illness as what comes of it: "too much juice can give them the runs"."""


def harm_of(claim: Claim, verdict: Verdict, stance: str) -> int:
    """0 to 3, for ranking: what could come of believing it. What only warns of a food does little where no list has
    it."""
    if verdict.truth == "true":
        return 0
    if stance == "warns" and verdict.truth == "unlisted":
        return 1
    if claim.polarity in ("asks", "denies", "refutes") and (claim.polarity == "asks" or verdict.truth != "false"):
        return min(1, _harm(claim, verdict))
    return _harm(claim, verdict)


def _harm(claim: Claim, verdict: Verdict) -> int:
    if verdict.harm is not None and verdict.truth != "unlisted":
        return verdict.harm
    base = {"safety-age": 3, "allergen": 3, "disease": 2, "function": 1, "general-benefit": 0}.get(claim.kind, 1)
    return base if verdict.truth == "false" else max(0, base - 1) if base == 3 else base


def level_of(judged: JudgedClaim) -> Level | None:
    """The level of the finding, None for keep: cuts are errors, the rest warnings, and errors on safety
    or disease; nothing that rests on a recalled figure is an error."""
    if judged.advice == "keep":
        return None
    of_safety = judged.claim.kind == "safety-age" or judged.claim.effect == "age"  # when an allergen comes
    only_warns = of_safety and judged.truth == "unlisted" and judged.harm == 1
    serious = (of_safety or judged.claim.kind in SERIOUS) and not only_warns
    level: Level = "error" if judged.advice.startswith("cut-") or serious else "warning"
    recalled = bool(judged.sources) and judged.sources[0].basis == "from-memory"
    if level == "error" and recalled:
        return "warning"
    return level
