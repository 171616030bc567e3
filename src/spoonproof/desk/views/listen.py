"""Listen: every claim of captions or a transcript, and the correction of those she ticks. Comments: of a reply."""

from __future__ import annotations

from pathlib import PurePath

from starlette.responses import Response

from spoonproof.desk import live
from spoonproof.desk.ask import Ask
from spoonproof.desk.desk import Desk
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.finding import Finding
from spoonproof.model.text import Document

_SUFFIXES = frozenset({".vtt", ".srt", ".txt", ".md"})


def listen(desk: Desk, ask: Ask) -> Response:
    """The page; with a text sent, its claims; with some ticked, their correction."""
    text = ask.text("text")
    name = _name(ask.text("name"))
    document = Document(name, text)
    judged, faults = _heard(desk, document) if text.strip() else ([], [])
    ticked = {number for number in ask.fields.get("mend", []) if number.isdecimal()}
    chosen = [claim for number, claim in enumerate(judged) if str(number) in ticked]
    return desk.page(
        "listen.html",
        "/listen",
        text=text,
        name=name,
        heard=bool(text.strip()),
        claims=_views(desk, judged),
        faults=[(document.position(fault.span.start)[0], fault.message) for fault in faults],
        ticked=ticked
        if ask.text("step") == "correct"
        else {str(n) for n, c in enumerate(judged) if c.advice != "keep"},
        correction=_correction(desk, chosen) if ask.text("step") == "correct" else "",
    )


def comments(desk: Desk, ask: Ask) -> Response:
    """What a reply to a comment claims, before it is posted."""
    text = ask.text("text")
    judged = _heard(desk, Document("reply.txt", text))[0] if text.strip() else []
    return desk.page("comments.html", "/comments", text=text, heard=bool(text.strip()), claims=_views(desk, judged))


def _heard(desk: Desk, document: Document) -> tuple[list[JudgedClaim], list[Finding]]:
    """The claims of a text, each statement once, and what of the text can't be read."""
    from spoonproof.checks.from_claims import once
    from spoonproof.hearing import hear
    from spoonproof.reading.speech import read_statements

    folder = desk.shelf.folder()
    judge = folder.knowledge.judge_without_dish(folder.channel, (), None)
    passages, faults = read_statements(document)
    return once(
        hear(passages, folder.knowledge, judge, months=folder.channel.ages[0], policies=folder.channel.policies)
    ), faults


def _views(desk: Desk, judged: list[JudgedClaim]) -> list[live.ClaimView]:
    sources = desk.shelf.folder().knowledge.sources
    return [live.claim_view(claim, sources) for claim in judged]


def _correction(desk: Desk, chosen: list[JudgedClaim]) -> str:
    from spoonproof.clock import today
    from spoonproof.report.heard import Heard, corrections, folded
    from spoonproof.site.pages import day

    if not chosen:
        return "Nothing was ticked."
    sources = desk.shelf.folder().knowledge.sources
    return "\n".join(corrections(folded([Heard(claim) for claim in chosen]), sources, day(today().isoformat())))


def _name(given: str) -> str:
    """The file's own name, for its kind and for people."""
    name = PurePath(given.replace("\\", "/")).name[:120]
    printable = "".join(char for char in name if char.isprintable())
    return printable if PurePath(printable).suffix.lower() in _SUFFIXES else "transcript.txt"
