"""Whether what is told to be forbidden is done all the same: "they say never to prop the bottle, but we do"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from spoonproof.feeding.asked import acquitted
from spoonproof.feeding.clauses import Clause, clauses
from spoonproof.feeding.tables import FeedingTables

_DO = (
    r"(?:(?:all|both|always|still|just|happily|secretly|often) ){0,2}(?:(?:do|did|have|had|ca(?:n|rry)|carried|go|went)"
    r"(?: (?:it|so|that|them|always|on|ours|mine|done|had|give|gave)){0,3}"
    r"|ignore[ds]?(?: (?:it|that|them|him|her|the (?:rule|advice|leaflet)s?))?"
    r"|(?:take|took) no notice|never (?:listen|bother|worri|car)(?:ed|ied)?)"
)
_STILL_DONE = re.compile(
    rf"\b(?:but|yet)[, ]+(?:i|we) {_DO}"
    r"(?: (?:anyway|anyhow|all the same|regardless|just the same|every \w+|daily|most \w+|all the time"
    r"|with (?:ours|mine|all \w+)))?\s*(?=[.,;:!?–—-]|and\b|$)",
    re.I,
)
"""What breaks the rule that stands before it, and says no more: "but we do", "and yet I always have"."""
_NONSENSE = re.compile(
    r"[;,:.!–—-]+ ?(?:but |and )?(?:(?:that|it|this|all of that)(?:['’]s| is| was) )?(?:(?:what|pure|utter|sheer"
    r"|complete|total|all|just) ){0,2}(?:nonsense|rubbish|twaddle|bunk|baloney|a myth|not true|untrue)\b",
    re.I,
)
"""What waves off what was just told: "you may have read that you must not; nonsense"."""
_ANYWAY = re.compile(
    r"\b(?:gives?|gave|gets?|has|feed|fed|put|eats?|let|do|does|did)\b.*\b(?:anyway|all the same|regardless)\b", re.I
)
"""Words that give what was called bad: "honey was dangerous, but we give it to him anyway"."""
_ENDS = re.compile(r"[.!?;\n]")


def _two_sentences(text: str, at: int) -> int:
    ends = [one.start() for _, one in zip(range(2), _ENDS.finditer(text, at), strict=False)]
    return ends[1] if len(ends) > 1 else len(text)


def still_done(text: str, at: int) -> bool:
    """Whether the words behind a danger that ends ``at``, in its sentence or as the next, say that it is done all the
    same."""
    stop = _ENDS.search(text, at)
    if _NONSENSE.search(text, at, _two_sentences(text, at)):
        return True
    there = _STILL_DONE.search(text, at, stop.start() if stop else len(text))
    if stop is not None and _HEEDLESS.match(text, stop.end()):
        return True
    return there is not None or (stop is not None and _STILL_DONE.match(text[stop.end() :].lstrip()) is not None)


_HEEDLESS = re.compile(
    r"\W*(?:but |and )?(?:i|we) (?:pay no (?:attention|heed)|take no notice|(?:do not|don['’]t) (?:care|mind them)"
    r"|ignore (?:it|them|that|him|her))\b",
    re.I,
)
"""What opens a sentence that heeds no rule told before it: "some say not to. We take no notice"."""
_BUT = re.compile(r"\W*(?:but|yet|though|still)\b", re.I)


def given_after_all(said: str, behind: Iterable[Clause]) -> bool:
    """Whether a clause ``behind`` a refusal hands it to the child: "nursery says no, but at home he gets some"."""
    turns = False
    for one in behind:
        turns = turns or _BUT.match(said, one.start) is not None
        given = one.has("child", "they", "babys") and one.has("gives", "eats") and one.has("thereof")
        if turns and given and not one.has("denies", "wary", "safe", "bad", "other", "harms"):
            return True
    return False


def defies(said: str, tables: FeedingTables) -> bool:
    """Whether a sentence does what it says is forbidden."""
    return still_done(said, 0) or (" but " in said and given_after_all(said, clauses(said, (), tables)[1:]))


def given_anyway(text: str, start: int, end: int) -> bool:
    """Whether a clause gives what another one calls bad."""
    return _ANYWAY.search(text, start, end) is not None


_WAVED_AND_DONE = re.compile(
    r"\bwho (?:says|said) (?:\w+ ){1,2}?(?:can(?:no|['’])t|(?:must|should)(?:n['’]t| not))\b"
    r"|\b(?:myth|nonsense|rubbish|untrue|false|lie) that (?:\w+ ){1,3}?(?:not|never|(?:must|should)n['’]t"
    r"|can(?:no|['’])t)\b"
    r"|\b(?:not|never|(?:must|should)n['’]t)\b[^.!?]{1,80}[;,:–—-] ?(?:what |pure |that['’]s )?(?:nonsense"
    r"|rubbish|bunk)\b"
    r"|\b(?:ignore|disregard|forget|never mind) (?:the|what|that|those|all|your|old)\b[^,.;:!?]{0,40}? and"
    r" (?:just |do )?\w+ (?:it|them|the|your|her|him|my|our|an?)\b",
    re.I,
)
"""Advice that is waved aside, and what is done in its place: "ignore the leaflet and give her honey"."""
_LEAD, _TAIL = 60, 30
"""Characters before and behind a danger in which advice may be waved aside for it."""


def waved_aside(text: str, start: int, end: int, tables: FeedingTables) -> bool:
    """Whether advice is waved aside for the danger told from ``start`` to ``end``, or it is asked about and found
    harmless."""
    if acquitted(text, start, (end, end), tables):
        return True
    return _WAVED_AND_DONE.search(text, max(0, start - _LEAD), end + _TAIL) is not None


def hedged(said: str, at: int, tables: FeedingTables) -> bool:
    """Whether the "no" behind ``at`` in what is said is none: "... whole grapes *never bothered us*"."""
    return any(mark.start >= at for clause in clauses(said, (), tables) for mark in clause.of("hedges"))
