"""``editor``: the language server, on standard input and output."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from spoonproof.commands import missing_extra
from spoonproof.commands.arguments import Arguments


def parser() -> ArgumentParser:
    """The arguments of ``editor``."""
    words = "Serve an editor over the Language Server Protocol, on standard input and output."
    found = Arguments(prog="spoonproof editor", description=words, allow_abbrev=False)
    found.add_argument("--stdio", action="store_true", help="the default and the only way; some editors say it")
    found.add_argument(
        "--delay", type=int, default=40, metavar="MS", help="milliseconds of quiet before a check (default: 40)"
    )
    return found


def run(options: Namespace) -> int:
    """Serve until the editor says exit."""
    from spoonproof.cli import UsageError

    if not 0 <= options.delay <= 10_000:
        raise UsageError(f"--delay should lie between 0 and 10000, not {options.delay}")
    try:
        from spoonproof.editor.server import serve
    except ImportError as error:
        raise missing_extra(error, "the editor", "editor") from None
    return serve(options.delay / 1000)
