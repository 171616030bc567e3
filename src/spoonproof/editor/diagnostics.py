"""Findings as the protocol's diagnostics, and their remedies as quick fixes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from lsprotocol import types

from spoonproof.editor.bench import Look, OpenFolder
from spoonproof.editor.places import UTF16, Encoding, range_of, span_of
from spoonproof.model.citation import short
from spoonproof.model.finding import Edit, Finding, Level
from spoonproof.model.text import Document
from spoonproof.reading.edits import fitted

SEVERITY: Mapping[Level, types.DiagnosticSeverity] = {
    "error": types.DiagnosticSeverity.Error,
    "warning": types.DiagnosticSeverity.Warning,
    "note": types.DiagnosticSeverity.Information,
}
MOST = 1000
"""Diagnostics sent of one text; a file with more faults is put right from the top."""
FIX_ALL = f"{types.CodeActionKind.SourceFixAll.value}.spoonproof"


def diagnostics(look: Look, encoding: Encoding = UTF16) -> list[types.Diagnostic]:
    """Every finding of a text, in the order ``check`` gives them."""
    return [_diagnostic(finding, look, encoding) for finding in look.findings[:MOST]]


def _diagnostic(finding: Finding, look: Look, encoding: Encoding) -> types.Diagnostic:
    related = [
        types.DiagnosticRelatedInformation(
            types.Location(address(other.document, look), range_of(other.document, other.span, encoding)), other.message
        )
        for other in finding.related
    ]
    return types.Diagnostic(
        range=range_of(finding.document, finding.span, encoding),
        message="\n".join(_words(finding, look)),
        severity=SEVERITY[finding.level],
        code=finding.rule,
        source="spoonproof",
        related_information=related or None,
    )


def _words(finding: Finding, look: Look) -> Iterator[str]:
    yield finding.message
    if finding.claim is not None and finding.claim.wording and finding.remedy is None:
        yield f"Wording that stands: “{finding.claim.wording}”"
    if finding.remedy is not None:
        yield f"To put it right: {finding.remedy.text}"
    sources = look.folder.knowledge.sources
    for source in dict.fromkeys(finding.sources):
        yield f"Source: {short(source.id, sources)}" + (f"; {source.locator}" if source.locator else "")


def address(document: Document, look: Look) -> str:
    """The address of a document's file: the open text itself, else a file of the channel or of the bundle."""
    if document is look.document or document.path == look.folder.shown(look.text.path):
        return look.text.uri
    return file_of(document, look.folder).as_uri()


def file_of(document: Document, folder: OpenFolder) -> Path:
    """The file that ``document.path`` is: the channel's own before the bundle's; of two the one with this text."""
    from spoonproof.reading.bundle import bundle_root
    from spoonproof.reading.files import read_document

    found = [path for root in (folder.root, bundle_root()) if (path := root / document.path).is_file()]
    if len(found) > 1:
        for path in found:
            read, _ = read_document(path, document.path)
            if read is not None and read.text == document.text:
                return path
    return found[0] if found else folder.root / document.path


def actions(look: Look, asked: types.CodeActionParams, encoding: Encoding = UTF16) -> list[types.CodeAction]:
    """The quick fixes of the findings in a range, and all that may be put right without asking at once."""
    wanted = span_of(look.document, asked.range, encoding)
    only = asked.context.only
    found: list[types.CodeAction] = []
    if _asked_for(types.CodeActionKind.QuickFix.value, only):
        for finding in look.findings:
            touches = finding.span.start <= wanted.end and wanted.start <= finding.span.end
            if touches and finding.remedy is not None and finding.remedy.edits:
                found.append(
                    types.CodeAction(
                        title=finding.remedy.text,
                        kind=types.CodeActionKind.QuickFix,
                        diagnostics=[_diagnostic(finding, look, encoding)],
                        is_preferred=finding.remedy.safe,
                        edit=_edit(look, [fitted(finding.document, edit) for edit in finding.remedy.edits], encoding),
                    )
                )
    if _asked_for(FIX_ALL, only) and (safe := _safe(look)):
        found.append(
            types.CodeAction(
                title="Put right what may be put right without asking", kind=FIX_ALL, edit=_edit(look, safe, encoding)
            )
        )
    return found


def _safe(look: Look) -> tuple[Edit, ...]:
    """What ``check --fix`` would do in this text."""
    from spoonproof.checks.mend import safe_edits

    return tuple(edit for edits in safe_edits(look.findings).values() for edit in edits)


def _asked_for(kind: str, only: Iterable[types.CodeActionKind | str] | None) -> bool:
    """Whether a kind is among those asked for: a kind stands for all below it."""
    if only is None:
        return True
    names = [each.value if isinstance(each, types.CodeActionKind) else each for each in only]
    return any(name in ("", kind) or kind.startswith(f"{name}.") for name in names)


def _edit(look: Look, edits: Iterable[Edit], encoding: Encoding) -> types.WorkspaceEdit:
    """Edits of the open text, held to the version they were made for."""
    document = types.OptionalVersionedTextDocumentIdentifier(uri=look.text.uri, version=look.text.version)
    changes = [types.TextEdit(range_of(look.document, edit.span, encoding), edit.replacement) for edit in edits]
    return types.WorkspaceEdit(document_changes=[types.TextDocumentEdit(document, list(changes))])
