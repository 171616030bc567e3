"""Putting a whole site in place at once: the folder holds the old site or the new one, never a mixture.

The new tree is written beside the old one and put in place by ``swap``. Only a folder that carries our marker is ever
replaced or removed.
"""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
from collections.abc import Callable, Mapping
from pathlib import Path

from spoonproof.cache import hash_of, hashed
from spoonproof.model.record import dataclass
from spoonproof.site.census import tree
from spoonproof.swap import OutputRefused, beside, put

MARKER = ".spoonproof-site"
MARKER_TEXT = (
    "This folder was made by spoonproof publish and is replaced as a whole by it. Keep nothing of your own here.\n"
)


@dataclass(frozen=True, slots=True)
class Held:
    """A file of the site that is kept somewhere already: its size in bytes, the hash of its content (see
    ``cache.hashed``), and what reads it when it is written: None where it went away. ``give``, where it lies as it is,
    makes it a file at a path without writing it, and says whether it did."""

    size: int
    digest: str
    read: Callable[[], bytes | None]
    give: Callable[[str], bool] | None = None

    @classmethod
    def of(cls, body: bytes) -> Held:
        """What is held in memory."""
        return cls(len(body), hashed(body), lambda: body)


class Gone(Exception):
    """A file of the site went away before it was written; its path."""


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


def right(out: Path, files: Mapping[str, Held]) -> tuple[frozenset[str], bool]:
    """The files of these that ``out`` holds as they should be, and whether it holds exactly these (and our marker)."""
    if not (out / MARKER).is_file():
        return frozenset(), False
    there = 0
    good = set()
    for name, status in tree(os.fspath(out)):
        there += name != MARKER
        kept = files.get(name)
        if kept is not None and status.st_size == kept.size and hash_of(f"{out}/{name}") == kept.digest:
            good.add(name)
    return frozenset(good), there == len(good) == len(files)


def install(out: Path, files: Mapping[str, Held], exchange: bool = True, keep: frozenset[str] = frozenset()) -> None:
    """Write ``files`` (paths with ``/`` from the root) as the whole content of ``out``.

    ``keep``: those that stand there as they should be. Call under ``swap.locked`` after ``swap.recover``. On any error,
    Gone among them, the old site stays and the new tree is removed.
    """
    new = beside(out)
    try:
        _write_tree(new, files, out, keep)
        put(new, out, exchange)
    except BaseException:
        if new.is_dir():
            shutil.rmtree(new, ignore_errors=True)
        raise


def _write_tree(root: Path, files: Mapping[str, Held], out: Path, keep: frozenset[str]) -> None:
    root.mkdir(parents=True)
    made = {""}
    gone: list[str] = []
    for name in sorted(files):
        parts = name.replace("\\", "/").split("/")
        if ".." in parts or not (root / name).is_relative_to(root):
            raise OutputRefused(f"{name!r} leads out of the site's folder")
        folder = name.rpartition("/")[0]
        if folder not in made:
            (root / folder).mkdir(parents=True, exist_ok=True)
            made.add(folder)
        if name in keep:
            with contextlib.suppress(OSError):  # a disk without second names for a file: it is written again
                os.link(f"{out}/{name}", f"{root}/{name}", follow_symlinks=False)
                continue
        held = files[name]
        if held.give is not None and held.give(f"{root}/{name}"):
            continue
        body = held.read()
        if body is None:
            gone.append(name)  # the others are looked at too, so that all that went away is made again at once
        elif not gone:
            _write(f"{root}/{name}", body)
    if gone:
        raise Gone(gone[0])
    (root / MARKER).write_text(MARKER_TEXT, encoding="utf-8", newline="\n")


def _write(path: str, body: bytes) -> None:
    with open(path, "wb", buffering=0) as file:  # noqa: PTH123 - thousands in a build
        if file.write(body) != len(body):
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), path)
