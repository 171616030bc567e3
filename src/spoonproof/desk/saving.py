"""Saving a text a person edits here: never over an edit made elsewhere, never half, never lost.

A save says from which content it started. If the file still holds that, it is written; if the file changed meanwhile
the two edits are laid together line by line, and where they touch the same lines nothing is written and both are
shown. What is typed and not yet saved is kept in ``.spoonproof/unsaved`` of the channel until it is saved or thrown
away.
"""

from __future__ import annotations

import contextlib
import json
import re
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

from spoonproof.desk.merge import Kind, changes, merge
from spoonproof.desk.shelf import digest
from spoonproof.model.record import dataclass

_BOM = "\ufeff"
_WINDOW = re.compile(r"[a-z0-9]{1,40}")
_LOCK = threading.Lock()
_FOLDER = ".spoonproof"


@dataclass(frozen=True, slots=True)
class OnDisk:
    """A file's text with plain line feeds, what its lines ended with, and the digest of its bytes."""

    text: str
    digest: str
    newline: str = "\n"
    bom: bool = False


@dataclass(frozen=True, slots=True)
class Saved:
    """How a save ended. ``text`` is what the editor should hold now and ``base`` the digest it then stands on;
    ``shown`` are the lines that changed elsewhere."""

    how: Literal["saved", "merged", "clash"]
    text: str
    base: str
    base_text: str
    shown: tuple[tuple[Kind, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Unsaved:
    """A text typed and not saved: in which window, from which text it started."""

    window: str
    text: str
    base: str
    base_text: str


def on_disk(path: Path) -> OnDisk:
    """The file as it is. Raises OSError, or UnicodeDecodeError (a ValueError) where it is not UTF-8."""
    data = path.read_bytes()
    text = data.decode("utf-8")
    bom = text.startswith(_BOM)
    text = text.removeprefix(_BOM)
    newline = "\r\n" if "\r\n" in text else "\r" if "\r" in text and "\n" not in text else "\n"
    return OnDisk(plain(text), digest(data), newline, bom)


def plain(text: str) -> str:
    """The text with line feeds alone, as an editor in a browser holds it."""
    return text.replace("\r\n", "\n").replace("\r", "\n")


def save(path: Path, text: str, base: str, base_text: str) -> Saved:
    """Save ``text``, which was made from ``base_text``, the file's text when its digest was ``base``.

    Raises OSError when it can't be written; the old file stands then. A line end that a file uses throughout is kept.
    """
    text, base_text = plain(text), plain(base_text)
    with _alone(path):
        now = on_disk(path)
        if now.digest == base or now.text == text:
            return Saved("saved", text, _write(path, text, now), text)
        both = merge(base_text, text, now.text)
        came = tuple(changes(base_text, now.text))
        if both.clashes:
            return Saved("clash", both.text, now.digest, now.text, came)
        return Saved("merged", both.text, _write(path, both.text, now), both.text, came)


@contextlib.contextmanager
def _alone(path: Path) -> Iterator[None]:
    """No other save of this file happens meanwhile: in this desk, or in another one over the same folder."""
    from spoonproof.swap import PATIENCE, OutputRefused, locked

    try:
        with _LOCK, locked(path, PATIENCE):
            yield
    except OutputRefused as refused:
        raise OSError(str(refused)) from None


def _write(path: Path, text: str, now: OnDisk) -> str:
    from spoonproof.reading.files import write_atomically

    written = (_BOM if now.bom else "") + text.replace("\n", now.newline)
    data = written.encode("utf-8")
    if digest(data) != now.digest:
        write_atomically(path, data)
    return digest(data)


def keep_unsaved(root: Path, key: str, unsaved: Unsaved) -> None:
    """Keep what was typed; what can't be kept is only not kept (the page still holds it)."""
    from spoonproof.reading.files import write_atomically

    path = _unsaved_path(root, key, unsaved.window)
    if path is None:
        return
    if plain(unsaved.text) == plain(unsaved.base_text):
        forget_unsaved(root, key, unsaved.window)
        return
    kept = {"text": unsaved.text, "base": unsaved.base, "base_text": unsaved.base_text}
    with contextlib.suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        ignore = root / _FOLDER / ".gitignore"
        if not ignore.exists():
            write_atomically(ignore, b"*\n")
        write_atomically(path, json.dumps(kept, ensure_ascii=False).encode("utf-8"))


def forget_unsaved(root: Path, key: str, window: str) -> None:
    """What was typed in a window is saved, or thrown away."""
    path = _unsaved_path(root, key, window)
    if path is not None:
        with contextlib.suppress(OSError):
            path.unlink(missing_ok=True)


def unsaved_of(root: Path, key: str) -> list[Unsaved]:
    """What was typed and not saved of a recipe, the newest first."""
    folder = root / _FOLDER / "unsaved" / _flat(key)
    found: list[tuple[int, Unsaved]] = []
    with contextlib.suppress(OSError):
        for path in sorted(folder.glob("*.json")):
            with contextlib.suppress(OSError, ValueError, KeyError, TypeError):
                kept = json.loads(path.read_bytes())
                texts = (str(kept["text"]), str(kept["base"]), str(kept["base_text"]))
                found.append((path.stat().st_mtime_ns, Unsaved(path.stem, *texts)))
    return [unsaved for _, unsaved in sorted(found, key=lambda each: -each[0])]


def _unsaved_path(root: Path, key: str, window: str) -> Path | None:
    if not _WINDOW.fullmatch(window):
        return None
    return root / _FOLDER / "unsaved" / _flat(key) / f"{window}.json"


def _flat(key: str) -> str:
    """A recipe's address as one folder's name."""
    return key if re.fullmatch(r"[a-z0-9-]{1,100}", key) else digest(key.encode("utf-8", "replace"))
