"""What a child is said to need in a day, against the reference intakes: "toddlers need 7 mg of iron a day"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.claims.conditions import short, show
from spoonproof.claims.judging.bounds import bound_of
from spoonproof.claims.judging.content import composition, nutrient_of
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.probes import AnyProbe, DishProbe, FoodProbe, key_of
from spoonproof.claims.judging.quantity import spread_over, stated
from spoonproof.claims.judging.reading import around
from spoonproof.claims.judging.spoonfuls import level
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.number_words import number_of
from spoonproof.claims.wording import nutrient_name
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim
from spoonproof.model.finding import SourceRef
from spoonproof.model.need import Need
from spoonproof.model.numbers import Estimate, Numbers
from spoonproof.model.record import replace

_NEEDED = re.compile(
    r" (?:needs?|requires?|recommended|should (?:get|have|be getting|take)|rda|ought to (?:get|have)) "
)
_TODDLERS = re.compile(r" (?:toddlers?|one year olds?|two year olds?|(?:aged? )?(?:one|1) to (?:three|3)|1 3 years?) ")
_BABIES = re.compile(r" (?:bab(?:y|ies)|infants?) ")
_DENIED = re.compile(r" (?:not|never|no|nobody|nothing|hardly|[a-z]+n't|needn't) ")
_IU_A_UG = 40.0
"""International units of vitamin D in a microgram."""
_NEAR = 0.1
"""How far from a reference value a rounded one may be said ("about 7")."""
_FAR = 2.0
"""Beyond the reference values by this factor no authority's can be meant: they differ by less."""
_TOO_YOUNG = 7
"""Months: under it no authority gives a value for what is eaten beside milk."""


def daily_need(claim: Claim, months: int, context: Context) -> Verdict | None:
    """The verdict on a day's need; None where that is not what the number says."""
    number, nutrient = claim.number, nutrient_of(claim)
    words = plain(around(claim))
    said_so = (
        _NEEDED.search(words) and spread_over(words) != "week" and (_TODDLERS.search(words) or _BABIES.search(words))
    )
    if number is None or not nutrient or nutrient == "salt" or context.needs is None or not said_so:
        return None
    if nutrient == "sodium_mg" and " salt " in words and " sodium " not in words:
        return None  # the most salt in a day is what is known, and not how much would do
    if claim.foods or _DENIED.search(words):
        return None  # "salmon brings the 10 micrograms", "babies don't need 10 micrograms": more than what is needed
    if number.unit.lower() == "iu" and nutrient == "vitamin_d_ug":
        number = replace(number, value=number.value / _IU_A_UG, high=number.high / _IU_A_UG, unit="ug")
    said = stated(number, nutrient, words)
    if said is None or bound_of(claim):
        return None
    child = 24 if _TODDLERS.search(words) and months < 12 else max(months, _TOO_YOUNG)
    needs = context.needs(key_of(nutrient), child)
    if not needs:
        return None
    refs = tuple(SourceRef(need.source, f"{need.authority}, {need.band}") for need in needs)
    told = ", ".join(f"{short(need.value)} {need.unit} ({need.authority}, {need.band})" for need in needs)
    right = any(_meets(said.low, said.high, need) for need in needs)
    steps = [f"a day's need of {nutrient_name(nutrient)} at {child} months: {told}"]
    if right:
        return Verdict("true", f"Reference intake a day: {told}.", None, refs, steps=steps)
    wording = f"about {short(needs[0].value)} {needs[0].unit} {nutrient_name(nutrient)} a day"
    values = [need.value for need in needs]
    if said.high * _FAR < min(values) or said.low > max(values) * _FAR:
        return Verdict("false", f"Reference intake a day: {told}.", None, refs, wording, harm=1, steps=steps)
    why = f"Reference intake a day: {told}. Other authorities differ: say whose figure it is."
    return Verdict("unproven", why, None, refs, wording, harm=1, steps=steps)


_SHARE = re.compile(
    r" (?:(?:(a|one|two|three|four) )?(half|thirds?|quarters?|fifths?|tenths?|most of|all of|all)"
    r"|([0-9]{1,3}) ?(?:%|percent|per cent))(?= )"
)
_A_DAYS = re.compile(r" (?:day|daily|day's|needs?) ")
_SHARES = {"half": 1 / 2, "third": 1 / 3, "quarter": 1 / 4, "fifth": 1 / 5, "tenth": 1 / 10}
_SHARES |= {"most of": 1 / 2, "all of": 1.0, "all": 1.0}
_PORTION = re.compile(r" (?:portion|serving|helping|bowl|bowlful) ")
_ROUNDED = 1.25
"""How far from the computed share a round one ("about a third") may lie."""


def share_of_day(claim: Claim, probe: AnyProbe, context: Context) -> Verdict | None:
    """The verdict on a portion of the dish that is said to bring a share of a baby's day: "about a third of her folate
    for the day". None where it says no such thing, or who is meant is no child."""
    words, nutrient = plain(around(claim)), nutrient_of(claim)
    said = next(reversed(list(_SHARE.finditer(plain(claim.quote)))), None)  # the one before its own nutrient
    child = _BABIES.search(words) or _TODDLERS.search(words) or _CHILDS.search(words)
    portion = isinstance(probe, DishProbe) and _PORTION.search(words) and _A_DAYS.search(words)
    if said is None or not (child and portion) or not nutrient or context.needs is None or _DENIED.search(words):
        return None
    part = (said[2] or "").removesuffix("s")
    share = float(said[3]) / 100 if said[3] else _SHARES[part] * (number_of(said[1] or "one") or 1.0)
    least = bound_of(claim) == "least" or part.startswith(("most", "all"))
    needs = context.needs(key_of(nutrient), max(context.ages[0], _TOO_YOUNG))
    found = probe.measure(nutrient, "portion")
    return _of_portion(nutrient, share, least, found, needs) if needs and found is not None else None


def _of_portion(nutrient: str, share: float, least: bool, found: Estimate, needs: Sequence[Need]) -> Verdict:
    """Whether a portion with ``found`` brings that share of a day by these needs, or at ``least`` that much."""
    told = "; ".join(
        f"{found.low / n.value * 100:.0f} to {found.high / n.value * 100:.0f} %"
        f" of {short(n.value)} {n.unit} ({n.authority}, {n.band})"
        for n in needs
    )
    refs = tuple(SourceRef(need.source, f"{need.authority}, {need.band}") for need in needs)
    why = f"A portion brings {show(found)} {nutrient_name(nutrient)}, {told}."
    steps = [f"{nutrient_name(nutrient)} in a portion as a share of a day: {told}"]
    asked = [(need, share * need.value) for need in needs]
    if least:
        fits = [need for need, amount in asked if amount <= found.low]
    else:
        near = [need for need, amount in asked if found.low / _ROUNDED <= amount <= found.high * _ROUNDED]
        fits = near if found.high <= _FAR * found.low else []
    if fits:
        add = "" if len(fits) == len(needs) else f"whose figure it is ({fits[0].authority})"
        return Verdict("true", why, None, refs, None, add, steps=steps)
    below = all(found.high * _ROUNDED < amount for _, amount in asked)
    above = not least and all(found.low > amount * _ROUNDED for _, amount in asked)
    wording = f"{told.split(';')[0]} in a portion"
    return Verdict("false" if below or above else "unproven", why, None, refs, wording, harm=1, steps=steps)


def day_in_a_piece(claim: Claim, probe: AnyProbe, numbers: Numbers | None, context: Context) -> Verdict | None:
    """False where one piece, spoon or portion is said to bring a whole day's need and brings not half of the least that
    any authority gives a child: "one blueberry has a full day's vitamin C"; None for all else."""
    words, nutrient = plain(around(claim)), nutrient_of(claim)
    if numbers is None or context.needs is None or not nutrient or not _WHOLE_DAY.search(words) or _PART.search(words):
        return None
    found, what = _in_one(claim, probe, numbers, nutrient)
    if found is None:
        return None
    needs = [
        need for months in _CHILDREN for need in context.needs(key_of(nutrient), months) if need.unit == found.unit
    ]
    least = min(needs, key=lambda need: need.value, default=None)
    if least is None or found.high * _FAR >= least.value:
        return None
    name = nutrient_name(nutrient)
    why = (
        f"{what[:1].upper()}{what[1:]} brings {show(found)} {name}; the least that any authority gives a child for a "
        f"day is {short(least.value)} {least.unit} ({least.authority}, {least.band})."
    )
    refs = (SourceRef(least.source, f"{least.authority}, {least.band}"), *composition(found))
    return Verdict("false", why, None, refs, harm=1, steps=[f"a day's {name} in {what}: {why}"])


_CHILDREN = (7, 12, 24)
_WHOLE_DAY = re.compile(
    r" (?:(?:full|whole|entire|complete) (?:day's|days|daily)|day's (?:worth|supply|need|needs|dose|ration|share)"
    r"|(?:full|whole|entire) day of|for (?:the|a|one) (?:full|whole|entire) day"
    r"|all (?:of )?(?:the|her|his|their|your|its) (?:[a-z0-9]+ ){1,3}?"
    r"(?:(?:she|he|they|you|it|baby|babies|toddlers?|kids|children|a baby|a toddler|a child) "
    r"(?:needs?|requires?) )?(?:in|for|per|of) (?:a|the|one|each|that) day) "
)
_PART = re.compile(r" (?:part|half|third|quarter|fifth|tenth|some|most|much|percent|towards|bit|fraction|share) of ")
_ONE = re.compile(r" (?:a|an|one|each|every|single|per) (?:single |whole |little |small |tiny |mere |lone )?$")
_COUNTED_OUT = re.compile(r" (slice|handful) of ")
_NEAR_IT = 24
"""Characters before a food in which what it is measured in stands."""


def _in_one(claim: Claim, probe: AnyProbe, numbers: Numbers, nutrient: str) -> tuple[Estimate | None, str]:
    """What one of the food brings at the most, and what that one is: a portion of a dish, a piece, spoon or cup of a
    food. None where no table has its weight: an unlisted fruit may be as large as a melon."""
    if isinstance(probe, DishProbe):
        return probe.measure(nutrient, "portion"), "a portion"
    if not isinstance(probe, FoodProbe) or not claim.subjects or probe.by_carton(nutrient):
        return None, ""
    text, first = claim.passage.text, plain(claim.subjects[0]).strip()
    before = plain(text[max(0, claim.start - 30) : claim.end]).partition(f" {first} ")[0] + " "
    near = before[-_NEAR_IT:]
    out = _COUNTED_OUT.search(near)
    held = level(near) if " of " in near and out is None else None
    unit = out[1] if out else held.measure if held else ""
    per_100g = numbers.food(probe.food, key_of(nutrient), "100g")
    if per_100g is None or not (unit or _ONE.search(before)):
        return None, ""
    grams = numbers.unit_grams(probe.food, _UNIT_IDS.get(unit, unit) or "piece")
    if grams is None and held is None:
        return None, ""
    most = grams.high * (held.number if held else 1.0) if grams is not None else held.heaviest_g if held else 0.0
    found = replace(per_100g, amount=per_100g.amount * most / 100, low=0.0, high=per_100g.high * most / 100)
    if held and held.number > 1:
        return found, f"{held.number:g} {unit}s of {first}"
    return found, f"a {unit} of {first}" if unit else f"one {first}"


_UNIT_IDS = {"teaspoon": "tsp", "tablespoon": "tbsp"}
_CHILDS = re.compile(r" (?:baby's|toddler's|child's|her|his|their|she|he) ")


def _meets(low: float, high: float, need: Need) -> bool:
    return low * (1 - _NEAR) <= need.value <= high * (1 + _NEAR)
