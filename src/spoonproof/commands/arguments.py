"""The arguments of a command, and what is said when they can't be used: one line for a cook, no wall of usage."""

from __future__ import annotations

import argparse
import os
import re
import sys
from argparse import ArgumentParser, HelpFormatter
from typing import NoReturn

# The complaints below are read in English; looking for translations that nobody made takes two milliseconds.
setattr(argparse, "_", str)  # noqa: B010 - a name that is the library's own

_CHOICE = re.compile(r"^argument ([^:]{1,60}): invalid choice: (.{0,200}?) \(choose from (.{1,200})\)$", re.DOTALL)
_VALUE = re.compile(r"^argument ([^:]{1,60}): invalid (\w{1,20}) value: (.{0,200})$", re.DOTALL)
_UNKNOWN = "unrecognized arguments: "
_KINDS = {"int": "a whole number", "float": "a number"}


class Help(HelpFormatter):
    """The library's help, as wide as the terminal. (The library asks ``shutil`` how wide that is, each time an argument
    is declared, and brings in five ways of compression with it.)"""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=_columns() - 2)


def _columns() -> int:
    """Columns of the terminal: what the environment states, else what it has, else 80."""
    stated = os.environ.get("COLUMNS", "")
    if stated.isdecimal() and 0 < len(stated) < 5 and int(stated) > 0:
        return int(stated)
    try:
        return os.get_terminal_size(sys.__stdout__.fileno()).columns or 80 if sys.__stdout__ else 80
    except (OSError, ValueError):
        return 80


class Arguments(ArgumentParser):
    """A parser whose complaints are plain: what was given, what would do, and where the rest is told. Exit 2."""

    def __init__(self, prog: str, description: str, allow_abbrev: bool = False) -> None:
        super().__init__(prog, description=description, allow_abbrev=allow_abbrev, formatter_class=Help)

    def error(self, message: str) -> NoReturn:
        """Print the complaint in one line and leave with 2."""
        from spoonproof.report.terminal import printable

        said = plainly(message) + self._meant(message)
        print(f"{self.prog}: {printable(said)} ({self.prog} --help tells more)", file=sys.stderr)
        raise SystemExit(2)

    def _meant(self, message: str) -> str:
        """The option that a mistyped one comes nearest to."""
        from difflib import get_close_matches

        wrong = re.findall(r"(?<= )--?[a-z][a-z-]{0,30}", message) if message.startswith(_UNKNOWN) else []
        near = [match for word in wrong for match in get_close_matches(word, self._option_string_actions, 1)]
        return f"; did you mean {' '.join(near)}?" if near else ""


def plainly(message: str) -> str:
    """The standard library's complaint about arguments in plain words; one that is not known stays as it is."""
    if found := _CHOICE.match(message):
        known = found[3].replace("'", "")
        return f"{found[1]} can't be {found[2]}; it is one of {known}"
    if found := _VALUE.match(message):
        return f"{found[1]} is {_KINDS.get(found[2], found[2])}, not {found[3]}"
    for begins, instead in (
        ("the following arguments are required: ", "what is missing: "),
        (_UNKNOWN, "there is no such option here, or one word too many: "),
    ):
        if message.startswith(begins):
            return instead + message[len(begins) :]
    return message.removeprefix("argument ").replace(": expected one argument", " wants a word after it")
