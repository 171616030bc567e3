"""Whether a danger is only what somebody asked about: "somebody asked if she can prop the bottle. Please hold it"."""

from __future__ import annotations

import re

_ASKED = re.compile(
    r"\b(?<!\bno )(?:ask(?:s|ed|ing)?|wonder(?:s|ed|ing)?|comments?|questions?|message[sd]?|dms?)\b(?! for\b)"
    r"[^.;!?\n]{0,24}\b(?:if|whether|about|can|could|is it|how|when)\b",
    re.I,
)
_YES = re.compile(
    r"\b(?:yes|yep|yeah|sure|of course|absolutely|certainly|go (?:ahead|for it)|why not|fine|i do|we do|i let|we let"
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


_REFUSED = re.compile(
    r"[^.!?;\n]{0,60}\?\W*(?:absolutely not|certainly not|no|nope|never|not (?:yet|a chance|for))\b", re.I
)
"""What stands before the mark of a question, and a no: "popcorn for a ten-month-old? Absolutely not"."""


def only_asked(text: str, start: int, place: tuple[int, int]) -> bool:
    """Whether the words from ``start`` ask about what stands at ``place``, and nothing that follows says yes."""
    if _REFUSED.match(text, place[1]):
        return True
    asked = _PUT.match(text, start) or _ASKED.search(text, start, place[0])
    return asked is not None and not _YES.search(text, place[1], place[1] + _ANSWER)
