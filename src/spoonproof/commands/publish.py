"""``publish``: the static site of the channel."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.commands import channel_root, new_parser, open_channel

if TYPE_CHECKING:
    from spoonproof.site.census import Census

_PORT = 8000


def parser() -> ArgumentParser:
    """The arguments of ``publish``."""
    found = new_parser("publish", "Build the static site.")
    found.add_argument("--out", type=Path, metavar="DIR", help="where to (default: out/site in the channel)")
    found.add_argument("--guide", action="store_true", help="build the guide instead (default: out/guide here)")
    found.add_argument("--drafts", action="store_true", help="publish drafts too")
    found.add_argument("--with-errors", action="store_true", help="publish recipes with errors; their pages say so")
    found.add_argument("--watch", action="store_true", help="serve the site on this machine and rebuild on changes")
    found.add_argument("--port", type=int, metavar="N", help="for --watch (default: 8000)")
    return found


def run(options: Namespace) -> int:
    """Build, and say what was made and what was left out; 1 when a recipe was left out for its errors."""
    if options.guide:
        return build_guide(options.out or Path("out") / "guide")
    root = channel_root(options)
    out = options.out or root / "out" / "site"
    if options.port is not None and not options.watch:
        from spoonproof.cli import UsageError

        raise UsageError("--port says where --watch shows the site: add --watch, or leave --port out")
    if options.watch:
        from spoonproof.site.watch import watch

        open_channel(options)
        return watch(root, out, lambda: rebuild(root, out, options), options.port or _PORT)
    return build(root, out, options)


def rebuild(root: Path, out: Path, options: Namespace) -> int:
    """A build of the channel as it is now; a fault in what is being written is told and ends nothing."""
    from spoonproof.cli import UsageError

    try:
        return build(root, out, options)
    except UsageError as error:
        print(error, file=sys.stderr, flush=True)
        return 2


def build(root: Path, out: Path, options: Namespace) -> int:
    """One build of the site, unless it stands as it should; the exit code."""
    from spoonproof.site import census, standing

    counted = census.take(root, [name for name in ("drafts", "with_errors") if getattr(options, name)])
    said = standing.stands(root, out, counted) if counted is not None else None
    if said is None:
        return _build(root, out, options, counted)
    print(*said.errors, sep="\n", end="\n" if said.errors else "", file=sys.stderr)
    print(*said.out, sep="\n")
    return said.code


def _build(root: Path, out: Path, options: Namespace, counted: Census | None) -> int:
    from spoonproof.cli import UsageError
    from spoonproof.clock import stated_day
    from spoonproof.commands import refuse_faulty_channel
    from spoonproof.folder import ChannelFolder
    from spoonproof.report.terminal import printable
    from spoonproof.site import standing
    from spoonproof.site.pages import ThemeError
    from spoonproof.site.press import Wanted
    from spoonproof.site.publish import publish
    from spoonproof.swap import OutputRefused

    folder = ChannelFolder(root)
    refuse_faulty_channel(folder)
    try:
        made = publish(folder, Wanted(out, options.drafts, options.with_errors, stated_day()), counted)
    except (OutputRefused, ThemeError) as error:
        raise UsageError(str(error)) from None
    report = made.report
    left_out = tuple(printable(line) for line in made.left_out)
    what = f"{made.recipes} recipe{'' if made.recipes == 1 else 's'}, {report.pages} pages, {report.files} files"
    notes = tuple(printable(note) for note in report.notes)

    def told(state: str) -> tuple[str, ...]:
        look = f"Look at it: {printable(str(out / 'index.html'))}"
        return f"{printable(str(out))}: {what}, {state}", *notes, look

    there = "already as it should be"
    print(*left_out, sep="\n", end="\n" if left_out else "", file=sys.stderr)
    print(*told("written" if report.changed else there), sep="\n")
    code = 1 if left_out else 0
    if counted is not None:
        standing.keep(root, out, counted, made.media, standing.Said(told(there), left_out, code))
    return code


def build_guide(out: Path) -> int:
    """The guide that comes with the tool, as pages to read and to put on a web server; no channel is needed."""
    from spoonproof.cli import UsageError
    from spoonproof.reading.bundle import bundle_root
    from spoonproof.report.terminal import printable
    from spoonproof.site.guide import GuideError, publish_guide
    from spoonproof.site.pages import ThemeError
    from spoonproof.swap import OutputRefused

    root = bundle_root()
    try:
        report = publish_guide(root / "guide", out, (root / "site",))
    except (GuideError, OutputRefused, ThemeError) as error:
        raise UsageError(str(error)) from None
    state = "written" if report.changed else "already as it should be"
    print(f"{printable(str(report.out))}: the guide, {report.pages} pages, {state}")
    print(f"Read it: {printable(str(report.out / 'index.html'))}")
    return 0
