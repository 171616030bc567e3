"""What we say and why: the statements of a page with both answers, and where in the page each one ends."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from spoonproof.model.claim import JudgedClaim, MarketAnswer
from spoonproof.model.record import dataclass, field
from spoonproof.model.text import Passage
from spoonproof.site.sources import Numbered
from spoonproof.site.view import Marked, MarketLine, Run, Statement

ON_PAGE = ("title", "description", "step", "story", "picture", "shows", "note")
"""Kinds of passage a reader of the page meets; what is said in the film is listed with the film."""

ANSWERS: Mapping[str, str] = {
    "keep": "It holds.",
    "add": "It holds, with something to add.",
    "soften": "Part of it holds; the words go too far.",
    "cut-untrue": "It does not hold.",
    "cut-not-allowed": "It may not be said in these words.",
    "source-it": "We have no source that settles it.",
}
NOT_SHOWN = "Nothing shows that it is so."
"""The answer where evidence is wanting: such a statement is neither called untrue nor half true."""
SET_WORDS = "It holds, and where it sells a food the law sets the words."

_LAW: Mapping[str, str] = {
    "yes": "a food business may say it",
    "with-wording": "a food business may say it in set words",
    "no": "a food business would be told not to say it",
}


@dataclass(slots=True)
class Said:
    """The statements of a page, and where each ends in the passages: by passage identity, (offset, number)."""

    statements: tuple[Statement, ...] = ()
    ends: dict[int, list[tuple[int, int]]] = field(default_factory=dict)
    in_story: list[tuple[int, int]] = field(default_factory=list)  # (offset in the document, number)

    def marked(self, passage: Passage | None, text: str) -> Marked:
        """``text`` of a passage cut where its statements end; without marks when the passage is another text."""
        ends = sorted(self.ends.get(id(passage), ())) if passage is not None and passage.text == text else []
        runs, at = [], 0
        for offset, number in ends:
            runs.append(Run(text[at:offset], number))
            at = offset
        if at < len(text) or not runs:
            runs.append(Run(text[at:]))
        return tuple(runs)


def said(claims: Sequence[JudgedClaim], cited: Numbered) -> Said:
    """Every claim that the page's own words make; the same words in several places are one statement."""
    out = Said()
    numbers: dict[tuple[str, str, str], int] = {}
    places: dict[int, list[str]] = {}
    first: dict[int, JudgedClaim] = {}
    for judged in claims:
        passage = judged.claim.passage
        if passage.kind not in ON_PAGE:
            continue
        key = (" ".join(judged.claim.quote.lower().split()), judged.advice, judged.truth)
        number = numbers.setdefault(key, len(numbers) + 1)
        first.setdefault(number, judged)
        where = passage.where or passage.kind
        if where not in places.setdefault(number, []):
            places[number].append(where)
        if passage.kind == "story":
            out.in_story.append((judged.claim.span.end, number))
        else:
            out.ends.setdefault(id(passage), []).append((judged.claim.end, number))
    out.statements = tuple(_statement(number, judged, places[number], cited) for number, judged in first.items())
    return out


def _statement(number: int, judged: JudgedClaim, places: Sequence[str], cited: Numbered) -> Statement:
    claim = judged.claim
    return Statement(
        number,
        " ".join(claim.quote.split()),
        ", ".join(places),
        judged.truth,
        answer(judged),
        _sentence(judged.why),
        judged.wording or "",
        tuple(_market(answer) for answer in judged.allowed),
        cited.numbers(judged.sources),
        judged.entry or "",
        claim.kind not in ("process", "quantity"),
    )


def answer(judged: JudgedClaim) -> str:
    """The answer in one sentence: by what holds, not by what is to be done about it."""
    if judged.advice in ("cut-untrue", "soften") and judged.truth == "unproven":
        return NOT_SHOWN
    if judged.advice == "soften" and judged.truth == "true":
        return SET_WORDS
    if judged.advice == "cut-untrue" and judged.truth != "false":
        return ANSWERS["soften"] if judged.truth == "overstated" else NOT_SHOWN
    return ANSWERS[judged.advice]


def _market(answer: MarketAnswer) -> MarketLine:
    text = _LAW[answer.answer]
    if not answer.bound:
        text += "; as editorial speech this page is not bound by it"
    if answer.why:
        text += f" ({answer.why.rstrip('.')})"
    return MarketLine(answer.market, text)


def _sentence(text: str) -> str:
    text = text.strip()
    if not text:
        return ""
    return f"{text[:1].upper()}{text[1:]}" + ("" if text.endswith((".", "!", "?", "…", "”")) else ".")
