"""A command killed at every instant at which it changes something on the disk, in a child of this very process.

An audit hook counts what reaches the system (files opened for writing, renames, removals, folders made) and kills the
child before the n-th; a limit on the size of files kills it in the middle of a write.
"""

from __future__ import annotations

import contextlib
import os
import resource
import shutil
import signal
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from spoonproof.cli import main

_CHANGING = ("os.rename", "os.remove", "os.rmdir", "os.mkdir", "os.link", "os.symlink", "os.truncate", "os.chmod")
_WRITING = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC


def run_in(folder: Path, arguments: Sequence[str]) -> int:
    """One command in ``folder``, silent; its exit code."""
    before = Path.cwd()
    os.chdir(folder)
    try:
        with Path(os.devnull).open("w") as quiet, contextlib.redirect_stdout(quiet), contextlib.redirect_stderr(quiet):
            return main(list(arguments))
    finally:
        os.chdir(before)


def changes(folder: Path, arguments: Sequence[str]) -> int:
    """How many changes the command makes: how many instants there are to be killed at."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        sys.dont_write_bytecode = True  # what Python keeps for itself is no change of ours
        count = 0

        def hook(event: str, args: tuple[object, ...]) -> None:
            nonlocal count
            count += _changes(event, args)

        sys.addaudithook(hook)
        run_in(folder, arguments)
        os.write(write, str(count).encode())
        os._exit(0)
    os.close(write)
    with os.fdopen(read, "rb") as answer:
        count = int(answer.read())
    os.waitpid(child, 0)
    return count


def killed_at(folder: Path, arguments: Sequence[str], instant: int) -> bool:
    """Whether the command was killed before its change number ``instant`` (from 0); else it came to its end."""

    def prepare() -> None:
        count = 0

        def hook(event: str, args: tuple[object, ...]) -> None:
            nonlocal count
            if _changes(event, args):
                if count == instant:
                    os.kill(os.getpid(), signal.SIGKILL)
                count += 1

        sys.addaudithook(hook)

    return _child(folder, arguments, prepare) == -signal.SIGKILL


def killed_in_a_write(folder: Path, arguments: Sequence[str], size: int) -> bool:
    """Whether the command was killed in the write that would make a file larger than ``size`` bytes."""

    def prepare() -> None:
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

    return _child(folder, arguments, prepare) == -signal.SIGXFSZ


def with_files_no_larger_than(size: int, folder: Path, arguments: Sequence[str]) -> int:
    """The command's exit code where every write beyond ``size`` bytes of a file fails, as on a disk that is full."""

    def prepare() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

    return _child(folder, arguments, prepare)


def as_nobody(folder: Path, arguments: Sequence[str]) -> int:
    """The command's exit code for a user without rights of its own, where the tests run as root. What it brings in is
    brought in before, on a copy: the interpreter itself may lie where nobody else may read."""

    def prepare() -> None:
        if os.geteuid() == 0:
            with tempfile.TemporaryDirectory() as copy:
                run_in(shutil.copytree(folder, Path(copy) / folder.name), arguments)
            os.setgroups([])
            os.setegid(65534)
            os.seteuid(65534)

    return _child(folder, arguments, prepare)


def instants(count: int, most: int) -> Iterator[int]:
    """All of ``count`` instants, or ``most`` of them spread evenly, first and last among them."""
    yield from range(count) if count <= most else sorted({round(n * (count - 1) / (most - 1)) for n in range(most)})


def _child(folder: Path, arguments: Sequence[str], prepare: Callable[[], None]) -> int:
    """The exit code of the command in a child, or the signal that ended it as a negative number."""
    child = os.fork()
    if child == 0:
        code = 70
        sys.dont_write_bytecode = True  # what Python keeps for itself is no change of ours
        try:
            prepare()
            code = run_in(folder, arguments)
        finally:
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def _changes(event: str, args: tuple[object, ...]) -> bool:
    if event == "open":
        path, _, flags = args
        return str(path) != os.devnull and isinstance(flags, int) and bool(flags & _WRITING)
    return event in _CHANGING
