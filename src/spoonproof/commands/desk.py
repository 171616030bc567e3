"""``desk``: the local page over the channel's folder."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from spoonproof.commands import missing_extra, new_parser, open_channel


def parser() -> ArgumentParser:
    """The arguments of ``desk``."""
    found = new_parser("desk", "Open the desk: a local page over the channel's folder.")
    found.add_argument("--port", type=int, default=0, metavar="N", help="the port (default: one that is free)")
    found.add_argument("--no-browser", action="store_true", help="print the address and open nothing")
    return found


def run(options: Namespace) -> int:
    """Serve until it is ended."""
    from spoonproof.cli import UsageError

    if not 0 <= options.port <= 65535:
        raise UsageError(f"--port should lie between 0 and 65535, not {options.port}")
    folder = open_channel(options)
    try:
        from spoonproof.desk.serve import serve
    except ImportError as error:
        raise missing_extra(error, "the desk", "desk") from None
    return serve(folder.root, options.port, not options.no_browser)
