"""The page of commands: what each takes, from its own parser."""

from __future__ import annotations

import importlib
from argparse import SUPPRESS, Action, ArgumentParser
from collections.abc import Iterator

from spoonproof.cli import COMMANDS
from spoonproof.reference.markdown import code, table

_EXIT = (
    ("0", "nothing at or above the level asked for"),
    ("1", "findings"),
    ("2", "arguments, channel or configuration that can't be used"),
    ("3", "a fault of ours or of the machine"),
)


def commands_page() -> str:
    """Every command with its arguments and options."""
    return "\n\n".join(
        [
            "# Commands",
            "Every command takes `--channel DIR`, the channel's folder; without it, the nearest folder upwards that "
            "holds a `channel.yaml` is taken.",
            *(section for name in COMMANDS for section in _command(name)),
            "## What a command answers to the shell",
            table(("code", "meaning"), _EXIT),
        ]
    )


def _command(name: str) -> Iterator[str]:
    parser: ArgumentParser = importlib.import_module(f"spoonproof.commands.{name}").parser()
    yield f"## {name}"
    yield parser.description or COMMANDS[name]
    # The parser's own help text is laid out differently by each version of Python; its list of actions is not.
    rows = [(_written(action), _words(action)) for action in parser._actions if _told(action)]
    if rows:
        yield table(("", "what it does"), rows)


def _told(action: Action) -> bool:
    return action.dest not in ("help", "channel") and action.help is not SUPPRESS


def _written(action: Action) -> str:
    value = action.metavar if isinstance(action.metavar, str) else ""
    if not value and action.choices is not None:
        value = "|".join(str(choice) for choice in action.choices)
    if not action.option_strings:
        return code(value or action.dest.upper())
    if action.nargs != 0 and not value:
        value = action.dest.upper()
    return code(f"{action.option_strings[-1]} {value}".rstrip())


def _words(action: Action) -> str:
    return (action.help or "") % {"default": action.default, "dest": action.dest}
