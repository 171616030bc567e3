"""``listen``: every claim of captions, transcripts or text, judged, with its time where the file has times."""

from __future__ import annotations

import re
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import channel_or_none, new_parser

if TYPE_CHECKING:
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.claim import JudgedClaim
    from spoonproof.model.text import Document

HEARD = {".vtt", ".srt", ".txt", ".md"}


def parser() -> ArgumentParser:
    """The arguments of ``listen``."""
    found = new_parser("listen", "List every claim in captions, transcripts or text.", ("text", "jsonl"))
    found.add_argument("paths", nargs="+", metavar="FILE|DIR", help="a file, a folder of them, or - for standard input")
    found.add_argument("--lines", action="store_true", help="each line is a passage of its own")
    found.add_argument("--trail", action="store_true", help="show how each claim was judged, step by step")
    found.add_argument("--mend", action="store_true", help="draft what to post for each claim that needs mending")
    found.add_argument("--market", action="append", choices=("EU", "GB", "US", "Codex"), help="judge for this market")
    found.add_argument("--ages", default="", help='for whom, such as "6-24 months"')
    return found


def run(options: Namespace) -> int:
    """Print the claims; 1 when any of them is not to be kept."""
    from spoonproof.report import heard, terminal

    folder = channel_or_none(options)
    knowledge = _knowledge(folder)
    judged = list(_judged(options, folder, knowledge))
    if options.format == "jsonl":
        from json import dumps

        from spoonproof.report.lines import listened_object

        terminal.write(dumps(listened_object(claim), ensure_ascii=False) for claim in judged)
    elif options.mend:
        terminal.write(heard.corrections(judged, knowledge.sources))
    else:
        terminal.write(heard.report(judged, knowledge.sources, options.trail))
    return 1 if any(claim.advice != "keep" for claim in judged) else 0


def _knowledge(folder: ChannelFolder | None) -> Knowledge:
    from spoonproof.knowledge import Knowledge

    return folder.knowledge if folder is not None else Knowledge()


def _judged(options: Namespace, folder: ChannelFolder | None, knowledge: Knowledge) -> Iterator[JudgedClaim]:
    from spoonproof.claims.find import find_claims
    from spoonproof.reading.speech import read_statements

    judge = knowledge.judge_without_dish(
        folder.channel if folder else None, tuple(options.market or ()), _ages(options.ages)
    )
    for document in _documents(options.paths):
        passages, _ = read_statements(document, lines=options.lines)
        yield from (judge(claim) for claim in find_claims(passages, knowledge.lexicon))


def _documents(paths: list[str]) -> Iterator[Document]:
    import sys

    from spoonproof.cli import UsageError
    from spoonproof.model.text import Document
    from spoonproof.reading.files import read_document

    for given in paths:
        if given == "-":
            yield Document("(standard input)", sys.stdin.read())
            continue
        path = Path(given)
        if not path.exists():
            raise UsageError(f"{given}: there is no such file or folder")
        found = [path] if not path.is_dir() else sorted(p for p in path.rglob("*") if p.suffix.lower() in HEARD)
        if not found:
            raise UsageError(f"{given}: holds no captions or text ({', '.join(sorted(HEARD))})")
        for file in found:
            document, faults = read_document(file, file.as_posix())
            if document is None:
                raise UsageError("; ".join(f"{file}: {fault.message}" for fault in faults))
            yield document


def _ages(words: str) -> tuple[int, int | None] | None:
    """ "6-24 months" as months. Raises UsageError when it can't be read."""
    from spoonproof.cli import UsageError

    if not words:
        return None
    found = re.fullmatch(r"\s*(?:from\s+)?(\d{1,3})\s*(?:[-–]|to)?\s*(\d{1,3})?\s*(?:months?)?\s*", words)
    if not found:
        raise UsageError(f'--ages should look like "6-24 months", not {words!r}')
    return int(found[1]), int(found[2]) if found[2] else None
