"""Putting a whole site in place at once: the folder holds the old site or the new one, never a mixture.

The new tree is written beside the old one. Where the system can exchange two folders in one call
(Linux), that is the whole swap; elsewhere two renames happen under a journal that the next run recovers
from. Only a folder that carries our marker is ever replaced or removed.
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
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from spoonproof.model.record import dataclass

MARKER = ".spoonproof-site"
NOTHING: Mapping[str, Held] = {}
MARKER_TEXT = (
    "This folder was made by spoonproof publish and is replaced as a whole by it. Keep nothing of your own here.\n"
)


@dataclass(frozen=True, slots=True)
class Held:
    """A file of the site that is kept somewhere already: ``size`` bytes, read when they are written. ``present``: it is
    the file at this very path of the present site."""

    size: int
    read: Callable[[], bytes | None]
    present: bool = False


class OutputRefused(Exception):
    """The output folder must not be written: the message says why and what to do."""


def refuse_dangerous(out: Path, sources: tuple[Path, ...]) -> Path:
    """The resolved output folder, or OutputRefused. ``sources``: folders that hold what people wrote."""
    if out.is_symlink():
        raise OutputRefused(f"{out} is a link; name the folder itself")
    real = out.resolve()
    if real == Path(real.anchor):
        raise OutputRefused(f"{out} is the root of the disk; name a folder for the site")
    homes = {Path.home().resolve(), Path.cwd().resolve()}
    if real in homes or any(home.is_relative_to(real) for home in homes):
        raise OutputRefused(
            f"{out} is your own folder or holds it; name a folder of its own for the site, such as build/site"
        )
    for source in sources:
        kept = source.resolve()
        if kept.is_relative_to(real):
            raise OutputRefused(f"{out} holds {source}, which the site is made from; name another folder")
    inside = [kept for kept in (source.resolve() for source in sources) if real.is_relative_to(kept)]
    if any(real.parent == kept and kept.name in ("recipes", "claims", "shared") for kept in inside):
        raise OutputRefused(f"{out} lies among the sources; name a folder outside {real.parent}")
    if real.exists():
        if not real.is_dir():
            raise OutputRefused(f"{out} is a file; name a folder")
        if any(real.iterdir()) and not (real / MARKER).is_file():
            raise OutputRefused(f"{out} holds files that publish did not make; empty it or name another folder")
    return real


@contextlib.contextmanager
def locked(out: Path) -> Iterator[None]:
    """Hold the output folder's lock. OutputRefused when another build holds it (with its age).

    The lock belongs to the open file, so that of a killed build is gone with it.
    """
    path = out.parent / f".{out.name}.lock"
    path.parent.mkdir(parents=True, exist_ok=True)
    handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
    try:
        if not _lock(handle):
            owner = os.read(handle, 64).decode("ascii", "replace").strip()
            age = max(0, round(time.time() - os.fstat(handle).st_mtime))
            raise OutputRefused(
                f"another build (process {owner}) has been writing {out} for {age} s; wait for it or stop it"
            )
        os.ftruncate(handle, 0)
        os.write(handle, f"{os.getpid()}\n".encode())
        yield
        with contextlib.suppress(OSError):
            path.unlink()
    finally:
        os.close(handle)


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


def _new(out: Path) -> Path:
    return out.parent / f".{out.name}.new"


def _old(out: Path) -> Path:
    return out.parent / f".{out.name}.old"


def recover(out: Path) -> None:
    """Put right what a killed build left: the old site back where it was, half-made trees away."""
    old, new = _old(out), _new(out)
    if old.is_dir() and not out.exists():
        old.rename(out)
    for left in (old, new):
        if left.is_dir() and not left.is_symlink():
            shutil.rmtree(left)


def same(out: Path, files: Mapping[str, bytes], held: Mapping[str, Held] = NOTHING) -> bool:
    """Whether ``out`` holds exactly these files already (and our marker)."""
    if not (out / MARKER).is_file():
        return False
    there = {path.relative_to(out).as_posix() for path in out.rglob("*") if path.is_symlink() or not path.is_dir()}
    if there != {*files, *held, MARKER}:
        return False
    return all((out / name).read_bytes() == body for name, body in files.items()) and all(
        kept.present or (out / name).read_bytes() == kept.read() for name, kept in held.items()
    )


def install(out: Path, files: Mapping[str, bytes], exchange: bool = True, held: Mapping[str, Held] = NOTHING) -> None:
    """Write ``files`` and what is ``held`` (paths with ``/`` from the root) as the whole content of ``out``.

    Call under ``locked`` after ``recover``. On any error the old site stays and the new tree is removed.
    """
    new = _new(out)
    try:
        _write_tree(new, files, held)
        _put(new, out, exchange)
    except BaseException:
        if new.is_dir():
            shutil.rmtree(new, ignore_errors=True)
        raise


def _write_tree(root: Path, files: Mapping[str, bytes], held: Mapping[str, Held]) -> None:
    root.mkdir(parents=True)
    made = {root}
    for name in sorted({*files, *held}):
        path = root / name
        parts = name.replace("\\", "/").split("/")
        if ".." in parts or not path.is_relative_to(root):
            raise OutputRefused(f"{name!r} leads out of the site's folder")
        if path.parent not in made:
            path.parent.mkdir(parents=True, exist_ok=True)
            made.add(path.parent)
        body = files[name] if name in files else held[name].read()
        if body is None:
            raise OutputRefused(f"{name} went away while the site was written; publish again")
        path.write_bytes(body)
    (root / MARKER).write_text(MARKER_TEXT, encoding="utf-8", newline="\n")


def _put(new: Path, out: Path, exchange: bool) -> None:
    if out.exists() and exchange and _exchange(new, out):
        shutil.rmtree(new)  # the old site lies there now
        return
    if not out.exists():
        new.rename(out)
        return
    old = _old(out)
    # The journal is the name itself: a folder ".old" with no site beside it means "put me back".
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
