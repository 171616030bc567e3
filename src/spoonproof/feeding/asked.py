"""Whether a danger is only what somebody asked about: "somebody asked if she can prop the bottle. Please hold it"."""

from __future__ import annotations

import re

from spoonproof.feeding.clauses import clauses, standing
from spoonproof.feeding.tables import FeedingTables

_ASKED = re.compile(
    r"\b(?<!\bno )(?:ask(?:s|ed|ing)?|wonder(?:s|ed|ing)?|comments?|questions?|message[sd]?|dms?)\b(?! for\b)"
    r"[^.;!?\n]{0,24}\b(?:if|whether|about|can|could|is it|how|when)\b",
    re.I,
)
_YES = re.compile(
    r"\b(?:yes|yep|yeah|sure|of course(?! not)|absolutely(?! not)|certainly(?! not)|go (?:ahead|for it)|why not|fine"
    r"|i do|we do|i let|we let"
    r"|i give|we give|i (?:just|always)|we (?:just|always)|all the time|every (?:day|night))\b",
    re.I,
)
_ANSWER = 60
"""Characters of what follows in which the question is answered."""
_ASKING = "(?:can|could|should|shall|do|does|did|is|are|will|may|must|might)"
_PUT = re.compile(
    rf"\W*(?:(?:so|and|but|now|ok|okay) )?{_ASKING}(?! you know)(?= [^.?!;\n]+\?)"
    rf"|\W*(?:next |last |another )?question(?: \w+)?[,:] {_ASKING}\b",
    re.I,
)
"""A sentence that asks, by its first word and its mark, or by its name; "would you believe" and "isn't it nice to"
tell."""
_REST = re.compile(r"[^.?!;\n]{0,80}\?[\W_]*")
"""What is left of a question, and what stands before its answer."""
_REPLY = re.compile(r"[^.?!;\n]+")
_IF = re.compile(r" (?:if|when|once|as long|so long|provided)\b", re.I)
"""What makes an answer's "not" no refusal: "not if you watch her"."""
_AT_ONCE = 2
"""Characters before or behind which a reply's "no" or "never" is the whole of it."""


def only_asked(text: str, start: int, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether the words from ``start`` ask about what stands at ``place``, and nothing that follows says yes, or
    whatever they are, a "no" answers them."""
    if answered_no(text, start, place, tables):
        return True
    if acquitted(text, start, place, tables):
        return False
    asked = _PUT.match(text, start) or _ASKED.search(text, start, place[0])
    return asked is not None and not _YES.search(text, place[1], place[1] + _ANSWER)


def acquitted(text: str, start: int, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether it is asked if what stands at ``place`` is bad, and a plain "no" answers: "is propping it risky? No"."""
    rest = _REST.match(text, place[1])
    if rest is None or not _PLAIN_NO.match(text, rest.end()):
        return False
    own, asked = [(place[0] - start, place[1] - start)], text[start : rest.end()]
    return any(standing(asked, clause, own, "bad", "faults", "harms") for clause in clauses(asked, (), tables))


_PLAIN_NO = re.compile(r"(?:no|nope|nah|not at all|never|of course not|not really)\b\s*(?:[.!,;]|$)", re.I)


def answered_no(text: str, start: int, place: tuple[int, int], tables: FeedingTables) -> bool:
    """Whether what is asked is answered with a "no" or as bad: "snacks in the car seat? At eight months, never"."""
    rest = _REST.match(text, place[1])
    if rest is None:
        return False
    asked, own = text[start : rest.end()], [(place[0] - start, place[1] - start)]
    while (more := _REST.match(text, rest.end())) is not None:
        rest = more  # "honey? At eight months? No."
    judged = "denies", "needless", "bad", "faults", "harms"
    if any(standing(asked, clause, own, *judged) for clause in clauses(asked, (), tables)):
        return False  # "is it wrong to? No"
    reply = _REPLY.match(text, rest.end())
    answer = reply[0] if reply else ""
    for clause in clauses(answer, (), tables):
        for mark in standing(answer, clause, (), "denies", "bad", "faults"):
            whole = mark.start - clause.start <= _AT_ONCE or len(answer[mark.end : clause.end].strip()) <= _AT_ONCE
            if mark.value == "denies" and _IF.match(answer, mark.end):
                continue
            if whole or (mark.value != "denies" and clause.start == 0):
                return True
    return False
