"""Putting a whole folder in place at once: it holds what was there or what is new, never a mixture.

The new tree is made beside the old one (``beside``), under a lock. Where the system can exchange two folders in one
call (Linux), that is the whole swap; elsewhere two renames happen under a journal that the next run recovers from.
"""

from __future__ import annotations

import contextlib
import ctypes
import ctypes.util
import errno
import os
import shutil
import sys
import time
from collections.abc import Iterator
from pathlib import Path


class OutputRefused(Exception):
    """The output folder must not be written: the message says why and what to do."""


PATIENCE = 5.0
"""Seconds that a short write waits for another run to be done with the same file."""
_PAUSE = 0.05


@contextlib.contextmanager
def locked(out: Path, patience: float = 0.0) -> Iterator[None]:
    """Hold the lock of an output folder or a file. OutputRefused when another run still holds it (with its age) after
    ``patience`` seconds.

    The lock belongs to the open file, so that of a killed run is gone with it.
    """
    path = out.parent / f".{out.name}.lock"
    path.parent.mkdir(parents=True, exist_ok=True)
    until = time.monotonic() + patience
    while (handle := _held(path)) is None:
        if time.monotonic() >= until:
            raise OutputRefused(f"another run {_owner(path, out)}; wait for it or stop it")
        time.sleep(_PAUSE)
    try:
        os.ftruncate(handle, 0)
        os.write(handle, f"{os.getpid()}\n".encode())
        yield
    finally:
        with contextlib.suppress(OSError):
            path.unlink()
        os.close(handle)


def _held(path: Path) -> int | None:
    """The open lock file, locked; None when another run holds it, or took it away while we asked."""
    handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
    with contextlib.suppress(OSError):
        if _lock(handle) and os.path.samestat(os.fstat(handle), path.stat()):
            return handle
    os.close(handle)
    return None


def _owner(path: Path, out: Path) -> str:
    """Which process holds the lock, and since when."""
    try:
        owner = path.read_bytes()[:64].decode("ascii", "replace").strip()
        age = max(0, round(time.time() - path.stat().st_mtime))
    except OSError:
        return f"is writing {out}"
    return f"(process {owner}) has been writing {out} for {age} s"


def _lock(handle: int) -> bool:
    if sys.platform == "win32":  # pragma: no cover
        import msvcrt

        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True
    import fcntl

    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def beside(out: Path) -> Path:
    """Where the new tree is made before it is put in place."""
    return out.parent / f".{out.name}.new"


def _old(out: Path) -> Path:
    return out.parent / f".{out.name}.old"


def recover(out: Path) -> None:
    """Put right what a killed run left: the old folder back where it was, half-made trees away."""
    old, new = _old(out), beside(out)
    if old.is_dir() and not out.exists():
        old.rename(out)
    for left in (old, new):
        if left.is_dir() and not left.is_symlink():
            shutil.rmtree(left)


def put(new: Path, out: Path, exchange: bool = True) -> None:
    """Put ``new`` where ``out`` is, and take away what lay there. On OSError the old folder stands."""
    if out.exists() and exchange and _exchange(new, out):
        shutil.rmtree(new)  # the old folder lies there now
        return
    if not out.exists():
        new.rename(out)
        return
    old = _old(out)
    # The journal is the name itself: a folder ".old" with nothing beside it means "put me back".
    out.rename(old)
    try:
        new.rename(out)
    except OSError:
        old.rename(out)
        raise
    shutil.rmtree(old)


def _exchange(one: Path, other: Path) -> bool:
    """Exchange two folders in one call; False where the system can't."""
    if not sys.platform.startswith("linux"):
        return False
    libc = ctypes.CDLL(None, use_errno=True)
    call = getattr(libc, "renameat2", None)
    if call is None:
        return False
    at_cwd, rename_exchange = -100, 2
    if call(at_cwd, os.fsencode(one), at_cwd, os.fsencode(other), rename_exchange) == 0:
        return True
    code = ctypes.get_errno()
    if code in (errno.ENOSYS, errno.EINVAL, errno.ENOTSUP):
        return False
    raise OSError(code, os.strerror(code), str(other))
