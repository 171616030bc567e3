"""``check``: faults in recipes, words, cooking, film and page."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import new_parser, open_channel

if TYPE_CHECKING:
    from spoonproof.checks.engine import Outcome
    from spoonproof.folder import ChannelFolder, Chosen
    from spoonproof.model.finding import Finding
    from spoonproof.model.text import Document

ROUNDS = 5
"""How often ``--fix`` looks again: what was put right may show what else may be."""


def parser() -> ArgumentParser:
    """The arguments of ``check``."""
    found = new_parser("check", "Find faults in recipes.", ("text", "jsonl", "sarif", "annotations"))
    found.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="recipes or folders (default: the channel)")
    found.add_argument(
        "--level",
        choices=("error", "warning", "note"),
        default="warning",
        help="the least level shown (default: warning)",
    )
    found.add_argument("--drafts", action="store_true", help="check drafts too")
    found.add_argument("--echo", action="store_true", help="print how each recipe was read")
    found.add_argument("--trail", action="store_true", help="show how each claim was judged, step by step")
    found.add_argument("--fix", action="store_true", help="put right what may be put right without asking")
    found.add_argument("--dry-run", action="store_true", help="with --fix: show what would change, change nothing")
    found.add_argument("--changed-since", metavar="REF", help="only recipes changed since this git revision")
    return found


def run(options: Namespace) -> int:
    """Print the findings; the exit code of the contract."""
    from spoonproof.checks.engine import check
    from spoonproof.cli import UsageError

    if options.dry_run and not options.fix:
        raise UsageError("--dry-run goes with --fix")
    for path in options.paths:
        if path.is_file() and path.suffix != ".md":
            raise UsageError(f"{path} is no recipe; spoonproof check without a path checks the channel's own files too")
    folder = open_channel(options)
    files = folder.select(options.paths, options.drafts)
    if not files:
        raise UsageError("no recipes to check here; drafts are checked when named or with --drafts")
    if options.changed_since:
        files = _changed(folder, files, options.changed_since)
    if options.echo:
        _echo(folder, files)
    outcome = check(folder, files, whole_channel=not options.paths and not options.changed_since)
    if options.fix and options.dry_run:
        _show_mending(folder, files, outcome.findings)
        return 0
    for _ in range(ROUNDS if options.fix else 0):
        if not _mend(folder, files, outcome.findings):
            break
        folder, files = _again(folder, files)
        outcome = check(folder, files, whole_channel=not options.paths and not options.changed_since)
    shown = outcome.findings.at_least(options.level)
    _print(options, folder, shown, outcome)
    if outcome.broken:
        print(f"spoonproof check: rules of ours broke: {'; '.join(outcome.broken)}", file=sys.stderr)
        return 3
    return 1 if shown else 0


def _print(options: Namespace, folder: ChannelFolder, shown: Sequence[Finding], outcome: Outcome) -> None:
    from spoonproof.report import terminal

    sources = folder.knowledge.sources
    if options.format == "jsonl":
        from spoonproof.report.lines import finding_lines

        terminal.write(finding_lines(shown))
    elif options.format == "sarif":
        from spoonproof.report.sarif import sarif

        terminal.write([sarif(shown, sources, _help_texts(), _from_here(folder))])
    elif options.format == "annotations":
        from spoonproof.report.annotations import workflow_commands

        terminal.write(workflow_commands(shown, _from_here(folder)))
    else:
        terminal.write(terminal.report(shown, sources, terminal.wants_colour(sys.stdout), options.trail))
        terminal.write(["", terminal.summary(shown, outcome.files)])


def _from_here(folder: ChannelFolder) -> str:
    """The channel's folder as a code host sees it, which runs us from the top of the repository."""
    here, root = Path.cwd().resolve(), folder.root.resolve()
    return f"{root.relative_to(here).as_posix()}/" if here in root.parents else ""


def _help_texts() -> dict[str, tuple[str, str]]:
    from spoonproof.checks.rule import all_rules
    from spoonproof.reading.faults import all_faults

    texts = {name: (found.wrong, found.why) for name, found in all_faults().items()}
    return texts | {rule.name: (rule.title, rule.doc.strip()) for rule in all_rules()}


def _echo(folder: ChannelFolder, files: Chosen) -> None:
    from spoonproof.folder import KEPT
    from spoonproof.reading.echo import echo
    from spoonproof.report.terminal import write

    for file in files:
        folder.let_go(KEPT)
        if file.recipe is not None:
            write([echo(file.recipe, folder.knowledge.foods, folder.knowledge.verbs), ""])


def _changed(folder: ChannelFolder, files: Chosen, ref: str) -> Chosen:
    """Those of ``files`` that differ from ``ref`` or that git does not know, and those that use one of them as a food;
    all of them where the channel, its claims or its tables differ. Raises UsageError."""
    from spoonproof.folder import KEPT, Chosen

    names = _names_changed(folder.root, ref)
    if any(name == "channel.yaml" or name.startswith(("claims/", "shared/")) for name in names):
        return files
    reached = {Path(name).stem for name in names if name.endswith(".md")}
    used: dict[str, frozenset[str]] = {}
    slugs: dict[Path, str] = {}
    for file in files:
        folder.let_go(KEPT)
        if file.recipe is not None:
            slugs[file.path] = file.recipe.slug
            used[file.recipe.slug] = frozenset(line.recipe for line in file.recipe.foods if line.recipe)
    while not (users := {slug for slug, inner in used.items() if inner & reached}) <= reached:
        reached |= users
    return Chosen(
        folder,
        [
            (path, drafts)
            for path, drafts in files.places
            if folder.shown(path) in names or slugs.get(path.absolute()) in reached
        ],
    )


def _names_changed(root: Path, ref: str) -> set[str]:
    """The files below ``root`` that differ from a revision or are new, as git names them. Raises UsageError."""
    import subprocess

    from spoonproof.cli import UsageError

    if ref.startswith("-"):
        raise UsageError(f"{ref!r} is not a revision")
    names: set[str] = set()
    for command in (
        ["git", "diff", "--no-ext-diff", "--no-textconv", "--name-only", "--relative", "-z", ref, "--"],
        ["git", "ls-files", "--others", "--exclude-standard", "-z"],
    ):
        try:
            done = subprocess.run(command, cwd=root, capture_output=True, check=True)
        except FileNotFoundError:
            raise UsageError("--changed-since needs git, and there is none here") from None
        except subprocess.CalledProcessError as error:
            words = error.stderr.decode("utf-8", "replace").strip().split("\n")[0]
            raise UsageError(f"git can't compare with {ref!r}: {words}") from None
        names |= {name.decode("utf-8", "surrogateescape") for name in done.stdout.split(b"\0") if name}
    return names


def _mendings(
    folder: ChannelFolder, files: Chosen, findings: Sequence[Finding]
) -> Iterator[tuple[Path, Document, str, int]]:
    """Each file that can be mended: its path, its document, its text put right, and the number of edits.

    Only the files that were checked and the channel's own are touched, never one of ours.
    """
    from spoonproof.checks.mend import safe_edits
    from spoonproof.reading.edits import apply_edits

    paths = {folder.shown(path): path for path, _ in files.places}
    paths[folder.channel.document.path] = folder.root / folder.channel.document.path
    for document, edits in safe_edits(findings).items():
        if document.path in paths:
            after = apply_edits(document, edits)
            if after != document.text:
                yield paths[document.path], document, after, len(edits)


def _show_mending(folder: ChannelFolder, files: Chosen, findings: Sequence[Finding]) -> None:
    from spoonproof.checks.mend import difference
    from spoonproof.report.terminal import printable, write

    for _, document, after, _ in _mendings(folder, files, findings):
        write(printable(line) for line in difference(document, after))


def _mend(folder: ChannelFolder, files: Chosen, findings: Sequence[Finding]) -> bool:
    """Make the safe edits; whether there were any."""
    from spoonproof.reading.files import read_document, write_atomically
    from spoonproof.report.terminal import printable

    some = False
    for path, document, after, count in _mendings(folder, files, findings):
        now, _ = read_document(path, document.path)
        if now is None or now.text != document.text:
            print(f"{printable(document.path)}: changed meanwhile, and left as it is", file=sys.stderr)
            continue
        write_atomically(path, after.encode("utf-8"))
        print(f"{printable(document.path)}: {count} put right", file=sys.stderr)
        some = True
    return some


def _again(folder: ChannelFolder, files: Chosen) -> tuple[ChannelFolder, Chosen]:
    """The same files, read afresh."""
    from spoonproof.folder import ChannelFolder, Chosen

    fresh = ChannelFolder(folder.root, folder.knowledge)
    return fresh, Chosen(fresh, files.places)
