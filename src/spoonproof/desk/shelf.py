"""The channel's folder as the desk sees it: read afresh for every request, each file parsed once for what it holds."""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from pathlib import Path

from spoonproof.folder import ChannelFolder, RecipeFile
from spoonproof.knowledge import Knowledge
from spoonproof.model.text import Document
from spoonproof.reading import limits

_KEPT = 4000
"""Parsed files kept in memory."""

State = tuple[int, int]


class NoSuchRecipe(Exception):
    """The address names no recipe of this channel."""


class Shelf:
    """The folder, and what was parsed of it. Safe to use from several threads: entries are only ever replaced whole."""

    def __init__(self, root: Path) -> None:
        """``root``: an absolute path that holds a channel.yaml."""
        self.root = root
        self._parsed: OrderedDict[Path, tuple[State, RecipeFile]] = OrderedDict()
        self._own: dict[str, State] | None = None
        self._knowledge: Knowledge | None = None

    def folder(self) -> DeskFolder:
        """The folder as it is now."""
        return DeskFolder(self.root, self._known(), self)

    def _known(self) -> Knowledge:
        """The tables and the register; read again when a file of the channel's own changed."""
        own = {
            path.as_posix(): state
            for name in ("claims", "shared")
            for path in sorted((self.root / name).rglob("*"))
            if path.suffix in (".yaml", ".csv") and (state := _state(path)) is not None
        }
        channel = _state(self.root / "channel.yaml")
        own["channel.yaml"] = channel or (0, 0)
        if self._knowledge is None or own != self._own:
            self._parsed.clear()
            self._own, self._knowledge = own, Knowledge(self.root)
        return self._knowledge

    def parsed(self, path: Path, state: State | None) -> RecipeFile | None:
        """What was parsed of ``path`` when it was in ``state``."""
        found = self._parsed.get(path)
        return found[1] if found is not None and found[0] == state else None

    def keep(self, path: Path, state: State | None, file: RecipeFile) -> None:
        """Remember what was parsed."""
        if state is not None:
            self._parsed[path] = (state, file)
            while len(self._parsed) > _KEPT:
                self._parsed.popitem(last=False)

    def path(self, key: str) -> Path:
        """The recipe file of an address (its path under ``recipes/`` without the suffix). Raises NoSuchRecipe.

        Nothing outside the folder of recipes has an address, and nothing hidden.
        """
        parts = key.split("/")
        usual = all(part and not part.startswith(".") and part.isprintable() and "\\" not in part for part in parts)
        if not usual or len(key) > 400:
            raise NoSuchRecipe(key[:80])
        base = self.root / "recipes"
        path = base.joinpath(*parts[:-1], f"{parts[-1]}.md")
        try:
            inside = path.is_file() and path.resolve().is_relative_to(base.resolve())
        except (OSError, ValueError):
            inside = False
        if not inside:
            raise NoSuchRecipe(key[:80])
        return path

    def key(self, path: Path) -> str:
        """The address of a recipe file."""
        return path.relative_to(self.root / "recipes").with_suffix("").as_posix()


class DeskFolder(ChannelFolder):
    """A channel's folder at one moment, sharing what was parsed before."""

    def __init__(self, root: Path, knowledge: Knowledge, shelf: Shelf) -> None:
        super().__init__(root, knowledge)
        self._shelf = shelf

    def _read_afresh(self, path: Path) -> RecipeFile:
        state = _state(path)
        found = self._shelf.parsed(path, state)
        if found is None:
            found = super()._read_afresh(path)
            self._shelf.keep(path, state, found)
        return found

    def with_text(self, path: Path, text: str) -> RecipeFile:
        """The recipe at ``path`` as if its file held ``text``; the folder then knows it so."""
        from spoonproof.reading.characters import check_characters
        from spoonproof.reading.faults import fault
        from spoonproof.reading.recipe import read_recipe

        shown = self.shown(path)
        document = Document(shown, text)
        faults = list(check_characters(document))
        if not text.strip():
            faults.append(fault("empty-file", document, document.whole, "This recipe is empty."))
            file = RecipeFile(path, shown, document, None, tuple(faults))
        else:
            recipe, more = read_recipe(document, self.knowledge.foods, self.knowledge.verbs, self.measures)
            file = RecipeFile(path, shown, document, recipe, (*faults, *more))
        self._read[path.absolute()] = file
        return file


def _state(path: Path) -> State | None:
    try:
        status = path.stat()
    except OSError:
        return None
    return status.st_mtime_ns, status.st_size


def digest(data: bytes) -> str:
    """What tells two contents of a file apart."""
    return hashlib.sha256(data).hexdigest()[:32]


MOST_CHARACTERS = limits.FILE_BYTES
"""A recipe's text in the desk is never longer than a file that is read."""
