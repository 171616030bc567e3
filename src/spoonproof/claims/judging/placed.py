"""Whether every "no" of a statement that would be kept has its place in what was judged.

The finding hears what a statement is about, and the register what is known of it; a "no" that neither of them took in
turns the statement round unheard ("kiwi *can't* make lips tingle", "grapes should *not* be quartered"). Such a "no",
and a "no" within a "no", leaves the statement open: it is never kept, and not called false for it.
"""

from __future__ import annotations

import re
from itertools import pairwise

from spoonproof.claims.entries import Entry, Key
from spoonproof.claims.judging.frames import frames
from spoonproof.claims.judging.polarity import cannot_cope, without_phrases
from spoonproof.claims.judging.reading import around, runs_of, said_behind, subjects_of
from spoonproof.claims.judging.stance import NOT_NEEDLESS, NOT_WITHOUT, given_for_a_reason
from spoonproof.claims.judging.turns_of_phrase import standing
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.judging.waived import WAIVERS, waived
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim

_NO = re.compile(
    r"(?<= )(?:not|no(?: longer)?|never|cannot|can not|cant|dont|doesnt|wont|isnt|arent|[a-z]+n't|nothing|nobody|none"
    r"|hardly|rarely|without|nor|neither|stop(?:s|ped)? (?:keep|hold|contain|carry|bring|hav)ing)(?= )"
)
_ENDS = re.compile(r"[,;:.!?\n–—]| (?:but|because|so|though|although|while|whereas) ")
_ENDS_TOLD = re.compile(rf"{_ENDS.pattern}| and (?:is |are )?(?:not|never) ")
"""Where a clause ends on either side of a claim; of what is told of a food, before the warning that follows from it."""
_ANEW = re.compile(r" because (?!of )|, (?:the|her|his|their|its|though|although|but|and) ", re.IGNORECASE)
"""Where a claim's words begin anew, and a "no" before it is another clause's: "goat's milk isn't suitable *because*
the proteins are alike"."""
_GIVING = (
    "offer(?:ed|ing)? fe(?:d|ed|eding) serv(?:e|ed|ing) ha(?:ve|d|ving) eat(?:en|ing)? drink(?:ing)? drunk"
    " add(?:ed|ing)? main put us(?:e|ed|ing) introduced? start(?!ed) suitable safe ok okay fine right ready recommended"
    " advised ideal appropriate for allowed good let leave salt under below younger before until till whole swap"
    " replace[sd]? replacement substitute enough even dip sweeten boil suit belongs? protect"
)
_WITHHELD = re.compile(
    # "Can not be toxic for" withholds nothing.
    r" (?:(?!(?:can|could|may|might|and|hard|dangerous|harmful|difficult|tricky|risky|toxic"
    r"|unsuitable|unsafe|wait|need|needed|needs) )"
    r"[a-z0-9']+ ){0,2}?"
    rf"(?:{'|'.join(_GIVING.split())}|all right|be on|gets?(?! stuck| caught| lodged)"
    r"|giv(?:e|en|ing)(?! [a-z' ]{1,24}(?:botulism|salmonella|listeria|ill|sick|poorly|food poisoning) )"
    r"|(?:need(?:ed|s)?|necessary)(?! (?:[a-z]+ )?for (?:the|your|our|normal) ))(?= )"
)
"""What a "no" must lead to if it is to keep a food from somebody."""
_IN_ITS_TERM = re.compile(
    r" (?:until|till|unless|wait until|skip (?:[a-z]+ ){1,3}if|avoid (?:[a-z]+ ){1,3}if) (?:[a-z']+ ){1,3}?"
    r"(?:is|are|'s)?(?: not|n't| no longer|isn't|aren't) "
)
_IN_ITS_CASE = re.compile(
    r" (?:if|when|while) (?:[a-z']+ ){1,3}?(?:(?:is|are)(?: not|n't| no longer)|isn't|aren't) "
    r"(?:under|younger|below|over|older|at least|eating) "
)
"""A "no" in the term that is set, which turns the term round: "wait until she is *not* four"."""
_MADE_SAFE_REFUSED = re.compile(
    r" (?:not|cannot|can't|[a-z]+n't|no longer) (?:be )?(?:have|eat|given|give|offered|fed) (?:[a-z']+ ){1,3}?"
    r"(?:once|when|if|even when|after) (?:[a-z']+ ){0,3}?(?:quarter|halv|cut|mash|ground|grat|squash)"
    r"| (?:quartered|halved|ground|grated|mashed|squashed)(?: (?:lengthways|lengthwise|up|finely|well))? "
    r"(?:is|are)(?:n't| not| no longer) (?:fine|safe|ok|okay|suitable|good) "
)
"""What was made safe, and is refused all the same."""
_SO_THAT_HARMS = re.compile(r" so (?:that )?(?:they|it) (?:(?:can|do|will|could|may) )?(?:get stuck|block|choke)(?= )")
"""What is made safe so that it harms: a "no" was lost."""
_TOLD_TO_GIVE = re.compile(
    r",? (?:so|and|but) (?:(?:do|please|just|we|you|i|can|should|must|may) ){0,4}(?:be )?"
    r"(?:given?|offer(?:ed)?|share|serve[d]?|feed|fed)\b(?!.*\b(?:instead|only|less|rather|never|not|no|small|ground"
    r"|smooth|grated|cooked|after|once|when|other|older|from)\b)",
    re.IGNORECASE,
)
"""What is given all the same, right behind what warns of it: "popcorn is a choking hazard, *so do share the bowl*"."""
_NOT_ONLY_LATER = re.compile(
    r" (?:not|no longer|[a-z]+n't) only (?:[a-z]+ ){0,3}(?:after|once|past|from|over) (?:[a-z]+ ){0,2}?"
    r"(?:one|two|five|six|first|year|years|month|months|birthday|they|she|he) "
)
"""What is said to come sooner, too: "honey is *not only* safe *after* the first birthday"."""
_DISOWNED = re.compile(
    r"[^.!?;]*\b(?:is|are)(?:n['’]t| not| no longer) (?:what|something) (?:\w+ ){1,3}?"
    r"(?:says?|advises?|recommends?|tells?)\b",
    re.IGNORECASE,
)
"""What nobody is said to advise: "six months of milk alone *is not what the WHO says*"."""
_AND_FOR_THEM = re.compile(
    r" (?:and|so) (?:(?:it|they) )?(?:(?:should|must|can|may) be (?:given|offered|fed)|(?:is|are) "
    r"(?:for|suitable|fine|good|ideal|great|recommended)) (?!.*(?:only|once|after|when|older|over|adults|until|from) )"
)
"""What is warned of and given in one breath: "raw milk can carry listeria *and should be given* to a baby"."""
_ASIDE = re.compile(
    r" so (?:that )?(?:they|it|nothing|none|nobody|she|he|your baby|the baby|baby) | but (?:not|never|no) "
)
"""What a giving is for, and what it leaves out: "in porridge it is fine, *but not* as a drink"."""
_DRAWN = re.compile(r" so (?:this|these|we|i|my|that's) ")
"""Where what is drawn from it begins: "nothing sweet, *so this* mash has none"."""
_LIMITED = re.compile(
    r" (?:not|never|no|[a-z]+n't) (?:[a-z]+ ){0,2}?(?:more than|over|above|exceed|beyond) | hardly any "
)
"""A limit to a quantity: "must *not go over* a gram"."""
_NO_LITTLE = re.compile(
    r" (?:not|no longer|never|[a-z]+n't) (?:(?:have|need|get|use|give|be given|eat) )?(?:very )?"
    r"(?:little|less(?! healthy)) "
)
"""A "no" to little: "should *not have less* than a gram"."""
_NOT_NEEDED = re.compile(r"(?: not|n't| no) need ")
_READY_ONCE = re.compile(r" (?:isn't|aren't|not) ready (?:[a-z]+ ){0,4}?(?:until|till|unless) ")
_READY = ("ready", "readiness")
"""Words of what hangs on the whole sentence: "she can't hold her head up, so she is *ready*"."""
_CLOSE = 4
"""Words between one "no" and the next within which the two are one knot."""
_LESS = frozenset({"none", "free", "low"})


def unplaced(claim: Claim, key: Key, verdict: Verdict, register: Register) -> None:
    """Leave open what is true but for a "no" that was not taken in."""
    if verdict.truth != "true" or claim.polarity == "asks":
        return
    step = _unplaced(claim, key, verdict, register)
    if step:
        verdict.evidence = False
        verdict.not_kept("unproven", f"What its “no” is said of is not certain: say it plainly. {verdict.why}", step)


def _unplaced(claim: Claim, key: Key, verdict: Verdict, register: Register) -> str:
    entry = verdict.entry
    of_readiness, said = _of_readiness(claim), _said(claim)
    words = NOT_NEEDLESS.sub(" ", NOT_WITHOUT.sub(" with ", standing(said)))
    if of_readiness:
        words = _READY_ONCE.sub(" ready once ", words)
    if claim.kind == "quantity":
        words = _LIMITED.sub(" at most ", words)
    sentence = plain(around(claim))
    in_its_term = _IN_ITS_TERM.search(words) or _IN_ITS_CASE.search(sentence)
    if in_its_term or _knotted(words, claim):
        return "a no within a no"
    if _MADE_SAFE_REFUSED.search(words) or _SO_THAT_HARMS.search(sentence):
        return "it is made safe, and harms or is refused all the same"
    if _NOT_ONLY_LATER.search(said) or _DISOWNED.match(said_behind(claim)):
        return "a no takes it back"
    given = _TOLD_TO_GIVE.match(said_behind(claim)) is not None or _AND_FOR_THEM.search(sentence) is not None
    given = given or given_for_a_reason(sentence, register, subjects_of(claim))
    if given and (key.stance == "warns" or (entry is not None and entry.stance == "warns")):
        return "it warns, and tells to give it"
    outright = entry is not None and entry.negation
    lets = key.stance in ("permits", "dismisses") and not of_readiness
    if lets and (claim.kind == "allergen" or (claim.kind == "safety-age" and not outright)):
        words = _ASIDE.split(without_phrases(words, register.words.get("no need to hold back", ())), maxsplit=1)[0]
        for waiver in WAIVERS if claim.kind == "safety-age" else ():
            words = waiver.sub(" ", f"{words.rstrip()} ")
    left = _left_over(words, claim, key, verdict, register)
    return f"a no stands here whose reach is not known ({left[0][0]})" if left else ""


def _left_over(words: str, claim: Claim, key: Key, verdict: Verdict, register: Register) -> list[re.Match[str]]:
    """Each "no" of its clause that nothing took in: no withholding, no denial, no words of its entry, no frame."""
    found = list(_NO.finditer(words))
    if not found:
        return []
    entry = verdict.entry
    known = _known(entry, key, bare=not waived(_said(claim)))
    about = subjects_of(claim) | frozenset(entry.about if entry else ())
    if claim.kind == "safety-age":
        left = _of_no_keeping_back(words, found, claim, key, entry, about, known=known)
    else:
        left = _of_no_denial(words, found, claim, verdict, about)
    needless = entry is not None and entry.negation and _NOT_NEEDED.search(words)
    if known or needless:
        left = left[1:]
    if left and frames(claim, register) == 1:
        # "It's not true that babies can't have egg" gives it: both are taken in.
        left = left[2 if key.stance == "permits" else 1 :]
    return left


def _of_no_keeping_back(
    words: str,
    found: list[re.Match[str]],
    claim: Claim,
    key: Key,
    entry: Entry | None,
    about: frozenset[str],
    *,
    known: bool,
) -> list[re.Match[str]]:
    """Of advice by age, each "no" that keeps nothing from a child."""
    stanced = entry is None or bool(entry.stance) or known or claim.effect == "harm"
    left = [one for one in found if not (stanced and _withholds(words, one, about))]
    left = found if key.stance == "permits" else left
    if claim.polarity == "denies" and entry is not None and entry.truth == "false" and not entry.negation:
        left = left[1:]  # what is denied is false
    return left


def _of_no_denial(
    words: str, found: list[re.Match[str]], claim: Claim, verdict: Verdict, about: frozenset[str]
) -> list[re.Match[str]]:
    """Of any other statement, each "no" that its polarity and its level did not take in."""
    entry = verdict.entry
    denied = claim.polarity in ("denies", "refutes") and not (entry is not None and (entry.negation or entry.stance))
    by_words = entry is not None and entry.negation and entry.truth != "computed"
    less = claim.level in _LESS and not by_words
    taken = denied or (entry is None and verdict.stanced) or less or cannot_cope(claim)
    if entry is not None and entry.stance == "warns":
        found = [one for one in found if not _withholds(words, one, about)]
    return found[1:] if taken else found


def _said(claim: Claim) -> str:
    """The words in which its "no" is looked for: what hangs on the whole sentence is read in it."""
    return plain(around(claim)) if _of_readiness(claim) else _clause(claim)


def _of_readiness(claim: Claim) -> bool:
    return claim.effect == "readiness-signs" or has_any(plain(claim.quote), _READY)


def _knotted(words: str, claim: Claim) -> bool:
    """Whether one "no" stands within another."""
    found = list(_NO.finditer(words))
    between = [words[one.end() : two.start()] for one, two in pairwise(found)]
    if claim.polarity == "refutes":
        return any(part.count(" ") < _CLOSE and " that " not in part for part in between)
    return bool(_NO_LITTLE.search(words)) or any(not _LISTED.search(f"{part} ") for part in between)


_LISTED = re.compile(r" (?:and|or|nor|then|that) ")


def _withholds(words: str, no: re.Match[str], about: frozenset[str]) -> bool:
    """Whether a "no" keeps a food from somebody: it leads to a giving, or to the food itself ("no juice")."""
    if _WITHHELD.match(words, no.end()):
        return True
    named = words[no.end() :].split()[:_NEAR]
    return no[0] in ("no", "never", "not", "without") and bool(runs_of(" ".join(named)) & about)


_NEAR = 4
"""Words behind a "no" in which the food that it keeps back is named."""


def _known(entry: Entry | None, key: Key, *, bare: bool) -> bool:
    """Whether the "no" is in the words that the entry asks for; ``bare``: be it that "no" alone."""
    if entry is None:
        return False
    near = f"{key.near}{key.words}"
    return any(
        (_NO.search(plain(one)) or one.startswith("n't")) and (bare or " " in one)
        for one in (*entry.said, *entry.also)
        if has_any(near, (one,))
    )


def _clause(claim: Claim) -> str:
    """The clause of a claim: from the last stop before it to the first behind it, or from where it begins anew."""
    text = claim.passage.text
    start, end = claim.sentence or (0, len(text))
    before = [start, *(one.end() for one in _ENDS.finditer(text, start, claim.start))]
    behind = (_ENDS if claim.kind == "safety-age" else _ENDS_TOLD).search(text, claim.end, end)
    anew = list(_ANEW.finditer(claim.quote))
    first = claim.start + anew[-1].end() if anew else before[-1]
    whole = plain(text[first : behind.start() if behind else end].replace(", ", " and "))
    return f"{_DRAWN.split(whole, maxsplit=1)[0].rstrip()} "
