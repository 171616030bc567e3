"""Findings and judged claims as JSON Lines: the contract programs read."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any

from spoonproof.model.claim import Claim, JudgedClaim, MarketAnswer
from spoonproof.model.finding import Finding, Remedy, SourceRef
from spoonproof.model.text import Document, Span
from spoonproof.reading.edits import fitted


def finding_lines(findings: Iterable[Finding]) -> Iterable[str]:
    """One JSON object a line, in the order given."""
    for finding in findings:
        yield json.dumps(finding_object(finding), ensure_ascii=False)


def finding_object(finding: Finding) -> dict[str, Any]:
    """A finding as the contract has it; lines and columns from 1, in code points, ends exclusive."""
    data: dict[str, Any] = {
        "area": finding.area,
        "bowl": finding.bowl,
        "file": finding.document.path,
        **place(finding.document, finding.span),
        "rule": finding.rule,
        "level": finding.level,
        "message": finding.message,
        "related": [
            {"file": other.document.path, **_start(other.document, other.span), "message": other.message}
            for other in finding.related
        ],
        "remedy": remedy_object(finding.remedy, finding.document) if finding.remedy else None,
        "sources": [source_object(source) for source in finding.sources],
    }
    if finding.claim is not None:
        data["claim"] = claim_object(finding.claim)
    return data


def place(document: Document, span: Span) -> dict[str, int]:
    """``line, column, end_line, end_column`` of a span."""
    return document.place(span)._asdict()


def _start(document: Document, span: Span) -> dict[str, int]:
    line, column = document.position(span.start)
    return {"line": line, "column": column}


def remedy_object(remedy: Remedy, document: Document) -> dict[str, Any]:
    """A remedy with its edits as places."""
    return {
        "text": remedy.text,
        "safe": remedy.safe,
        "edits": [
            {**place(document, edit.span), "replacement": edit.replacement}
            for edit in (fitted(document, edit) for edit in remedy.edits)
        ],
    }


def source_object(source: SourceRef) -> dict[str, str]:
    """A source reference: id, locator, basis."""
    return {"id": source.id, "locator": source.locator, "basis": source.basis}


def claim_object(judged: JudgedClaim) -> dict[str, Any]:
    """A judged claim as the contract has it, without its place."""
    claim = judged.claim
    number = claim.number
    return {
        "quote": claim.quote,
        "kind": claim.kind,
        "subjects": list(claim.subjects),
        "relates_to": claim.relates_to,
        "polarity": claim.polarity,
        "strength": claim.strength,
        "audience": claim.audience,
        "number": None
        if number is None
        else {"value": number.value, "high": number.high, "unit": number.unit, "basis": number.basis},
        "truth": judged.truth,
        "allowed": [_answer_object(answer) for answer in judged.allowed],
        "advice": judged.advice,
        "harm": judged.harm,
        "wording": judged.wording,
        "entry": judged.entry,
        "why": judged.why,
        "sources": [source_object(source) for source in judged.sources],
    }


def _answer_object(answer: MarketAnswer) -> dict[str, Any]:
    return {
        "market": answer.market,
        "bound": answer.bound,
        "answer": answer.answer,
        "entry": answer.entry,
        "source": source_object(answer.source) if answer.source else None,
    }


def listened_object(judged: JudgedClaim) -> dict[str, Any]:
    """A judged claim with its place, and its time where the file is timed: a line of ``listen``."""
    claim: Claim = judged.claim
    document = claim.passage.document
    data: dict[str, Any] = {"file": document.path, **place(document, claim.span)}
    seconds = claim.passage.seconds(claim.start, claim.end)
    if seconds is not None:
        data["start"], data["end"] = seconds
    data.update(claim_object(judged))
    return data
