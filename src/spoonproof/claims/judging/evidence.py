"""The truth of an entry that says what was shown, and of an effect that was: the food must bring enough of it, and the
words may say no more than was shown."""

from __future__ import annotations

from spoonproof.claims.conditions import Condition, Threshold, evaluate
from spoonproof.claims.entries import Entry, Key
from spoonproof.claims.judging.content import nutrient_of, source_held
from spoonproof.claims.judging.polarity import unneeded
from spoonproof.claims.judging.probes import AnyProbe, DishProbe, FoodProbe, NoProbe
from spoonproof.claims.judging.reading import ADULT_MONTHS, around, said_before
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.wording import nutrient_name, resolve
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim
from spoonproof.model.record import replace

EFFECT_KINDS = frozenset({"function", "disease", "general-benefit"})


def by_evidence(claim: Claim, key: Key, entry: Entry, probe: AnyProbe, register: Register) -> Verdict:
    assert entry.truth is not None and entry.truth != "computed"
    wordings = [wording for wording in entry.wording if _fits(wording, claim, probe, register)]
    wording = resolve(wordings, register, nutrient_of(claim), _absent(probe, register))
    verdict = Verdict(
        entry.truth, entry.why, entry, entry.refs, wording, entry.add, entry.harm, evidence=entry.truth == "unproven"
    )
    # An entry that knows of the "no" knows of little needed, too: "babies only need a very small amount of salt".
    too_much = has_any(key.words, (*register.words.get("overclaims", ()), *register.words.get("absolute", ())))
    taken_back = entry.negation and (claim.polarity in ("denies", "refutes") or not too_much)
    if entry.truth == "true" and claim.kind in EFFECT_KINDS and not entry.stance and not taken_back:
        _effect(claim, key, entry, probe, register, verdict)
    elif entry.truth in ("unproven", "overstated") and claim.kind == "function" and verdict.wording is None:
        verdict.wording = nutrient_wording(key, probe, register)
    return verdict


def _fits(wording: str, claim: Claim, probe: AnyProbe, register: Register) -> bool:
    """Whether a wording may be offered: the law's words on a nutrient only where the food brings enough of it, or
    where the nutrient itself is what is spoken of."""
    if wording.startswith("made without "):
        names = [name for name, said in register.allergens.words.items() if has_any(plain(wording), sorted(said))]
        return not any(probe.bringing(name) for name in names)
    if not wording.startswith("authorised:"):
        return True
    behind = next((e for e in register.entries if any(wording in a.wording for a in e.allowed)), None)
    if behind is None or behind.condition is None or set(claim.nutrients) & set(behind.about):
        return True
    return evaluate(behind.condition, probe, register.references, nutrient_of(claim)).answer == "yes"


def _effect(claim: Claim, key: Key, entry: Entry, probe: AnyProbe, register: Register, verdict: Verdict) -> None:
    """An established effect: the food must bring the nutrient, and the verb may say no more than was shown."""
    authorised = next((w for a in entry.allowed for w in a.wording if w.startswith("authorised:")), "")
    if authorised:
        text = resolve([authorised], register)
        verdict.wording = text
        verdict.why = verdict.why or f"What is established: “{text}”."
    carried = bool(claim.foods) or claim.of_dish or isinstance(probe, DishProbe)
    alone = isinstance(probe, NoProbe) and bool(claim.nutrients) and not claim.foods and not claim.of_dish
    if entry.condition is not None and carried and not alone:
        condition = _for_a_drink(entry.condition, probe, register)
        result = evaluate(condition, probe, register.references, nutrient_of(claim))
        verdict.steps += result.steps
        name = nutrient_name(nutrient_of(claim)) if claim.nutrients else "it"
        if result.answer == "unknown":
            verdict.truth, verdict.wording = "unproven", None
            verdict.why = f"Whether the food brings enough {name} for this is not known. {verdict.why}"
            return
        if result.answer == "no":
            verdict.truth, verdict.wording = "overstated", None
            verdict.why = f"As eaten there is too little {name} in it to be credited with what {name} does."
            return
    if authorised and plain(verdict.wording or "").strip() in plain(around(claim)):
        return  # the law's own words say it just as it was shown
    said_of = plain(f"{claim.quote} {claim.audience or ''}").replace("'", " ")  # "babies' bowels"
    young = has_any(said_of, register.words.get("children", ()))
    adults = young and authorised and all(a.ages[0] >= ADULT_MONTHS for a in entry.allowed if a.wording)
    absolute = has_any(key.words, register.words.get("absolute", ()))
    advised = any(a.guidance and (a.answer == "yes" or claim.kind == "disease") for a in entry.allowed)
    strong = absolute or (overclaims(claim, key, register) and not advised)  # a warning may be as strong as it likes
    if claim.polarity in ("denies", "refutes"):
        _denied_effect(claim, key, bool(adults), strong, verdict, register)
        return
    if adults:
        verdict.truth = "overstated"
        verdict.why = f"That was shown for people in general, and not for babies or children. {verdict.why}"
        verdict.steps.append("said of children, shown for people in general")
    if strong:
        verdict.truth = "overstated"
        verdict.why = f"The verb says more than was shown. {verdict.why}"
        verdict.steps.append(f"strength {claim.strength}: more than was shown")


def _denied_effect(claim: Claim, key: Key, adults: bool, strong: bool, verdict: Verdict, register: Register) -> None:
    """An established effect that is denied: to deny it whole ("does nothing for") is false, to deny that it "boosts" or
    "guarantees" is right. Where a plain verb is denied ("does not build"), or what was shown for adults is denied of
    children, nobody can say."""
    whole = unneeded(claim, register)
    if (whole or not strong) and not adults:
        return
    said = (*register.words.get("overclaims", ()), *register.words.get("absolute", ()))
    if not whole and strong and (has_any(key.words, said) or claim.strength in ("strong", "absolute")):
        verdict.truth = "overstated"
        verdict.why = f"The verb says more than was shown. {verdict.why}"
        verdict.steps.append(f"strength {claim.strength}: more than was shown")
        return
    verdict.truth, verdict.wording, verdict.evidence = "unproven", None, False
    verdict.why = f"That it does nothing of the kind is not shown. {verdict.why}"
    verdict.steps.append("an effect like this one is established, so its denial is not kept")


def _for_a_drink(condition: Condition, probe: AnyProbe, register: Register) -> Condition:
    """Of a vitamin or mineral a drink is a source with half of what food needs (Reg. 1169/2011 Annex XIII Part A 2)."""
    drink = isinstance(probe, FoodProbe) and probe.food in register.sets.get("drinks", frozenset())
    if not drink or not isinstance(condition, Threshold) or condition.share is None or condition.op != "at least":
        return condition
    return replace(condition, share=condition.share / 2)


def overclaims(claim: Claim, key: Key, register: Register) -> bool:
    """Whether the words say more than "contributes to" or "is needed for" would; a hedge takes one step back."""
    if has_any(key.words, register.words.get("overclaims", ())):
        return True
    verb = plain(said_before(claim)).split()[-1:]  # "kids need" and then "protein for their bones"
    mild = has_any(f" {' '.join(verb)}{key.words}", register.words.get("mild verbs", ()))
    if claim.strength in ("contains", "mild") or (mild and claim.strength == "plain"):
        return False
    return not (claim.polarity == "hedges" and claim.strength == "plain")


def nutrient_wording(key: Key, probe: AnyProbe, register: Register) -> str | None:
    """Authorised wording of a nutrient that the food is a source of, for the same effect; what it names comes first."""
    if not key.effect or isinstance(probe, NoProbe):
        return None
    words = key.near or key.words
    shown = (e for e in register.of_effect(key.effect) if e.truth == "true" and e.condition is not None)
    meant = [entry for entry in shown if not entry.said or has_any(words, entry.said)]
    for entry in sorted(meant, key=lambda entry: key.subjects.isdisjoint(entry.about)):
        wordings = [
            w
            for allowance in entry.allowed
            for w in allowance.wording
            if w.startswith("authorised:") and entry.ages[0] <= key.months
        ]
        nutrients = [item for item in entry.about if item.endswith(("_mg", "_ug"))]
        if wordings and nutrients and source_held(nutrients[0], 15, probe, register) == "yes":
            return resolve(wordings, register)
    return None


def _absent(probe: AnyProbe, register: Register) -> list[str]:
    """Listed allergens that the dish does not bring, where its foods are known."""
    listed = register.allergens.named("EU") if isinstance(probe, DishProbe) else ()
    return [allergen for allergen in listed if probe.contains(allergen) == "no"]
