"""A package put in place as a whole: a run that is killed leaves the folder as it was, and what it began is swept."""

from __future__ import annotations

import os
import re
import shutil
from collections.abc import Mapping
from pathlib import Path

from spoonproof.swap import OutputRefused, beside, locked, put, recover

_LEFT = re.compile(r"\.[^/]{1,60}\.part")
"""The name of a file that a killed run of an earlier version left half-made in a package."""


def place(files: Mapping[str, bytes], folder: Path) -> None:
    """Write ``files`` (paths with ``/``) into ``folder`` at once; what else it holds stays, by the same name.

    Raises OutputRefused where another run writes it, OSError: nothing has changed then.
    """
    real = folder.resolve()
    if real.exists() and not real.is_dir():
        raise OutputRefused(f"{folder} is a file; name another folder for the package with --out")
    with locked(real):
        recover(real)
        if _stands(files, real):
            return
        new = beside(real)
        try:
            _carry(real, new, files)
            for name, content in files.items():
                path = new / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(content)
            put(new, real)
        except BaseException:
            shutil.rmtree(new, ignore_errors=True)
            raise


def _stands(files: Mapping[str, bytes], folder: Path) -> bool:
    """Whether the folder holds the files as they should be, and nothing half-made."""
    there = [folder / name for name in files]
    return all(
        path.is_file() and path.read_bytes() == content for path, content in zip(there, files.values(), strict=True)
    ) and not any(_LEFT.fullmatch(path.name) for path in folder.iterdir())


def _carry(old: Path, new: Path, files: Mapping[str, bytes]) -> None:
    """Give what else lies in ``old`` its place in ``new``: a second name for each file, or a copy."""
    new.mkdir(parents=True)
    if not old.is_dir():
        return

    def ours(folder: str, names: list[str]) -> list[str]:
        within = Path(folder).relative_to(old)
        return [name for name in names if (within / name).as_posix() in files or _LEFT.fullmatch(name)]

    shutil.copytree(old, new, symlinks=True, ignore=ours, copy_function=_second_name, dirs_exist_ok=True)


def _second_name(source: str, target: str) -> str:
    try:
        os.link(source, target, follow_symlinks=False)
    except OSError:
        shutil.copy2(source, target, follow_symlinks=False)
    return target
