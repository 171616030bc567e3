"""Arguments and exit codes; each command's work is in ``commands/``, imported only when it is asked for.

Exit codes: 0 nothing at or above the level asked for; 1 findings; 2 unusable arguments, channel or
configuration; 3 a fault of ours or of the machine.
"""

from __future__ import annotations

import errno
import sys
from collections.abc import Sequence

from spoonproof import __version__

COMMANDS: dict[str, str] = {
    "check": "find faults in recipes, words, cooking, film and page",
    "nutrients": "what is in a recipe, against the age's reference intake",
    "plan": "the cook timeline; --day for several recipes filmed on one day",
    "calendar": "when each new food comes, over chosen recipes",
    "publish": "build the static site",
    "shoot": "make the filming package: script, captions, shot list",
    "listen": "list all claims of captions, transcripts or text, each judged",
    "where": "every place that says a thing, or rests on a register entry",
    "sources": "the sources: complete, cited, due",
    "explain": "a rule, a food, a register entry, a texture, a file's keys",
    "new": "start a channel or a recipe",
    "editor": "the language server, on standard input and output",
    "desk": "the local page over the channel's folder",
}


class UsageError(Exception):
    """Arguments, channel or configuration that cannot be used: exit 2 with these words."""


def command() -> None:
    """``main`` as a process: it ends with the exit code, and without taking apart what it holds.

    Taking a command's tables apart object by object took a fifth of its time. Where something waits for the end of
    the process (another thread, a function to be called then) it ends as any other does.
    """
    import atexit
    import os

    code = main()
    threads = sys.modules.get("threading")
    waiting = getattr(atexit, "_ncallbacks", lambda: 1)() or (threads is not None and threads.active_count() > 1)
    if waiting:
        sys.exit(code)
    try:
        for stream in (sys.stdout, sys.stderr):
            if stream is not None:  # closed by whoever started the command
                stream.flush()
    except (OSError, ValueError):
        sys.exit(code)
    os._exit(code)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code; never prints a traceback."""
    argv = list(sys.argv[1:] if arguments is None else arguments)
    try:
        if argv in (["--version"], ["-V"]):
            print(f"spoonproof {__version__}", flush=True)
            return 0
        if not argv or argv[0] in ("-h", "--help", "help"):
            print(_overview(), flush=True)
            return 0 if argv else 2
        _steady_streams()
        if argv[0] not in COMMANDS:
            return _unknown_command(argv[0])
        if any("\0" in word for word in argv):
            return _complain(f"spoonproof {argv[0]}: no argument may hold the character of code 0", 2)
        return _run(argv[0], argv[1:])
    except BrokenPipeError:
        return _reader_went_away()
    except KeyboardInterrupt:
        print("spoonproof: stopped; nothing was left half-written.", file=sys.stderr)
        return 3
    except OSError as error:
        where = f" ({_short(str(error.filename))})" if error.filename else ""
        words = f"spoonproof: a file or folder can't be used: {error.strerror or error}{where}."
        if isinstance(error, PermissionError):
            words += " Give yourself the right to read and change it, or name another place."
        return _complain(words, 2 if error.errno == errno.ENAMETOOLONG else 3)
    except Exception as error:
        return _own_table(argv, error) or _our_fault(argv, error)


def _own_table(argv: Sequence[str], error: Exception) -> int:
    """2 with the words of a room's complaint where it is about a row of the channel's own tables, else 0."""
    if not isinstance(error, ValueError):
        return 0
    from spoonproof.reading.bundle import OWN
    from spoonproof.reading.own_tables import says_own
    from spoonproof.report.terminal import printable

    if not says_own(error):
        return 0
    words = printable(str(error).removeprefix(OWN))
    print(f"spoonproof {argv[0]}: the channel's own table can't be used: shared/{words}", file=sys.stderr)
    return 2


def _run(name: str, rest: Sequence[str]) -> int:
    import gc

    # Code, tables and recipes are many small objects that live to the end: looking through them at every 700th is in
    # vain.
    gc.set_threshold(200_000, 20, 100)
    import importlib

    from spoonproof import modules

    modules.take()
    from spoonproof.compiled import made_folder
    from spoonproof.expressions import take_from

    take_from(made_folder())
    if name == "check":
        modules.bring_in(modules.CHECKING)
    from spoonproof.clock import ClockError, today
    from spoonproof.folder import ChannelNotFound, PathNotFound, TooManyFiles

    command = importlib.import_module(f"spoonproof.commands.{name}")
    try:
        options = command.parser().parse_args(rest)
        today()
        code = int(command.run(options))
        sys.stdout.flush()
    except (UsageError, ChannelNotFound, PathNotFound, TooManyFiles, ClockError) as error:
        return _complain(f"spoonproof {name}: {error}", 2)
    except SystemExit as stop:  # argparse has printed what was wrong
        return stop.code if isinstance(stop.code, int) else 2
    return code


def _complain(words: str, code: int) -> int:
    """Print ``words`` on standard error, with nothing in them that a terminal would obey; ``code``."""
    from spoonproof.report.terminal import printable

    print("\n".join(printable(line) for line in words.split("\n")), file=sys.stderr)
    return code


def _short(name: str) -> str:
    """A file's name, cut where it is longer than a person reads."""
    return name if len(name) <= 200 else f"{name[:200]}…"


def _overview() -> str:
    lines = [
        "spoonproof: a recipe desk for people who cook for babies and publish it",
        "",
        "usage: spoonproof COMMAND [ARGUMENTS]      (spoonproof COMMAND --help tells more)",
        "",
    ]
    lines += [f"  {name:<10} {words}" for name, words in COMMANDS.items()]
    lines += ["", "Start with:  spoonproof new channel my-channel"]
    lines += ["Exit codes:  0 nothing found, 1 findings, 2 arguments or channel can't be used, 3 a fault of ours"]
    return "\n".join(lines)


def _unknown_command(word: str) -> int:
    from difflib import get_close_matches

    near = get_close_matches(word, COMMANDS, 1)
    hint = f"; did you mean {near[0]}?" if near else ""
    return _complain(f"spoonproof: there is no command {_short(word)!r}{hint} (spoonproof --help lists them)", 2)


def _steady_streams() -> None:
    """Print UTF-8 whatever the locale says, and never fail on a file name that is not text."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")


def _reader_went_away() -> int:
    import os

    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return 0


def _our_fault(argv: Sequence[str], error: Exception) -> int:
    import os
    import traceback

    if os.environ.get("SPOONPROOF_DEBUG"):
        traceback.print_exc()
    frame = traceback.extract_tb(error.__traceback__)[-1]
    place = f"{frame.filename.rpartition('spoonproof/')[2]}:{frame.lineno}"
    print(
        f"spoonproof {argv[0]}: a fault of ours, not yours: {type(error).__name__}: {error} (at {place}).\n"
        "What was there before is untouched. Please report it with the file that brought it about; "
        "SPOONPROOF_DEBUG=1 shows more.",
        file=sys.stderr,
    )
    return 3


if __name__ == "__main__":
    command()
