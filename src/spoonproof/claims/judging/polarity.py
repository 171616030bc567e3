"""What a sentence does with its claim, read again before judging: idioms with a "no" deny nothing, and a question
that takes the answer for granted ("did you know that ...?") asserts it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.claims.judging.frames import frames, led
from spoonproof.claims.judging.read_as import LOSES_NO, read_as
from spoonproof.claims.judging.reading import around, said_before, said_behind
from spoonproof.claims.judging.refused import wished_and_refused
from spoonproof.claims.judging.turns_of_phrase import standing
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain, plains
from spoonproof.model.claim import Claim, Polarity
from spoonproof.model.record import replace

_ANSWER = re.compile(
    r"[?!.\s]*((?:of course|absolutely|definitely|certainly) not|nah|not (?:if|when|while|really|as long)|never|hardly"
    r"|yes|yep|yeah|sure|you bet|certainly|totally|obviously|indeed|absolutely|definitely|of course"
    r"|it does|they do|it is|they are|it can"
    r"|(?:i|we|they|(?:my|our|every|all|the) [a-z]+) (?:swears?|says?|insists?|promises?|thinks?|believes?)"
    r"|i(?:'ve| have) seen it|it (?:worked|did)|nothing shows"
    r"|(?:there(?:'s| is) )?no (?:good |real |hard )?(?:evidence|proof)|no|nope|not at all)\b"
)
_YES = 40
_NONE = frozenset({"none", "free"})


_READ: dict[Polarity, str] = {
    "asserts": "a statement",
    "hedges": "a hedged statement",
    "asks": "a question",
    "denies": "a denial",
    "refutes": "taking it back",
}


def read_again(claim: Claim, register: Register) -> Claim:
    """The claim with the kind, the level and the polarity that its whole sentence gives it; the step says why where
    one changed."""
    claim, settled = read_as(claim, register)
    if settled:
        return claim
    polarity, why = _polarity(claim, register)
    if polarity == "asserts" and claim.kind == "function" and unneeded(claim, register) and not cannot_cope(claim):
        polarity, why = "denies", "its words say that it is not needed"
    if polarity == claim.polarity:
        return claim
    return replace(
        claim,
        polarity=polarity,
        steps=(*claim.steps, f"read as {_READ[polarity]}, and not as {_READ[claim.polarity]}: {why}"),
    )


def _polarity(claim: Claim, register: Register) -> tuple[Polarity, str]:
    sentence = plain(around(claim))
    none_does = _NO_FOOD.search(plain(f"{said_before(claim)} {claim.quote}")) and not _SAVE_ONE.search(sentence)
    if claim.kind in ("disease", "function") and claim.polarity in ("asserts", "denies") and none_does:
        return "refutes", "no food is said to do it"
    if claim.polarity == "denies" and _ASKED_NOT.match(sentence) and _mark(claim) == "?":
        claim = replace(claim, polarity="asks")
    if claim.polarity in ("asserts", "hedges"):
        if claim.kind == "function" and _DOES_NOT_MAKE.search(plain(claim.quote)) and " until " not in sentence:
            return "denies", "its words say that it does not bring it about"
        if claim.kind == "nutrient-content" and claim.level == "contains" and _IS_NOT.search(plain(claim.quote)):
            return "denies", "its own words say that it is not"
        if claim.kind != "safety-age" and wished_and_refused(claim):
            return "refutes", "it is another's wish, and refused"
        return ("refutes", "its sentence takes it back") if frames(claim, register) == 1 else (claim.polarity, "")
    if claim.polarity == "asks":
        if has_any(sentence, register.words.get("takes for granted", ())) or _GRANTED.search(sentence):
            return "asserts", "the question takes it for granted"
        if has_any(sentence, register.words.get("doubting questions", ())) and frames(claim, register) == 1:
            return "refutes", "the question takes it back"
        if frames(claim, register) == 1:
            return "refutes", "the question is answered no"
        answer = _answer(claim)
        if answer:
            no = answer.startswith(_NO)
            return ("refutes", "the question is answered no") if no else ("asserts", "it is answered yes")
        return "asks", 'its "not" asks, and denies nothing'
    if claim.kind in ("disease", "allergen") and claim.polarity == "denies" and _NEVER_ILL.search(plain(claim.quote)):
        return "asserts", "who never gets an illness is promised to be kept from it"
    # "Don't delay peanut: introducing it early lowers the risk" denies no lowering.
    waits = register.words.get("no need to hold back", ()) if claim.kind != "safety-age" else ()
    stands = standing(without_phrases(sentence, waits))
    if stands != sentence and not _denies(stands, register, absence=claim.level in _NONE):
        return "asserts", 'its "no" belongs to a turn of phrase'
    if claim.polarity == "denies" and claim.kind == "process" and LOSES_NO.search(plain(claim.quote)):
        return "asserts", "that it loses none is what is said"
    if claim.polarity == "denies" and cannot_cope(claim):
        return "asserts", "that a body cannot deal with it is what is said"
    if claim.polarity == "denies" and claim.kind == "function" and not claim.nutrients and _NO_WONDER.search(sentence):
        return "refutes", "it promises no wonder"
    if claim.level in _NONE and not frames(claim, register) and _count(standing(plain(claim.quote)), register) < 2:
        return "asserts", f'the one "no" is what makes it {claim.level}'
    return claim.polarity, ""


_GRANTED = re.compile(
    r" (?:isn't|is) it (?:just |so |not )?"
    r"(?!true|possible|likely|right|ok|okay|safe|best|better|wise|normal|proven|said|fine)[a-z]+ (?:that|how) "
    r"| could (?:it|that|this) (?:just |really )?be (?:(?!safe|harmful|danger)[a-z']+ ){1,8}?(?:that|why) "
)
"""What a question asks about that takes it for granted: "isn't it odd that", "could it be the broth that"."""
_IS_NOT = re.compile(
    r" (?:is|are|was|were)(?:n't| not| never| hardly| no) (?!just |only |merely |simply )(?:[a-z0-9']+ ){1,3}$"
)
"""What its own words end by saying that it is not: "iron isn't squash's" strong point, "dates aren't sugar"."""
_CANNOT_COPE = re.compile(
    r" (?:can't|cant|cannot|can not|aren't able to|are not able to|struggle to|don't) (?:yet |really )?"
    r"(?:deal|cope|handle|process|manage)(?: with)? (?:(?:much|a lot|lots|too much|so much) of )?"
    r"(?:it|that|this|(?:(?:much|so much|too much|a lot of|lots of|added|extra) )?(?:salt|sodium)) "
)
_ASKED_NOT = re.compile(
    r" (?:(?:but|and|so) )?(?:won't|isn't|aren't|doesn't|don't|can't|wouldn't|couldn't|shouldn't|didn't|will not)(?= )"
)
_DOES_NOT_MAKE = re.compile(
    r" (?:won't|will not|doesn't|does not|don't|do not|didn't|did not|can't|cannot|never) "
    r"(?:make|makes|made|help|helps|helped) (?:(?:your|my|the|a) )?"
    r"(?:baby|babies|child|children|toddler|toddlers|infant|infants|him|her|them|anyone|anybody|you) "
)
_NO_WONDER = re.compile(
    r" (?:won't|will not|doesn't|does not|don't|do not|didn't|can't|cannot) (?:magically |suddenly )?"
    r"(?:(?:make|give) (?:[a-z']+ ){1,4}?(?:clever|cleverer|smart|smarter|brainy|brainier|strong|stronger|tall|taller"
    r"|a genius|geniuses|talk|walk|night vision|superpowers|see in the dark)|turn (?:[a-z']+ ){1,4}?into)(?= )"
)
"""What no food does is right to deny: "carrots won't turn her eyes into lamps"."""
_NO_FOOD = re.compile(
    r" (?:no|isn't an?|isn't any|is not an?|not a) (?:single |one |magic )?"
    r"(?:food|fruit|vegetable|herb|spice|tea|oil|drink|dish|diet|supplement) "
    r"(?:(?:or|nor|and) (?:[a-z]+ ){1,2})?(?:(?:that|which|can|will|has|ever|been|shown|proven|found|known|to) ){0,6}"
    r"(?:cures?|treats?|heals?|prevents?|stops?|keeps?|promises?|guarantees?) "
)
_SAVE_ONE = re.compile(
    r" (?:except|but|save|apart from|other than|besides|unless|only|like|as well as) "
)  # "no food cures it but ginger"
_NEVER_ILL = re.compile(
    r" (?:never|won't|will not|don't|do not|doesn't|does not|hardly ever|rarely|no longer) "
    r"(?:see|have|get|gets|catch|catches|develop|develops|suffer from|suffers from|come down with"
    r"|be(?:come)?(?! an? | the | any)) "
)
_NO = ("no", "nah", "never", "hardly", "there", "of course not", "absolutely not", "definitely not", "certainly not")


def _answer(claim: Claim) -> str:
    """The answer that follows the question at once, "" when none does."""
    text = claim.passage.text
    end = text.find("?", claim.end)
    if end < 0 or end - claim.end > _YES:
        return ""
    match = _ANSWER.match(text[end : end + _YES].lower())
    return match[1] if match else ""


def cannot_cope(claim: Claim) -> bool:
    """Whether it says that a body cannot deal with "much of it"."""
    words = plain(f"{claim.quote}{said_behind(claim)[:_COPE_REACH]}")
    return claim.kind == "function" and _CANNOT_COPE.search(words) is not None


_COPE_REACH = 24
"""Characters behind a claim in which it may say so: "no salt, their kidneys" and then "can't cope with it"."""


def _denies(words: str, register: Register, *, absence: bool) -> bool:
    """Whether words deny something; of an ``absence``, "free" and its like do so too."""
    negations = register.words.get("negations", ())
    said_no = _count(words, register) if absence else any(token in negations for token in words.split())
    return bool(said_no) or has_any(words, register.words.get("refuted", ()))


def taken_back(claim: Claim, register: Register) -> bool:
    """Whether the sentence takes the claim's own words back from outside them: "it's a myth that", "it isn't true
    that", "there is no evidence that"."""
    if claim.polarity not in ("denies", "refutes"):
        return False
    answered_no = claim.polarity == "refutes" and _answer(claim).startswith(_NO)
    shown = has_any(plain(said_before(claim)), register.words.get("not shown", ()))
    return frames(claim, register) == 1 or shown or answered_no


def unneeded(claim: Claim, register: Register) -> bool:
    """Whether it says that a thing has no part in what it does: "is useless for", "does nothing for", and right before
    its words "babies don't need"."""
    said = register.words.get("unneeded", ())
    if has_any(plain(claim.quote), said):
        return True
    before = said_before(claim).rstrip()
    if not before[-1:].isalpha():
        return False  # "supplements are unnecessary: iron supports ..."
    leads = plain(before).rstrip()
    return any(leads.endswith(plain(phrase).rstrip()) for phrase in said)


def twice_turned(claim: Claim, register: Register) -> bool:
    """Whether its sentence turns it round more than once, so that nobody can say for sure what it says."""
    found = frames(claim, register)
    _, rest = led(claim, register)
    said = register.words.get("unneeded", ())
    quote = plain(claim.quote)
    if claim.kind == "function" and has_any(quote, said) and _count(without_phrases(quote, said), register):
        return True  # "is not unnecessary"
    inner = _count(rest, register) or int(has_any(rest, said))
    return found > 1 or (found == 1 and inner > (claim.level in _NONE))  # "gluten-free" is one "no" itself


def not_only(claim: Claim) -> bool:
    """Whether its words lead up to more: "it doesn't only help with colds, it cures them"."""
    return has_any(
        plain(claim.quote), ("not only", "not just", "not merely", "doesn't only", "doesn't just", "don't just")
    )


def _mark(claim: Claim) -> str:
    """The mark that ends the claim's sentence, "" where none does."""
    return next((mark for mark in claim.passage.text[claim.end - 1 : claim.end + _AFTER] if mark in ".!?;\n"), "")


_AFTER = 120
"""Characters that are looked at on either side."""


def _count(words: str, register: Register) -> int:
    """How often the words say no: "not sugar free" and "not vegan" twice, "neither honey nor nuts" once."""
    negations = {*register.words.get("negations", ()), *register.words.get("go without", ())}
    said = words.split()
    return sum(token in negations and not (token == "nor" and "neither" in said) for token in said)


def without_phrases(words: str, phrases: Sequence[str]) -> str:
    """What ``plain`` gave, less these phrases."""
    for wanted in plains(phrases):
        if wanted in words:
            words = words.replace(wanted, " ")
    return words
