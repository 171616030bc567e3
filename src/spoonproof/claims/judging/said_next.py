"""What is said right behind a claim that changes whose it is, or what it promises: what others hold and something is
set against, and what is denied and promised anew."""

from __future__ import annotations

import re

from spoonproof.claims.judging.reading import said_before, said_behind
from spoonproof.claims.register import Register
from spoonproof.claims.words import has_any, plain
from spoonproof.model.claim import Claim

OTHERS_SAY = re.compile(
    r"\b(?:some|many|most|people|folks?|they(?:['’]ll|['’]d|['’]ve)?|everyone|everybody|others|mums?|moms?|parents"
    r"|mother|mothers|nan|gran|granny|grandma|grandparents|neighbours?|friends?|sister|aunts?|aunties?|sites?|blogs?|books?|forums?|internet|generation"
    r"|advice|packets?|packs?|labels?|leaflets?|rules?|guidelines?) (?:[a-z'’-]{1,12} ){0,2}?"
    r"(?:say|says|said|tell|tells|told|think|thinks|thought|believe|believes|reckon|reckons|claim|claims|swear|swears"
    r"|insist|insists|warn|warns)(?: [a-z'’-]{1,14}){0,4}\s*$",
    re.IGNORECASE,
)
"""A view that is put into the mouths of others, none of them an authority with a name."""
TAIL = re.compile(r"^(?: (?!but\b|though\b|yet\b)[a-z0-9']{1,9}){1,4}(?=[,.;!?–—]| but\b)", re.IGNORECASE)
"""Words of what is held that the claim itself left out: "before one"."""
_BUT = re.compile(r"^[\s,;:–—-]{0,3}(?:but|though|yet)\b", re.IGNORECASE)


def answered(claim: Claim) -> bool:
    """Whether others are said to hold it and something is set against it ("they told us to wait until one, but at eight
    months it is no different"): whose view it is nobody can tell. What comes later on is set against nothing."""
    behind = TAIL.sub("", said_behind(claim))
    inside = claim.quote.partition(", but ")[2]
    if not (inside or _BUT.match(behind)) or not OTHERS_SAY.search(said_before(claim)):
        return False
    return not has_any(plain(f"{inside} {behind}"), _NO_ANSWER)


_NO_ANSWER = tuple("after afterwards then later older from cooking cooked baked".split())
"""Words of a part that goes on from what others hold, and does not gainsay it: "but in cooking it is fine"."""


def taken_up_again(claim: Claim, register: Register) -> bool:
    """Whether what is denied is promised anew right behind it: "it does not cure cancer, it only prevents it"."""
    rest = plain(said_behind(claim))
    if claim.kind == "process" and _STOPS_GROWTH.match(rest):
        return False  # "freezing does not kill bacteria, it only stops them growing" promises less
    if claim.kind in ("disease", "general-benefit") and _MERELY.match(rest):
        return True
    behind = _AGAIN.match(rest)
    return behind is not None and has_any(f" {behind[1]} ", (*register.words.get("medicine", ()), *_KILLS))


_KILLS = tuple("stop end ends shorten shortens clear clears destroy destroys wipes wipe sterilises sterilizes".split())
_STOPS_GROWTH = re.compile(
    r" (?:but |and )?(?:it |they |the cold )?(?:only |just |simply |merely )?(?:stops?|keeps?) "
    r"(?:them|it|bacteria|germs|the bacteria|the germs) (?:from )?(?:growing|multiplying|spreading) "
)
_MERELY = re.compile(
    r" (?:but |and )?(?:it|they) (?:only|just|simply|merely) (?!is|are|has|have|tastes?|fills?|smells?)"
)
"""What is promised under the cover of a denial: "it's not a medicine, it just makes the fever go"."""
_AGAIN = re.compile(
    r" (?:but |yet |though |and )?(?:it |they )(?:(?:does|do|will|can|may|might) )?"
    r"(?:(?:only|just|simply|merely|rather|actually|really|still|also) )?((?:[a-z]+ ){1,3})"
)
