"""What was said, quoted so that its speaker knows it again: the claim's words with the clause they stand in."""

from __future__ import annotations

import re

from spoonproof.model.claim import Claim

WORDS_MORE = 8
"""Words added on a side at most: speech without stops runs on for ever."""
_STOP = re.compile(r"[.!?;:…\n]|,(?=\s)|\s[–—-]\s")
_WORD = re.compile(r"\S+")


def quoted(claim: Claim) -> str:
    """The claim's words with the clause they stand in, in quotation marks.

    A claim ends where its meaning does ("more calcium than"), which is no place to end a quotation."""
    return in_its_clause(claim.passage.text, claim.start, claim.end)


def in_its_clause(text: str, start: int, end: int) -> str:
    """Words of a text out to the next stops, in quotation marks; "…" where the clause goes on."""
    before = _WORD.findall(_tail(text[:start]))
    after = _WORD.findall(_head(text[end:]))
    lead = "… " if len(before) > WORDS_MORE else ""
    rest = " …" if len(after) > WORDS_MORE else ""
    glue = " " if after and text[end].isspace() else ""
    words = " ".join([*before[-WORDS_MORE:], *text[start:end].split()])
    return f"“{lead}{words}{glue}{' '.join(after[:WORDS_MORE])}{rest}”"


def _tail(text: str) -> str:
    """What stands between the last stop and the claim."""
    stops = [found.end() for found in _STOP.finditer(text[-_FAR:])]
    return text[-_FAR:][stops[-1] :] if stops else text[-_FAR:]


def _head(text: str) -> str:
    """What stands between the claim and the next stop."""
    found = _STOP.search(text[:_FAR])
    return text[: found.start()] if found else text[:_FAR]


_FAR = 200
"""Characters looked through on a side."""
