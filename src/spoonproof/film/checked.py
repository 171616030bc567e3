"""The film's words as findings: what we made of the recipe is checked like what its author wrote."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.checks.drawer import gathered
from spoonproof.checks.from_claims import area_of, message, once, remedy
from spoonproof.claims.judge import level_of
from spoonproof.dish import Dish
from spoonproof.feeding.contradictions import contradictions
from spoonproof.film.said import Statement, judged, passage
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import Finding, Level, Remedy

RULE = "film-words"


def findings(dish: Dish, said: Sequence[Statement]) -> list[Finding]:
    """What is wrong with these statements, in order; the same said in several places is one finding."""
    found = [of_claim(RULE, each, level) for each in once(judged(dish, said)) if (level := level_of(each)) is not None]
    for against in contradictions([passage(dish, each) for each in said], dish.knowledge.feeding):
        found.append(
            Finding(
                RULE,
                "baby",
                against.level,
                against.message,
                against.passage.document,
                against.span,
                remedy=Remedy(against.remedy),
                sources=(against.source,),
            )
        )
    return gathered(found)


def of_claim(rule: str, each: JudgedClaim, level: Level) -> Finding:
    """A claim that is not to be kept as a finding of ``rule``."""
    return Finding(
        rule,
        area_of(each),
        level,
        message(each),
        each.claim.passage.document,
        each.claim.span,
        remedy=remedy(each),
        sources=each.sources,
        claim=each,
    )
