"""``listen``: every claim of captions, transcripts or text, judged, with its time where the file has times.

A folder is a back catalogue: what could do most harm comes first, then what most people have seen.
"""

from __future__ import annotations

import re
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import channel_or_none, new_parser, own_table

if TYPE_CHECKING:
    from spoonproof.corrections import Corrections
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge
    from spoonproof.model.claim import JudgedClaim
    from spoonproof.model.text import Document, Passage
    from spoonproof.report.heard import Heard

HEARD = {".vtt", ".srt", ".txt", ".md"}
VIEWS = "views.csv"
STANDARD_INPUT = "(standard input)"


def parser() -> ArgumentParser:
    """The arguments of ``listen``."""
    found = new_parser("listen", "List every claim in captions, transcripts or text.", ("text", "jsonl"))
    found.add_argument(
        "paths",
        nargs="+",
        metavar="FILE|DIR",
        help="a file; a folder of them, ranked by harm and then by views (views.csv: file, views); - for standard "
        "input, such as a reply that somebody pasted",
    )
    found.add_argument("--lines", action="store_true", help="each line is a passage of its own")
    found.add_argument("--trail", action="store_true", help="show how each claim was judged, step by step")
    found.add_argument(
        "--mend",
        action="store_true",
        help="draft what to post for each claim that needs mending; in a channel they are noted as drafted in "
        "corrections.csv, where you write posted or pinned when it is done",
    )
    found.add_argument("--market", action="append", choices=("EU", "GB", "US", "Codex"), help="judge for this market")
    found.add_argument("--ages", default="", help='for whom, such as "6-24 months"')
    return found


def run(options: Namespace) -> int:
    """Print the claims; 1 when any of them is not to be kept, or a file or the time of a cue can't be read."""
    from spoonproof.report import heard, terminal

    folder = channel_or_none(options)
    knowledge = _knowledge(folder)
    again: dict[int, JudgedClaim] = {}
    unread: list[str] = []
    judged = list(_judged(options, folder, knowledge, again, unread))
    notes = _corrections(folder)
    found = _listed(options.paths, folder, judged, notes)
    if options.mend or options.format == "text":
        # For a person a claim within a longer one that is judged alike is one statement.
        from spoonproof.checks.from_claims import once

        told = {id(judged) for judged in once([one.judged for one in found])}
        found = [one for one in found if id(one.judged) in told]
    if options.mend:
        found = heard.folded(found)
    new = _note_drafts(folder, found) if options.mend and folder is not None else None
    if options.format == "jsonl":
        from json import dumps

        terminal.write(dumps(_object(one), ensure_ascii=False) for one in found)
    elif options.mend:
        from spoonproof.clock import today
        from spoonproof.site.pages import day

        terminal.write(heard.corrections(found, knowledge.sources, day(today().isoformat())))
    else:
        terminal.write(heard.report(found, knowledge.sources, options.trail))
        if options.trail and found:
            from spoonproof.claims.trail import rerun

            same = sum(rerun(one.judged, partial(again.__getitem__, id(one.judged))) for one in found)
            print(f"Judged once more from the start: {same} of {len(found)} by the same steps to the same answer.")
    if new is not None and options.format == "text":
        print(f"{new} new in corrections.csv as drafted; write posted or pinned there when it is done.")
    return 1 if unread or any(claim.advice != "keep" for claim in judged) else 0


def _object(one: Heard) -> dict[str, object]:
    from spoonproof.report.lines import listened_object

    data: dict[str, object] = listened_object(one.judged)
    if one.state:
        data["correction"] = one.state
    if one.views is not None:
        data["views"] = one.views
    return data


def _listed(
    paths: Sequence[str], folder: ChannelFolder | None, judged: Sequence[JudgedClaim], notes: Corrections
) -> list[Heard]:
    """The claims with state and views; ranked where a folder was given."""
    from spoonproof.report.heard import Heard

    catalogue = [Path(path) for path in paths if path != "-" and Path(path).is_dir()]
    views = _views(catalogue, folder) if catalogue else {}
    found = []
    for claim in judged:
        file = claim.claim.passage.document.path
        state = notes.state(_name(file, folder), claim.claim.quote, _at(claim), claim.entry or "")
        found.append(Heard(claim, state, views.get(_absolute(file))))
    if catalogue:
        found.sort(key=lambda one: (-one.judged.harm, -(one.views or 0)))
    return found


def _at(judged: JudgedClaim) -> str:
    """Where it is said, as people say it: the time in a film, else the line."""
    from spoonproof.report.heard import timecode

    claim = judged.claim
    seconds = claim.passage.seconds(claim.start, claim.end)
    return timecode(seconds[0]) if seconds else f"line {claim.passage.document.position(claim.span.start)[0]}"


def _absolute(file: str) -> str:
    return file if file == STANDARD_INPUT else Path(file).absolute().as_posix()


def _name(file: str, folder: ChannelFolder | None) -> str:
    """A file as the channel's own tables name it."""
    return file if folder is None or file == STANDARD_INPUT else folder.shown(Path(file))


def _views(catalogue: Sequence[Path], folder: ChannelFolder | None) -> dict[str, int]:
    """Views by absolute path, out of the channel's views.csv and then the folder's own; a file that is not there
    is told, as a name written otherwise would take its views away."""
    import sys

    from spoonproof.corrections import read_views
    from spoonproof.report.terminal import printable

    found: dict[str, int] = {}
    for root in ([folder.root] if folder is not None else []) + list(catalogue):
        views = own_table(root / VIEWS, partial(read_views, name=(root / VIEWS).as_posix()))
        for file, number in (views or {}).items():
            if not (root / file).is_file():
                print(f"{printable((root / VIEWS).as_posix())}: there is no {printable(file)}", file=sys.stderr)
            found[(root / file).absolute().as_posix()] = number
    return found


def _corrections(folder: ChannelFolder | None) -> Corrections:
    from spoonproof.corrections import FILE, Corrections, read_corrections

    found = own_table(folder.root / FILE, read_corrections) if folder is not None else None
    return found or Corrections()


def _note_drafts(folder: ChannelFolder, found: Sequence[Heard]) -> int:
    """Write the new drafts into corrections.csv and count them; what a person, or another run, wrote there stays."""
    from spoonproof.clock import today
    from spoonproof.corrections import FILE
    from spoonproof.reading.files import write_atomically

    new = 0
    with _alone(folder.root / FILE):
        # Read again under the lock: it may have changed while we listened.
        notes = _corrections(folder)
        for one in found:
            file = one.judged.claim.passage.document.path
            if one.judged.advice == "keep" or file == STANDARD_INPUT:
                continue
            new += notes.draft(_name(file, folder), _at(one.judged), one.judged, today().isoformat())
        if new:
            write_atomically(folder.root / FILE, notes.text().encode("utf-8"))
    return new


@contextmanager
def _alone(path: Path) -> Iterator[None]:
    """Hold the lock of a table of the channel, waiting a few seconds for another run to be done with it.

    Raises UsageError when it isn't.
    """
    from spoonproof.cli import UsageError
    from spoonproof.swap import PATIENCE, OutputRefused, locked

    try:
        with locked(path, PATIENCE):
            yield
    except OutputRefused as refused:
        raise UsageError(str(refused)) from None


def _knowledge(folder: ChannelFolder | None) -> Knowledge:
    from spoonproof.knowledge import Knowledge

    return folder.knowledge if folder is not None else Knowledge()


def _judged(
    options: Namespace,
    folder: ChannelFolder | None,
    knowledge: Knowledge,
    again: dict[int, JudgedClaim],
    unread: list[str],
) -> Iterator[JudgedClaim]:
    """Every claim of the files, judged; captions that bear a recipe's name by the figures of its dish.

    With --trail each is judged a second time, into ``again`` by the identity of the first. ``unread`` grows by each
    file that can't be read, as a whole or at a place.
    """
    from spoonproof.commands.where import judge_of_dish
    from spoonproof.hearing import hear
    from spoonproof.reading.meant_for import YOUNGEST

    channel, markets, ages = folder.channel if folder else None, tuple(options.market or ()), _ages(options.ages)
    alone = knowledge.judge_without_dish(channel, markets, ages)
    policies = knowledge.policies_for(channel, markets)
    months = ages[0] if ages else channel.ages[0] if channel else YOUNGEST
    # A line that stands by itself may be of any dish; a film or page that ages are given for is for babies.
    meant = ages is not None and not options.lines
    for document in _documents(options.paths, unread):
        passages = _statements(document, options.lines, unread)
        judge = alone
        if folder is not None and not markets and not ages and document.path != STANDARD_INPUT:
            judge = judge_of_dish(folder, Path(document.path)) or alone
        heard = partial(
            hear, passages, knowledge, judge, apart=options.lines, months=months, for_babies=meant, policies=policies
        )
        found = heard()
        if options.trail:
            again.update((id(once), twice) for once, twice in zip(found, heard(), strict=True))
        yield from found


def _statements(document: Document, lines: bool, unread: list[str]) -> Sequence[Passage]:
    """What a file says; what could not be read of it is told, and the file kept in ``unread``."""
    import sys

    from spoonproof.reading.speech import read_statements
    from spoonproof.report.terminal import printable

    passages, faults = read_statements(document, lines=lines)
    unread += [document.path] * any(fault.level != "note" for fault in faults)
    for fault in faults:
        line = document.position(fault.span.start)[0]
        print(f"{printable(document.path)}:{line}: {printable(fault.message)}", file=sys.stderr)
    return passages


def _documents(paths: Sequence[str], unread: list[str]) -> Iterator[Document]:
    """Every file named or in a folder named, each once. What can't be read in a folder is told, kept in ``unread``
    and passed over.

    Raises UsageError when a path is not there, a file named by itself can't be read, or a folder holds nothing.
    """
    from spoonproof.cli import UsageError

    seen: set[Path] = set()
    for given in paths:
        if given == "-":
            yield _from_standard_input()
            continue
        path = Path(given)
        if not path.exists():
            raise UsageError(f"{given}: there is no such file or folder")
        if not path.is_dir():
            files, found = [path], 1
        else:
            files = _files_of(path)
            found = len(files)
        if not found:
            raise UsageError(f"{given}: holds no captions or text ({', '.join(sorted(HEARD))})")
        for file in files:
            if file.absolute() not in seen:
                seen.add(file.absolute())
                document = _document(file, named=not path.is_dir())
                if document is None:
                    unread.append(file.as_posix())
                else:
                    yield document


def _document(file: Path, named: bool) -> Document | None:
    import sys

    from spoonproof.cli import UsageError
    from spoonproof.reading.files import read_document
    from spoonproof.report.terminal import printable

    document, faults = read_document(file, file.as_posix())
    if document is None:
        words = "; ".join(f"{printable(file.as_posix())}: {fault.message}" for fault in faults)
        if named:
            raise UsageError(words)
        print(words, file=sys.stderr)
    return document


def _files_of(folder: Path) -> list[Path]:
    """Captions and texts under a folder; hidden ones, and what is no ordinary file, left out."""
    from spoonproof.reading.files import files_below

    found = []
    for path in sorted(files_below(folder)):
        hidden = any(part.startswith(".") for part in path.relative_to(folder).parts)
        if path.suffix.lower() in HEARD and not hidden and path.is_file():
            found.append(path)
    return found


def _from_standard_input() -> Document:
    import sys

    from spoonproof.cli import UsageError
    from spoonproof.reading import limits
    from spoonproof.reading.files import decode

    data = sys.stdin.buffer.read(limits.FILE_BYTES + 1)
    if len(data) > limits.FILE_BYTES:
        raise UsageError(f"standard input is longer than {limits.FILE_BYTES >> 10} KiB; give it as files")
    if not data.strip():
        raise UsageError("nothing came in on standard input: paste the text, then end it (Ctrl-D), or pipe a file in")
    document, faults = decode(data, STANDARD_INPUT)
    if document is None:
        raise UsageError("standard input: " + " ".join(fault.message for fault in faults))
    return document


def _ages(words: str) -> tuple[int, int | None] | None:
    """ "6-24 months" as months. Raises UsageError when it can't be read."""
    from spoonproof.cli import UsageError

    if not words:
        return None
    found = re.fullmatch(r"\s*(?:from\s+)?(\d{1,3})\s*(?:[-–]|to)?\s*(\d{1,3})?\s*(?:months?)?\s*", words)
    if not found:
        raise UsageError(f'--ages should look like "6-24 months", not {words!r}')
    return int(found[1]), int(found[2]) if found[2] else None
