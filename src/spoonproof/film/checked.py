"""The film's words as findings: what we made of the recipe is checked like what its author wrote."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.checks.engine import group_repeats, in_order
from spoonproof.checks.from_claims import message, once, remedy
from spoonproof.claims.judge import level_of
from spoonproof.dish import Dish
from spoonproof.feeding.contradictions import contradictions
from spoonproof.film.said import Statement, judged, passage
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import Area, Finding, Remedy

RULE = "film-words"


def findings(dish: Dish, said: Sequence[Statement]) -> list[Finding]:
    """What is wrong with these statements, in order; the same said in several places is one finding."""
    found = [_of_claim(each) for each in once(judged(dish, said)) if level_of(each) is not None]
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
    return in_order(group_repeats(found))


def _of_claim(each: JudgedClaim) -> Finding:
    area: Area = "baby" if each.harm == 3 and each.claim.kind in ("safety-age", "allergen") else "words"
    level = level_of(each)
    return Finding(
        RULE,
        area,
        level or "note",
        message(each),
        each.claim.passage.document,
        each.claim.span,
        remedy=remedy(each),
        sources=each.sources,
        claim=each,
    )
