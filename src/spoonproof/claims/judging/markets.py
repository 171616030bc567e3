"""What each market's food-claim law answers, bound or not."""

from __future__ import annotations

from collections.abc import Sequence

from spoonproof.claims.conditions import evaluate
from spoonproof.claims.conditions_told import in_words
from spoonproof.claims.entries import Allowance, Entry, Key
from spoonproof.claims.judging.content import nutrient_of
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.probes import AnyProbe, NoProbe
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name
from spoonproof.model.claim import Answer, Claim, MarketAnswer


def answers(
    claim: Claim,
    key: Key,
    matching: Sequence[Entry],
    probe: AnyProbe,
    register: Register,
    context: Context,
    told: Sequence[str] = (),
) -> tuple[tuple[MarketAnswer, ...], list[Allowance], list[str]]:
    """An answer a market, the allowances behind them, and how they came about; ``matching`` as for the truth, ``told``
    the steps that need not be told again."""
    known = set(told)
    given: list[MarketAnswer] = []
    behind: list[Allowance] = []
    steps: list[str] = []
    for market in context.markets:
        found = register.allowance(key, market, matching)
        if found is None:
            given.append(MarketAnswer(market, context.bound(market), "no", why="No entry of the register says yes."))
            steps.append(f"{market}: no entry says yes: may not be said")
            continue
        entry, allowance = found
        answer, why, more = _answer(claim, entry, allowance, probe, register)
        given.append(
            MarketAnswer(market, context.bound(market), answer, entry.id, allowance.refs[0], why or allowance.why)
        )
        behind.append(allowance)
        bound = "bound" if context.bound(market) else "not bound"
        steps.append(f"{market} ({bound}): {_SAYS[answer]} ({entry.id})")
        steps += [f"{market}: {step}" for step in more if step not in known]
        known.update(more)
    return tuple(given), behind, steps


_SAYS: dict[Answer, str] = {
    "yes": "may be said",
    "with-wording": "may be said in the law's own words",
    "no": "may not be said",
}


def _answer(
    claim: Claim, entry: Entry, allowance: Allowance, probe: AnyProbe, register: Register
) -> tuple[Answer, str, tuple[str, ...]]:
    condition = allowance.condition or (entry.condition if allowance.answer != "no" else None)
    if condition is None or allowance.answer == "no":
        return allowance.answer, "", ()
    about_nutrient_alone = isinstance(probe, NoProbe) and bool(claim.nutrients) and not claim.foods
    if about_nutrient_alone and entry.truth == "true":
        return allowance.answer, "Only on a food that meets the condition.", ()
    result = evaluate(condition, probe, register.references, nutrient_of(claim))
    if result.answer == "yes":
        return allowance.answer, "", result.steps
    wanted = in_words(condition)
    if claim.nutrients:
        wanted = wanted.replace("the nutrient named", nutrient_name(nutrient_of(claim)))
    if result.answer == "no":
        return "no", f"The food does not meet the condition: {wanted}.", result.steps
    return "no", f"Whether the food meets the condition is not known: {wanted}.", result.steps
