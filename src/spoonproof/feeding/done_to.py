"""What a step does to one food of several: the verb's own object, not its neighbour; and what a later one undoes."""

from __future__ import annotations

import re
from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from functools import lru_cache

from spoonproof.feeding.step_words import CLAUSE, COARSE, DONE, FIRM_END, SOFT_END
from spoonproof.feeding.taken_out import taken_out
from spoonproof.feeding.words import keys
from spoonproof.model.recipe import Step
from spoonproof.model.treatment import Treatment

_BACK = frozenset({"it", "them", "each", "they"})
_SKIN = frozenset({"skin", "peel"})  # "grill the sausages; take the skins off"

# A clause that says how far to go is of what the clause before it did: "crush the nuts, so that some bits are left"
_GOES_ON = re.compile(r"[ ,]{0,2}(?:until|till|while|so|leaving|keeping|but|not)\b", re.I)
_HOW_FAR = frozenset({"coarse", "fine", "said-firm"})


def _to_everything(clause: str, others: frozenset[str]) -> str:
    """What a clause does to all, without what it does to a neighbour first: "shred the lamb and crush everything"."""
    return " and ".join(part for part in re.split(r"\band\b", clause) if not keys(part) & others)


@lru_cache(maxsize=4_000)
def done_to(text: str, names: frozenset[str], others: frozenset[str], alone: bool) -> frozenset[str]:
    """What a step does to the food of these ``names`` itself: the verb's own object, not its neighbour
    ("grate the cheese over the grapes" grates no grapes). ``alone``: where it names none, it speaks of this one."""
    found: set[str] = set()
    before_names = about = False
    for match in CLAUSE.finditer(text):
        clause = match.group()
        here = keys(clause)
        meant = bool(names & here) or (alone and not here & others)
        about = (about and not here & others) or meant
        if about and _GOES_ON.match(text, max(0, match.start() - 1)):
            found.update(fact for fact, pattern in DONE if fact in _HOW_FAR and pattern.search(clause))
        # "it" and "them" go back to the food named before; "the mixture" is all of it.
        meant = meant or bool(
            (before_names and (here & _BACK or (here & _SKIN and not here & others)))
            or here & {"everything", "mixture"}
        )
        if meant:
            mine = clause if names & here or alone else _to_everything(clause, others)
            found.update(fact for fact, pattern in DONE if pattern.search(mine))
        elif names & taken_out(text):
            found.add("removed")
        before_names = before_names or bool(names & here)
    return frozenset(found)


def undone_later(
    facts: AbstractSet[str], steps: Sequence[Step], texts: Sequence[str], treatment: Treatment | None
) -> frozenset[str]:
    """Those of ``facts`` that a later step undoes: ground coarsely and then blended, left firm and then cooked soft."""
    undone = set()
    at = treatment.made_step if treatment and "blended" in facts else None
    coarse = (step.index for step, text in zip(steps, texts, strict=True) if COARSE.search(text))
    if at is not None and all(index < at for index in coarse):
        undone.add("coarse")
    told = " ".join(texts)
    firm = [match.end() for match in FIRM_END.finditer(told)]
    if firm and SOFT_END.search(told, firm[-1]):
        undone.add("said-firm")
    return frozenset(undone)
