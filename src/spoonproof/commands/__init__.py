"""One command a module: ``parser()`` and ``run(options) -> exit code``."""

from __future__ import annotations

import os
import sys
from argparse import SUPPRESS, ArgumentParser, Namespace
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from spoonproof.commands.arguments import Arguments

if TYPE_CHECKING:
    from spoonproof.cli import UsageError as Unusable
    from spoonproof.dish import Dish
    from spoonproof.folder import ChannelFolder


T = TypeVar("T")
MOST_TOLD = 20
"""Faults of a channel that are listed where it can't be used; the rest are counted."""


def new_parser(command: str, description: str, formats: tuple[str, ...] = ("text",)) -> ArgumentParser:
    """A parser with what every command takes: ``--channel`` and ``--format``."""
    parser = Arguments(prog=f"spoonproof {command}", description=description, allow_abbrev=False)
    parser.add_argument("--channel", metavar="DIR", type=Path, help="the channel's folder (default: here or above)")
    told = SUPPRESS if len(formats) == 1 else f"default: {formats[0]}"  # where there is no choice, none is shown
    parser.add_argument("--format", choices=formats, default=formats[0], help=told)
    return parser


def as_seen(path: Path) -> str:
    """``path`` as a person at this folder would type it: relative to here where that is shorter and the same place."""
    written = str(path)
    if not path.is_absolute():
        return written
    try:
        short = os.path.relpath(written)
    except ValueError:  # another drive
        return written
    return short if len(short) < len(written) and os.path.realpath(short) == os.path.realpath(written) else written


def ask_check(options: Namespace, shown: str) -> str:
    """The command that says why the recipe ``shown`` can't be read."""
    channel = "" if options.channel is None else f" --channel {options.channel}"
    return f"spoonproof check{channel} {shown}"


def missing_extra(error: ImportError, what: str, extra: str) -> Unusable:
    """That ``what`` needs an extra which is not installed. Raises ``error`` itself where a part of ours is missing."""
    from spoonproof.cli import UsageError

    name = (error.name or "").partition(".")[0]
    if name == "spoonproof":
        raise error
    return UsageError(f'{what} needs the extra "{extra}" ({name} is missing): {install_line(extra)}')


def install_line(extra: str) -> str:
    """What to type for an extra, into the environment that runs: out of the checkout where this is one."""
    checkout = Path(__file__).parents[3]
    what = f'--editable "{checkout}[{extra}]"' if (checkout / "pyproject.toml").is_file() else f'"spoonproof[{extra}]"'
    return f"{sys.executable or 'python'} -m pip install {what}"


def open_channel(options: Namespace) -> ChannelFolder:
    """The channel named or nearest. Raises ChannelNotFound, or UsageError when channel.yaml has errors."""
    from spoonproof.folder import ChannelFolder

    folder = ChannelFolder(channel_root(options))
    refuse_faulty_channel(folder)
    return folder


def channel_root(options: Namespace) -> Path:
    """The folder of the channel named or nearest. Raises ChannelNotFound."""
    from spoonproof.folder import CHANNEL_FILE, ChannelNotFound, find_channel

    if options.channel is None:
        return find_channel(Path.cwd())
    root: Path = options.channel.absolute()
    if not (root / CHANNEL_FILE).is_file():
        raise ChannelNotFound(f"there is no {CHANNEL_FILE} in {options.channel}")
    return root


def channel_or_none(options: Namespace) -> ChannelFolder | None:
    """The channel named or nearest, None where there is none: for commands that work without."""
    from spoonproof.folder import ChannelNotFound

    try:
        return open_channel(options)
    except ChannelNotFound:
        if options.channel is not None:
            raise
        return None


def refuse_faulty_channel(folder: ChannelFolder) -> None:
    """Raise UsageError with every error of channel.yaml, each at its place."""
    from spoonproof.cli import UsageError

    errors = [fault for fault in folder.channel_faults if fault.level == "error"]
    if errors:
        lines = []
        for fault in errors[:MOST_TOLD]:
            line, column = fault.document.position(fault.span.start)
            lines.append(f"  {fault.document.path}:{line}:{column}  {fault.message}  [{fault.rule}]")
        if len(errors) > MOST_TOLD:
            lines.append(f"  … and {len(errors) - MOST_TOLD} more")
        raise UsageError("the channel can't be used as it is:\n" + "\n".join(lines))


def open_recipe(options: Namespace, path: Path) -> Dish | None:
    """The dish of one recipe file; None, said on standard error, when it can't be read.

    Without a channel the recipe is read as a channel with nothing but defaults would. Raises PathNotFound.
    """
    import sys

    from spoonproof.cli import UsageError
    from spoonproof.folder import ChannelFolder
    from spoonproof.report.terminal import printable

    if path.is_dir():
        raise UsageError(f"{path} is a folder; name one recipe of it")
    folder = channel_or_none(options) or ChannelFolder(Path.cwd())
    file = next(iter(folder.select([path], drafts=True)), None)
    if file is None or file.recipe is None:
        shown = printable(file.shown if file else str(path))
        print(f"{shown}: can't be read as a recipe; {ask_check(options, shown)} says why", file=sys.stderr)
        return None
    return folder.dish(file.recipe)


def own_table(path: Path, read: Callable[[str], T]) -> T | None:
    """What ``read`` makes of a table of the channel; None when there is none. Raises UsageError when it can't be
    read."""
    from spoonproof.cli import UsageError
    from spoonproof.corrections import CorrectionsError
    from spoonproof.reading.files import read_document

    if not path.exists():
        return None
    document, faults = read_document(path, path.name)
    if document is None:
        raise UsageError(f"{path}: {' '.join(fault.message for fault in faults)}")
    try:
        return read(document.text)
    except CorrectionsError as error:
        raise UsageError(str(error)) from None
