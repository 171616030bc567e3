"""A shelf of small results in ``.spoonproof/cache`` of a channel, each under the hash of what it was made from.

It may be deleted at any time and shared between processes. An entry is written beside its place and moved there in
one step, so a kill at any instant leaves it whole or not at all; one that is damaged is passed over and written
anew; a full disk or a folder that can't be written ends the writing, never the command. What is kept is data: the
caller turns bytes into values, and no code ever comes out of here.
"""

from __future__ import annotations

import contextlib
import os
import stat
import time
from _thread import get_ident
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import IO, TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from hashlib import blake2b
else:
    try:
        from _blake2 import blake2b  # the same function; hashlib also loads OpenSSL, which takes a while
    except ImportError:
        from hashlib import blake2b

__all__ = ["FOLDER", "OFF", "Cache", "Contents", "blake2b", "hash_of", "hashed", "own_seal"]

FOLDER = Path(".spoonproof") / "cache"
OFF = "SPOONPROOF_CACHE"
"""Set to "off" in the environment, nothing is kept and nothing that was kept is used."""

LARGEST = 16 << 20
"""Bytes of an entry that are read."""

MOST = 60_000
"""Entries of a shelf; the older half goes when there are more."""

T = TypeVar("T")

_PIECE = 1 << 18
_OLD = 30 * 86_400
_DIGEST = 16
_SEAL = 32


def hashed(*parts: str | bytes) -> str:
    """The name of what is made from these parts: 32 hex digits."""
    found = blake2b(digest_size=_DIGEST)
    for part in parts:
        body = part.encode("utf-8", "surrogatepass") if isinstance(part, str) else part
        found.update(b"%d:" % len(body))
        found.update(body)
    return found.hexdigest()


class Cache:
    """One shelf of a channel's cache: entries of one kind, made by one version."""

    _mode = 0o644

    def __init__(self, root: Path, shelf: str, sealed: bool = False) -> None:
        """``root``: the channel's folder. ``shelf``: a plain folder name that stands for kind and version.
        ``sealed``: what is kept counts only where this very person kept it on this machine (see ``own_seal``), since a
        channel's folder may come from anybody; without a seal nothing is kept."""
        self._seal = own_seal() if sealed else b""
        self._above = root / FOLDER
        self._folder = self._above / shelf
        self._place = os.fspath(self._folder)
        # A link in the place of one of the folders would lead the writing out of the channel.
        self._off = (
            os.environ.get(OFF) == "off"
            or self._seal is None
            or any(path.is_symlink() for path in (root / FOLDER.parent, self._above, self._folder))
        )
        self._made = False

    def get(self, key: str) -> bytes | None:
        """What was kept under ``key``, None where there is nothing sound."""
        whole = None if self._off else _read(f"{self._place}/{key}")
        return whole[_DIGEST:] if whole is not None and self._sum(key, whole[_DIGEST:]) == whole[:_DIGEST] else None

    @property
    def keeps(self) -> bool:
        """Whether anything is kept here at all."""
        return not self._off

    def has(self, key: str) -> bool:
        """Whether there is something under ``key``, sound or not."""
        return not self._off and os.path.lexists(f"{self._place}/{key}")

    def put(self, key: str, body: bytes) -> bool:
        """Keep ``body`` under ``key``, in the place of what is there; whether it is kept. Never raises OSError."""
        return self._write(key, self._sum(key, body) + body)

    def _write(self, key: str, whole: bytes) -> bool:
        return len(whole) <= LARGEST and self._moved_in(key, [whole], lambda _part: key) is not None

    def _moved_in(self, stem: str, pieces: Iterable[bytes], named: Callable[[str], str | None]) -> str | None:
        """Write the pieces; their key, which ``named`` gives to the file of them; None where they are not kept."""
        if self._off:
            return None
        part = f"{self._place}/.{stem}.{os.getpid()}.{get_ident()}.part"
        try:
            if not self._made:
                self._make()
            handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | _CAREFUL, self._mode)
            with os.fdopen(handle, "wb", buffering=0) as file:
                for piece in pieces:
                    if file.write(piece) != len(piece):
                        raise OSError("the disk is full")
            key = named(part)
            if key is not None:
                os.replace(part, f"{self._place}/{key}")  # noqa: PTH105 - a thousand times in a build
            return key
        except OSError:
            self._off = True
            return None
        finally:
            with contextlib.suppress(OSError):
                os.unlink(part)  # noqa: PTH108 - what came to nothing

    def _sum(self, key: str, body: bytes) -> bytes:
        """What stands before an entry; a sealed one can't be taken for another's."""
        if not self._seal:
            return blake2b(body, digest_size=_DIGEST).digest()
        return blake2b(b"%s:%s" % (key.encode(), body), digest_size=_DIGEST, key=self._seal).digest()

    def _make(self) -> None:
        self._folder.mkdir(parents=True, exist_ok=True)
        ignore = self._above / ".gitignore"
        if not ignore.exists():
            ignore.write_text("*\n", encoding="utf-8")
        self._sweep()
        self._made = True

    def _sweep(self) -> None:
        """Take away what other versions left long ago, parts of killed processes, and the older half of too much."""
        from shutil import rmtree

        now = time.time()
        for other in os.scandir(self._above):
            mine = other.name == self._folder.name or not other.is_dir(follow_symlinks=False)
            if not mine and now - other.stat(follow_symlinks=False).st_mtime > _OLD:
                rmtree(other.path, ignore_errors=True)
        entries = list(os.scandir(self._folder))
        for left in (e for e in entries if e.name.endswith(".part")):
            with contextlib.suppress(OSError):
                if now - left.stat(follow_symlinks=False).st_mtime > 3600:
                    Path(left.path).unlink()
        if len(entries) > MOST:
            oldest = sorted(entries, key=lambda e: e.stat(follow_symlinks=False).st_mtime)
            for entry in oldest[: len(entries) // 2]:
                with contextlib.suppress(OSError):
                    Path(entry.path).unlink()


class Contents(Cache):
    """A shelf whose entries lie there as they are, each under the hash of its content: a file elsewhere can be the very
    same one, without being written. Who edits that in place damages the entry, which is then passed over."""

    _mode = 0o666  # as any file that a person's umask says the last word on

    def get(self, key: str) -> bytes | None:
        """The content of this hash; what is no longer that is taken away."""
        body = None if self._off else _read(f"{self._place}/{key}")
        if body is None or hashed(body) == key:
            return body
        with contextlib.suppress(OSError):
            Path(self._place, key).unlink()
        return None

    def put(self, key: str, body: bytes) -> bool:
        """Keep ``body`` under its hash ``key``; whether it is kept. Never raises OSError."""
        return self._write(key, body)

    def gather(self, pieces: Iterable[bytes]) -> tuple[str, int] | None:
        """Keep what these pieces make, each written as it comes; its hash and size, None where it is not kept."""
        size = 0

        def counted() -> Iterator[bytes]:
            nonlocal size
            for piece in pieces:
                size += len(piece)
                yield piece

        key = self._moved_in("gathered", counted(), lambda part: hash_of(part) if size <= LARGEST else None)
        return (key, size) if key is not None else None

    def give(self, key: str, path: str) -> bool:
        """Make the entry a file at ``path``, where there is none, as of now; whether that is so. Never raises OSError.

        A disk without second names for a file, another disk, or an entry that is no longer sound: then it is not."""
        if self._off:
            return False
        try:
            os.link(f"{self._place}/{key}", path, follow_symlinks=False)
        except (OSError, NotImplementedError):
            return False
        if hash_of(path) == key:  # what stands there now, whatever became of the entry meanwhile
            with contextlib.suppress(OSError):
                os.utime(path)
                return True
        with contextlib.suppress(OSError):
            os.unlink(path)  # noqa: PTH108 - as it was linked
        return False


def _read(path: str) -> bytes | None:
    """The content of a plain file, None for anything else."""
    return _opened(path, lambda file, size: file.read(LARGEST + 1) if size <= LARGEST else None)


def hash_of(path: str) -> str | None:
    """What ``hashed`` says of the content of a plain file, which is never held whole; None for anything else."""

    def gone_through(file: IO[bytes], size: int) -> str:
        found = blake2b(b"%d:" % size, digest_size=_DIGEST)
        while piece := file.read(_PIECE):
            found.update(piece)
        return found.hexdigest()

    return _opened(path, gone_through)


def _opened(path: str, use: Callable[[IO[bytes], int], T | None]) -> T | None:
    """What ``use`` makes of a plain file and its size, None for anything else."""
    try:
        handle = os.open(path, os.O_RDONLY | _CAREFUL)
    except OSError:
        return None
    try:
        with os.fdopen(handle, "rb", buffering=0) as file:
            status = os.fstat(handle)
            return use(file, status.st_size) if stat.S_ISREG(status.st_mode) else None
    except OSError:
        return None


_CAREFUL = (
    getattr(os, "O_NOFOLLOW", 0)
    | getattr(os, "O_NONBLOCK", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_BINARY", 0)
)


def own_seal() -> bytes | None:
    """A secret of this person on this machine, made when it is first asked for; None where it can't be kept.

    It lies in the person's own cache folder (``XDG_CACHE_HOME``), outside every channel.
    """
    try:
        folder = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "spoonproof"
        path = folder / "seal"
        for again in (False, True):
            with contextlib.suppress(FileNotFoundError):
                seal = path.read_bytes()
                if len(seal) == _SEAL and (not hasattr(os, "getuid") or path.stat().st_uid == os.getuid()):
                    return seal
            if not again:
                folder.mkdir(parents=True, exist_ok=True)
                part = folder / f".seal.{os.getpid()}"
                part.unlink(missing_ok=True)
                with os.fdopen(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _CAREFUL, 0o600), "wb") as file:
                    file.write(os.urandom(_SEAL))
                part.replace(path)  # of two that make one at once the last stands, and both read that
    except (OSError, RuntimeError):  # no home, no room: nothing is kept then
        pass
    return None
