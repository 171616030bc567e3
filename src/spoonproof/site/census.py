"""What a site is made from, counted: every file that has a say in its bytes, by content.

Two censuses that are alike mean that the same site comes out. Where something can't be counted for certain (a link, a
file that can't be read, a folder that is none) there is no census, and everything is looked at again. Little is
imported here: this is all of an unchanged build that takes time.
"""

from __future__ import annotations

import os
import stat
import sys
import time
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from spoonproof import __version__
from spoonproof.cache import hashed
from spoonproof.clock import stated_day, today
from spoonproof.model.record import NamedTuple

FOLDERS = ("claims", "shared", "site")
"""Folders of a channel that have a say in every page; each file below them counts."""

MEDIA_LARGEST = 64 << 20
"""Bytes of a photograph or video that may come onto a page; of a larger file its size counts alone."""

_LARGEST = 16 << 20
_WITHOUT_A_SAY = frozenset({"SPOONPROOF_WORKERS", "SPOONPROOF_DEBUG", "SPOONPROOF_CACHE"})
_PACKAGE = Path(__file__).resolve().parents[1]
_OPEN = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)

TICK = 20_000_000
"""Nanoseconds in which a disk may not tell two changes of a file apart by their times."""

Stamp = tuple[int, int, int, int]
"""Inode, size, and the times of the last change of content and of anything, in nanoseconds."""


class Census(NamedTuple):
    """``ours``: the hash of our code and tables. ``shared``: of all that every page rests on: these, the channel, its
    claims, tables and theme, the day, the options. ``recipes``: of each recipe file, by its path from the root.
    ``stamps``: when each of the channel's files that were read was last touched."""

    root: str
    ours: str
    shared: str
    recipes: Mapping[str, str]
    stamps: Mapping[str, Stamp]

    def holds(self, paths: Iterable[str] | None = None) -> bool:
        """Whether no file of ``paths`` (from the root; None: all that were counted) was touched since."""
        try:
            return all(
                stamp_of(os.lstat(f"{self.root}/{path}")) == self.stamps[path]
                for path in (self.stamps if paths is None else paths)
            )
        except OSError:
            return False

    def ours_hold(self) -> bool:
        """Whether our code and tables are what they were."""
        try:
            return hashed(*_ours()) == self.ours
        except (_DoubtError, OSError):
            return False

    @property
    def last(self) -> int:
        """When one of them was last touched."""
        return max((stamp[3] for stamp in self.stamps.values()), default=0)

    @property
    def rest(self) -> tuple[str, ...]:
        """The counted files that are no recipes."""
        return tuple(path for path in self.stamps if path not in self.recipes)


class _DoubtError(Exception):
    """Something that can't be counted for certain."""


def take(root: Path, options: Sequence[str]) -> Census | None:
    """The census of a channel's folder and of ourselves; ``options`` are those of the build. None in doubt.
    Raises ClockError."""
    began = time.time_ns()
    found = _take(os.fspath(root), options)
    if found is None or settled(found.last, began):
        return found
    time.sleep(TICK / 1e9)
    began = time.time_ns()
    found = _take(os.fspath(root), options)
    return found if found is not None and settled(found.last, began) else None


def settled(last: int, now: int) -> bool:
    """Whether files, touched last then, were touched so long before ``now`` that whoever touches one of them again
    leaves another stamp."""
    return last < now - TICK


def _take(place: str, options: Sequence[str]) -> Census | None:
    stamps: dict[str, Stamp] = {}
    try:
        parts = ["channel.yaml", _content(place, "channel.yaml", stamps)]
        for folder in FOLDERS:
            for path in _below(place, folder):
                parts += [path, _content(place, path, stamps)]
        recipes = {path: _content(place, path, stamps) for path in _below(place, "recipes") if path.endswith(".md")}
        ours = hashed(*_ours())
        shared = hashed(ours, *_settings(), *options, "", *parts)
    except (_DoubtError, OSError, ValueError):
        return None
    return Census(place, ours, shared, recipes, stamps)


def media_places(root: Path, folder: str, name: str) -> tuple[Path, Path, Path]:
    """Where a photograph or video of this name is looked for, in this order: in ``folder``, beside the recipes, at the
    root."""
    return root / folder / name, root / "recipes" / name, root / name


def media_file(root: Path, folder: str, name: str) -> Path | None:
    """The first such file; never one outside the channel's folder, by link or by ``..``."""
    if not name or "\x00" in name:
        return None
    for path in media_places(root, folder, name):
        try:
            if path.is_file() and path.resolve().is_relative_to(root.resolve()):
                return path
        except OSError:
            continue
    return None


def media(root: Path, folder: str, name: str) -> str:
    """What lies where a photograph or video of this name is looked for."""
    real = os.path.realpath(root)
    return " ".join(_lies(real, path) for path in media_places(Path(real), folder, name))


def _lies(real: str, path: Path) -> str:
    try:
        status = path.stat()
        whole = os.path.realpath(path)
        if not stat.S_ISREG(status.st_mode):
            return "other"
        if not whole.startswith(real + os.sep):
            return "outside"
        if status.st_size > MEDIA_LARGEST:
            return f"large:{status.st_size}"
        return hashed(whole[len(real) :], path.read_bytes())
    except (OSError, ValueError):
        return "none"


def tree(folder: str, lead: str = "") -> Iterator[tuple[str, os.stat_result]]:
    """Every file below ``folder`` that is no folder, by its path from there, with its status; always in one order."""
    with os.scandir(folder) as entries:
        found = sorted((entry.name, entry.is_dir(follow_symlinks=False)) for entry in entries)
    for name, is_folder in found:
        if is_folder:
            yield from tree(f"{folder}/{name}", f"{lead}{name}/")
        else:
            yield lead + name, os.lstat(f"{folder}/{name}")


def _below(root: str, folder: str) -> list[str]:
    """Every file below a folder of the channel, by its path from the root; a link among the folders is in doubt."""
    place = f"{root}/{folder}"
    try:
        mode = os.lstat(place).st_mode
    except FileNotFoundError:
        return []
    if not stat.S_ISDIR(mode):
        raise _DoubtError(folder)
    # A link to a file is in doubt when it is opened; one to a folder is opened as if it were a file.
    return [f"{folder}/{path}" for path, _ in tree(place)]


def _content(root: str, path: str, stamps: dict[str, Stamp]) -> str:
    handle = os.open(f"{root}/{path}", _OPEN)
    try:
        status = os.fstat(handle)
        if not stat.S_ISREG(status.st_mode) or status.st_size > _LARGEST:
            raise _DoubtError(path)
        body = os.read(handle, status.st_size + 1)
        if len(body) != status.st_size:
            raise _DoubtError(path)
    finally:
        os.close(handle)
    stamps[path] = stamp_of(status)
    return hashed(body)


def stamp_of(status: os.stat_result) -> Stamp:
    """The stamp of a file."""
    return status.st_ino, status.st_size, status.st_mtime_ns, status.st_ctime_ns


def _settings() -> list[str]:
    """The day, whether it is stated, and what the environment says to us."""
    said = sorted(f"{name}={value}" for name, value in os.environ.items() if name.startswith("SPOONPROOF_"))
    return [
        today().isoformat(),
        stated_day(),
        *(one for one in said if one.partition("=")[0] not in _WITHOUT_A_SAY),
        "",
    ]


def _ours() -> list[str]:
    """Our version, our code and tables, the interpreter, and every distribution beside it with its version."""
    from spoonproof.reading.bundle import bundle_root

    bundle = bundle_root()
    parts = [__version__, sys.version]
    names: set[str] = set()
    for place in dict.fromkeys(sys.path):
        try:
            with os.scandir(place or ".") as entries:
                names |= {entry.name for entry in entries if entry.name.endswith((".dist-info", ".egg-info"))}
        except OSError:  # an archive, or nothing
            continue
    parts += [*sorted(names), ""]
    # Code by size and time, as Python itself tells it apart; tables and theme by content, as the channel's own.
    parts += [
        f"{path} {status.st_size} {status.st_mtime_ns}"
        for path, status in tree(os.fspath(_PACKAGE))
        if path.endswith(".py")
    ]
    for folder in FOLDERS:
        for path in _below(os.fspath(bundle), folder):
            parts += [path, _content(os.fspath(bundle), path, {})]
    return parts
