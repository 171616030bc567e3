"""A stated number against the computed range, with the tolerance of label guidance; percentages by their reference."""

from __future__ import annotations

import re

from spoonproof.claims.conditions import show, spoken
from spoonproof.claims.judging.bounds import bound_of, within
from spoonproof.claims.judging.content import nutrient_of
from spoonproof.claims.judging.probes import AnyProbe, FoodProbe, NoProbe, key_of
from spoonproof.claims.judging.reading import around, clause
from spoonproof.claims.judging.spoonfuls import beyond_a_spoon
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.number_words import number_of
from spoonproof.claims.references import Tolerance
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name
from spoonproof.claims.words import has_any, has_word, plain
from spoonproof.model.claim import Claim, Quantity, Truth
from spoonproof.model.finding import SourceRef
from spoonproof.model.numbers import Estimate, Numbers
from spoonproof.model.record import NamedTuple, replace

_TO_MG = {"g": 1000.0, "mg": 1.0, "ug": 0.001, "µg": 0.001, "mcg": 0.001}
_TO_KCAL = {"kcal": 1.0, "cal": 1.0, "kj": 1 / 4.184}
_WIDE = 2.0
"""A computed range whose top is more than this many times its bottom settles nothing."""
_FAR = 1.5
"""Beyond the tolerance by this factor a stated number is wrong whatever the tolerance: the tolerances
here are recalled, and a recalled figure makes no error."""
_COOKED = ("cooked", "boiled", "steamed", "simmered", "porridge")
_PER_100G = re.compile(
    r" (?:per|in|in every|in each|to|for every) (?:100|a hundred|one hundred) ?(?:g|gr|grams?) "
    r"|^ (?:100|a hundred|one hundred) ?(?:g|grams?) of "
)
_COMES_FROM = re.compile(
    r" (?:half|most|all|much|nearly all|a third|a quarter|a fifth|two thirds|three quarters|\d+ percent) of "
    r"(?:that|it|this|them|which|those) (?:comes?|is|are|being|coming) from "
)
"""What a statement of an amount may add on where it comes from: "and a third of that comes from the peas"."""
_EACH_TIME = re.compile(r" (?:a|per|each|every) (?:day|week) | (?:daily|weekly) ")
_SAID = {"least": "at least ", "most": "at most ", "": ""}
_SAME = {
    "100ml": "100 ml",
    "100g": "100 g",
    "100 gram": "100 g",
    "serving": "portion",
    "bowl": "portion",
    "100kcal": "100 kcal",
}
_UNITS = {"spoonful": ("spoonful", "tbsp"), "glass": ("glass", "cup"), "ounce": ("ounce", "oz")}
_REFERENCE_WORDS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("EU baby-food NRV", ("baby food nrv", "infant nrv", "baby nrv", "2006 125")),
    ("US DV infants", ("dv for infants", "daily value for infants", "infant dv", "infant daily value")),
    ("US DV 1-3 years", ("dv for toddlers", "daily value for toddlers", "toddler dv", "1 to 3 years", "1-3 years")),
    ("EU NRV", ("nrv", "adult nrv", "adult's nrv", "reference intake for adults", "adult reference intake")),
    ("US DV adults", ("dv", "daily value", "adult dv")),
)


class Said(NamedTuple):
    """A stated amount in the unit of the nutrient key."""

    low: float
    high: float


def stated(number: Quantity, nutrient: str, words: str) -> Said | None:
    """The number in the nutrient key's unit; None when the units don't go together."""
    unit = number.unit.lower()
    high = max(number.value, number.high)
    if nutrient == "energy_kcal":
        factor = _TO_KCAL.get(unit)
    else:
        to = _TO_MG.get(nutrient.rsplit("_", 1)[-1])
        source = _TO_MG.get(unit)
        factor = source / to if to and source else None
        if factor and nutrient == "sodium_mg" and has_word(words, "salt") and not has_word(words, "sodium"):
            factor /= 2.5  # salt is sodium x 2.5 (Reg. 1169/2011 Annex I)
    return None if factor is None else Said(number.value * factor, high * factor)


def spread_over(words: str) -> str:
    """What an amount is said to be for, in ``words`` as ``plain`` gives them: "day", "week", or "" for neither."""
    said = _EACH_TIME.findall(words)
    return "" if not said else "day" if any("da" in each for each in said) else "week"


def number_in(claim: Claim) -> Quantity | None:
    """The amount that a statement of content states in its own words ("has 1.3 grams of protein"), None when none."""
    match = _STATED.search(claim.quote)
    if match is None:
        return None
    said = match[1].lower()
    value = number_of({"a": "one", "an": "one"}.get(said, said))
    if value is None:
        return None  # "1.500.2": nobody knows
    return Quantity(value, value, _UNIT_WORDS.get(match[2].lower(), match[2].lower()))


_STATED = re.compile(
    r"\b(\d{1,6}(?:[.,]\d{1,3}){0,2}|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty) ?"
    r"(grams?|g|milligrams?|mg|micrograms?|mcg|µg|kcal|calories)\b",
    re.IGNORECASE,
)
_UNIT_WORDS = {
    "gram": "g", "grams": "g", "milligram": "mg", "milligrams": "mg", "microgram": "ug", "micrograms": "ug",
    "calories": "kcal",
}  # fmt: skip


def _from_lower_end(claim: Claim, said: Said) -> Said:
    """The whole range where the claim holds its upper end alone: "about 9 to 14 g"."""
    text = claim.passage.text[max(0, claim.start - 24) : claim.end]
    match = _RANGE.search(text)
    lower = None if match is None else number_of(match[1])
    upper = None if match is None else number_of(match[2])
    if lower is None or not upper or not 0 < lower < upper:
        return said
    return Said(min(said.low, said.high * lower / upper), said.high)


_RANGE = re.compile(r"(\d{1,6}(?:\.\d{1,3})?) ?(?:to|-|–) ?(\d{1,6}(?:\.\d{1,3})?) ?[a-zµ%]")


def quantity(claim: Claim, probe: AnyProbe, numbers: Numbers | None, register: Register) -> Verdict:
    """The truth of a stated amount or percentage."""
    number, nutrient = claim.number, nutrient_of(claim)
    if not nutrient and claim.foods and spread_over(plain(claim.quote)):
        return Verdict(
            "unlisted", "How much of a food is right for a day is on no list here: bring the guidance.", None, ()
        )
    if number is None or not nutrient:
        what = "say the nutrient, the amount and per what"
        return Verdict("unproven", "What the number is of is not said.", None, _REFS, what)
    name = nutrient_name(nutrient)
    if number.unit in ("%", "percent"):
        return _percentage(claim, number, nutrient, probe, register)
    said = stated(number, nutrient, plain(claim.quote))
    if said is None:
        return Verdict("unproven", f"The unit does not go with {name}.", None, _REFS)
    said = _from_lower_end(claim, said)
    basis = _basis(claim, number, register)
    founds = _readings(claim, basis, nutrient, probe, numbers)
    cooked = not founds and has_any(plain(clause(claim)), _COOKED)
    held = _found("100 g", nutrient, probe, numbers, True).get("100 g") if cooked else None
    if not founds and (beyond := beyond_a_spoon(claim, nutrient, said.low, held and held[0].high)) is not None:
        return beyond
    if not founds:
        return Verdict("unproven", f"How much {name} that is cannot be computed from what is known here.", None, _REFS)
    bound = bound_of(claim)
    results = {
        one: within(bound, said.low, found) if bound else _against(said, found, grams, nutrient, register)
        for one, (found, grams) in founds.items()
    }
    steps = [
        f"{name} per {one}: stated {_SAID[bound]}{_in_words(said)} {founds[one][0].unit}, "
        f"computed {show(founds[one][0])} -> {truth} ({how})"
        for one, (truth, how) in results.items()
    ]
    # Where no basis is said, it holds if it holds for one way of reading it.
    best = next((one for one, (truth, _) in results.items() if truth == "true"), next(iter(results)))
    verdict = _as_read(claim, nutrient, best, results[best][0], founds[best], register)
    verdict.steps = steps
    if verdict.truth == "true" and not basis:
        verdict.wording, verdict.add = f"{_SAID[bound]}{claim.quote} (per {best})", f"say per what: per {best}"
    return verdict


_REFS = (SourceRef("eu-1169-2011", "Art 7(1); values stated must be right", "read"),)


def _in_words(said: Said) -> str:
    return f"{said.low:g}" if said.low == said.high else f"{said.low:g} to {said.high:g}"


def _readings(
    claim: Claim, basis: str, nutrient: str, probe: AnyProbe, numbers: Numbers | None
) -> dict[str, tuple[Estimate, float | None]]:
    """What it may be held against, by basis; scaled where a part of the food is spoken of ("half a banana")."""
    founds = _found(basis, nutrient, probe, numbers, has_any(plain(clause(claim)), _COOKED))
    share = _share_of(claim)
    if share is None:
        return founds
    word, part = share
    of = Estimate(part * 100, part * 100, part * 100, "g")
    return {
        f"{word} {one}": (_scaled(found, of), grams and grams * part)
        for one, (found, grams) in founds.items()
        if one != "100 g"
    }


def _as_read(
    claim: Claim, nutrient: str, basis: str, truth: Truth, held: tuple[Estimate, float | None], register: Register
) -> Verdict:
    """The verdict on an amount that is read per ``basis`` and held against an estimate with the grams it is for."""
    found, grams = held
    part = _COMES_FROM.search(plain(around(claim)))
    if truth == "true" and part is not None:
        why = f"How much of it comes from one food is not worked out here ({part[0].strip()})."
        return Verdict("unproven", why, None, _REFS)
    tolerance = _tolerance(nutrient, found, grams, register)
    refs = (*_REFS, *_sources(found), *((tolerance.ref,) if tolerance else ()))
    about = f"{nutrient_name(nutrient)} per {basis}"
    amount = f"{show(found)} {about}"
    # At the edge of what was worked out she can say what was; where the range is wide there is nothing to say.
    told = truth != "true" and (truth != "unproven" or found.high <= _WIDE * found.low)
    wording = f"about {spoken(found)} {about}" if told else None
    return Verdict(truth, f"Computed: {amount}.", None, refs, wording, harm=1)


def _basis(claim: Claim, number: Quantity, register: Register) -> str:
    """What the number is said of: as the finder read it, else by a measure named in its clause."""
    if number.basis:
        return _SAME.get(number.basis, number.basis)
    words = plain(clause(claim))
    if _PER_100G.search(words):
        return "100 g"
    for pair in register.words.get("measures", ()):
        word, _, unit = pair.partition(" = ")
        if has_word(words, word):
            return unit
    # "An egg has six grams": one of it is what the number is said of.
    before = plain(claim.passage.text[max(0, claim.start - 12) : claim.start] + claim.quote)
    first = plain(claim.subjects[0]).strip() if claim.subjects else ""
    if first and any(has_word(before, f"{one} {first}") for one in ("a", "an", "one", "each", "every")):
        return "piece"
    return ""


def _share_of(claim: Claim) -> tuple[str, float] | None:
    """The part of its food that it speaks of: "half a banana has ..."; None for the whole."""
    if not claim.subjects:
        return None
    before = plain(claim.passage.text[max(0, claim.start - 24) : claim.start] + claim.quote)
    first = plain(claim.subjects[0]).strip()
    for word, share in (("half", 0.5), ("quarter", 0.25), ("third", 1 / 3)):
        if re.search(rf" {word} (?:of )?(?:an? |the |one )?{re.escape(first)} ", before):
            return word, share
    return None


def _found(
    basis: str, nutrient: str, probe: AnyProbe, numbers: Numbers | None, cooked: bool = False
) -> dict[str, tuple[Estimate, float | None]]:
    """Computed amounts by basis, each with the grams it is for; where none is said, every likely reading.

    ``cooked``: it is said of the cooked food, which a dry one's figures say nothing of.
    """
    found: dict[str, tuple[Estimate, float | None]] = {}
    if numbers is None or isinstance(probe, NoProbe):
        return found
    food = probe.food if isinstance(probe, FoodProbe) else ""
    per_100g = numbers.food(food, key_of(nutrient), "100g") if food else probe.measure(nutrient, "100g")
    if isinstance(probe, FoodProbe) and probe.by_carton(nutrient):
        return found
    if cooked and isinstance(probe, FoodProbe) and probe.small_or_dry():
        boiled = (numbers.food(name, key_of(nutrient), "100g") for name, _ in probe.cooked_names())
        per_100g = next((found for found in boiled if found is not None), None)
    if basis == "portion" or (basis == "" and not food):
        part, grams = probe.measure(nutrient, "portion"), numbers.portion_grams()
        if part is not None:
            found["portion"] = (part, grams.amount if grams else None)
    if basis == "100 kcal" and (each := probe.measure(nutrient, "100kcal")) is not None:
        found["100 kcal"] = (each, None)
    if basis == "batch" and not food and (whole := numbers.dish(key_of(nutrient), "batch")) is not None:
        found["batch"] = (whole, None)
    if per_100g is None:
        return found
    if basis == "100 g":
        found["100 g"] = (per_100g, 100.0)
    elif basis == "100 ml":
        if (one := numbers.unit_grams(food, "ml")) is not None:
            grams = replace(one, amount=one.amount * 100, low=one.low * 100, high=one.high * 100)
            found["100 ml"] = (_scaled(per_100g, grams), grams.amount)
    elif basis not in ("portion", "100 kcal", "batch", "day", "reference"):
        for unit in _UNITS.get(basis, (basis,)) if basis else ("piece",) if food else ():
            grams = numbers.unit_grams(food, unit)
            if grams is not None:
                found[unit] = (_scaled(per_100g, grams), grams.amount)
                break
        # Nobody means 100 g of a dry food or a spice.
        dry = isinstance(probe, FoodProbe) and probe.small_or_dry()
        if basis == "" and food and not dry:
            found["100 g"] = (per_100g, 100.0)
    return found


def _scaled(per_100g: Estimate, grams: Estimate) -> Estimate:
    return Estimate(
        per_100g.amount * grams.amount / 100,
        per_100g.low * grams.low / 100,
        per_100g.high * grams.high / 100,
        per_100g.unit,
        min(per_100g.coverage, grams.coverage),
        (*per_100g.sources, *grams.sources),
        (*per_100g.assumed, *grams.assumed),
    )


def _tolerance(nutrient: str, found: Estimate, grams: float | None, register: Register) -> Tolerance | None:
    per_100g = found.amount / grams * 100 if grams else found.amount
    return register.references.tolerance(nutrient, per_100g)


def _against(said: Said, found: Estimate, grams: float | None, nutrient: str, register: Register) -> tuple[Truth, str]:
    tolerance = _tolerance(nutrient, found, grams, register)
    if tolerance is None:
        down, up = 0.2 * said.low, 0.2 * said.high
    elif tolerance.percent:
        down, up = -tolerance.low / 100 * said.low, tolerance.high / 100 * said.high
    else:
        share = (grams or 100.0) / 100
        down, up = -tolerance.low * share, tolerance.high * share
        # An absolute tolerance meant for labels would swallow a small number whole.
        down, up = min(down, 0.35 * said.low), min(up, 0.35 * said.high)
    low, high = said.low - down, said.high + up
    if found.low >= low and found.high <= high:
        return "true", "within the tolerance"
    if found.high < low or found.low > high:
        far = found.high * _FAR < low or found.low > high * _FAR
        return ("false", "far outside") if far else ("overstated", "outside the tolerance")
    if found.high == float("inf") or found.high > _WIDE * max(found.low, 1e-9):
        return "unproven", "the computed range is too wide to say"
    middle = said.low <= found.high and said.high >= found.low
    return ("true", "inside the computed range") if middle else ("unproven", "at the edge of the computed range")


def _percentage(claim: Claim, number: Quantity, nutrient: str, probe: AnyProbe, register: Register) -> Verdict:
    words = plain(claim.quote)
    name = nutrient_name(nutrient)
    refs = (SourceRef("eu-1169-2011", "Annex XIII; Art 32(4)", "read"),)
    found = probe.measure(nutrient, "100g" if number.basis in ("100g", "100 g") else "portion")
    if found is None:
        return Verdict(
            "unproven",
            f"How much {name} a portion brings is not known.",
            None,
            refs,
            "name the amount and the reference",
        )
    shares: dict[str, Estimate] = {}
    for reference in register.references.lists():
        day = register.references.amount(reference, nutrient)
        if day:
            shares[reference] = Estimate(
                found.amount / day * 100, found.low / day * 100, found.high / day * 100, "%", found.coverage
            )
    steps = [f"{show(found)} {name}: {show(share)} of {reference}" for reference, share in shares.items()]
    named = next((ref for ref, said in _REFERENCE_WORDS if ref in shares and has_any(words, said)), None)
    offer = "; ".join(f"{share.amount:.0f} % of the {reference}" for reference, share in shares.items())
    if named is None:
        if any(_near(number, share) for share in shares.values()) or not shares:
            return Verdict(
                "unproven", f"A percentage must name its reference: a portion brings {offer}.", None, refs,
                f"a portion brings {offer}", steps=steps,
            )  # fmt: skip
        wide = any(share.high == float("inf") for share in shares.values())
        return Verdict(
            "unproven" if wide else "false", f"By no reference is it so: a portion brings {offer}.", None, refs,
            f"a portion brings {offer}", harm=1, steps=steps,
        )  # fmt: skip
    share = shares[named]
    ref = register.references.ref(named, nutrient)
    all_refs = (*refs, *((ref,) if ref else ()), *_sources(found))
    bound = bound_of(claim)
    most = Said(number.value, max(number.value, number.high))
    truth, _ = within(bound, number.value, share) if bound else _against(most, share, None, "", register)
    wording = None if truth == "true" else f"{share.amount:.0f} % of the {named}"
    return Verdict(
        truth, f"A portion brings {show(share)} of the {named}.", None, all_refs, wording, harm=1, steps=steps
    )


def _near(number: Quantity, share: Estimate) -> bool:
    return share.low * 0.8 <= max(number.value, number.high) and number.value <= share.high * 1.2


def _sources(found: Estimate) -> tuple[SourceRef, ...]:
    return tuple(SourceRef(source, "composition", "read") for source in dict.fromkeys(found.sources))
