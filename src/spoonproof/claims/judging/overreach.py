"""What a true statement says beyond what makes it true: how often a food is given, and how far it covers a need.

The register knows that a food may be given, or that it brings a nutrient; of how often, and for how long that will do,
it says nothing. And a word that is only named ("dairy-free does not mean healthier") claims nothing at all.
"""

from __future__ import annotations

import re

from spoonproof.claims.entries import Entry, Key
from spoonproof.claims.judging.reading import around, only_named, runs_of, said_before, said_behind
from spoonproof.claims.judging.said_next import answered
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim, Truth

_OFTEN = re.compile(
    r" (?:(?:twice|(?:two|three|four|five|several|many) times|morning and night) (?:a|per|each|every) day"
    r"|(?:at|with|for) (?:every|each) (?:single )?meal|every single meal|all day(?: long)?|day and night"
    r"|morning and night|nothing but|around the clock|morning noon and night|(?:and|with) nothing else"
    r"|seven days a week) "
)
"""How often, or to the exclusion of all else, a food is given."""
_COVERS = re.compile(
    r" (?:cover|covers|covering|meet|meets|meeting|satisfy|satisfies|fulfil|fulfils|fulfills|takes? care of|sorts?"
    r"|is enough|are enough|is plenty|are plenty|is all the|are all the|sees? to|does for|lasts?|will do for|tops? up) "
)
_A_NEED = re.compile(
    r" (?:day|days|week|weeks|month|daily|weekly|need|needs|needed|requirement|requirements|toddler's|baby's|child's"
    r"|quota|target|allowance|intake) "
)
_ALL_OF_IT = re.compile(r"(?<! not)(?<!n't) all (?:of )?(?:the|her|his|their|your|that) ")
"""All of a nutrient that somebody needs: "gives her all the vitamin D"."""
_ALL_THEY_NEED = re.compile(
    r" all (?:of )?(?:the|her|his|their|your) (?:[a-z0-9]+ ){1,3}?"
    r"(?:they|she|he|it|you|(?:(?:a|your|the|any) )?(?:baby|child|toddler)|babies|children|toddlers) needs? "
)
"""A nutrient of which a baby is said to need no more: "all the iron they need"."""
_ALL_NEEDED = re.compile(
    r"(?<! not)(?<!n't) (?:all|everything) (?:that's|that is|(?:that )?(?:they|she|he|you|(?:(?:a|your|the|any) )?"
    r"(?:baby|child|toddler)|babies|children|toddlers)) (?:ever |really )?need(?:s|ed)? "
)
"""That nothing else is needed: true of milk for the first half year, and of no food later."""
_MILK_ALONE = 6
_NO_SOONER = re.compile(
    r"[ ,;:—–-]*(?:and |but )?(?:never|not(?: a day)?|no) (?:any )?(?:before|earlier|sooner)\b", re.IGNORECASE
)
"""What makes an age from which a food is given the first at which it may be."""
_TURNED_DOWN = re.compile(
    r"\b(?:(?:refus|reject|spit|gag|hat|dislik|push|turn)(?:e|es|ed|s|ing)?(?: (?:out|on|at|away|down))?"
    r"|(?:won['’]t|doesn['’]t|don['’]t|will not|does not) (?:eat|take|touch|want|like|try|have)) "
    r"(?:(?:the|any|all|some|a) )?$",
    re.IGNORECASE,
)
"""A child that turns down what the claim speaks of: "who refuses lumps at seven months"."""
_BETTER_THAN = re.compile(
    r" (?:better|best|healthier|safer|gentler|kinder|easier|superior|worse) (?:[a-z0-9']+ ){0,6}(?:than|to) "
)
"""What holds one thing that may be given against another: that it is better is not said by leave to give it."""
_BRINGS = re.compile(
    r" (?:(?:can|could|may|might|will|would|does|do) )?(?:cause|lead|give|bring|trigger|raise|increase|harm|hurt|damage"
    r"|make|prevent|protect|lower|reduce|spoil)s?\b",
    re.IGNORECASE,
)
"""What a food at an age is said to bring about: "fish before one *causes allergies*" gives none."""
_ASIDE = re.compile(
    r"(?:after (?!the age|about|around|their|her|his|the first|an? year|\d|(?:four|five|six|seven|eight|nine|ten|eleven"
    r"|twelve|one|two|three|eighteen) )|than|instead of|next to|besides?|apart from|other than|rather than) ",
    re.IGNORECASE,
)
"""How a claim begins whose food is what another is held against: "the best drink after water for a one year old"."""
_BOUGHT = re.compile(
    r"\b(?:buy|bought|buying|use|choose|chose|pick|get|got|take|look for|go for|swap to|even) (?:the|an?) [\w-]+$",
    re.IGNORECASE,
)
_A_SORT = re.compile(r"\s*(?:ones?|versions?|kinds?|sorts?|variet(?:y|ies)|types?|brands?)\b", re.IGNORECASE)
"""A sort that is told apart by its name: "I buy the no-salt ones", "not even the sugar-free kind"."""
_NO_BETTER = re.compile(
    r" (?:no|not any|[a-z]+n't any) (?:healthier|better|worse|different|purer|safer|kinder|gentler|sweeter|cleaner)"
    r" (?:than|from|to) "
)
"""A "no" that belongs to a comparison: "brown sugar is no healthier than white sugar" leaves no sugar out."""
_CONDITION = re.compile(
    r"\b(?:as long as|so long as|provided(?: that)?|only if|make sure(?: that)?|making sure|check(?: that)?) "
    r"(?:it['’]s |it is |they['’]re |they are )?$",
    re.IGNORECASE,
)
"""What comes before an absence that is asked for, and not promised: "as long as there's no salt in it"."""
_ONLY_THEN = re.compile(
    r" only (?:a )?(?:really |actually |ever )?(?:dangerous|danger|risky|risk|harmful|unsafe|hazard|problem|bad|toxic) "
)
"""What narrows a danger: "honey is *only dangerous* raw" lets them have it baked."""
_THANKS_TO = re.compile(
    r"^(?: [a-z0-9]+){1,4}(?<! is)(?<! are) (?!(?:is|are|has|have|contains?|not|no|never) )[a-z]+(?: [a-z0-9]+){1,8}? "
    r"(?:thanks to|because of|due to|owing to|on account of) "
)
"""A deed that is put down to a nutrient: "bananas knock them right out *thanks to* the magnesium"."""
_SOLIDS = frozenset({"solid-food", "solids", "food"})
_LEVEL_ASIDE = re.compile(
    r" (?:rather than|instead of|and not|never) (?:the |any |a )?"
    r"(?:low|lower|reduced|half|less|light|skimmed|no|[a-z]+ free) "
)
"""A sort that another is preferred to: "whole milk yoghurt rather than low fat"."""
_LESS = frozenset({"low", "reduced", "less", "free", "none"})
_ABSENT = frozenset({"free", "none"})
_CONTENT = frozenset({"contains", "source", "high"})


def _allergic_to(said: str) -> frozenset[str]:
    """What a sentence says that a child is allergic to, nothing where it sends them to a doctor."""
    found = _ALLERGIC.search(said)
    return frozenset() if found is None or _DOCTOR.search(said) else runs_of(found[1] or found[2])


_ALLERGIC = re.compile(
    r"(?:[a-z]'s|[a-z]'re| is| are| been| baby| child) allergic to ((?:[a-z]+ ){1,3})"
    r"| (?:with|has|have|known) (?:an? )?([a-z]+) allergy "
)
_DOCTOR = re.compile(r" (?:doctor|doctors|gp|dietitian|allergist|allergy team|clinic|specialist) ")


def _figure_not_borne(claim: Claim, entry: Entry | None) -> str:
    """What share or multiple of an effect a statement gives that its entry does not: "the risk drops by 80 percent"."""
    if entry is None or entry.truth != "true" or claim.kind not in _EFFECTS:
        return ""
    known = plain(" ".join((entry.why, entry.add, *entry.said, *entry.also, *(ref.locator for ref in entry.refs))))
    found = _FIGURE.search(plain(around(claim)))
    return "" if found is None or found[0] in known else found[0].strip()


_EFFECTS = frozenset({"allergen", "disease", "function", "general-benefit", "safety-age"})
_FIGURE = re.compile(
    r" (?:[0-9.]+ ?%|(?:[0-9.]+|[a-z]+) (?:percent|per cent)|(?:by|in|a|cuts? [a-z ]{1,20}) half(?! an?| the| of| a)"
    r"|(?:half|twice|three times|four times|five times|ten times) as (?:many|much|often|likely)|by two thirds"
    r"|halv(?:es|ed|ing) (?:[a-z']+ ){1,3}(?:risk|chance|chances|odds)"
    r"|(?:one|two|three|nine|[0-9]+) (?:in|out of) (?:two|three|four|five|ten|[0-9]+)) "
)


def overreached(claim: Claim, key: Key, verdict: Verdict, register: Register) -> None:
    """Take from a verdict what its words say too much; a word that is only named stands."""
    held_against = _NO_BETTER.search(plain(claim.quote)) is not None
    asked_for = _CONDITION.search(claim.passage.text[max(0, claim.start - 24) : claim.start]) is not None
    text = claim.passage.text
    a_sort = _A_SORT.match(text, claim.end) and _BOUGHT.search(text[max(0, claim.end - 40) : claim.end])
    named = held_against or asked_for or a_sort
    aside = claim.level in _LESS and _LEVEL_ASIDE.search(plain(claim.quote)) is not None
    if aside or (claim.level in _ABSENT and named):
        verdict.truth, verdict.wording, verdict.add = "true", None, ""
        verdict.warning = None if a_sort else verdict.warning
        verdict.why = "The word is named here, and nothing is claimed with it."
        verdict.steps.append("it is only named: nothing is claimed")
        return
    if verdict.truth != "true" or claim.polarity not in ("asserts", "hedges", "asks"):
        return
    if (less := _beyond(claim, key, verdict, register)) is not None:
        verdict.not_kept(*less)


def _beyond(claim: Claim, key: Key, verdict: Verdict, register: Register) -> tuple[Truth, str, str] | None:
    """What is left of a true statement that says more than its entry: its truth, why, and the step; None where it says
    no more."""
    said, why, entry = plain(around(claim)), verdict.why, verdict.entry
    given = claim.kind == "safety-age" and key.stance == "permits"
    if answered(claim):
        told = f"Others are said to hold it, and something else is set against it: say what you hold. {why}"
        return "unproven", told, "put into others' mouths and answered with a but"
    if claim.kind == "safety-age" and key.stance == "warns" and _ONLY_THEN.search(said):
        return "unproven", f"That it is no danger otherwise is not shown. {why}", "it is said to be a danger only so"
    compared = _BETTER_THAN.search(said) and not (entry and "than" in entry.said)
    if given and (
        compared
        or _BRINGS.match(said_behind(claim))
        or _TURNED_DOWN.search(said_before(claim))
        or _ASIDE.match(claim.quote)
    ):
        told = "It is not said to be given, and what else is said is on no list: bring a source, or say less."
        return "unlisted", told, "it is turned down, or named beside something else, and not given"
    if only_named(claim):
        told = "What is said of it here is on no list: bring a source, or say less."
        return "unlisted", told, "it is but what the sentence speaks of, and what is said of it is not known"
    if claim.kind == "nutrient-content" and _THANKS_TO.search(plain(claim.quote)):
        told = f"What is said to come of it is on no list: bring a source, or say less. {why}"
        return "unlisted", told, "its nutrient is given as the reason of something that is not known"
    if figure := _figure_not_borne(claim, entry):
        told = f"“{figure}” is a figure that its source here does not give. {why}"
        return "unproven", told, f"its entry bears no such figure ({figure})"
    knows_needs = entry is not None and any("need" in one for one in entry.said)  # milk, of the first six months
    if (
        given
        and not knows_needs
        and (_ALL_THEY_NEED.search(said) or (key.months > _MILK_ALONE and _ALL_NEEDED.search(said)))
    ):
        told = f"That it may be given is known; that nothing else is needed is not. {why}"
        return "overstated", told, "its sentence says that it covers a need"
    promised = claim.kind in ("allergen", "disease") and entry is not None and not entry.negation and not entry.stance
    if promised and has_any(said, register.words.get("absolute", ())):
        return "overstated", f"Nobody can promise that. {why}", "it is promised outright, and its entry says less"
    if given and _NO_SOONER.match(claim.passage.text, claim.end) and entry and key.months > entry.ages[0]:
        told = f"Nothing listed here has it wait until then. {why}"
        return "overstated", told, "it is said to wait longer than its entry says"
    if given and _allergic_to(said) & key.subjects:
        told = "With an allergy to it, what may be given is for a doctor or an allergy team to say."
        return "unproven", told, "its sentence speaks of an allergy to it"
    often = _OFTEN.search(said)
    # An entry that asks for words of its own may have asked for just these.
    if given and often and entry and not _SOLIDS & set(entry.about) and often[0].strip() not in entry.said:
        told = f"That it may be given is known; that it should be “{often[0].strip()}” is not. Vary the foods."
        return "overstated", told, "how often it is given is more than its entry says"
    covers = _COVERS.search(plain(claim.quote))
    need = (covers and _A_NEED.search(said[said.find(covers[0]) :])) or _ALL_OF_IT.search(plain(claim.quote))
    if claim.kind == "nutrient-content" and claim.level in _CONTENT and entry is not None and need:
        told = f"It brings some of it; that it covers a need is not worked out here. {why}"
        return "overstated", told, "it is said to cover a need"
    return None
