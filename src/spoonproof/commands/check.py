"""``check``: faults in recipes, words, cooking, film and page."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from spoonproof.commands import new_parser, open_channel


def parser() -> ArgumentParser:
    """The arguments of ``check``."""
    found = new_parser("check", "Find faults in recipes.", ("text", "jsonl"))
    found.add_argument("paths", nargs="*", type=Path, metavar="PATH", help="recipes or folders (default: the channel)")
    found.add_argument("--level", choices=("error", "warning", "note"), default="warning", help="the least level shown")
    found.add_argument("--drafts", action="store_true", help="check drafts too")
    found.add_argument("--echo", action="store_true", help="print how each recipe was read")
    found.add_argument("--trail", action="store_true", help="show how each claim was judged, step by step")
    return found


def run(options: Namespace) -> int:
    """Print the findings; the exit code of the contract."""
    from spoonproof.checks.engine import check
    from spoonproof.cli import UsageError
    from spoonproof.model.finding import LEVELS
    from spoonproof.report import lines, terminal

    folder = open_channel(options)
    files = folder.select(options.paths, options.drafts)
    if not files:
        raise UsageError("no recipes to check here; drafts are checked when named or with --drafts")
    if options.echo:
        from spoonproof.reading.echo import echo

        for file in files:
            if file.recipe is not None:
                terminal.write([echo(file.recipe, folder.knowledge.foods, folder.knowledge.verbs), ""])
    outcome = check(folder, files, whole_channel=not options.paths)
    shown = [f for f in outcome.findings if LEVELS.index(f.level) <= LEVELS.index(options.level)]
    if options.format == "jsonl":
        terminal.write(lines.finding_lines(shown))
    else:
        terminal.write(
            terminal.report(shown, folder.knowledge.sources, terminal.wants_colour(sys.stdout), options.trail)
        )
        terminal.write(["", terminal.summary(shown, outcome.files)])
    if outcome.broken:
        print(f"spoonproof check: rules of ours broke: {'; '.join(outcome.broken)}", file=sys.stderr)
        return 3
    return 1 if shown else 0
