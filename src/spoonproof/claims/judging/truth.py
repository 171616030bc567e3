"""Whether a claim is true: by the register's evidence, by computing, or by both."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.claims.conditions import Absent
from spoonproof.claims.entries import Entry, Key
from spoonproof.claims.judging.arithmetic import by_its_own_figures
from spoonproof.claims.judging.asking import is_this_dish
from spoonproof.claims.judging.comparing import comparison, says_no_more
from spoonproof.claims.judging.content import computed
from spoonproof.claims.judging.context import Context
from spoonproof.claims.judging.daily_need import daily_need, day_in_a_piece, share_of_day
from spoonproof.claims.judging.evidence import by_evidence, nutrient_wording
from spoonproof.claims.judging.frames import frames, led
from spoonproof.claims.judging.free_from import (
    all_absent,
    counted_among,
    for_the_allergic,
    listed_absent,
    listed_present,
    says_what_is_in_it,
    what_it_is,
)
from spoonproof.claims.judging.polarity import not_only, twice_turned, unneeded
from spoonproof.claims.judging.probes import AnyProbe
from spoonproof.claims.judging.quantity import number_in, quantity
from spoonproof.claims.judging.read_as import outdone_by_none
from spoonproof.claims.judging.reading import around, months_of, only_that
from spoonproof.claims.judging.said_next import taken_up_again
from spoonproof.claims.judging.salt_limit import salt_limit
from spoonproof.claims.judging.verdict import Verdict, denied
from spoonproof.claims.register import Register
from spoonproof.claims.wording import resolve
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim
from spoonproof.model.finding import SourceRef
from spoonproof.model.numbers import Numbers
from spoonproof.model.record import replace

_COMPARED = re.compile(
    r" (?:more|less|fewer|higher|lower|richer) (?:[a-z0-9']+ ){0,4}than "
    r"(?!\d|(?:an?|one|two|five|ten|half an?|the price of) "
    r"(?:pound|euro|dollar|quid|fiver|tenner|penny|minute|hour|coffee|takeaway))"
)
_MORE_OF_IT = re.compile(
    r" (?:contains?|has|have|holds?|brings?|gives?|provides?) (?:(?:far|much|even|way) )?(?:more|less|fewer) "
    r"(?:[a-z0-9]+ ){1,2}$"
)
"""What is held against a food that nobody names: "organic carrots contain more vitamin A"."""
_HARMS = ("harm*", "bad for", "hurt*", "damage*", "danger*", "unsafe", "toxic", "poison*")


def truth_of(
    claim: Claim,
    key: Key,
    matching: Sequence[Entry],
    probe: AnyProbe,
    numbers: Numbers | None,
    register: Register,
    context: Context,
) -> Verdict:
    """The verdict on what the sentence says, its polarity taken in (questions are judged as if asserted).

    ``matching``: the register's entries for ``key``, the most specific first."""
    verdict = _plain(claim, key, register.truth(key, matching), probe, numbers, register, context)
    staged = verdict.entry is not None and (bool(verdict.entry.stance) or _dismissed(claim, key, verdict.entry))
    framed = frames(claim, register) == 1
    if claim.polarity in ("denies", "refutes") and (not verdict.stanced or (framed and not staged)):
        # "There is no evidence that ..." says no more than that it was not shown.
        modest = has_any(plain(around(claim)), register.words.get("not shown", ()))
        # "It isn't proven that salt harms" denies a harm, and not that salt is healthy.
        harmless = claim.kind == "general-benefit" and has_any(plain(claim.quote), _HARMS)
        if verdict.truth == "overstated" and claim.kind == "function" and unneeded(claim, register):
            verdict.truth, verdict.wording = "unproven", None
            verdict.steps.append("it is said to do nothing at all, and less than was claimed is not nothing: not shown")
        elif not harmless and not _waves_through(claim, key, verdict):
            modest = modest or framed or (claim.kind == "comparative" and says_no_more(claim))
            verdict = denied(verdict, "refutes" if modest else claim.polarity, claim.kind)
    _only_one(claim, verdict)
    more = claim.polarity in ("denies", "refutes") or not_only(claim)
    if verdict.truth == "true" and more and taken_up_again(claim, register):
        verdict.truth, verdict.wording, verdict.evidence = "unproven", None, False
        verdict.why = f"More is promised right behind it. {verdict.why}"
        verdict.steps.append("what is promised right behind it says more: not kept")
    if verdict.truth == "true" and framed and len(led(claim, register)[1].rpartition(" that ")[2].split()) == 1:
        verdict.truth, verdict.wording, verdict.evidence = "unlisted", None, False
        verdict.why = "What is said of it here is on no list: bring a source, or say less."
        verdict.steps.append("behind its frame it only names what it speaks of: not kept")
    if verdict.truth in ("true", "false") and not staged and twice_turned(claim, register):
        verdict.truth, verdict.wording, verdict.evidence = "unproven", None, False
        verdict.why = f"It is turned round twice in one sentence: say it plainly. {verdict.why}"
        verdict.steps.append("more than one turn in the sentence: not kept")
    return verdict


_CONTENT = frozenset({"nutrient-content", "function", "comparative"})
_CONTENT_OR_AMOUNT = frozenset({"nutrient-content", "quantity", "general-benefit"})
_BEST = re.compile(r"(?<! of)(?<! among) the (?:very |single )?(?:best|richest|top|greatest|finest|number one) ")
_ONLY = re.compile(
    r" (?:the only|only (?:source|foods?)|no other foods?|nothing else (?:has|brings)"
    r"|(?:comes?|found|is|are|gets?|get it|there|available) only (?:from|in|through)"
    r"|only (?:comes?|found|available|gets? [a-z0-9 ]{1,24}?) (?:from|in)"
    r"|(?:from|in) (?:[a-z]+ ){1,2}(?:only|alone|and nothing else)) "
)
_NOT_ONLY = re.compile(r"(?: not| never|n't)(?: [a-z]+)? only ")


def _only_one(claim: Claim, verdict: Verdict) -> None:
    """That a food brings something holds or doesn't; that it is the only one which does never holds."""
    if claim.kind not in _CONTENT and not (claim.kind in ("disease", "safety-age") and only_that(claim)):
        return
    if (
        verdict.truth == "true"
        and claim.polarity == "asserts"
        and (_BEST.search(plain(claim.quote)) or outdone_by_none(claim))
    ):
        verdict.truth, verdict.wording = "overstated", None
        verdict.why = f"That no other food has more of it is not shown. {verdict.why}"
        verdict.steps.append("it is held above all others: not kept")
        return
    if not (_ONLY.search(plain(claim.quote)) or only_that(claim)):
        return
    if claim.polarity == "asserts" and _NOT_ONLY.search(plain(claim.quote)):
        return  # "iron isn't only found in red meat"
    if claim.polarity in ("denies", "refutes"):
        if verdict.truth in ("unproven", "false"):
            verdict.truth, verdict.wording, verdict.why = "true", None, "Other foods bring it too."
            verdict.steps.append("that it is the only one is denied: other foods bring it too")
    elif verdict.truth == "true":
        verdict.truth, verdict.wording = "overstated", None
        verdict.why = f"It is not the only one: other foods bring it too. {verdict.why}"
        verdict.steps.append("it is said to be the only one: not kept")


def _waves_through(claim: Claim, key: Key, verdict: Verdict) -> bool:
    """Whether the "no" of its sentence is one to a danger, of a thing that does grave harm: "liver every day isn't
    forbidden" gives it."""
    grave = verdict.truth == "false" and verdict.entry is not None and (verdict.entry.harm or 0) >= _GRAVE
    return claim.kind == "safety-age" and grave and key.stance in ("permits", "dismisses")


_GRAVE = 3


def _plain(
    claim: Claim,
    key: Key,
    entry: Entry | None,
    probe: AnyProbe,
    numbers: Numbers | None,
    register: Register,
    context: Context,
) -> Verdict:
    if claim.kind in ("quantity", "nutrient-content", "process") and (settled := by_its_own_figures(claim)) is not None:
        return settled
    if claim.kind == "nutrient-content" and claim.level == "contains" and (stated := number_in(claim)) is not None:
        # "Has 1.3 grams of protein" says how much, and not that it is much.
        return quantity(replace(claim, number=stated), probe, numbers, register)
    if (counted := counted_among(claim, context, register) or what_it_is(claim, context, register)) is not None:
        return counted
    if (theirs := for_the_allergic(claim, probe, register)) is not None:
        return theirs
    if claim.kind in ("quantity", "nutrient-content") and (shared := share_of_day(claim, probe, context)) is not None:
        return shared
    if claim.kind in _CONTENT_OR_AMOUNT and (one := day_in_a_piece(claim, probe, numbers, context)) is not None:
        return one
    if claim.kind == "quantity" and (entry is None or not entry.said):
        need = daily_need(claim, key.months, context) or salt_limit(claim, register)
        return need or quantity(claim, probe, numbers, register)
    if claim.kind == "comparative" and (entry is None or entry.truth in ("computed", "overstated")):
        compared = comparison(claim, key, probe)
        # Where the figures speak against it, it is not only said too strongly: "spinach has more iron than liver".
        softly = entry is not None and (entry.said or entry.truth == "overstated")
        if compared is not None and (not softly or compared.truth == "false"):
            return compared
    compares = _COMPARED.search(key.near) or _MORE_OF_IT.search(plain(claim.quote))
    if claim.kind == "nutrient-content" and compares and not (entry and entry.said):
        compared = comparison(claim, key, probe)
        if compared is not None:
            return compared
        return Verdict("unproven", "It compares: name both foods and the nutrient, and check the figures.", None, ())
    if entry is not None and isinstance(entry.condition, Absent) and says_what_is_in_it(claim):
        entry = None  # "lactose-free milk still contains milk" promises no absence
    if entry is None:
        listed = listed_absent(claim, probe, register) or listed_present(claim, probe, register)
        return _own_age(claim, key, register, context) or listed or _unlisted(claim, key, probe, register)
    if entry.truth == "computed":
        verdict = computed(claim, entry, probe, register, context)
    else:
        verdict = by_evidence(claim, key, entry, probe, register)
    taken_back = entry.truth == "computed" and claim.polarity == "denies" and claim.level in ("free", "none")
    dismissed = _dismissed(claim, key, entry)
    verdict.stanced = bool(entry.stance) or dismissed or (entry.negation and not taken_back)  # "isn't gluten-free"
    all_absent(claim, verdict, probe, register)
    _all_kept(claim, entry, verdict, register)
    _too_early(claim, key, entry, verdict, register, context)
    if verdict.truth == "true" and dismissed:
        verdict.truth = "overstated"
        verdict.why = f"That there is no danger at all is more than anyone can say. {verdict.why}"
    says = "has it worked out" if entry.truth == "computed" else f"says {entry.truth}"
    verdict.steps.insert(0, f"truth: entry {entry.id} {says}")
    return verdict


def _dismissed(claim: Claim, key: Key, entry: Entry) -> bool:
    """Whether it says that there is no danger in what the entry is careful with: a "no" that is turned no more."""
    careful = entry.stance != "dismisses" and not entry.negation
    return claim.kind == "safety-age" and key.stance == "dismisses" and careful


def _all_kept(claim: Claim, entry: Entry, verdict: Verdict, register: Register) -> None:
    """That a way of cooking keeps more of the vitamins holds; that it keeps them all, or loses none, never does."""
    if verdict.truth != "true" or claim.kind != "process" or entry.negation or not _VITAMINS & set(entry.about):
        return
    known = register.get("cooking-keeps-everything")
    if known is None or not _ALL_KEPT.search(plain(claim.quote)):
        return
    verdict.truth, verdict.why, verdict.refs = "overstated", known.why, known.refs
    verdict.wording, verdict.add = resolve(known.wording, register), ""
    verdict.steps.append("it is said to keep them all: not kept")


_VITAMINS = frozenset({"vitamins", "vitamin_c_mg"})
_ALL_KEPT = re.compile(
    r" (?:keep|keeps|keeping|kept|retain|retains|retaining|preserve|preserves|preserving|save|saves|saving|hold|holds"
    r"|lock|locks|locking|maintain|maintains|maintaining|seal|seals|sealing) (?:[a-z']+ ){0,4}?"
    r"(?<! of )(?<! than )(?<! at )"
    r"(?:all|every|each|everything|100|100%|(?:the|its|their) (?:whole|full|entire|complete)"
    r"|a hundred (?:percent|per cent))"
    r" (?!other|others|year|time|winter|summer|day|week|day's)"
    r"| (?:lose|loses|losing|lost|wash|washes|destroy|destroys) (?:no|none|nothing|zero|not a|not one) "
    r"| without (?:any |the |a |much )?(?:loss|losing|loses) (?!more|much|as much|so much|too much|most)"
    r"| (?:no|none|nothing|not a single|not one|zero) (?:[a-z']+ ){0,4}?(?:lost|loss|losses|wasted|washed away) "
    r"| (?:fully |completely |totally |all )?intact "
)


def _own_age(claim: Claim, key: Key, register: Register, context: Context) -> Verdict | None:
    """The age its recipe gives the dish, said again: "swede mash, for babies from 7 months"; None for all else.

    Whether the dish suits that age is asked of the dish itself, by the rules of feeding. That it is safe is more."""
    months, stated = months_of(claim, context, register)
    lowest, highest = context.ages
    within = stated and months >= lowest and (highest is None or months <= highest)
    permits = claim.kind == "safety-age" and key.stance == "permits" and claim.polarity == "asserts"
    if not (within and permits and is_this_dish(claim, context)) or has_any(key.near, _MORE_THAN_AN_AGE):
        return None
    why = f"The recipe gives this dish for {lowest} months and on; whether it suits them is checked of the dish itself."
    return Verdict("true", why, refs=(SourceRef("own", "the ages of this recipe", "own"),))


_MORE_THAN_AN_AGE = tuple(
    "safe* risk* danger* raw rare pink under* runny uncut unpast* drink* replac* instead breast* feeds".split()
)
"""Words beside an age that say more than for whom the dish is cooked: "raw salmon is fine for a one year old"."""


def _too_early(claim: Claim, key: Key, entry: Entry, verdict: Verdict, register: Register, context: Context) -> None:
    """ "No honey before six months" is half the truth: whoever hears it gives honey at seven."""
    high = entry.ages[1]
    if verdict.truth != "true" or entry.stance != "warns" or key.stance != "warns" or high is None:
        return
    months, stated = months_of(claim, context, register)
    waits = has_any(plain(around(claim)), register.words.get("before", ()))
    if not stated or not waits or months >= min(high, _FOUR_YEARS):
        return
    verdict.truth = "overstated"
    verdict.why = f"It waits longer than that. {verdict.why}"
    verdict.wording, verdict.add = None, ""
    verdict.steps.append(f"it names {months + 1} months, and {entry.id} holds to {high + 1}")


_FOUR_YEARS = 47
"""Where authorities differ between four and five years (whole nuts, round food) either is taken."""


def _unlisted(claim: Claim, key: Key, probe: AnyProbe, register: Register) -> Verdict:
    wording = nutrient_wording(key, probe, register) if claim.kind == "function" else None
    what = {
        "nutrient-content": "No rule here says what would make this true: name the nutrient, or bring a source.",
        "safety-age": "This is on no list here: bring the guidance it rests on; a professional has the last word.",
        "disease": "A statement on an illness that is on no list here: bring the evidence, or leave it out.",
        "allergen": "This is on no list here: say which allergens go in and which don't.",
        "comparative": "What is compared with what is not known well enough: name the nutrient and both foods.",
    }.get(claim.kind, "No evidence for this is listed here: bring a source, or say less.")
    if wording is not None:
        return Verdict(
            "overstated", "Of the whole food this is not shown; of a nutrient in it, it is.", None, (), wording
        )
    return Verdict("unlisted", what, None, (), steps=["truth: no entry"])
