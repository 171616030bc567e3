"""``publish``: the static site of the channel."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import new_parser, open_channel

if TYPE_CHECKING:
    from spoonproof.folder import ChannelFolder
    from spoonproof.site.build import Report


def parser() -> ArgumentParser:
    """The arguments of ``publish``."""
    found = new_parser("publish", "Build the static site.")
    found.add_argument("--out", type=Path, metavar="DIR", help="where to (default: out/site in the channel)")
    found.add_argument("--guide", action="store_true", help="build the guide instead (default: out/guide here)")
    found.add_argument("--drafts", action="store_true", help="publish drafts too")
    found.add_argument("--with-errors", action="store_true", help="publish recipes with errors; their pages say so")
    found.add_argument("--watch", action="store_true", help="serve the site on this machine and rebuild on changes")
    found.add_argument("--port", type=int, default=8000, metavar="N", help="for --watch (default: 8000)")
    return found


def run(options: Namespace) -> int:
    """Build, and say what was made and what was left out; 1 when a recipe was left out for its errors."""
    if options.guide:
        return build_guide(options.out or Path("out") / "guide")
    folder = open_channel(options)
    out = options.out or folder.root / "out" / "site"
    if options.watch:
        from spoonproof.site.watch import watch

        return watch(folder.root, out, lambda: rebuild(folder.root, out, options), options.port)
    return build(folder, out, options)


def rebuild(root: Path, out: Path, options: Namespace) -> int:
    """A build of the channel as it is now; a fault in what is being written is told and ends nothing."""
    from spoonproof.cli import UsageError
    from spoonproof.commands import refuse_faulty_channel
    from spoonproof.folder import ChannelFolder

    folder = ChannelFolder(root)
    try:
        refuse_faulty_channel(folder)
        return build(folder, out, options)
    except UsageError as error:
        print(error, file=sys.stderr, flush=True)
        return 2


def build(folder: ChannelFolder, out: Path, options: Namespace) -> int:
    """One build of the site; the exit code."""
    from spoonproof.cli import UsageError
    from spoonproof.report.terminal import printable
    from spoonproof.site.choose import choose, stated_day, theme_folders
    from spoonproof.site.pages import ThemeError
    from spoonproof.site.publish import publish
    from spoonproof.site.stage import OutputRefused

    chosen = choose(folder, drafts=options.drafts, with_errors=options.with_errors)
    for line in chosen.left_out:
        print(printable(line), file=sys.stderr)
    try:
        report: Report = publish(
            folder.channel,
            chosen.dishes,
            out,
            theme_folders(folder),
            faults=chosen.faults,
            sources=(folder.root / "recipes", folder.root / "claims", folder.root / "shared", folder.root / "site"),
            checked=stated_day(),
            root=folder.root,
        )
    except (OutputRefused, ThemeError) as error:
        raise UsageError(str(error)) from None
    what = f"{len(chosen.dishes)} recipe{'' if len(chosen.dishes) == 1 else 's'}, {report.pages} pages"
    state = "written" if report.changed else "already as it should be"
    print(f"{printable(str(report.out))}: {what}, {report.files} files, {state}")
    for note in report.notes:
        print(printable(note))
    print(f"Look at it: {printable(str(report.out / 'index.html'))}")
    return 1 if chosen.left_out else 0


def build_guide(out: Path) -> int:
    """The guide that comes with the tool, as pages to read and to put on a web server; no channel is needed."""
    from spoonproof.cli import UsageError
    from spoonproof.reading.bundle import bundle_root
    from spoonproof.report.terminal import printable
    from spoonproof.site.guide import GuideError, publish_guide
    from spoonproof.site.pages import ThemeError
    from spoonproof.site.stage import OutputRefused

    root = bundle_root()
    try:
        report = publish_guide(root / "guide", out, (root / "site",))
    except (GuideError, OutputRefused, ThemeError) as error:
        raise UsageError(str(error)) from None
    state = "written" if report.changed else "already as it should be"
    print(f"{printable(str(report.out))}: the guide, {report.pages} pages, {state}")
    print(f"Read it: {printable(str(report.out / 'index.html'))}")
    return 0
