"""What an open text is: read and checked by the same calls as ``check``, with the texts that are not yet saved.

Nothing here knows the protocol. One thread at a time; what was found of a text is kept until the text changes.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from spoonproof.dish import Dish
from spoonproof.folder import CHANNEL_FILE, ChannelFolder, ChannelNotFound, RecipeFile, find_channel
from spoonproof.knowledge import Knowledge
from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass
from spoonproof.model.text import Document

if TYPE_CHECKING:
    from spoonproof.reading.kept import Kept
    from spoonproof.reading.recipe import Reading

What = Literal["recipe", "channel", "register", "other"]


@dataclass(frozen=True, eq=False)
class OpenText:
    """A text as the editor has it now. A change makes a new one: "still the same" is ``is``."""

    uri: str
    path: Path
    version: int
    document: Document


@dataclass(frozen=True, eq=False)
class Look:
    """What was found of one text: ``document`` is what its findings point into (the text as it was read)."""

    text: OpenText
    what: What
    document: Document
    folder: OpenFolder
    findings: tuple[Finding, ...] = ()
    file: RecipeFile | None = None
    dish: Dish | None = None


class OpenFolder(ChannelFolder):
    """A channel's folder in which the open texts stand for their files."""

    def __init__(self, root: Path, in_channel: bool, texts: dict[Path, Document], knowledge: Knowledge) -> None:
        super().__init__(root, knowledge)
        self.in_channel = in_channel
        self._texts = texts
        self._readings: dict[Path, Reading] = {}
        self._kept: dict[Path, Kept] = {}
        self._dishes: dict[str, Dish] = {}

    def _document(self, path: Path, shown: str) -> tuple[Document | None, list[Finding]]:
        from spoonproof.reading.files import unsaved_document

        text = self._texts.get(path)
        if text is not None:
            return unsaved_document(text.text, shown)
        if not self.in_channel and shown == CHANNEL_FILE:
            return None, []
        return super()._document(path, shown)

    def _lasts(self, path: Path) -> bool:
        return path not in self._texts

    def _read_recipe(self, path: Path, document: Document) -> tuple[Recipe | None, list[Finding]]:
        """Where somebody types in the story, the head is not read again; elsewhere, what changed of it."""
        from spoonproof.reading.kept import Kept
        from spoonproof.reading.recipe import read_story, read_whole

        before = self._readings.get(path)
        reading = read_story(before, document) if before is not None else None
        if reading is None:
            known = self.knowledge
            reading = read_whole(document, known.foods, known.verbs, self.measures, self._kept.setdefault(path, Kept()))
        if path in self._texts:
            self._readings[path] = reading
        return reading.recipe, reading.faults

    def dish(self, recipe: Recipe, others: Mapping[str, Recipe] | None = None) -> Dish:
        """The dish of a recipe; where its head is still the same, with what was worked out of the head before."""
        dish = super().dish(recipe, others)
        if others is None and not any(line.recipe for line in recipe.foods):
            name = recipe.document.path
            before = self._dishes.get(name)
            if before is not None:
                dish.take_from(before)
            self._dishes[name] = dish
        return dish

    def forget(self, path: Path) -> None:
        """``path`` may hold something else now."""
        self._read.pop(path, None)

    def close(self, path: Path) -> None:
        """Nobody types in ``path`` any more."""
        self.forget(path)
        self._readings.pop(path, None)
        self._kept.pop(path, None)
        self._dishes.pop(self.shown(path), None)


class Bench:
    """Everything open, each looked at once for each state it is in."""

    def __init__(self) -> None:
        self._texts: dict[Path, Document] = {}
        self._looks: dict[str, Look] = {}
        self._folders: dict[Path, OpenFolder] = {}

    def warm(self, root: Path) -> None:
        """Load what the first look will need: tables, lexicon, register and rules."""
        from spoonproof.checks.rule import all_rules
        from spoonproof.claims.find import analyser

        known = self._folder(root / CHANNEL_FILE).knowledge
        analyser(known.lexicon)
        _ = (all_rules(), known.register, known.foods, known.verbs, known.cook_times, known.feeding, known.sources)

    def look(self, text: OpenText) -> Look:
        """What ``text`` is and what is wrong with it."""
        kept = self._looks.get(text.uri)
        if kept is not None and kept.text is text:
            return kept
        if self._texts.get(text.path) is not text.document:
            self._texts[text.path] = text.document
            self._changed(text.path)
        folder = self._folder(text.path)
        what = _what(text, folder)
        made = {"recipe": _recipe, "channel": _channel, "register": _register, "other": _other}[what](text, folder)
        self._looks[text.uri] = made
        return made

    def close(self, text: OpenText) -> None:
        """The file speaks for itself again."""
        self._texts.pop(text.path, None)
        self._looks.pop(text.uri, None)
        for folder in self._folders.values():
            folder.close(text.path)
        self._changed(text.path)

    def saved(self, path: Path) -> None:
        """A file changed on the disk: what rests on it is read again."""
        self._changed(path)
        for root, folder in list(self._folders.items()):
            if any(path.is_relative_to(part) for part in (root / "claims", root / "shared")):
                del self._folders[folder.root]
        self._looks.clear()

    def resting_on(self, path: Path) -> list[str]:
        """The open texts (their addresses) that the text at ``path`` has a say in, itself left out."""
        found = []
        for uri, look in list(self._looks.items()):
            if look.text.path == path:
                continue
            recipe = look.file.recipe if look.file is not None else None
            uses = recipe is not None and any(line.recipe == path.stem for line in recipe.foods)
            if uses or (look.folder.root / CHANNEL_FILE == path):
                found.append(uri)
        for uri in found:
            del self._looks[uri]
        return found

    def _changed(self, path: Path) -> None:
        for root, folder in list(self._folders.items()):
            if path == root / CHANNEL_FILE:
                self._folders[root] = OpenFolder(root, folder.in_channel, self._texts, folder.knowledge)
            else:
                folder.forget(path)

    def _folder(self, path: Path) -> OpenFolder:
        try:
            root, in_channel = find_channel(path.parent), True
        except ChannelNotFound:
            root, in_channel = path.parent, path.name == CHANNEL_FILE and path in self._texts
        folder = self._folders.get(root)
        if folder is None or folder.in_channel != in_channel:
            known = Knowledge(root if in_channel else None)
            folder = self._folders[root] = OpenFolder(root, in_channel, self._texts, known)
        return folder


def _what(text: OpenText, folder: OpenFolder) -> What:
    path = text.path
    if path == folder.root / CHANNEL_FILE:
        return "channel"
    if path.parent.name == "claims" and path.suffix == ".yaml":
        return "register"
    if path.suffix.lower() != ".md":
        return "other"
    in_recipes = folder.in_channel and path.is_relative_to(folder.root / "recipes")
    head = text.document.text[:20_000]
    return "recipe" if in_recipes or (head.lstrip("\ufeff\n\r").startswith("---") and "\nfoods:" in head) else "other"


def _recipe(text: OpenText, folder: OpenFolder) -> Look:
    from spoonproof.checks.engine import check

    file = folder.read(text.path)
    found = tuple(f for f in check(folder, (file,)).findings if f.document.path == file.shown)
    dish = folder.dish(file.recipe) if file.recipe is not None else None
    return Look(text, "recipe", file.document or text.document, folder, found, file, dish)


def _channel(text: OpenText, folder: OpenFolder) -> Look:
    from spoonproof.checks.accepted import without_accepted
    from spoonproof.checks.drawer import in_order

    found = in_order(without_accepted(folder.channel_faults, folder.channel))
    mine = tuple(fault for fault in found if fault.document.path == CHANNEL_FILE)
    return Look(text, "channel", folder.channel.document, folder, mine)


def _register(text: OpenText, folder: OpenFolder) -> Look:
    from spoonproof.reading.files import unsaved_document

    shown = f"claims/{text.path.name}"
    document, faults = unsaved_document(text.document.text, shown)
    if document is not None:
        _, more = folder.knowledge.register_with(text.path, document)
        faults += [fault for fault in more if fault.document is document]
    return Look(text, "register", document or text.document, folder, tuple(faults))


def _other(text: OpenText, folder: OpenFolder) -> Look:
    return Look(text, "other", text.document, folder)
