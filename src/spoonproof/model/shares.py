"""What a sentence does to the grown-ups' food and what to the baby's: "quarter ours and leave hers whole"."""

from __future__ import annotations

import re
from functools import lru_cache

_SMALL = r"(?:baby|toddler|child|infant|little one|little girl|little boy|small one|youngest)"
_THEIRS = re.compile(
    r"(?i)\b(?:ours|yours|mine|the rest|the others|everyone else['’]s"
    r"|(?:our|your) (?:own|plates?|bowls?|portions?|half)"
    r"|(?:for|to|on) (?:the )?(?:family|grown[- ]?ups|adults|big(?:ger)? (?:ones|children|kids)|older (?:ones|children"
    r"|kids)|everyone else|parents|us|you|yourselves|rest of (?:us|you|the family))"
    r"|the (?:family|grown[- ]?ups|adults|parents)['’]s?)(?!\w)"
)
_BABYS = re.compile(
    rf"(?i)\b(?:hers|his(?= (?:whole|raw|uncut|in|into|as|on|with|lengthw\w+|finely|very|flat|up)\b|[.,;]|$)"
    rf"|(?:the|your|our) {_SMALL}['’]s|(?:for|to) (?:her|him|(?:the|your|our) {_SMALL})(?!['’\w])"
    rf"|give (?:her|him|(?:the|your|our) {_SMALL})(?!['’\w])|(?:{_SMALL}|she|he) (?:gets|has|can have|eats))(?!\w)"
)
_CLAUSE = re.compile(r"(?i)(?:(?!\b(?:and|but|while|whereas)\b|[,;.:]).)+", re.S)


@lru_cache(maxsize=2_000)
def of_the_grown_ups(text: str) -> tuple[tuple[int, int], ...]:
    """The clauses about the grown-ups' share, where another clause is about the baby's; none where it is not so."""
    if _THEIRS.search(text) is None or _BABYS.search(text) is None:
        return ()
    clauses = [(one.start(), one.end(), one.group()) for one in _CLAUSE.finditer(text)]
    theirs = tuple((start, end) for start, end, said in clauses if _THEIRS.search(said) and not _BABYS.search(said))
    babys = any(_BABYS.search(said) and not _THEIRS.search(said) for _, _, said in clauses)
    return theirs if babys else ()
