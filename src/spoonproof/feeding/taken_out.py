"""What a sentence takes out of the pot: every food of a list, wherever the verb stands."""

from __future__ import annotations

import re
from functools import lru_cache

from spoonproof.feeding.words import keys

# "discard the bones, skin and cinnamon"; "take the bay, the cloves and the thyme out"
_TAKES = re.compile(r"\b(?:(?P<away>discard|remov|bin)\w*|(?:tak|lift|fish|pick|pull|throw|pluck|hook)\w*)\b", re.I)
_REACH = 90
_PARTICLE = re.compile(r"\b(?:out|away|off)\b", re.I)
_AND = re.compile(r",(?: ?and)?|\band\b|&")
# One thing of a list: "the bay leaves", "skin"; not "shred the meat", which goes on to do something else
_ITEM = re.compile(
    r" ?(?:(?:the|its|their|any|all|both|your|every)(?: of the)? )?[\w-]+"
    r"(?: (?!the\b|it\b|them\b|an?\b|every)[\w-]+){0,2} ?",
    re.I,
)


@lru_cache(maxsize=4_000)
def taken_out(text: str) -> frozenset[str]:
    """The folded words of all that ``text`` says is taken out, thrown away or discarded."""
    found: frozenset[str] = frozenset()
    for match in _TAKES.finditer(text):
        what = re.split(r"[.;]", text[match.end() : match.end() + _REACH], maxsplit=1)[0]
        particle = _PARTICLE.search(what)
        if match["away"] is None and particle is None:
            continue
        before = what[: particle.start()] if particle and match["away"] is None else ""
        what = before if before.strip() else what[particle.end() :] if particle and match["away"] is None else what
        for item in _AND.split(what):
            if item.strip() and _ITEM.fullmatch(item) is None:
                break
            found |= keys(item)
    return found
