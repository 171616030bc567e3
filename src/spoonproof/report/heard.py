"""Claims heard in captions or text, for a person: the answer first, then the reason, source and wording."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping, Sequence

from spoonproof.model.citation import Csl, address, short
from spoonproof.model.claim import Advice, JudgedClaim
from spoonproof.report.terminal import printable

ADVICE_WORDS: Mapping[Advice, str] = {
    "keep": "keep it",
    "add": "keep it, and add what is missing",
    "soften": "soften it",
    "cut-untrue": "cut it: it is not true",
    "cut-not-allowed": "cut it: it may not be said here",
    "source-it": "give its source, or leave it out",
}
NOT_LEGAL_ADVICE = "These answers are not legal advice; local guidance and your health professional come first."


def report(judged: Sequence[JudgedClaim], sources: Mapping[str, Csl], trail: bool = False) -> Iterator[str]:
    """Every claim, in the order it was said."""
    for claim in judged:
        yield from _one(claim, sources, trail)
    kept = sum(claim.advice == "keep" for claim in judged)
    yield f"{len(judged)} claim{'s' if len(judged) != 1 else ''} heard; {kept} to keep, {len(judged) - kept} to mend."
    yield NOT_LEGAL_ADVICE


def _one(judged: JudgedClaim, sources: Mapping[str, Csl], trail: bool) -> Iterator[str]:
    claim = judged.claim
    document = claim.passage.document
    line, column = document.position(claim.span.start)
    seconds = claim.passage.seconds(claim.start, claim.end)
    time = f"  at {timecode(seconds[0])}" if seconds else ""
    yield f"{printable(document.path)}:{line}:{column}{time}  {ADVICE_WORDS[judged.advice]}"
    yield from _wrapped(f"“{claim.quote}”")
    yield from _wrapped(f"{claim.kind}, {judged.truth}: {judged.why}")
    if judged.wording:
        yield from _wrapped(f"Wording that stands: “{judged.wording}”")
    for source in dict.fromkeys(judged.sources):
        locator = f"; {source.locator}" if source.locator else ""
        yield from _wrapped(f"Source: {short(source.id, sources)}{locator}")
    if trail:
        for number, step in enumerate(judged.trail, 1):
            yield from _wrapped(f"{number}. {step}", "      ")
    yield ""


def corrections(judged: Sequence[JudgedClaim], sources: Mapping[str, Csl]) -> Iterator[str]:
    """For every claim to mend: a comment to pin, words for the description, and a card for the screen."""
    to_mend = [claim for claim in judged if claim.advice != "keep"]
    for claim in sorted(to_mend, key=lambda each: -each.harm):
        yield from _correction(claim, sources)
    many = "s" if len(to_mend) != 1 else ""
    yield f"{len(to_mend)} correction{many} drafted, the most harmful first. Make them your own."
    yield NOT_LEGAL_ADVICE


def _correction(judged: JudgedClaim, sources: Mapping[str, Csl]) -> Iterator[str]:
    claim = judged.claim
    document = claim.passage.document
    seconds = claim.passage.seconds(claim.start, claim.end)
    at = f"At {timecode(seconds[0])} I" if seconds else "I"
    cited = "; ".join(
        part
        for source in dict.fromkeys(judged.sources)
        for part in (short(source.id, sources), address(source.id, sources))
        if part
    )
    holds = judged.wording or judged.why
    line, column = document.position(claim.span.start)
    yield f"{printable(document.path)}:{line}:{column}  {ADVICE_WORDS[judged.advice]}"
    yield from _wrapped(f"Comment to pin: {at} said “{claim.quote}”. That needs correcting. {holds}")
    yield from _wrapped(f"Description: Correction{' at ' + timecode(seconds[0]) if seconds else ''}: {holds}")
    yield from _wrapped(f"Card: Correction: {judged.wording or 'please read the pinned comment'}")
    if cited:
        yield from _wrapped(f"Source: {cited}")
    yield ""


def timecode(seconds: float) -> str:
    """``m:ss`` or ``h:mm:ss``."""
    minutes, rest = divmod(int(seconds), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02d}:{rest:02d}" if hours else f"{minutes}:{rest:02d}"


def _wrapped(text: str, pad: str = "    ") -> Iterator[str]:
    yield from textwrap.wrap(printable(text), 100, initial_indent=pad, subsequent_indent=pad, break_on_hyphens=False)
