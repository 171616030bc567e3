"""What the figures of a sentence settle among themselves, with no food's table: salt by its sodium, the energy of a
gram, an amount out of the amount per 100, and the share of its weight that a food lost."""

from __future__ import annotations

import re

from spoonproof.claims.judging.reading import around, place_of
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.number_words import number_of
from spoonproof.claims.words import has_word, plain
from spoonproof.model.claim import Claim
from spoonproof.model.finding import SourceRef

_N = r"(\d{1,6}(?:[.,]\d{1,3})?|an?|one|two|three|four|five|six|seven|eight|nine|ten|half)"
_UNIT = r"(g|grams?|mg|milligrams?|ug|µg|mcg|micrograms?|kcal|calories)"
_SALT = re.compile(
    rf"\b{_N} ?{_UNIT} (?:of )?(salt|sodium) (?:[a-z]+ ){{1,4}}?{_N} ?{_UNIT} (?:of )?(salt|sodium)\b(?! per)"
)
_PER_GRAM = re.compile(r"\b(?:calories|kcal)\b.{0,12}?\b(?:an?|per|each|every|one|1) ?(?:grams?|g)\b")
_GIVES = (
    r"(?: (?:an?|each|both|all|has|have|carry|carries|holds?|gives?|brings?|is|are|about|contains?)){0,3} "
    rf"{_N}\b(?! ?(?:g|grams?|mg|%))"
)
_FUEL = r"(?:proteins?|carbohydrates?|carbs|sugars?|fats?|fibre|alcohol)"
_FUELS = re.compile(rf"\b({_FUEL}(?:(?:,| and|, and) {_FUEL}){{0,3}}){_GIVES}")
_PER_100 = re.compile(
    rf"\b(?:at|with|if [a-z ]{{1,30}}) {_N} ?{_UNIT}\b[a-z ]{{0,30}}? (?:per|in|in every|for every) (?:100|a hundred) ?"
    rf"(g|grams?|ml)\b[a-z, ]{{1,24}}?\b(\d{{1,5}}) ?-?(g|grams?|ml)\b[a-z ]{{0,30}}? "
    rf"(?:gives?|has|holds?|brings?|makes|means|contains?|comes to|is)"
    rf"(?: (?:you|him|her|them|about|around)){{0,2}} {_N} ?{_UNIT}\b"
)
_SHRUNK = re.compile(
    r"\bfrom (\d{1,5})(?: ?g| grams?)? (?:down )?to (\d{1,5}) ?(?:g|grams?) (?:[a-z]+ ){0,4}?(?:lost|lose|loses) "
    r"(?:about )?(?:(a|one|two|three) )?(half|quarters?|thirds?|fifths?|\d{1,2}(?= ?(?:%|percent|per cent)))"
)
_KCAL = {"prot": 4.0, "carb": 4.0, "suga": 4.0, "fats": 9.0, "fat": 9.0, "fibr": 2.0, "alco": 7.0}
"""Kilocalories in a gram (Reg. 1169/2011 Annex XIV)."""
_MG = {"g": 1000.0, "m": 1.0, "u": 0.001, "µ": 0.001}
_PARTS = {"half": 0.5, "quarter": 0.25, "third": 1 / 3, "fifth": 0.2}
_NEAR = 0.03
"""What rounding may make of a figure."""
_LEAD = 12
"""Characters of a claim before the figures, such as the name that leads up to them."""
_ANNEX_I = SourceRef("fsa-salt-sodium", "salt = sodium x 2.5", "read")
_ANNEX_XIV = SourceRef("eu-1169-2011", "Annex XIV: energy factors", "read")
_RIGHT = SourceRef("eu-1169-2011", "Art 7(1); values stated must be right", "read")


def by_its_own_figures(claim: Claim) -> Verdict | None:
    """The verdict on figures that settle one another; None where they do not, or where a food's own are asked for."""
    if claim.polarity not in ("asserts", "hedges"):
        return None
    start, end = place_of(claim)
    said = claim.passage.text[start:end].lower()
    within = claim.start - start, claim.end - start
    if (salt := _SALT.search(said)) and salt[3] != salt[6]:
        return _salt(salt) if _of(within, salt.start(), salt.end()) else None
    fuels = [*_FUELS.finditer(said)]
    if fuels and (gram := _PER_GRAM.search(said)):
        own = _of(within, fuels[0].start(), max(gram.end(), fuels[-1].end()))
        return _fuels([(one[1], one[2]) for one in fuels]) if own else None
    if (shrunk := _SHRUNK.search(said)) and claim.kind == "process":
        return _shrunk(shrunk)
    per_100 = _PER_100.search(said)
    own = per_100 is not None and _of(within, per_100.start(), per_100.end())
    if (
        per_100
        and own
        and not any(has_word(plain(around(claim)), f"{food.replace('-', ' ')}*") for food in claim.foods)
    ):
        return _per_100(per_100)
    return None


def _of(within: tuple[int, int], start: int, end: int) -> bool:
    """Whether a claim lies in what was worked out: what the sentence says behind it is another figure."""
    return start - _LEAD <= within[0] and within[1] <= end


def shrinks(quote: str) -> bool:
    """Whether a food is weighed before and after: that it lost weight is no promise of slimming."""
    return _SHRUNK.search(quote.lower()) is not None


def _value(said: str) -> float:
    return 1.0 if said in ("a", "an") else number_of(said) or 0.0


def _mg(said: str, unit: str) -> float:
    key = "u" if unit.startswith(("mic", "mcg")) else "m" if unit.startswith("mil") else unit[0]
    return _value(said) * _MG.get(key, 1.0)


def _salt(found: re.Match[str]) -> Verdict:
    first, second = _mg(found[1], found[2]), _mg(found[4], found[5])
    right = first / 2.5 if found[3] == "salt" else first * 2.5
    return _held(second, right, f"{right / 1000:.3g} g {found[6]}", _ANNEX_I)


def _fuels(found: list[tuple[str, str]]) -> Verdict:
    named = [(fuel, _value(number)) for fuels, number in found for fuel in re.findall(_FUEL, fuels)]
    wrong = next(((fuel, said) for fuel, said in named if said != _KCAL[fuel[:4]]), named[0])
    right = _KCAL[wrong[0][:4]]
    return _held(wrong[1], right, f"{right:g} kcal in a gram of {wrong[0]}", _ANNEX_XIV)


def _per_100(found: re.Match[str]) -> Verdict | None:
    if found[3][0] != found[5][0] or found[2][0] != found[7][0]:
        return None
    right = _value(found[1]) * _value(found[4]) / 100
    return _held(_value(found[6]), right, f"{right:g} {found[2]}", _RIGHT)


def _shrunk(found: re.Match[str]) -> Verdict:
    before, after = _value(found[1]), _value(found[2])
    part = _PARTS.get(found[4].rstrip("s"))
    stated = _value(found[4]) / 100 if part is None else part * _value(found[3] or "a")
    right = 1 - after / max(before, 1.0)
    return _held(stated, right, f"{right:.0%} of its weight", _RIGHT)


def _held(stated: float, right: float, amount: str, ref: SourceRef) -> Verdict:
    """A figure against what the others make of it."""
    true = abs(stated - right) <= _NEAR * abs(right)
    step = f"by its own figures: {amount}, stated {stated:g} where {right:g} is right"
    why = f"Computed from its own figures: {amount}."
    wording = None if true else amount
    return Verdict("true" if true else "false", why, None, (ref,), wording, harm=1, stanced=True, steps=[step])
