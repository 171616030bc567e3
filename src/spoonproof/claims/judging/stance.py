"""The stance of a statement on safety: that a food may be given, that it may not (yet), or that it is no danger."""

from __future__ import annotations

import re
from collections.abc import Collection

from spoonproof.claims.entries import Stance
from spoonproof.claims.judging.frames import unframed
from spoonproof.claims.judging.polarity import taken_back, without_phrases
from spoonproof.claims.judging.reading import age_said, clause, only_later, runs_of, said_behind, subjects_of
from spoonproof.claims.judging.refused import done_without, missed_without, wished_and_refused
from spoonproof.claims.judging.turns_of_phrase import standing
from spoonproof.claims.judging.waived import FEAR_DROPPED, WAIVERS, waived
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, has_word, plain
from spoonproof.model.claim import Claim
from spoonproof.model.record import replace

_WHY = 8
"""Characters either side of where a claim begins, in which the "why not" may stand that its "not" belongs to."""
_WHY_NOT = re.compile(r" why not ")
_AWAY = re.compile(
    r" (?:keep|keeps|keeping|kept|hide|hides|hid|hiding|hidden|lock|locks|locked) "
    r"(?!giving|offering|feeding|serving|adding|going|on|it up)"
    r"(?:[a-z']+ ){0,6}?(?:away |out of reach )?(?:from|of) (?:(?:your|the|a|all|any|my|our|young|small|little) ){0,2}"
    r"(?:baby|babies|child|children|toddler|toddlers|infant|infants|kids|ones|them|him|her|under) "
)
"""What is kept from them: "keep whole grapes away from babies", "keep honey from her until she is one"."""
_NOT_NEEDED = re.compile(
    r" (?:is|are|was|were) (?:(?:quite|totally|completely|simply|just|really) )?(?:unnecessary|needless|superfluous) "
)
"""What is not needed is not given: "salt is quite unnecessary for babies"."""
_OFF = re.compile(r" off (?:the|our|my|his|her|their|your) (?:menu|table|list|cards) (?!of )")
"""What is ruled out: "popcorn is off the list"; "off the list of dangers" is none of it."""
_PARTS = re.compile(r"[,;:]| (?:but|anyway|by the way|mind you) ")
_CLOSE = 40
"""Characters behind a claim in which it may be said what its own words left out."""
_GIVING_REACH = 3
_TROUBLE_REACH = 8
_RISK_REACH = 4
_TOO = re.compile(
    r"(?<! not)(?<!n't)(?<! never) too (?!early |late |good )(?:[a-z]+ ){1,6}?"
    r"(?:for|to (?:replace|be|stand in|take|feed|serve as|count as)) "
)
_TOO_EARLY = re.compile(r"(?<! not)(?<!n't)(?<! never) too (?:early|soon|young)(?! to (?:worry|wait|stop|delay|fret)) ")
"""What comes before its time is kept from them: "solids before four months are too early"."""
NOT_NEEDLESS = re.compile(
    r" (?:never|not|isn't|aren't|hardly)(?: (?:a|an|any|at all|ever|being)){0,2} "
    r"(?:waste of (?:time|effort)|overkill|overprotective|overcautious|pointless|needless|unnecessary|ridiculous|daft"
    r"|paranoid|fussing)(?= )"
)
"""What is worth the trouble: "cutting grapes is never a waste of time"."""
_NOT_SO = re.compile(
    r"(?:, (?:and|or|like|such as) [^,.;!?]{1,60},)? (?:is|are) (?:(?:best|better|always|both|all) ){0,2}"
    r"(?:kept|left|held) (?:off|out|away|back|from)\b"
    r"|,? (?:is|are)(?:n['’]t| not| never) (?:\w+ ){0,2}?(?:safe|ready|right|ok|okay|fine|advised|recommended|suitable"
    r"|a good idea|for bab\w+)\b",
    re.IGNORECASE,
)
"""What is said of it right behind a comma: "weaning, before seventeen weeks, isn't safe"."""
_MAKES_ILL = re.compile(
    r" (?:make|makes|made|making|get|gets|got|leave|leaves|left) (?:[a-z'0-9]+ ){1,6}?"
    r"(?:(?:very|really|quite|so|seriously|gravely|badly|dangerously|severely) )?(?:ill|sick|poorly|unwell) "
)
"""What makes somebody ill: "raw shellfish makes babies ill"."""
_NO_HARM_DONE = re.compile(
    r" (?:never|not|[a-z]+n't)(?: [a-z]+)? (?:(?:done|did|do|does|caused?) (?:[a-z']+ ){0,4}?(?:harm|damage)|choked) "
)
"""A harm that is denied by what came of it: "it has never done any harm", "mine never choked"."""
_BEHIND_DENIED = re.compile(
    r" ?(?:is|are|was|were)(?:n't| not| never) (?:(?:really|actually|much of|an?|any|the|even) ){0,3}"
    r"(?:issue|problem|worry|concern|risk|danger|thing|big deal|hazard)s?\b"
)
_BEHIND_HARMS = re.compile(
    r" ?(?:(?:can|could|may|might|will|do|still|also) ){0,3}(?:choke|kill|block)\b"
    r"|(?:is|are) (?:(?:still|always|a|an|real|serious) ){0,3}(?:choking )?(?:hazard|risk|danger)s?\b"
)
"""What is said right behind a claim of what it names: "arsenic *isn't an issue*", "whole grapes *can choke*"."""
_ILL_DENIED = re.compile(
    r" (?:not|never|no|nobody|nothing|[a-z]+n't)(?: (?!to |give )[a-z]+){0,2}? "
    r"(?:gives?|gave|given|giving|causes?|caused|causing|makes?|made|making|gets?|got|gotten|had|have|catch|caught) "
    r"(?:(?:your|my|our|the|an?|any|any of|small|young|little|single) ){0,3}"
    r"(?:(?:baby|babies|child|children|toddlers?|kids?|infants?|ones?|him|her|them|you|us|me|it|anyone|anybody|someone"
    r"|somebody|people|soul|son|daughter) )?(?:(?:an?|any|bad|nasty|very|really|from) ){0,2}"
    r"(?:botulism|salmonella|listeria|listeriosis|food poisoning|e coli|campylobacter|ill|sick|poorly|unwell"
    r"|(?:tummy |stomach |gut )?(?:bug|upset)|upset (?:tummy|stomach)) "
)
"""An illness that a food is said not to bring: "it never gave anyone food poisoning"."""
_REFUSES = re.compile(
    r"(?<! not)(?<!n't)(?<! never) (?:refuse[sd]?|declined?) to (?:give|feed|offer|serve|add|put|let) "
)
"""What its teller will not give: "I refuse to give honey to my baby"."""
_STOPPED = re.compile(
    r"(?<! not)(?<!n't)(?<! never) (?:stop|stops|stopped|pause|paused|drop|dropped|ditch|park|shelve|postpone|give up) "
    r"(?:(?:giving|offering|feeding|serving|all|the|any|with|on) ){0,2}(?:[a-z]+ ){1,3}?(?:until|till) "
    r"| (?:leave|save) (?:[a-z']+ ){1,6}?(?:until|till) (?:(?:she|he|they|baby|about|around|after|is|are|turns?) ){0,3}"
    r"(?:one|two|three|five|six|1|2|3|5|6|12|twelve|(?:a|the|her|his|their) (?:first|year)) "
)
"""What is broken off until an age is kept from them: "stop solids until he is one"."""
_FOR_ITS_HARM = re.compile(r"^ no [a-z ]{1,60} because of (?:the |its |their |all the )?[a-z]")
"""What is left out for a reason: "no shark because of the mercury"."""
NOT_WITHOUT = re.compile(
    r"(?: (?:not|never|hardly)|n't)(?: (?:quite|entirely|exactly|really))? "
    r"without (?=(?:(?:its|any|some|a) )?(?:risk|danger|hazard|harm|problem))"
)
"""What has its risk is said to be "not without" it."""
_NOTHING_IN_IT = re.compile(
    r"(?: nothing|n't anything| not anything| no [a-z]{1,16})(?: at all)? in (?:[a-z]{1,16} ){1,4}?"
    r"(?:that |which |to )?"
    r"(?:(?:can|could|may|might|will|would|ever|possibly|do) ){0,3}"
    r"(?:harm|harms|hurt|hurts|worry|fear|be (?:afraid|scared|worried)|damage|trouble|poison) "
    r"| (?:can't|cannot|(?:could|will|do|does)(?:n't| not)|(?:can|could|will) never|won't) (?:ever |possibly )?"
    r"(?:do (?:any )?)?(?:harm|hurt) "
)
"""What is said to hold no harm: "there's nothing in honey that could hurt her"."""
_LEFT_OUT_SO_SAFE = re.compile(
    r" (?:no|without(?: any)?) (?:[a-z]{1,16} ){1,8}?"
    r"(?:it|this|they|these)(?:'s|'re| is| are) (?:[a-z]+ )?(?:safe|fine|okay|ok) "
)
"""What is safe for want of it: "with *no raw egg it is safe* to eat"."""
_MUST_BE = re.compile(
    r"(?<!n't)(?<! not)(?<! never) (?:needs?|must be|should be|has to be|have to be|ought to be|(?:is|are) best"
    r"|can be (?![a-z]+ by )) ?"
)
_NOT_TOO = re.compile(
    r"(?: not|n't| never(?: be)?| (?:nothing|none)(?: [a-z]+){0,4} (?:is|are)) too (?:[a-z]+ ){1,4}?for "
)
"""What is too much for somebody is kept from them: "too high in mercury for children", "too salty for babies"."""


def stance_of(claim: Claim, register: Register) -> Stance:
    """What a statement on safety says of its food; "" where a "no" stands in it that can't be placed.

    What is called a myth says the opposite: "it's a myth that babies can't have honey" permits it.
    """
    stance = _as_said(unframed(claim), register)
    if not stance or not taken_back(claim, register):
        return stance
    quote = plain(claim.quote)
    if has_any(quote, register.words.get("made safe", ())) and not has_any(quote, register.words.get("allows", ())):
        return "dismisses"  # "it's a myth that grapes need cutting"
    if stance != "warns":
        # "It's a myth that you must cut grapes" is no warning.
        return "warns" if stance == "dismisses" or has_any(quote, register.words.get("allows", ())) else ""
    risks = has_any(quote, register.words.get("risk", ())) or has_any(quote, register.words.get("trouble", ()))
    return "dismisses" if risks else "permits"


def _less_purpose(claim: Claim, register: Register) -> tuple[Claim, str]:
    """The claim and its clause, less what a food is made safe for: "cut grapes lengthways so they can't block a throat"
    denies nothing."""
    clauses = plain(clause(claim))
    done = _PURPOSE.split(clauses, maxsplit=1)[0] + " "
    if len(done) >= len(clauses) or not has_any(done, register.words.get("made safe", ())):
        return claim, clauses
    within = _PURPOSE.search(claim.quote)
    return replace(claim, end=claim.start + within.start() if within else claim.end, polarity="asserts"), done


_PURPOSE = re.compile(r" so (?:that )?(?:they|it|nothing|none|nobody|she|he|your baby|the baby|baby) ", re.IGNORECASE)


def _as_said(claim: Claim, register: Register) -> Stance:
    """The stance of the claim's own words where they decide, else of the clause around them: "avoid salt, but
    honey is fine" permits honey, "honey given before the age of one is a no-no" does not."""
    claim, around = _less_purpose(claim, register)
    parts = [plain(part) for part in _PARTS.split(claim.quote)]
    subjects = subjects_of(claim)
    named = [part for part in parts if runs_of(part) & subjects]
    if _given_after_all(claim.quote, register, subjects) or _given_instead(claim.quote, register, subjects):
        return "permits"
    if missed_without(claim):
        return "permits"
    if _LEFT_OUT_SO_SAFE.match(plain(claim.quote)) and not re.search(r"[.?!:;]", claim.quote):
        return "warns"
    if wished_and_refused(claim) or done_without(claim, register):
        return "warns"
    if _WHY_NOT.search(plain(claim.passage.text[max(0, claim.start - _WHY) : claim.start + _WHY])):
        # "Why not add a pinch of salt?" adds it; "why not wait with honey?" waits.
        waits = _holds_back(plain(claim.quote).replace(" not ", " ", 1), register, subjects)
        return "warns" if waits else "permits"
    behind = plain(said_behind(claim)[:_CLOSE])
    if _BEHIND_DENIED.match(behind):
        return "dismisses"
    if _NOT_SO.match(claim.passage.text, claim.end) or _BEHIND_HARMS.match(behind):
        return "warns"
    if only_later(around) or _STOPPED.search(around):
        return "warns"  # "honey is only safe after one": not before
    for words in dict.fromkeys([*named[:1], plain(claim.quote)]):
        stance = _stance(words, register, subjects)
        if stance == "warns":
            # "No need to delay egg", "no way they can choke": what takes it back stands before the claim's own words.
            clause_says = _stance(around, register, subjects)
            held = has_any(words, register.words.get("holds back", ()))
            return clause_says if clause_says == "permits" or (clause_says == "dismisses" and not held) else stance
        if stance:
            return stance
        if has_any(words, register.words.get("allows", ())):
            # "Nothing is wrong with honey at six months, it is fine": the clause may deny the danger.
            return "dismisses" if _stance(around, register, subjects) == "dismisses" else "permits"
    negated = claim.polarity == "denies" or bool(_negations(plain(claim.quote), register))
    # "Stir in honey if she won't eat": what is said of her keeps nothing from her.
    told = around.partition(" if ")[0]
    return _stance(told, register, subjects) or ("" if negated else "permits")


def _given_after_all(quote: str, register: Register, subjects: Collection[str]) -> bool:
    """Whether a "but" takes a warning back: "no honey before one, but a drop of it is fine"; not so with what may be
    eaten later on ("but after that it is fine")."""
    last = plain(quote).rpartition(" but ")[2]
    if last == plain(quote) or not has_any(last, register.words.get("allows", ())):
        return False
    age = age_said(last, register)
    if age is None:
        later = has_any(last, register.words.get("later", ()))
    else:
        later = age >= (age_said(plain(quote).rpartition(" but ")[0], register) or _A_YEAR)
    later = later or has_any(last, register.words.get("made safe", ()))
    return not later and not _negations(last, register) and not _stance(last, register, subjects)


def _given_instead(quote: str, register: Register, subjects: Collection[str]) -> bool:
    """Whether it refuses one thing and gives another: "never formula, only almond milk"."""
    first, found, last = (plain(part) if part != ", only " else part for part in quote.partition(", only "))
    named, refused = frozenset(subjects), runs_of(first)
    if not found or not runs_of(last) & named - refused or not refused & named or not _negations(first, register):
        return False
    return not _stance(f" {last}", register, subjects) and not has_any(last, register.words.get("made safe", ()))


_A_YEAR = 12
"""Months until which what waits waits, as a rule."""


def _stance(words: str, register: Register, subjects: Collection[str]) -> Stance:
    words = NOT_WITHOUT.sub(" with ", standing(words))
    if (
        has_any(words, register.words.get("risk denied", ()))
        or _NOTHING_IN_IT.search(words)
        or _ILL_DENIED.search(words)
        or _NO_HARM_DONE.search(words)
        or (FEAR_DROPPED.search(words) and not has_any(words, register.words.get("holds back", ())))
    ):
        return "dismisses"
    if waived(words):
        for one in WAIVERS:
            words = one.sub(" ", words)
        return "" if _holds_back(words, register, subjects) else "permits"
    needless = has_any(NOT_NEEDLESS.sub(" ", words), register.words.get("no need", ()))
    if needless and has_any(words, register.words.get("made safe", ())):
        return "dismisses"  # "you don't need to cut grapes"
    if (
        has_word(words, "whole")
        and (must := _MUST_BE.search(words))
        and has_any(words[must.end() - 1 :], register.words.get("made safe", ()))
    ):
        return "warns"  # "whole cherry tomatoes need quartering"
    if _NOT_TOO.search(words):
        return "permits"  # "is not too salty for babies"
    leave = register.words.get("no need to hold back", ())
    if has_any(words, leave):
        rest = without_phrases(words, leave)
        return "" if _holds_back(rest, register, subjects) else "permits"
    if _no_trouble(words, register):
        return "" if has_any(words, register.words.get("holds back", ())) else "dismisses"
    if _UNMADE.search(words):
        return "dismisses"
    if _holds_back(words, register, subjects):
        return "warns"
    if given_for_a_reason(words, register, subjects):
        return "permits"
    known = register.words.get("risk", ())
    risks = [phrase for phrase in known if has_word(words, phrase)] if has_any(words, known) else []
    risks += [found.group().strip() for found in _MAKES_ILL.finditer(words)]
    if risks:
        if has_any(words, register.words.get("benefit", ())) and not _negations(words, register):
            return "permits"  # "honey prevents botulism" praises it; the risk is what it is praised against
        return "dismisses" if _all_negated(words, risks, register) else "warns"
    return ""


def given_for_a_reason(words: str, register: Register, subjects: Collection[str]) -> bool:
    """Whether its main clause gives what only its reason warns of: "rice drinks *are recommended* because of arsenic".
    What is left without a giving ("rice drinks have to go, because of arsenic") warns as before."""
    main, reason = _REASON.split(words, maxsplit=1)[0], _REASON.search(words)
    if (first := _REASON_FIRST.match(words)) is not None:
        main, reason = f" {words[first.end() :]}", first
    if reason is None or not has_any(reason[0] + words[reason.end() :], register.words.get("risk", ())):
        return False
    named = first is not None or bool(runs_of(main) & frozenset(subjects))
    made = has_any(main, register.words.get("made safe", ())) or has_any(main, register.words.get("risk", ()))
    return named and not made and _GIVES.search(main) is not None and not _negations(main, register)


_REASON = re.compile(
    r" (?:because(?: of)?|on account of|due to|owing to|thanks to|for fear of|as (?:it|they)|since (?:it|they)) "
)
_REASON_FIRST = re.compile(
    r" (?:because of|on account of|due to|owing to|for fear of) (?:(?!(?:we|i|you|they) )[a-z]+ ){1,4}(?=(?:we|i|you) )"
)
_GIVES = re.compile(
    r" (?:(?:is|are|be) (?:(?:best|highly|often|always|perfectly|quite) )?(?:given|fed|offered|recommended|advised"
    r"|suitable|safe|fine|ok|okay|ideal|allowed|good|right)"
    r"|(?:must|should|can|may|need to|have to|do) (?:be given|be fed|be offered|have|eat|drink|get|give|offer|serve)"
    r"|(?:i|we|you) (?:do |always |still )?(?:give|offer|serve|feed)) (?!up )"
    r"|^ (?:please )?(?:give|offer|serve|feed) (?!up )"
)
_UNMADE = re.compile(
    r" (?:(?:should|must|need|do|does|can|could)(?:n't| not| no longer)|never) (?:be |to be |have to be )?"
    r"(?:cut|quarter|quartered|halve|halved|peel|peeled|chop|chopped|mash|mashed|grate|grated|ground|grind|slice|sliced"
    r"|squash|squashed|flattened|pureed|boiled hard|soaked|deseeded|deboned|shredded) "
    r"(?!.*(?:rounds?|coins?|circles?|discs?|disks?|cross|width|across|chunks?|thick|big|large) )"
)
"""A making safe that is refused: "grapes should *not be quartered*"; not so "do not cut them into rounds"."""


def _holds_back(words: str, register: Register, subjects: Collection[str]) -> bool:
    """Whether the words keep a food from somebody: "avoid", "not before", "isn't for", "without honey"."""
    words = _NEVER_ILL.sub("", words)
    if has_any(words, register.words.get("holds back", ())) or only_later(words):
        return True
    if (
        _TOO.search(words)
        or _TOO_EARLY.search(words)
        or _OFF.search(words)
        or ((away := _AWAY.search(words)) and not _negations(words[: away.start()], register))
        or _FOR_ITS_HARM.search(words)
        or _STOPPED.search(words)
        or _REFUSES.search(words)
    ):
        return True
    if _NOT_NEEDED.search(words):
        return True
    before = has_any(words, register.words.get("before", ()))
    if before and has_word(words, "no"):
        return True
    tokens = words.split()
    giving = frozenset(register.words.get("giving", ()))
    children = has_any(words, register.words.get("children", ()))
    for place in _negations(words, register):
        near = tokens[place + 1 : place + 1 + _GIVING_REACH]
        named = near[:1] and age_said(words, register) is not None and runs_of(near[0]) & frozenset(subjects)
        if tokens[place] == "no" and named:  # "no chai at ten months"
            return True
        no = tokens[place] == "no" and (children or near[:1] == ["whole"])  # "no alcohol in a baby's food"
        if tokens[place] == "without" or no:
            if runs_of(" ".join(near)) & frozenset(subjects):
                return True
        elif giving & set(near):
            return True
    return False


_NEVER_ILL = re.compile(
    r" (?:never|[a-z]+n't|not) (?:gets?|got|have|has|had|catch|caught|suffers?)(?: from)?(?: (?:a|any|the|single))* "
    r"(?:[a-z]+ )?(?:colds?|coughs?|flu|ill|sick|poorly|unwell|constipated|constipation|allerg(?:y|ies)|colic|eczema"
    r"|infections?|bugs?|fevers?|fussy|hungry|anaemia|anaemic)(?= )"
)
"""An illness that is not got is no food that is kept back: "babies who have honey *never get colds*"."""


def _no_trouble(words: str, register: Register) -> bool:
    """Whether harm is denied: "nothing wrong with", "won't do a baby of six months any harm"."""
    tokens = words.split()
    trouble = frozenset(register.words.get("trouble", ()))
    links = frozenset(register.words.get("links", ()))
    for place in _negations(words, register):
        for token in tokens[place + 1 : place + 1 + _TROUBLE_REACH]:
            if token in links:
                break
            if token in trouble:
                return True
    return False


def _negations(words: str, register: Register) -> list[int]:
    negations = frozenset(register.words.get("negations", ()))
    return [place for place, token in enumerate(words.split()) if token in negations]


def _all_negated(words: str, phrases: list[str], register: Register) -> bool:
    """Whether a negation stands a few words before every one of these phrases."""
    tokens = words.split()
    firsts = {plain(phrase.rstrip("*")).split()[0] for phrase in phrases}
    negated = _negations(words, register)
    places = [index for index, token in enumerate(tokens) if token in firsts]
    # "I don't believe that it can harm" denies the believing, and is turned round as a whole.
    return bool(places) and all(
        any(0 < index - n <= _RISK_REACH and "that" not in tokens[n:index] for n in negated) for index in places
    )
