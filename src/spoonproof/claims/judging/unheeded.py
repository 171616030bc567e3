"""What stands around a true statement and is not understood, so that nobody can say whether its teller holds it.

``frames`` knows the turns by which a statement is taken back. New ones are made every day ("the service has dropped its
line that ..."), so what a statement hangs on must be known to vouch for it, or it is not kept.
"""

from __future__ import annotations

import re

from spoonproof.claims.judging.frames import frames
from spoonproof.claims.judging.reading import said_before, said_behind
from spoonproof.claims.judging.verdict import Verdict
from spoonproof.claims.register import Register
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim

_VOUCHES = frozenset(
    "say said know knew think thought believe advise recommend suggest show shown find found remember note mean"
    " meant agree confirm sure certain true fact reason sign learn learnt read heard hear tell told warn stress"
    " mind notice see saw seen evidence clear explain emphasise emphasize so such now given provide providing only"
    " aware evident proof proven prove advice guidance rule message news fear worry worried worries afraid glad"
    " happy sad love like hate realise realize understand understood admit admitted"
    " swear insist reckon claim argue state report indicate add hope promise guarantee ensure check except case"
    " point thing risk chance danger possible likely important essential vital good great pity shame wonder"
    " surprise surprising remind conclude estimate assume guess bet feel felt whatever and but or not is was it"
    " this".split()
)
"""What a statement may hang on, less its ending: "the leaflet *says* that ..."."""
_DOUBTS = frozenset("deny denies denied denying doubt doubts doubted dispute disputes disputed".split())
_NOBODY = re.compile(r" (?:nobody|no one|none|never|not|can't|cannot|don't|won't|wouldn't) (?:[a-z]+ ){0,4}$")
"""Who vouches by not doubting: "*nobody* denies that ..."."""
_TO_WHOM = (
    r"(?:(?:us|you|me|them|him|her|parents|mums|moms|people|everyone|everybody|families|mothers"
    r"|(?:the|your|my|our|every|any) [a-z]+) )?"
)
_HANGS_ON = re.compile(
    rf" ([a-z0-9']+) {_TO_WHOM}that (?!(?:much|many|of|one|way|kind|sort|far|long|is|are|was|can|could|may|might|will"
    r"|would|has|have|had|do|does|makes?|[a-z]+ easily) )(?:[a-z0-9']+ ){0,9}$"
)
"""What leads up to a claim with a "that" which is no "that much", and none of "a mineral that can"."""
_AN_IDEA = re.compile(
    r" (?:line|idea|notion|claim|belief|theory|view|story|rumour|assumption|dogma) that "
    r"(?!(?:has|have|is|was|can|will) )"
)
"""What a claim's own words may make of it: "their *line that* fish is good for the heart"."""
_WHOSE = re.compile(
    r" (?:only|anyone|anybody|why|how (?:can|could)|fools?|idiots?|hardly|few|quacks?|wrong(?:ly)?|mistaken(?:ly)?"
    r"|silly|foolish(?:ly)?|stupid(?:ly)?|naive(?:ly)?|daft|used to|once|formerly|no longer|stopped"
    r"|(?:may|might|will|must)(?: well| even)? have(?: been)?"
    r"|no (?:[a-z]+ ){1,2}?(?:would|will|should)) (?:[a-z0-9']+ ){0,5}$"
)
"""A view that nobody vouches for: "*only* the careless think that", "it was *once* thought that"."""
_LET_GO = re.compile(
    r" (?:no longer|(?:has|have|had) (?:stopped|dropped|abandoned|given up|quit)|(?:stopped|dropped|gave up|quit))"
    r" (?:advis|warn|recommend|say|tell|ask|teach|insist|suggest|caution)[a-z]* "
)
"""A view that its holders gave up: "the service *no longer advises* against it"."""
_WRONG = (
    r"(?:wrong|wrongly|mistaken|mistakenly|false|falsely|untrue|myths?|nonsense|rubbish|a lie|lies|disprove[dn]"
    r"|debunked|overturned|discredited|refuted|outdated|out of date|obsolete|superseded|abandoned|retracted|scrapped"
    r"|old fashioned|overblown|exaggerated|scaremongering|alarmist|hogwash|hoax|outmoded|discarded|unfounded|baseless"
    r"|ridiculous|laughable|fools?|idiots?)"
)
_TAKEN_BACK = re.compile(
    r"^ (?:(?:but|and|yet|though|although|while) )?"
    r"(?:(?:as|which|that|that's|it's|it|this|they|they're|or so|at least|or)"
    rf" (?:(?!not |never |no |[a-z]+n't )[a-z0-9']+ ){{0,6}}?(?:{_WRONG}|(?:reject|dispute|contest|doubt|refute"
    r"|contradict|dismiss|deny|denie|disagree|question|laugh)(?:s|d|ed|es)?)"
    r"|(?:or|or so|at least) (?:that|so|it|they) (?:was|is|were|went|goes|used)"
    r"|(?:(?:just|only|merely|such|another) )?(?:an?|the) (?:[a-z]+ ){0,2}?(?:view|tale|story|belief|idea|notion|claim"
    r"|myth|opinion|theory|rumour|superstition|saying|fable|legend|line)"
    r"(?! (?:that )?(?:i|we|all|every|most|doctors|the nhs) )"
    r"|not so|(?:(?:you can|just|so) )?(?:forget|ignore|never mind|scrap) (?:it|that|this|them|all that)) "
)
"""What follows a statement and calls it untrue: "..., *as many wrongly believe*", "..., *a view nobody holds*"."""
_PARTS = re.compile(r"[,;:–—()]| - ")
_SAME_CLAUSE = re.compile(r"[,:;–—(]| but ")


def unheeded(claim: Claim, verdict: Verdict, register: Register) -> None:
    """Take from a true verdict what hangs on words that don't vouch for it, is called untrue in words that no frame
    knows, or is taken back more than once."""
    if verdict.truth != "true":
        return
    taken_back = frames(claim, register)
    step = ""
    if taken_back > 1:
        step = "its sentence takes it back more than once"
    elif not taken_back and claim.polarity in ("asserts", "hedges", "denies") and _hangs_on(claim):
        step = "it hangs on words that don't vouch for it"
    elif not taken_back and _LET_GO.search(plain(f"{said_before(claim)}{claim.quote}")):
        step = "its holders gave it up"
    elif not taken_back and any(_TAKEN_BACK.match(plain(part)) for part in _PARTS.split(said_behind(claim))):
        step = "what follows calls it untrue"
    if step:
        why = f"Whether you hold it is not clear from the words around it: say it plainly. {verdict.why}"
        verdict.not_kept("unproven", why, step)


def _hangs_on(claim: Claim) -> bool:
    """Whether words lead up to the claim that are not known to vouch for it: "science has overturned the idea that"."""
    subject = next((claim.quote.find(one) for one in claim.subjects if one in claim.quote), -1)
    if subject < 0 and not claim.subjects:
        behind = claim.quote.find(" that ") + len(" that ")
        subject = claim.quote.find(" ", behind)  # the word behind it tells a "that can"
    said = f"{said_before(claim)}{claim.quote[: max(0, subject)]}"
    lead = plain(_SAME_CLAUSE.split(said)[-1])
    hung = _HANGS_ON.search(lead)
    if hung is None:
        return _AN_IDEA.search(plain(claim.quote)) is not None
    ahead = lead[: hung.start(1)]
    if hung[1] in _DOUBTS:
        return not _NOBODY.search(ahead)
    vouches = any(hung[1].removesuffix(ending) in _VOUCHES for ending in ("", "s", "d", "es", "ed"))
    return not vouches or _WHOSE.search(ahead) is not None
