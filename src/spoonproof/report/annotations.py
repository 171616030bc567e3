"""Findings as workflow commands, shown by a code host beside the lines they are about."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from spoonproof.model.finding import Finding
from spoonproof.report.terminal import printable

_WORDS = {"error": "error", "warning": "warning", "note": "notice"}


def workflow_commands(findings: Iterable[Finding], folder: str = "") -> Iterator[str]:
    """One command a finding; columns only where it begins and ends on one line. ``folder``: as for SARIF."""
    for finding in findings:
        place = finding.document.place(finding.span)
        where = f"file={_property(folder + finding.document.path)},line={place.line},endLine={place.end_line}"
        if place.line == place.end_line:
            where += f",col={place.column},endColumn={place.end_column}"
        words = finding.message
        if finding.remedy is not None:
            words += f"\nTo put it right: {finding.remedy.text}"
        yield f"::{_WORDS[finding.level]} {where},title={_property(finding.rule)}::{_message(words)}"


def _message(text: str) -> str:
    shown = "\n".join(printable(line) for line in text.replace("\r", "\n").split("\n"))
    return shown.replace("%", "%25").replace("\n", "%0A")


def _property(text: str) -> str:
    return _message(text).replace(":", "%3A").replace(",", "%2C")
