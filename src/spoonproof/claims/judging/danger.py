"""Praise for what a baby must not be given: whatever it is said to do, the danger comes first."""

from __future__ import annotations

import re

from spoonproof.claims.entries import Key
from spoonproof.claims.judging.evidence import EFFECT_KINDS
from spoonproof.claims.judging.reading import around, clause, only_that, runs_of
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim
from spoonproof.model.record import replace

_GRAVE = 1
_SPOKEN_OF = EFFECT_KINDS | {"comparative"}


def _to_a_child(claim: Claim) -> bool:
    """Whether its clause offers the food to children: "for babies", "for toddlers"."""
    return claim.audience is not None and f" for {claim.audience.lower()} " in plain(clause(claim))


_FIRST_FOOD = re.compile(r" first (?:[a-z]+ )?foods? ")
_BAD_FOR = re.compile(
    r" (?:harms?|hurts?|damages?|affects?) "
    r"| (?:gives?|cause|causes) (?:[a-z]+ ){0,3}?(?:food poisoning|botulism|salmonella|listeria) "
    r"| (?:makes?|get|gets) (?:[a-z']+ ){1,4}?(?:ill|sick|poorly|unwell) "
    r"| (?:is|are) (?:really |very |so |quite )?(?:bad|dangerous|harmful|no good|not good|unsafe|unhealthy|risky) for "
    r"(?:(?:a|any|all|your|young|small|little|under) )?"
    r"(?:baby|babies|toddler|toddlers|child|children|infant|infants|ones) "
)


def ill_spoken_of(claim: Claim, key: Key, verdict: Verdict, register: Register) -> None:
    """Right is who calls bad for babies what the register keeps from a child of this age: "kelp is bad for babies",
    "the mercury in shark can harm their nerves"."""
    if claim.kind not in _SPOKEN_OF or claim.polarity not in ("asserts", "hedges") or verdict.truth == "true":
        return
    named = claim.foods or claim.subjects
    if _better_than_kept_back(claim, key, verdict, register) or claim.kind == "comparative":
        return
    if not _BAD_FOR.search(key.words) or not named or only_that(claim):
        return
    entry = register.truth(replace(key, kind="safety-age", stance="warns", effect=None, level=None))
    if entry is None or entry.truth != "true" or entry.stance != "warns":
        return
    if not all(runs_of(food) & register.about(entry) for food in named):
        return
    verdict.truth, verdict.entry, verdict.why, verdict.refs = "true", entry, entry.why, entry.refs
    verdict.wording, verdict.add, verdict.harm, verdict.warning = None, "", entry.harm, None
    verdict.steps.append(f"said to be bad for them, and {entry.id} keeps it from them at {key.months} months")


def _better_than_kept_back(claim: Claim, key: Key, verdict: Verdict, register: Register) -> bool:
    """Right is who calls what they may have better for them than what is kept from them: "full-fat is better for babies
    than low-fat yoghurt"."""
    better = _BETTER.search(plain(around(claim)))
    if better is None:
        return False
    own = " ".join((*claim.foods, *claim.subjects))
    given = replace(key, kind="safety-age", stance="permits", effect=None, level=None, near=plain(f"{own} for babies"))
    other = replace(given, stance="warns", subjects=runs_of(better[1]), foods=(), words=better[1], near=better[1])
    first, second = register.truth(replace(given, words=given.near)), register.truth(other)
    if first is None or second is None or first.truth != "true" or second.truth != "true" or second.stance != "warns":
        return False
    verdict.truth, verdict.entry, verdict.why, verdict.refs = "true", second, second.why, second.refs
    verdict.wording, verdict.add, verdict.harm, verdict.warning = None, "", second.harm, None
    verdict.steps.append(f"held against what {second.id} keeps from them, and {first.id} lets them have it")
    return True


_BETTER = re.compile(
    r" (?:better|healthier|safer)(?: choice| option| drink)?(?: for [a-z ]{1,24}?)? than((?: [a-z'-]+){1,4}) "
)


def warned(claim: Claim, key: Key, verdict: Verdict, register: Register) -> None:
    """Put the warning before the verdict where a food is praised for an effect that the register would not let a child
    of this age have ("honey helps babies sleep", "shark holds much protein for babies"). Other true statements, and
    those that take something back, stand."""
    praise = claim.kind in EFFECT_KINDS or (claim.kind == "comparative" and not claim.nutrients)
    # "Swordfish is full of omega-3 for babies" is true of the fish, and praises it to those who must not have it.
    offered = claim.kind == "nutrient-content" and (_to_a_child(claim) or _FIRST_FOOD.search(key.near) is not None)
    # "Rice milk is suitable from one because it has no dairy" lets them have it, whatever is not in it.
    offered = offered or (claim.kind == "allergen" and has_any(key.words, register.words.get("allows", ())))
    if not (praise or offered) or claim.polarity not in ("asserts", "hedges"):
        return
    if verdict.truth == "true" and not offered:
        return
    subjects = key.subjects or runs_of(key.near)  # "raw carrot sticks are great for": the clause may hold the food
    told = has_any(key.words, register.words.get("harm told", ())) or _CAUSES.search(plain(around(claim)))
    if told or _TOO_LITTLE.search(key.words):
        return
    asked = replace(key, kind="safety-age", stance="permits", effect=None, level=None, subjects=subjects)
    entry = register.truth(asked)
    if entry is None or entry.truth != "false" or entry.stance != "permits" or not entry.about:
        return
    if (entry.harm or 0) < _GRAVE or entry is verdict.entry:
        return
    # Not the nutrient that it is said to bring: "white bread turns into sugar" praises no sugar.
    named = frozenset().union(*(runs_of(text) for text in (*claim.foods, *claim.subjects))) or subjects
    if not register.about(entry) & named:
        return
    verdict.warning = entry
    if verdict.entry is not None and verdict.entry.truth == "true":
        # What was shown for somebody else's health is beside the point where a child must not have it at all.
        verdict.why = entry.why
    elif entry.why not in verdict.why:
        verdict.why = f"{entry.why} {verdict.why}"
    verdict.refs = tuple(dict.fromkeys([*entry.refs, *verdict.refs]))
    verdict.wording, verdict.add = None, ""
    verdict.harm = max(entry.harm or 0, verdict.harm or 0)
    verdict.steps.append(f"safety: {entry.id} says not at {key.months} months")


_CAUSES = re.compile(
    r" (?:due to|caused by|because of|comes? from) (?:[a-z]+ ){0,12}?(?:excessive|too much|overeating) "
)
"""What brings an illness, and is praised for nothing: "due to an infection or eating excessive ..."."""
_TOO_LITTLE = re.compile(r" (?:(?:is|are|has|have) too (?:low|poor|little|few|thin)|lacks?|short of|not enough) ")
"""What praises no food: "almond milk is too low in energy"."""
