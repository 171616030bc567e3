"""``publish``: the static site of the channel."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from spoonproof.commands import as_seen, channel_root, new_parser, open_channel

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
    from spoonproof.cli import UsageError
    from spoonproof.site.renewal import Refused, renew

    chosen = [name for name in ("drafts", "with_errors") if getattr(options, name)]
    try:
        said = renew(root, out, chosen, lambda: open_channel(options))
    except Refused as error:
        raise UsageError(str(error)) from None
    place = _plain(as_seen(out))
    print(*map(_plain, said.errors), sep="\n", end="\n" if said.errors else "", file=sys.stderr)
    print(f"{place}: {_plain(said.out[0])}", *map(_plain, said.out[1:]), sep="\n")
    print(f"Look at it: {_plain(as_seen(out / 'index.html'))}")
    return said.code


def _plain(line: str) -> str:
    """A line that steers no terminal."""
    if line.isprintable():
        return line
    from spoonproof.report.terminal import printable

    return printable(line)


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
    print(f"{printable(as_seen(report.out))}: the guide, {report.pages} pages, {state}")
    print(f"Read it: {printable(as_seen(report.out / 'index.html'))}")
    return 0
