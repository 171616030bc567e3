"""Nutrient content, amounts and comparisons: truth by computing on the food as eaten."""

from __future__ import annotations

import re

from spoonproof.claims.conditions import (
    Absent,
    Condition,
    Group,
    Reply,
    Threshold,
    at_least,
    evaluate,
    limit_of,
    short,
    show,
    spoken,
)
from spoonproof.claims.entries import Entry
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.probes import AnyProbe, AsBought, DishProbe, FoodProbe, NoProbe, key_of
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name, resolve
from spoonproof.claims.words import is_many, plain
from spoonproof.model.claim import Claim, Truth
from spoonproof.model.finding import SourceRef
from spoonproof.model.numbers import Estimate

_PRAISE = frozenset({"high", "source", "contains", "complete"})
_LEAST_PER_100G = {"protein_g": 2.5, "fibre_g": 1.5}
"""Grams in 100 g without which a claim met per kcal alone is not kept: protein 5 % of the reference intake of 50 g
(Reg. 1169/2011 Annex XIII Part B), fibre half of what the Annex asks per 100 g. The law asks for a "significant
quantity" in what is eaten (Reg. 1924/2006 Art 5(1)) and gives no figure: these are common practice."""
_SOME_SHARE = 5.0
"""Percent of the reference value in 100 g as eaten from which "contains" is a plain fact where nobody sells the food,
told with how much it is (common practice, no source): the law's own word asks for 15 (Annex, CONTAINS)."""
_TRUTH: dict[Reply, Truth] = {"yes": "true", "no": "false", "unknown": "unproven"}


def nutrient_of(claim: Claim) -> str:
    """The nutrient key the claim names first, "" when none."""
    return key_of(claim.nutrients[0]) if claim.nutrients else ""


def computed(claim: Claim, entry: Entry, probe: AnyProbe, register: Register, context: Context) -> Verdict:
    """The truth of an entry whose condition decides; every nutrient that is named must pass."""
    named = [key_of(n) for n in claim.nutrients if not entry.about or n in register.about(entry)] or [
        nutrient_of(claim)
    ]
    verdicts = [
        _some_of_it(claim, entry, probe, register, nutrient)
        or _bought(claim, entry, probe, register, nutrient)
        or _one(entry, probe, register, context, nutrient)
        for nutrient in dict.fromkeys(named)
    ]
    worst = max(verdicts, key=lambda verdict: _FROM_BEST.index(verdict.truth))
    worst.steps += [step for verdict in verdicts if verdict is not worst for step in verdict.steps]
    return worst


_FROM_BEST = ("true", "unproven", "overstated", "false")


def _one(entry: Entry, probe: AnyProbe, register: Register, context: Context, nutrient: str) -> Verdict:
    assert entry.condition is not None
    result = evaluate(entry.condition, probe, register.references, nutrient)
    steps = list(result.steps)
    truth = _TRUTH[result.answer]
    why = _why(entry, probe, register, nutrient, result.answer)
    wording: str | None = None
    if result.answer == "no" and entry.lesser is not None:
        lesser = evaluate(entry.lesser, probe, register.references, nutrient)
        steps += [f"for the lesser claim: {step}" for step in lesser.steps if step not in steps]
        if lesser.answer != "no":
            truth = "overstated"
            wording = resolve(entry.wording, register, nutrient) if lesser.answer == "yes" else None
    if result.answer in ("unknown", "yes"):
        wording = resolve([w for w in entry.wording if w.startswith("made")], register, nutrient)
    steps += probe.steps
    refs = (*entry.refs, *_measured(entry, result.answer, probe, register, nutrient))
    gluten = nutrient == "gluten-in-food"  # what is said to hold it, or not, is offered no vitamin instead
    if truth == "false" and set(entry.levels) & _PRAISE and not isinstance(probe, NoProbe) and not gluten:
        wording = what_holds(probe, register)
    if truth == "true" and set(entry.levels) & {"source", "high"}:
        short = _portion_short(probe, nutrient, register, context) if isinstance(probe, FoodProbe) else ""
        short = short or _formula_alone(probe, nutrient)
        if short:
            truth, why = "overstated", short
            steps.append(f"Art 5(1)(d): {short}")
    return Verdict(truth, why, entry, refs, wording, entry.add, entry.harm, steps=steps)


def _some_of_it(claim: Claim, entry: Entry, probe: AnyProbe, register: Register, nutrient: str) -> Verdict | None:
    """The verdict on a food that "contains" a vitamin or mineral without being a source of it: it does, and how much is
    to be said beside it. None where it is a source, holds hardly any, or where that is not known; and where a denial
    says no more than that it is no good source ("isn't its strong point")."""
    day = register.references.amount("EU NRV", nutrient)
    if set(entry.levels) != {"contains"} or day is None or isinstance(probe, NoProbe) or entry.condition is None:
        return None
    if claim.polarity in ("denies", "refutes") and not _DENIES_ALL.search(plain(claim.quote)):
        return None
    found = probe.measure(nutrient, "100g")
    if found is None or found.amount < day * _SOME_SHARE / 100 or found.high > found.amount * 2:
        return None
    result = evaluate(entry.condition, probe, register.references, nutrient)
    if result.answer == "yes":
        return None
    what = probe.food.replace("-", " ") if isinstance(probe, FoodProbe) else "the dish as eaten"
    if isinstance(probe, FoodProbe) and probe.eaten:
        what += f", {probe.eaten}"
    name, share = nutrient_name(nutrient), found.amount / day * 100
    why = f"{what[:1].upper()}{what[1:]}: {show(found)} {name} per 100 g, {share:.0f} % of the adult reference value."
    amount = spoken(found) if found.high > found.low * 1.2 else f"about {spoken(found)}"
    amount += f" {name} in 100 g" if _LIST.search(claim.quote) else " in 100 g"
    whole = claim.polarity not in ("denies", "refutes") and _SAYS_SO.search(plain(claim.quote))
    wording = f"{claim.quote.strip().rstrip('.,;')}, {amount}" if whole else None
    add = f"how much it is, {amount}" if whole else ""  # "iron from kale" is part of what is said of it
    steps = [*result.steps, *probe.steps, f"plainly said it holds from {_SOME_SHARE:g} % of the reference on"]
    refs = (*entry.refs, *composition(found))
    return Verdict("true", why, entry, refs, wording, add, 1, steps=steps)


def _bought(claim: Claim, entry: Entry, probe: AnyProbe, register: Register, nutrient: str) -> Verdict | None:
    """The verdict on a dry food or a spoonful that "contains" what it holds as bought, though little of it is eaten: so
    it does, and what it brings is to be said beside it. None for all else: who calls it a source must count what is
    eaten (Art 5(1)(d))."""
    if claim.level != "contains" or entry.condition is None or type(probe) is not FoodProbe:
        return None
    if claim.polarity in ("denies", "refutes") or not probe.small_or_dry() or not _SAYS_SO.search(plain(claim.quote)):
        return None
    result = evaluate(entry.condition, probe, register.references, nutrient)
    as_bought = AsBought(probe.food, probe.numbers, register, probe.context)
    enough = result.answer == "yes" and not _formula_alone(probe, nutrient)
    if enough or evaluate(entry.condition, as_bought, register.references, nutrient).answer != "yes":
        return None
    threshold = _threshold(entry.condition, "yes", as_bought, register, nutrient)
    limit = None if threshold is None else limit_of(threshold, register.references, nutrient)
    if threshold is not None and threshold.basis == "energy":
        limit = _LEAST_PER_100G.get(nutrient)  # a share of the energy is no amount that a portion could bring
    key = nutrient if threshold is None else threshold.nutrient.replace("claimed", nutrient)
    found, brings = as_bought.measure(key, "100g"), probe.numbers.food_in_portion(probe.food, key)
    fat = brings is None and probe.eaten_dry()  # "sunflower seeds contain vitamin E"
    if limit is None or not (fat or (brings is not None and brings.amount >= limit * _FELT)):
        return None  # "the turmeric brings iron": a pinch of it brings none to speak of
    what, name = probe.food.replace("-", " "), nutrient_name(nutrient)
    why = f"{what[:1].upper()}{what[1:]} as bought: {show(found)} {name} per 100 g." if found else "It does as bought."
    refs = (*entry.refs, *(composition(found) if found else ()))
    steps = [*result.steps, *probe.steps, f"what it brings is a fifth of that or more, or it is eaten dry: {why}"]
    if brings is None:
        return Verdict("true", why, entry, refs, None, "a child has only a little of it at a time", 1, steps=steps)
    here = f"{spoken(brings)} in a portion here"
    wording = f"{claim.quote.strip().rstrip('.,;')}, {here}"
    return Verdict("true", why, entry, refs, wording, f"what it brings, {here}", 1, steps=steps)


_FELT = 1 / 5
"""Of what the law asks of 100 g, the part that a portion's spoonful must bring for it to count (common practice)."""
_LIST = re.compile(r",| and\b")
_SAYS_SO = re.compile(r" (?:contains?|holds?|has|have|brings?|provides?|gives?|offers?|comes? with) ")
_DENIES_ALL = re.compile(
    r" (?:contains?|containing|holds?|has|have|had|brings?|provides?|found|there is|there's|are|is) "
    r"(?:(?:absolutely|really|actually|literally) )?(?:no|none|zero|not any) "
    r"|(?:n't| not| never) (?:contain|hold|have|bring|provide|give|get) | without (?:any )?"
    r"| (?:no|zero) [a-z0-9 ]{1,24} in "
)
"""A denial that there is any at all."""


def _measured(entry: Entry, answer: Reply, probe: AnyProbe, register: Register, nutrient: str) -> tuple[SourceRef, ...]:
    """Where the figures come from that the condition was held against."""
    threshold = _threshold(entry.condition, answer, probe, register, nutrient)
    if threshold is None:
        return ()
    found = probe.measure(threshold.nutrient.replace("claimed", nutrient), threshold.basis)
    return () if found is None else composition(found)


def what_holds(probe: AnyProbe, register: Register) -> str | None:
    """What the food is high in, or a source of, by the most of its reference value; None when nothing is sure."""
    best: tuple[float, str, str] | None = None
    for nutrient in sorted(register.sets.get("vitamins-and-minerals", ())):
        day = register.references.amount("EU NRV", nutrient)
        found = None if day is None else probe.measure(nutrient, "100g")
        if day is None or found is None or found.low < day * 0.15:
            continue
        level = "high in" if found.low >= day * 0.3 else "a source of"
        if best is None or found.low / day > best[0]:
            best = (found.low / day, level, nutrient)
    return None if best is None else f"{best[1]} {nutrient_name(best[2])}"


def _portion_short(probe: FoodProbe, nutrient: str, register: Register, context: Context) -> str:
    """Why the amount eaten brings no significant quantity, "" when it does or that is not known."""
    if not probe.small_or_dry():
        return ""
    reference = "EU baby-food NRV" if context.ages[0] < 36 else "EU NRV"
    day = register.references.amount(reference, nutrient)
    brings = probe.numbers.food_in_portion(probe.food, nutrient)
    if day is None or brings is None or brings.high >= day * 0.15:
        return ""
    return (
        f"What a portion holds of it brings {show(brings)} {nutrient_name(nutrient)}, "
        f"less than 15 % of {day:g} ({reference})."
    )


def _formula_alone(probe: AnyProbe, nutrient: str) -> str:
    """Why a watery food that meets the Annex by its share of energy still brings too little, "" where it does not."""
    floor = _LEAST_PER_100G.get(nutrient)
    found = None if floor is None else probe.measure(nutrient, "100g")
    if floor is None or found is None or found.amount >= floor:
        return ""
    return (
        f"The law's formula counts energy alone, and this has little: 100 g brings {show(found)} "
        f"{nutrient_name(nutrient)}, which nobody would call much. Say the amount."
    )


def _why(entry: Entry, probe: AnyProbe, register: Register, nutrient: str, answer: Reply) -> str:
    threshold = _threshold(entry.condition, answer, probe, register, nutrient)
    if threshold is None:
        if answer == "yes":
            return "It holds for what goes in."
        first = _present(entry.condition, probe) if answer == "no" else _perhaps(entry.condition, probe)
        return f"{first} {entry.why}".strip()
    name = nutrient_name(nutrient or threshold.nutrient)
    if answer == "unknown" and isinstance(probe, FoodProbe) and probe.by_carton(nutrient or threshold.nutrient):
        return f"Some makers add {name} and others don't: only the carton tells."
    found = probe.measure(threshold.nutrient.replace("claimed", nutrient), threshold.basis)
    limit = limit_of(threshold, register.references, nutrient)
    if answer == "unknown":
        said = (
            f"How much {'sugar' if name == 'sugars' else name} there is as eaten is not known well enough to say this"
        )
        if found is None or limit is None or threshold.basis != "100g":
            return f"{said}."
        return (
            f"{said}: {show(found)} per 100 g, raw or cooked, by kind, and the claim needs {short(limit)} {found.unit}."
        )
    if found is None or limit is None:
        return entry.why
    what = probe.food.replace("-", " ") if isinstance(probe, FoodProbe) else "the dish as eaten"
    if isinstance(probe, FoodProbe) and probe.eaten and threshold.basis == "100g":
        what += f", {probe.eaten}"
    basis = "of its energy" if threshold.basis == "energy" else f"per {_BASIS[threshold.basis]}"
    unit = "%" if threshold.basis == "energy" else found.unit
    amount = show(found).replace(" % of energy", " %")
    need = "needs" if threshold.op == "at least" else "allows at most"
    tail = f" {entry.why}" if answer == "no" and entry.why else ""
    return f"{what[:1].upper()}{what[1:]}: {amount} {name} {basis}; the claim {need} {limit:.3g} {unit}.{tail}"


def _perhaps(condition: Condition | None, probe: AnyProbe) -> str:
    """Why it is not known whether what should be absent is in it."""
    for part in condition.parts if isinstance(condition, Group) else (condition,):
        if not isinstance(part, Absent) or not isinstance(probe, DishProbe):
            continue
        if traced := [what for what in part.what if probe.may_contain(what)]:
            return f"A label says that it may contain {' and '.join(traced)}."
        if probe.unknown:
            return f"What is in {' and '.join(probe.unknown)} is not known."
    return "This cannot be checked here."


def _present(condition: Condition | None, probe: AnyProbe) -> str:
    """What is in it that should be absent, and which food brings it; "" when that is not what failed."""
    for part in condition.parts if isinstance(condition, Group) else (condition,):
        if not isinstance(part, Absent):
            continue
        for what in part.what:
            if foods := probe.bringing(what):
                return _brings(what.removesuffix(" traces"), [food.replace("-", " ") for food in foods], probe)
    return ""


def _brings(what: str, foods: list[str], probe: AnyProbe) -> str:
    named = foods[0] if len(foods) == 1 else f"{', '.join(foods[:-1])} and {foods[-1]}"
    if isinstance(probe, FoodProbe):
        verb = "contain" if len(foods) > 1 or is_many(named) else "contains"
        return f"That is {what}." if what == named else f"{named[:1].upper()}{named[1:]} {verb} {what}."
    return f"The dish contains {what}." if named == what else f"The dish contains {what}, from {named}."


_BASIS = {"100g": "100 g", "100kcal": "100 kcal", "portion": "portion"}


def _threshold(
    condition: Condition | None, answer: Reply, probe: AnyProbe, register: Register, nutrient: str
) -> Threshold | None:
    """The threshold that decided: of a group the first part that answers as the whole does."""
    if isinstance(condition, Group):
        same = (p for p in condition.parts if evaluate(p, probe, register.references, nutrient).answer == answer)
        return _threshold(next(same, condition.parts[0]), answer, probe, register, nutrient)
    return condition if isinstance(condition, Threshold) else None


def composition(found: Estimate) -> tuple[SourceRef, ...]:
    """Where a figure out of the food table comes from."""
    return tuple(SourceRef(source, "composition", "read") for source in dict.fromkeys(found.sources))


def source_held(nutrient: str, share: float, probe: AnyProbe, register: Register) -> Reply:
    """Whether the food is a source of a vitamin or mineral: ``share`` percent of the NRV per 100 g."""
    day = register.references.amount("EU NRV", nutrient)
    found = probe.measure(nutrient, "100g")
    return "unknown" if day is None or found is None else at_least(found, day * share / 100)


__all__ = ["DishProbe", "composition", "computed", "nutrient_of", "source_held"]
