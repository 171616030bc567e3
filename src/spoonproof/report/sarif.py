"""Findings as SARIF 2.1.0 (OASIS), with stable fingerprints, fixes, rule help and sources."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from hashlib import sha256
from typing import Any
from urllib.parse import quote

from spoonproof import __version__
from spoonproof.model.citation import Csl, address, short
from spoonproof.model.finding import Finding, Remedy
from spoonproof.model.text import Document, Span
from spoonproof.reading.edits import fitted

_SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"


_EXAMPLE = re.compile(r"^(Fails|Passes)::$", re.MULTILINE)
"""Headings of the examples in a rule's help; what is indented below them is code in Markdown as it stands."""


def sarif(
    findings: Sequence[Finding], sources: Mapping[str, Csl], help_texts: Mapping[str, tuple[str, str]], folder: str = ""
) -> str:
    """The whole log as JSON. ``help_texts``: rule name to (title, help). ``folder``: the channel's folder from where
    the log is read, "" for the same one, else with a slash at its end; fingerprints don't depend on it."""
    names = sorted({finding.rule for finding in findings})
    run = {
        "tool": {
            "driver": {
                "name": "Spoonproof",
                "semanticVersion": __version__,
                "rules": [_rule(name, help_texts) for name in names],
            }
        },
        "columnKind": "unicodeCodePoints",
        "results": _results(findings, names, sources, folder),
    }
    return json.dumps({"$schema": _SCHEMA, "version": "2.1.0", "runs": [run]}, ensure_ascii=False, indent=1)


def _rule(name: str, help_texts: Mapping[str, tuple[str, str]]) -> dict[str, Any]:
    title, words = help_texts.get(name, (name, ""))
    rule: dict[str, Any] = {"id": name, "shortDescription": {"text": title or name}}
    if words:
        rule["help"] = {"text": words, "markdown": _EXAMPLE.sub(r"**\1**\n", words)}
    return rule


def _results(
    findings: Sequence[Finding], names: list[str], sources: Mapping[str, Csl], folder: str
) -> list[dict[str, Any]]:
    index = {name: number for number, name in enumerate(names)}
    seen: dict[str, int] = {}
    results = []
    for finding in findings:
        print_base = _fingerprint(finding)
        seen[print_base] = seen.get(print_base, 0) + 1
        fingerprint = f"{print_base}:{seen[print_base]}"
        results.append(_result(finding, index[finding.rule], fingerprint, sources, folder))
    return results


def _result(finding: Finding, index: int, fingerprint: str, sources: Mapping[str, Csl], folder: str) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "ruleIndex": index,
        "level": finding.level,
        "message": {"text": _words(finding, sources)},
        "locations": [_location(finding.document, finding.span, folder)],
        "partialFingerprints": {"spoonproofStatement/v1": fingerprint},
        "properties": {"area": finding.area, "bowl": finding.bowl},
    }
    related = [
        {**_location(other.document, other.span, folder), "id": number, "message": {"text": other.message}}
        for number, other in enumerate(finding.related, 1)
    ]
    for source in dict.fromkeys(finding.sources):
        link = address(source.id, sources)
        if link:
            related.append(
                {
                    "id": len(related) + 1,
                    "physicalLocation": {"artifactLocation": {"uri": quote(link, safe=":/?#[]@!$&'()*+,;=%~-._")}},
                    "message": {"text": short(source.id, sources)},
                }
            )
    if related:
        result["relatedLocations"] = related
    if finding.remedy is not None and finding.remedy.edits:
        result["fixes"] = [_fix(finding.remedy, finding.document, folder)]
    return result


def _words(finding: Finding, sources: Mapping[str, Csl]) -> str:
    words = finding.message
    if finding.remedy is not None:
        words += f" To put it right: {finding.remedy.text}"
    cited = [short(source.id, sources) for source in dict.fromkeys(finding.sources)]
    return words + (f" Source: {'; '.join(cited)}." if cited else "")


def _fix(remedy: Remedy, document: Document, folder: str) -> dict[str, Any]:
    return {
        "description": {"text": remedy.text},
        "artifactChanges": [
            {
                "artifactLocation": {"uri": _uri(document, folder)},
                "replacements": [
                    {"deletedRegion": _region(document, edit.span), "insertedContent": {"text": edit.replacement}}
                    for edit in (fitted(document, edit) for edit in remedy.edits)
                ],
            }
        ],
    }


def _location(document: Document, span: Span, folder: str) -> dict[str, Any]:
    place = {"artifactLocation": {"uri": _uri(document, folder)}, "region": _region(document, span)}
    return {"physicalLocation": place}


def _uri(document: Document, folder: str) -> str:
    return quote(folder + document.path)


def _region(document: Document, span: Span) -> dict[str, int]:
    return dict(zip(("startLine", "startColumn", "endLine", "endColumn"), document.place(span), strict=True))


def _fingerprint(finding: Finding) -> str:
    """Of the rule, the file and the words marked, not of the line: it stays when lines are added above."""
    words = " ".join(finding.document.at(finding.span).split())
    return sha256("\0".join((finding.rule, finding.document.path, words)).encode()).hexdigest()[:24]
