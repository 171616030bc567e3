"""Whether the words around a danger told in words take it back: denied in its clause, called bad, or once believed.

The clauses and the classes of words in them are those of ``clauses``; what the danger's own words are marks nothing.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from spoonproof.feeding.asked import acquitted, only_asked
from spoonproof.feeding.clauses import Clause, Place, clauses, harms_child, meet, standing
from spoonproof.feeding.defied import given_after_all, still_done
from spoonproof.feeding.disowned import disowned
from spoonproof.feeding.people import people
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.told_patterns import END, Hit

_ANEW = re.compile(r",\s+(?:just|simply|only|then|my)\b", re.I)
"""Where another clause begins that names nobody: "isn't wasted, just refreeze it"."""
_NOT = re.compile(r"(?:(?:does|do|did|is|are|was|were) not|\w+n['’]t|not|never)\b", re.I)
_DENY_THEMSELVES = frozenset({"all-foods", "allergen-late", "drops-lapsed"})
"""Rows whose danger is itself that something is not given, or that nothing is held back: "no eggs till two"."""
_DOER = 8
"""Characters between who does something and what is done: "Max often walks"."""
_REACH = 200
"""Characters before and behind a danger that are read: speech has no full stops for minutes."""

_OF_WHO_EATS = frozenset({"lying-back", "bone-to-gnaw", "leave-alone"})
"""Rows that tell how somebody eats: an uncle may lie back, a child of three walk about."""


def turned(text: str, hit: Hit, tables: FeedingTables) -> bool:
    """Whether what ``text`` tells at ``hit`` is taken back."""
    start, end = sentence_of(text, hit)
    said = text[start:end]
    own = [(one - start, other - start) for one, other in hit.own]
    read = clauses(said, (), tables, people(text))
    home = [at for at, clause in enumerate(read) if any(meet(clause, one) for one in own)]
    governed = own[:1] if hit.value in _DENY_THEMSELVES else own
    faults = ("faults",) if hit.value in _DENY_THEMSELVES else ("bad", "faults", "apart")
    if hit.value in _OF_WHO_EATS and _by_others(read[home[0]], own):
        return True
    denied = (
        any(_denied(said, read[at], own, governed) for at in home)
        or any(clause.has("once") for clause in read[: home[-1] + 1])
        or any(standing(said, one, own, *faults) or harms_child(one) for one in read[home[0] : home[-1] + 2])
    )
    return (
        (
            denied
            and not (
                acquitted(text, start, (hit.start, hit.end), tables)
                or still_done(text, hit.end)
                or given_after_all(said, read[home[-1] + 1 :])
            )
        )
        or only_asked(text, start, (hit.start, hit.end), tables)
        or disowned(text, start, (hit.start, hit.end), tables)
    )


def _by_others(clause: Clause, own: Sequence[Place]) -> bool:
    """Whether it is somebody else who does it, and no child stands there."""
    if clause.has("child", "they", "babys"):
        return False
    return any(meet(mark, place) or 0 <= place[0] - mark.end <= _DOER for mark in clause.of("other") for place in own)


def sentence_of(text: str, hit: Hit) -> tuple[int, int]:
    """Where the sentence of what is told at ``hit`` begins and ends."""
    first = max(0, hit.start - _REACH)
    start = max((match.end() for match in END.finditer(text, first, hit.start)), default=first)
    stop = END.search(text, hit.end, hit.end + _REACH)
    return start, stop.start() if stop else min(len(text), hit.end + _REACH)


def _denied(said: str, clause: Clause, own: Sequence[Place], governed: Sequence[Place]) -> bool:
    """Whether a denial in the clause stands before a word of the danger's that it can govern, or "does not wait" is
    the danger's own verb, denied."""
    ends = [place for place in governed if not _only_names(clause, place)] or governed
    verbs = [mark for mark in clause.of("undenies") if _NOT.match(said, mark.start)]
    if any(mark.start < place[0] and place[0] < mark.end <= place[1] for mark in verbs for place in ends):
        return True
    return any(
        mark.end <= place[0] < clause.end and not _ANEW.search(said, mark.end, place[0])
        for mark in standing(said, clause, own, "denies", "needless")
        for place in ends
    )


def _only_names(clause: Clause, place: Place) -> bool:
    """Whether a word of the danger's is no more than who eats: "with nobody beside *him*" denies nothing of it."""
    return any(mark.start <= place[0] and place[1] <= mark.end for mark in clause.of("child", "they", "babys"))
