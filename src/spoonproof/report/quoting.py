"""What was said, quoted so that its speaker knows it again: the claim's words with the clause they stand in."""

from __future__ import annotations

import re

from spoonproof.model.claim import Claim

WORDS_MORE = 8
"""Words added on a side at most: speech without stops runs on for ever."""
_STOP = re.compile(r"[.!?;:…\n]|,(?=\s)|\s[–—-]\s")
_WORD = re.compile(r"\S+")


def quoted(claim: Claim) -> str:
    """The claim's words out to the next stops, in quotation marks; "…" where the clause goes on.

    A claim ends where its meaning does ("more calcium than"), which is no place to end a quotation."""
    text = claim.passage.text
    before = _WORD.findall(_tail(text[: claim.start]))
    after = _WORD.findall(_head(text[claim.end :]))
    start = " ".join(before[-WORDS_MORE:])
    end = " ".join(after[:WORDS_MORE])
    lead = "… " if len(before) > WORDS_MORE else ""
    rest = " …" if len(after) > WORDS_MORE else ""
    glue = "" if claim.end < len(text) and not text[claim.end].isspace() else " "
    middle = " ".join(claim.quote.split())
    return f"“{lead}{start}{' ' if start else ''}{middle}{glue if end else ''}{end}{rest}”"


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
