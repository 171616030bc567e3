"""What a sentence tells of as refused, given up or set aside for something else: it gives nothing to anybody, whatever
it names."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from spoonproof.claims.judging.reading import around
from spoonproof.claims.register import Register
from spoonproof.claims.words import plain
from spoonproof.model.claim import Claim

_WISHED = re.compile(
    r" (?:wanted|wants|wished|tried|begged|asked|offered|offering|offers|suggested|suggesting|suggests|told me|told us"
    r"|swore|swears|insisted|insists|keen|used)"
    r" (?:[a-z']+ ){0,4}?$"
)
_REFUSED = re.compile(
    r"^ (?:[a-z']+ ){0,14}?(?:(?:said|says|saying|was|is) (?:absolutely |definitely |firmly |a (?:firm|clear) )?"
    r"(?:not|no|never)"
    r"(?! (?:problem|worr|matter|harm|bother|reason|trouble|danger|need|wonder|doubt|better|mind|fear|once|more))"
    r"|(?:i|we|she|he) (?:refused|forbade|stopped (?:her|him|them)|put (?:my|our) foot down|wouldn't hear of it)"
    r"|took (?:it|them|that) (?:away|off|back)|told (?:her|him|them|me|us) (?:no|not|never|absolutely not)) "
)


def wished_and_refused(claim: Claim) -> bool:
    """Whether somebody else's wish is refused: "her mother wanted to give honey and our doctor said absolutely not"."""
    text = claim.passage.text
    before, after = plain(text[max(0, claim.start - 60) : claim.start]), plain(text[claim.end : claim.end + 120])
    quote = plain(claim.quote)
    theirs = quote.startswith((" offered ", " suggested ")) and not before.endswith((" i ", " we "))
    wished = (
        theirs
        or _WISHED.search(before)
        or any(f" {word} to " in quote for word in ("wanted", "wants", "tried", "swore"))
    )
    return bool(wished) and _REFUSED.search(after) is not None


def missed_without(claim: Claim) -> bool:
    """Whether it tells what is amiss for want of its food, and leaves nothing out: "without salt a baby's food has no
    iodine"."""
    return _MISSED.match(plain(claim.passage.text[claim.start : claim.end + _MISSED_REACH])) is not None


_MISSED_REACH = 60
_MISSED = re.compile(
    r" without (?:(?:any|some|enough|added|a|the|a pinch of|a bit of) )?(?:[a-z]+ ){1,3}?"
    r"(?:(?:the|a|an|your|her|his|their|our|any) )?(?:[a-z']+ ){1,3}?"
    r"(?:(?:have|has|get|gets) (?:no|too little|hardly any)|can't|cannot|won't|will not|don't|doesn't|do not|does not"
    r"|lacks?|suffers?|miss(?:es)? out|goes? short|never) (?!need|risk|worry|miss|contain|harm|mind|notice)"
)


def not_given(claim: Claim, lists: Mapping[str, Sequence[str]]) -> bool:
    """Whether its own words forbid giving what it names: "with constipation never give castor oil"."""
    words = plain(claim.quote)
    tokens = words.split()
    giving = frozenset(lists.get("giving", ()))
    for at, token in enumerate(tokens):
        if token in lists.get("negations", ()) and giving & {*tokens[at + 1 : at + 1 + _NEAR]}:
            behind = f" {' '.join(tokens[at + 1 :])} "
            return any(f" {name} " in behind for name in (plain(one).strip() for one in claim.subjects))
    return False


_NEAR = 3
"""Words behind a "never" among which it forbids giving."""


def done_without(claim: Claim, register: Register) -> bool:
    """Whether all that it is about is what somebody gave up ("we left a raw milk co-op") or what another thing is
    preferred to ("extra feeds rather than bottles of water")."""
    words = plain(around(claim))
    lasts = register.words.get("gives up", ())
    names = [plain(name).strip() for name in claim.subjects or claim.foods]
    places = [words.find(f" {name}") for name in names]
    if not names or min(places) < 0 or any(_A_RULE.match(words, at) for at in places):
        return False
    leads = [words[: at + 1] for at in places]
    return _LEFT_A_CLUB.search(words) is not None or all(
        _RATHER.search(lead) or any(_gives_up(lead, verb) for verb in lasts) for lead in leads
    )


def _gives_up(lead: str, verb: str) -> bool:
    """Whether words up to a name end with its teller's ``verb`` and no more than little words behind it."""
    before, found, rest = lead.rpartition(plain(verb))
    return bool(found) and _TELLER.search(f"{before} ") is not None and _LITTLE.fullmatch(rest) is not None


_TELLER = re.compile(r" (?:i|we|i've|we've|i'd|we'd|i'll|we'll) (?:(?:have|had|both|all|always|just|did) ){0,2}$")
_LITTLE = re.compile(
    r"(?:(?:a|an|any|all|the|his|her|their|my|our|that|of|to|give|giving|offer|offering|buy|buying|use|using|drink"
    r"|drinking|eat|eating|on|him|them|it) )*"
)
"""What may stand between a refusal and what is refused; "refused to wait with honey" is none."""
_LEFT_A_CLUB = re.compile(
    r" (?:i|we) (?:left|quit|cancelled) (?:(?:a|an|the|our|my) )?(?:[a-z]+ ){1,3}"
    r"(?:co op|coop|club|scheme|group|share|round|subscription|delivery) "
)
"""What is given up with what brings it: "we left a raw milk co-op"."""
_A_RULE = re.compile(r" (?:[a-z]+ ){1,2}(?:bans?|rules?|advice|warnings?|guidelines?|guidance|myths?|scares?|limits?) ")
"""What is refused with it is not the food: "we refused the honey ban"."""
_RATHER = re.compile(
    r" (?:rather than|instead of|in place of) (?:(?:a|an|any|the|some|giving|offering|reaching|for|bottles?|cups?"
    r"|glass|sips?|spoonfuls?|drinks?|bits?|lots?|of|plain|more|extra) )*$"
)
