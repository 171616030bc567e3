"""What is done to a food before it is given, as one tells it: "chop the raisins", "the prunes, and blend them"."""

from __future__ import annotations

import re

from spoonproof.feeding.step_words import IN_FOUR
from spoonproof.feeding.words import Found

_DONE = {
    "blend": "blended", "blended": "blended", "blending": "blended", "blitz": "blended", "blitzed": "blended",
    "whizz": "blended", "whizzed": "blended", "mash": "mashed", "mashing": "mashed", "chop": "chopped",
    "chopped": "chopped", "chopping": "chopped", "grate": "fine", "grating": "fine", "grind": "fine",
    "grinding": "fine", "soak": "soaked", "soaking": "soaked", "cook": "cooked", "steam": "cooked", "boil": "cooked",
    "stew": "cooked", "roast": "cooked", "bake": "cooked", "poach": "cooked", "quarter": "quartered",
    "thin": "mixed", "loosen": "mixed", "slacken": "mixed", "whisk": "mixed", "let": "mixed",
}  # fmt: skip
_VERBS = "|".join(_DONE)
_TO_IT = re.compile(
    rf"\b({_VERBS})(?: (?:up|down|half|little|(?:tea)?spoon(?:ful)?|the|a|an|some|few|of|your|those|these|all|raw|whole"
    r"|hard|fresh|firm)){0,4} $",
    re.I,
)
_TO_THEM = re.compile(
    r"(?: (?!not |never |without |no )\w+(?!n['’]t)){0,2}?,? (?:and )?(?:then )?"
    rf"({_VERBS}) (?:them|it|everything|the lot)\b",
    re.I,
)
_LEFT_UNDONE = re.compile(
    r"\b(?:not|never|no need to|without|instead of|rather than|\w+n['’]t)\b(?: (?:have to|need to|bother|even))?"
    rf"(?: \w+)? (?:{_VERBS})\b",
    re.I,
)

_CHOP = re.compile(r"\b(?:chop|mince)s? (?:up )?(?:(?:the|your|all|some|any|her|his|their) )?(?:\w+ )?$", re.I)
_FINELY_BEHIND = re.compile(r" (?:very |really |up )?(?:finely|small|fine|tiny)\b", re.I)


def done_to(said: str, hit: Found) -> frozenset[str]:
    """The facts ("blended", "chopped", "fine" ...) that the words around a food's name say of it."""
    before = said[max(0, hit.start - 40) : hit.start]
    found = (_TO_IT.search(_LEFT_UNDONE.sub(" ", before)), _TO_THEM.match(said, hit.end))
    done = {_DONE[one.group(1).lower()] for one in found if one}
    if IN_FOUR.search(said[max(0, hit.start - 40) : hit.end + 40]):
        done.add("quartered")
    if _CHOP.search(before):  # "chop raisins finely for a baby"
        done |= {"chopped", "fine"} if _FINELY_BEHIND.match(said, hit.end) else {"chopped"}
    return frozenset(done)
