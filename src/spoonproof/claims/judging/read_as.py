"""What kind of statement a claim's own words make it, and of what level, read again before judging: "keeps its
vitamins" is a process and no content, "hardly any iron" is low."""

from __future__ import annotations

import re

from spoonproof.claims.judging.arithmetic import shrinks
from spoonproof.claims.judging.comparing import equalled
from spoonproof.claims.judging.frames import WARNS_ON, frames
from spoonproof.claims.judging.reading import runs_of, said_before
from spoonproof.claims.judging.refused import missed_without
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain, slug
from spoonproof.model.claim import Claim, JudgedClaim, Polarity
from spoonproof.model.record import replace

_BY_ITS_AGE = "when an allergen comes: judged by its age"
_SOME = frozenset({"contains", "source"})
_NONE = frozenset({"none", "free"})
_AMOUNT = frozenset({"contains", "source", "high"})


def read_as(claim: Claim, register: Register) -> tuple[Claim, bool]:
    """The claim with the kind and the level that its words give it, and whether its polarity is settled by them."""
    claim = _allergen_in(_less_contrast(_warning_alone(claim, register)))
    if claim.kind == "allergen" and claim.effect == "age":
        claim = replace(claim, kind="safety-age", steps=(*claim.steps, _BY_ITS_AGE))
    if claim.level in _AMOUNT and has_any(plain(claim.quote), register.words.get("hardly any", ())):
        claim = replace(claim, level="low", polarity="asserts", steps=(*claim.steps, "its words say: hardly any"))
    elif claim.level in _SOME and has_any(plain(claim.quote), register.words.get("plenty", ())):
        claim = replace(claim, level="high", steps=(*claim.steps, "its words say: plenty"))
    if claim.kind == "nutrient-content" and claim.level in _NONE and missed_without(claim):
        why = "what is amiss for want of it is told, and nothing is left out"
        return replace(claim, kind="function", effect="importance", level=None, steps=(*claim.steps, why)), True
    if claim.kind == "nutrient-content" and claim.level == "contains" and _KEEPS.search(plain(claim.quote)):
        why = "what it keeps is what is done to it, and not how much it holds"
        return replace(claim, kind="process", level=None, steps=(*claim.steps, why)), True
    if claim.kind == "nutrient-content" and claim.level == "contains" and TAKEN_UP.search(plain(claim.quote)):
        why = "what is taken up is what happens to it, and not how much it holds"
        claim = replace(claim, kind="function", effect="absorption", level=None, steps=(*claim.steps, why))
    if claim.kind == "nutrient-content" and claim.level == "contains" and equalled(claim):
        why = "its food is what something else is said to equal"
        return replace(claim, kind="comparative", level="more", steps=(*claim.steps, why)), False
    if claim.kind in ("comparative", "nutrient-content") and outdone_by_none(claim) and claim.polarity == "denies":
        return replace(
            claim, polarity="asserts", steps=(*claim.steps, "what no other food outdoes is said to be the best")
        ), True
    if claim.kind in ("function", "disease") and _WITHOUT.search(plain(claim.quote)):
        why = "what there is nothing without is promised to bring it"
        return replace(claim, polarity="asserts", strength="absolute", steps=(*claim.steps, why)), True
    if claim.effect == "weight" and shrinks(claim.quote):
        return replace(
            claim, kind="process", effect=None, steps=(*claim.steps, "a food is weighed, and nobody slims")
        ), True
    if claim.kind == "function" and _SWELLED.search(plain(claim.quote)):
        why = "somebody swelled up after a food: a reaction is told"
        claim = replace(claim, kind="allergen", effect="allergic-reaction", steps=(*claim.steps, why))
    if (warning := _reason_of(claim)) is not None:
        return warning, False
    if claim.effect == "infection" and _IN_THE_THROAT.search(plain(claim.quote)):
        why = "what blocks a throat is choked on, and is no infection of it"
        claim = replace(claim, kind="safety-age", effect="choking", steps=(*claim.steps, why))
    if claim.kind == "safety-age" and (kept := _ANYTHING.search(plain(claim.quote))):
        named = _TASTES[kept[1]]
        claim = replace(claim, subjects=(named,), foods=(), steps=(*claim.steps, f"what is kept back is {named}"))
    if claim.kind == "disease" and _FORBIDS_GIVING.search(said_before(claim)):
        why = "what is not to be given with an illness treats nothing"
        claim = replace(claim, kind="safety-age", effect="age", steps=(*claim.steps, why))
    if claim.kind == "nutrient-content" and claim.level == "low" and _EITHER_FAT.search(_run_out(claim)):
        why = "one sort or the other is what it lets them have"
        return replace(claim, kind="safety-age", effect="age", level=None, steps=(*claim.steps, why)), False
    if claim.kind == "safety-age" and _A_MEDICINE.search(plain(claim.quote)):
        claim = replace(claim, kind="disease", effect=None, steps=(*claim.steps, "it is called a medicine"))
    if claim.kind == "disease" and claim.polarity == "asserts" and _exempts(claim):
        why = "the illness is where it is not so, and not what it is good for"
        claim = replace(claim, kind="safety-age", effect="age", steps=(*claim.steps, why))
    if claim.kind == "disease" and claim.effect == "colic" and _WINDY.search(plain(claim.quote)):
        claim = replace(
            claim, kind="function", effect="wind-brought", steps=(*claim.steps, "wind is brought: no colic is cured")
        )
    return claim, False


def _warning_alone(claim: Claim, register: Register) -> Claim:
    """The claim less what was taken back before it and is no part of it: "there's no proof that it helps, and *it's a
    choking risk*"."""
    before = said_before(claim)
    found = list(WARNS_ON.finditer(f"{before}{claim.quote}"))
    if not found or claim.kind not in ("safety-age", "disease", "function"):
        return claim
    if claim.polarity not in ("denies", "refutes") and frames(claim, register) != 1:
        return claim
    start = claim.start - len(before) + found[-1].start("own")
    own = plain(claim.passage.text[start : claim.end])
    if not has_any(own, register.words.get("risk", ())):
        return claim
    why = "a warning of its own: what was taken back before it is no part of it"
    no = any(token in register.words.get("negations", ()) for token in own.split())
    sentence = (start, claim.sentence[1] if claim.sentence else len(claim.passage.text))
    polarity: Polarity = "denies" if no else "asserts"
    return replace(claim, start=start, sentence=sentence, polarity=polarity, steps=(*claim.steps, why))


def _less_contrast(claim: Claim) -> Claim:
    """The claim less what it is set against: "unlike whole grapes, *quartered grapes are fine*"."""
    comma = claim.quote.find(", ")
    if comma < 0 or not _UNLIKE.search(f"{said_before(claim)}{claim.quote[:comma]}"):
        return claim
    start = claim.start + comma + len(", ")
    rest = runs_of(claim.passage.text[start : claim.end])
    subjects = tuple(one for one in claim.subjects if slug(one) in rest)
    foods = tuple(one for one in claim.foods if one in rest)
    if not subjects:
        return claim
    about = claim.relates_to if slug(claim.relates_to or "") in rest else None
    why = "what it is set against is no part of it"
    sentence = (start, claim.sentence[1]) if claim.sentence else None
    return replace(
        claim,
        start=start,
        sentence=sentence,
        subjects=subjects,
        foods=foods,
        relates_to=about,
        steps=(*claim.steps, why),
    )


_UNLIKE = re.compile(
    r"(?:^|[^\w])(?:unlike|as opposed to|in contrast to) (?:the |a |an )?(?:[\w-]+ ?){0,3}$", re.IGNORECASE
)


def _allergen_in(claim: Claim) -> Claim:
    """Of a nutrient that is the protein of an allergen, the claim that the allergen is in it: "ghee can hold traces of
    milk protein"."""
    named = _PROTEIN_OF.search(plain(claim.quote))
    if claim.kind != "nutrient-content" or claim.level not in _SOME or named is None:
        return claim
    why = "the protein of an allergen is what it says is in it"
    return replace(
        claim, kind="allergen", nutrients=(), allergens=(_ALLERGENS.get(named[1], named[1]),), relates_to=named[1],
        level=None, effect=None, steps=(*claim.steps, why),
    )  # fmt: skip


_PROTEIN_OF = re.compile(r" (milk|egg|wheat|soya|soy|peanut|fish|nut|casein|whey) proteins? $")
_ALLERGENS = {"soy": "soya", "nut": "nuts", "casein": "milk", "whey": "milk"}


def as_found(judged: JudgedClaim, register: Register) -> JudgedClaim:
    """What was judged, as it is told: of when an allergen comes by the allergen, though its age is what judged it; not
    so where what decides is that it chokes ("no whole nuts before five")."""
    claim = judged.claim
    entry = register.get(judged.entry) if judged.entry else None
    chokes = entry is not None and entry.points_at.startswith("choking:")
    if chokes or claim.kind != "safety-age" or _BY_ITS_AGE not in claim.steps:
        return judged
    return replace(judged, claim=replace(claim, kind="allergen"))


def _reason_of(claim: Claim) -> Claim | None:
    """The warning whose reason the claim is ("don't water the feed down, it can make a baby ill"), None where it is no
    such reason: whether it harms hangs on what is warned of."""
    start = claim.sentence[0] if claim.sentence else claim.start
    harms = claim.kind in ("function", "disease") and claim.effect in (None, "illness", "harm")
    reason = _HARMS_THEM.search(claim.quote) if harms else None
    if reason is None or not _FORBIDS.match(claim.passage.text[start : claim.start + reason.start("reason")]):
        return None
    why = "the reason of a warning, judged with what is warned of"
    return replace(claim, kind="safety-age", effect="harm", start=start, steps=(*claim.steps, why))


_SWELLED = re.compile(
    r" (?:swelled|swollen|swells?|puffed)(?: up)? (?:round|around|about|on|at|in|after) (?:[a-z]+ ){0,8}?"
    r"(?:after|from) "
)
_HARMS_THEM = re.compile(
    r"(?:^|[,:–—-] )(?P<reason>(?:and |as |because )?(?:it|that|this|they)(?:['’]ll| can| could| may| might| will)? "
    r"(?:harms?|hurts?|makes? [\w ]{1,24}(?:ill|sick|poorly|unwell))\b)",
    re.IGNORECASE,
)
_FORBIDS = re.compile(r"(?:please )?(?:don['’]t|do not|never) [^.!?;]{4,120}[,:–—-] ?$", re.IGNORECASE)


def _run_out(claim: Claim) -> str:
    """Its words and those that follow at once."""
    return plain(claim.passage.text[claim.start : claim.end + _FOLLOWING])


_FOLLOWING = 16


def _exempts(claim: Claim) -> bool:
    """Whether its illness stands behind an "unless": "peanut from six months, unless there's severe eczema"."""
    behind = plain(claim.quote).partition(" unless ")[2]
    return bool(behind and claim.relates_to) and plain(claim.relates_to or "").strip() in behind


def outdone_by_none(claim: Claim) -> bool:
    """Whether it is held above all others: "no food has more iron than beef"."""
    return _OUTDONE_BY_NONE.search(plain(claim.quote)) is not None


LOSES_NO = re.compile(r" (?:lose|loses|losing|lost) (?:no|none|zero) ")
_OUTDONE_BY_NONE = re.compile(
    r" (?:no|no other|nothing|none)(?: [a-z]+){0,2} (?:has|have|holds|contains|brings|gives) (?:more|as much|so much) "
)
_KEEPS = re.compile(
    r" (?:keeps?|kept|keeping|retains?|retaining|preserves?|locks? in|holds? on to|saves?) "
    r"(?:more|most|much|all|every|its|their|the|some|a lot)(?: of)? "
)
TAKEN_UP = re.compile(r" (?:is|are|gets?|be) (?:[a-z]+ ){0,2}?(?:absorbed|taken up) ")
_WITHOUT = re.compile(
    r" without (?:[a-z']+ ){1,4}(?:there is|there's|there are|there can be|you get|they get|you have) no "
)
_ANYTHING = re.compile(
    r"(?: not| never| cannot|[a-z]n't) (?:be )?(?:given?|have|eat|get|offered|fed) "
    r"(?:(?:him|her|them|babies|your baby) )?"
    r"anything (sweet|sugary|sweetened|salty|salted) "
)
_TASTES = {"sweet": "sugar", "sugary": "sugar", "sweetened": "sugar", "salty": "salt", "salted": "salt"}
_FORBIDS_GIVING = re.compile(
    r"\b(?:do not|don['’]t|never|avoid|must not|mustn['’]t|should not|shouldn['’]t) "
    r"(?:give|giving|offer|offering|feed|feeding|serve|serving) (?:(?:the|any|your|a|more|much) )*$",
    re.IGNORECASE,
)
_EITHER_FAT = re.compile(
    r" (?:low|reduced|half) fat (?:or|and) (?:full|whole) (?:fat|milk) "
    r"| (?:full|whole) fat (?:or|and) (?:low|reduced|half) fat "
)
_IN_THE_THROAT = re.compile(
    r" (?:blocks?|blocking|stuck in|lodges? in|catch(?:es)? in|size (?:for|of|to)|fits?|plugs?|seals?) "
    r"(?:[a-z']+ ){1,4}?throats? "
)
_A_MEDICINE = re.compile(
    r" (?:is|are|works? like|acts? like|works? as|acts? as|natural|nature's) (?:(?:an?|the|natural|nature's|own) ){0,3}"
    r"(?:antibiotics?|antivirals?|antibacterials?|painkillers?) "
)
_WINDY = re.compile(
    r" (?:makes?|making|made|gives?|giving|gave|leaves?|left) (?:[a-z']+ ){1,3}?"
    r"(?:(?:really|so|very|terribly|a bit|all) )?(?:windy|gassy|bloated|wind|gas) "
)
