"""Whether the next words disown what somebody is told to have done: "Gran hands him a rusk, I've asked her to stop".

A tale of what others do warns as often as it recommends; what its teller says of it next tells which.
"""

from __future__ import annotations

import re

from spoonproof.feeding.clauses import clauses
from spoonproof.feeding.tables import FeedingTables

_FIRMLY = re.compile(
    r"\b(?:i|we) (?:do not|don['’]t|never|would ?n['’]t|won['’]t|wouldn['’]t dream of) "
    r"(?:do|doing|risk|allow|recommend|hold with|advise|go along)\b"
    r"|\b(?:i|we) (?:said no|refused|did not|didn['’]t)(?=\W*(?:$|[.;!]))|\bnot in (?:my|our|this) (?:house|kitchen)\b",
    re.I,
)
"""What refuses it whoever did it: "she left hers on the stove. I love her and I don't do it"."""
_BEHIND = 140
"""Characters after what is told within which its teller disowns it."""
_BEHIND_ALONE = 100


def disowned(text: str, start: int, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether what ``text`` tells at ``place``, in a clause from ``start`` on, is refused by the words that follow."""
    if _FIRMLY.search(text, place[1], place[1] + _BEHIND_ALONE):
        return True
    reach = place[1] + _BEHIND
    refused = any(clause.has("refuses") for clause in clauses(text[place[1] : reach], (), tables))
    return refused and any(
        clause.has("other", "tells")
        for clause in clauses(text[start:reach], (), tables)
        if clause.start + start < place[1]
    )
