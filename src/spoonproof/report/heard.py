"""Claims heard in captions or text, for a person: the answer first, then the reason, source and wording."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from spoonproof.claims.judge import statement_key
from spoonproof.claims.wording import is_hint
from spoonproof.model.citation import Csl, short
from spoonproof.model.claim import Advice, Claim, JudgedClaim
from spoonproof.model.record import NamedTuple
from spoonproof.report.quoting import quoted
from spoonproof.report.terminal import printable, wrapped

ADVICE_WORDS: Mapping[Advice, str] = {
    "keep": "keep it",
    "add": "keep it, and add what is missing",
    "soften": "soften it",
    "cut-untrue": "cut it: it is not true",
    "cut-not-allowed": "cut it: it may not be said here",
    "source-it": "give its source, or leave it out",
}
DONE = ("posted", "pinned")
"""States of a correction that is out: it is not drafted again."""
NOT_SHOWN = "cut it: nothing shows that it is so"
NOT_LEGAL_ADVICE = "These answers are not legal advice; local guidance and your health professional come first."


def report(heard: Sequence[Heard], sources: Mapping[str, Csl], trail: bool = False) -> Iterator[str]:
    """Every claim, in the order given."""
    for one in heard:
        yield from _one(one, sources, trail)
    kept = sum(one.judged.advice == "keep" for one in heard)
    if not heard:
        yield "No claim heard: nothing here says what food is, has or does."
        return
    yield f"{len(heard)} claim{'s' if len(heard) != 1 else ''} heard; {kept} to keep, {len(heard) - kept} to mend."
    yield NOT_LEGAL_ADVICE


def _one(heard: Heard, sources: Mapping[str, Csl], trail: bool) -> Iterator[str]:
    judged = heard.judged
    claim = judged.claim
    seconds = claim.passage.seconds(claim.start, claim.end)
    time = f"  at {timecode(seconds[0])}" if seconds else ""
    views = f"  {heard.views:,} views" if heard.views is not None else ""
    state = f"  (correction {heard.state})" if heard.state else ""
    yield f"{_place(judged)}{time}{views}  {advice_words(judged)}{state}"
    yield from wrapped(quoted(claim))
    yield from wrapped(f"{claim.kind}, {judged.truth}: {judged.why}")
    if judged.wording:
        # A hint tells the author what to write; only what can be said as it is stands in quotation marks.
        hint = is_hint(judged.wording)
        yield from wrapped(f"Instead: {judged.wording}" if hint else f"Wording that stands: “{judged.wording}”")
    for source in dict.fromkeys(judged.sources):
        locator = f"; {source.locator}" if source.locator else ""
        yield from wrapped(f"Source: {short(source.id, sources)}{locator}")
    if trail:
        for number, step in enumerate(judged.trail, 1):
            yield from wrapped(f"{number}. {step}", indent=6)
    yield ""


class Heard(NamedTuple):
    """A claim as listed: the state of its correction ("" when there is none) and the views of its file."""

    judged: JudgedClaim
    state: str = ""
    views: int | None = None


def folded(heard: Sequence[Heard]) -> list[Heard]:
    """Without what lies within, or shares words with, a statement as harmful or more: it is mended together with it."""
    ranked = sorted(
        (one for one in heard if one.judged.advice != "keep"),
        key=lambda one: (-one.judged.harm, one.judged.claim.start - one.judged.claim.end),
    )
    taken: dict[tuple[str, int], list[Claim]] = {}
    left_out: set[int] = set()
    for one in ranked:
        claim = one.judged.claim
        told = taken.setdefault((claim.passage.document.path, id(claim.passage)), [])
        beside = (other for other in told if other.overlaps(claim))
        if any(not claim.is_another_danger(other) for other in beside):
            left_out.add(id(one))
        else:
            told.append(claim)
    return [one for one in heard if id(one) not in left_out]


def corrections(heard: Sequence[Heard], sources: Mapping[str, Csl], day: str) -> Iterator[str]:
    """For every statement to mend: a comment to pin, words for the description, and a card for the screen.

    The same statement in one file is one correction with all its times. ``day`` is the date in words.
    """
    groups: dict[tuple[str, ...], list[Heard]] = {}
    done: set[tuple[str, ...]] = set()
    for one in heard:
        if one.judged.advice == "keep":
            continue
        key = (_path(one.judged), *statement_key(one.judged))
        if one.state in DONE:
            done.add(key)
        else:
            groups.setdefault(key, []).append(one)
    for group in sorted(groups.values(), key=lambda group: -group[0].judged.harm):
        yield from _correction(group, sources, day)
    many = "s" if len(groups) != 1 else ""
    yield f"{len(groups)} correction{many} drafted, the most harmful first. Make them your own."
    if done:
        yield f"{len(done)} more posted or pinned already, and not drafted again."
    yield NOT_LEGAL_ADVICE


def _correction(group: Sequence[Heard], sources: Mapping[str, Csl], day: str) -> Iterator[str]:
    from spoonproof.report.mend import mend

    first = group[0].judged
    spans = [one.judged.claim.passage.seconds(one.judged.claim.start, one.judged.claim.end) for one in group]
    times = list(dict.fromkeys(timecode(seconds[0]) for seconds in spans if seconds))
    texts = mend(first, times, sources, day)
    state = f"  ({group[0].state})" if group[0].state else ""
    yield f"{_place(first)}  {advice_words(first)}{state}"
    yield from wrapped(f"You said: {quoted(first.claim)}")
    yield "    Comment to pin:"
    yield from wrapped(texts.comment, indent=8)
    yield "    For the description:"
    yield from wrapped(texts.description, indent=8)
    yield "    Card on the screen:"
    yield from wrapped(texts.card, indent=8)
    if texts.to_you:
        yield from wrapped(f"To you: {texts.to_you}")
    yield ""


def _path(judged: JudgedClaim) -> str:
    return judged.claim.passage.document.path


def _place(judged: JudgedClaim) -> str:
    document = judged.claim.passage.document
    line, column = document.position(judged.claim.span.start)
    return f"{printable(document.path)}:{line}:{column}"


def advice_words(judged: JudgedClaim) -> str:
    """The advice in words; what is cut because nothing shows it, or not all of it, is not called untrue."""
    if judged.advice == "cut-untrue" and judged.truth != "false":
        return "cut it: it says more than is so" if judged.truth == "overstated" else NOT_SHOWN
    if judged.advice == "add" and judged.claim.polarity == "asks" and judged.truth != "true":
        return "answer it: it is not so" if judged.truth == "false" else "answer it: it has not been shown"
    return ADVICE_WORDS[judged.advice]


def timecode(seconds: float) -> str:
    """``m:ss`` or ``h:mm:ss``."""
    minutes, rest = divmod(int(seconds), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02d}:{rest:02d}" if hours else f"{minutes}:{rest:02d}"
