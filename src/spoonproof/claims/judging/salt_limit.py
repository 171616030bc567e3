"""The most salt a child may have in a day, against the authority's limits: "no more than 2 g from one to three"."""

from __future__ import annotations

import re

from spoonproof.claims.judging.content import nutrient_of
from spoonproof.claims.judging.quantity import number_in, spread_over, stated
from spoonproof.claims.judging.reading import around
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim

_LIMIT = re.compile(
    r" (?:most|maximum|max|limit(?:ed)?|at most|less than|under|up to|below|ceiling|cap"
    r"|(?:no|not|never|[a-z]+n't)(?: [a-z']+){0,3} (?:more than|over|above|exceed)) "
)
_BABY = re.compile(
    r" (?:bab(?:y|ies)|infants?|(?:under|before) (?:one|1|12 months|twelve months|a year)|first (?:year|birthday)"
    r"|(?:[4-9]|1[01]|six|seven|eight|nine|ten|eleven) months?(?: olds?)?) "
)
_TODDLER = re.compile(
    r" (?:toddlers?|(?:one|1) (?:to|and|till|until) (?:three|3)|1 3(?: years?| year olds?)?"
    r"|(?:one|two|three|1|2|3) years? olds?|aged (?:one|two|1|2)) "
)
_OTHERWISE = re.compile(
    r" (?:adults?|grown ups?|mothers?|mums?|four|five|six years?|school|meal|portion|bowl|serving|week|add(?:s|ed|ing)?"
    r"|sprinkle[sd]?|season|pinch|at least|minimum|fine|treat) "
)
_NEEDED = re.compile(r" (?:needs?|requires?|should (?:have|get)|ought to (?:have|get)) ")
_LIMITS = (("salt-limit-under-one", 1.0), ("salt-limit-toddler", 2.0))
"""Grams of salt a day in the first year and from one to three years, with the entries that hold their source."""


def salt_limit(claim: Claim, register: Register) -> Verdict | None:
    """The verdict on a day's most salt; None where that is not what the number says, or where it says not for whom."""
    words = plain(around(claim))
    number, nutrient = (
        claim.number or number_in(claim),
        nutrient_of(claim) or ("salt" if " salt " in plain(claim.quote) else ""),
    )
    if number is None or nutrient not in ("salt", "sodium_mg") or claim.polarity not in ("asserts", "denies"):
        return None
    young, older = _BABY.search(words), _TODDLER.search(words)
    limit, needed = _LIMIT.search(words), _NEEDED.search(words)
    if bool(young) is bool(older) or spread_over(words) != "day" or _OTHERWISE.search(words) or not (limit or needed):
        return None
    said = stated(number, "sodium_mg", words)
    name, grams = _LIMITS[0 if young else 1]
    entry = register.get(name)
    if said is None or entry is None:
        return None
    sodium = grams * 1000 / 2.5  # salt is sodium x 2.5 (Reg. 1169/2011 Annex I)
    if needed and said.high <= sodium * (1 + _NEAR) and not (limit and said.high >= sodium * (1 - _NEAR)):
        return None  # what they need of it is on no list here; more than the most is needed by nobody
    steps = [f"the most salt in a day: stated {said.high / sodium * grams:.3g} g, the limit is {grams:g} g ({name})"]
    same = abs(said.high - sodium) <= sodium * _NEAR
    wording = None if same else entry.why
    verdict = Verdict("true", entry.why, entry, entry.refs, wording, harm=2, steps=steps, stanced=True)
    if not same:
        verdict.truth = "false" if said.high > sodium else "overstated"
    return verdict


_NEAR = 0.1
