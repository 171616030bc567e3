"""A channel's folder as read: its channel, its recipes, and the faults met while reading.

Nothing here raises on what a person wrote; ``ChannelNotFound`` and ``PathNotFound`` are about arguments.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.dish import Dish, find_in
from spoonproof.knowledge import Knowledge
from spoonproof.model.channel import Channel
from spoonproof.model.finding import Finding
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass, replace
from spoonproof.model.text import Document

if TYPE_CHECKING:
    from spoonproof.model.claim import Claim
    from spoonproof.reading.measures import Measures
    from spoonproof.recall import Recall

CHANNEL_FILE = "channel.yaml"

KEPT = 32
"""Recipes that are kept read where all of a folder are gone through: others may use one of them as a food."""


class ChannelNotFound(Exception):
    """There is no channel.yaml here nor in any parent folder."""


class PathNotFound(Exception):
    """A path given as an argument does not exist."""


class TooManyFiles(Exception):
    """A folder holds more recipe files than one channel may."""


@dataclass(frozen=True, slots=True)
class RecipeFile:
    """One recipe file: its document (None when it could not be read), its recipe (None when the head
    could not be understood) and the faults of reading."""

    path: Path
    shown: str
    document: Document | None
    recipe: Recipe | None
    faults: tuple[Finding, ...]


class Recipes(Mapping[str, Recipe]):
    """A channel's recipes by slug, drafts included. One is read when it is asked for, all when they are gone
    through; a recipe that can't be read is not there."""

    def __init__(self, folder: ChannelFolder) -> None:
        self._folder = folder

    @cached_property
    def _paths(self) -> Mapping[str, Path]:
        return slugs_of(self._folder.recipe_paths)

    def __getitem__(self, slug: str) -> Recipe:
        recipe = self._folder.read(self._paths[slug]).recipe
        if recipe is None:
            raise KeyError(slug)
        return recipe

    def __iter__(self) -> Iterator[str]:
        return (slug for slug, path in self._paths.items() if self._folder.read(path).recipe is not None)

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def __bool__(self) -> bool:
        return bool(self._paths)


def slugs_of(paths: Sequence[Path]) -> Mapping[str, Path]:
    """Recipe files by slug; of two that have the same the last."""
    from spoonproof.reading.slugs import slug_of

    return {slug_of(Document(path.name, "")): path for path in paths}


def find_channel(start: Path) -> Path:
    """The nearest folder from ``start`` upwards that holds a channel.yaml. Raises ChannelNotFound."""
    start = start.absolute()
    for folder in (start, *start.parents):
        if (folder / CHANNEL_FILE).is_file():
            return folder
    raise ChannelNotFound(
        f"no {CHANNEL_FILE} in {start} or above it; go to your channel's folder, name it with --channel DIR, "
        "or start one with: spoonproof new channel NAME"
    )


class ChannelFolder:
    """A channel's folder; files are read when first asked for, each once."""

    def __init__(self, root: Path, knowledge: Knowledge | None = None) -> None:
        """``root`` must hold a channel.yaml (see ``find_channel``)."""
        self.root = root
        self.knowledge = knowledge or Knowledge(root)
        self._read: dict[Path, RecipeFile] = {}
        # By the path that is shown: the document, the faults of its reading until they are kept, its claims.
        self._known: dict[str, tuple[Document, Sequence[Finding] | None, Sequence[Claim] | None]] = {}

    @cached_property
    def _recall(self) -> Recall | None:
        """What was read and found before; None where nothing may be kept."""
        from spoonproof.reading.bundle import own_root
        from spoonproof.recall import Recall

        if not (self.root / CHANNEL_FILE).is_file():
            return None
        own = own_root(self.root)
        tables = [path for path in sorted((own / "shared").glob("*.csv")) if path.is_file()] if own else []
        try:
            return Recall(self.root, tables, self.channel.measures)
        except OSError:
            return None

    @cached_property
    def _channel(self) -> tuple[Channel, tuple[Finding, ...]]:
        path = self.root / CHANNEL_FILE
        document, faults = self._document(path, CHANNEL_FILE)
        if document is None:
            return Channel(Document(CHANNEL_FILE, "")), tuple(faults)
        channel, more = self._read_channel(document, self._lasts(path))
        return channel, (*faults, *more, *self._table_faults(), *self._policy_faults(channel))

    def _read_channel(self, document: Document, lasts: bool) -> tuple[Channel, Sequence[Finding]]:
        from spoonproof.recall import ChannelRecall

        recall = ChannelRecall(self.root) if lasts else None
        known = recall.get(document) if recall is not None else None
        if known is not None:
            return known
        from spoonproof.reading.channel import read_channel

        channel, faults = read_channel(document)
        if recall is not None:
            recall.keep(document, channel, faults)
        return channel, faults

    def _policy_faults(self, channel: Channel) -> list[Finding]:
        if not channel.policies:
            return []
        from spoonproof.reading.policies import policy_faults

        return list(policy_faults(channel, ((one.topic, one.authority) for one in self.knowledge.feeding.policies)))

    def _table_faults(self) -> list[Finding]:
        from spoonproof.reading.bundle import own_root

        if not (self.root / "shared").is_dir() or own_root(self.root) is None:
            return []
        from spoonproof.reading.own_tables import own_table_faults

        return own_table_faults(self.root)

    @property
    def channel(self) -> Channel:
        """The channel; defaults stand where its file has faults."""
        return self._channel[0]

    @property
    def channel_faults(self) -> tuple[Finding, ...]:
        """Faults of channel.yaml and of the channel's own tables: it is unusable while there are errors among them."""
        return self._channel[1]

    @cached_property
    def recipe_paths(self) -> tuple[Path, ...]:
        """Every recipe file of the channel, by name. Raises TooManyFiles."""
        return tuple(_recipe_files(self.root / "recipes"))

    def shown(self, path: Path) -> str:
        """``path`` as a person sees it: relative to the channel when it lies inside."""
        absolute = path.absolute()
        return (absolute.relative_to(self.root) if absolute.is_relative_to(self.root) else path).as_posix()

    def read(self, path: Path) -> RecipeFile:
        """The recipe file at ``path``."""
        path = path.absolute()
        if path not in self._read:
            self._read[path] = self._read_afresh(path)
        file = self._read[path]
        if file.recipe is not None and any(one.recipe and one.recipe not in self._slugs for one in file.recipe.foods):
            from spoonproof.reading.slugs import with_slugs

            recipe = with_slugs(file.recipe, self._by_title, self._slugs)
            file = self._read[path] = replace(file, recipe=recipe)
        return file

    @cached_property
    def _slugs(self) -> Mapping[str, Path]:
        return slugs_of(self.recipe_paths)

    @cached_property
    def _by_title(self) -> Mapping[str, tuple[str, ...]]:
        """The slugs of recipes by their titles; only what stands in the heads is looked at."""
        from spoonproof.reading.slugs import slugs_by_title

        return slugs_by_title(self._titles.items())

    @cached_property
    def _titles(self) -> Mapping[str, str]:
        return {slug: self.title_of(path) for slug, path in self._slugs.items()}

    def title_of(self, path: Path) -> str:
        """The title in the head of a recipe file, found without reading the recipe; "" where none is found."""
        from spoonproof.reading.slugs import title_in

        document, _ = self._document(path, self.shown(path))
        return title_in(document.text) if document is not None else ""

    def _document(self, path: Path, shown: str) -> tuple[Document | None, list[Finding]]:
        """The text of one of the channel's files; an editor answers with what is not yet saved."""
        from spoonproof.reading.files import read_document

        return read_document(path, shown)

    def _read_afresh(self, path: Path) -> RecipeFile:
        shown = self.shown(path)
        document, faults = self._document(path, shown)
        if document is None:
            return RecipeFile(path, shown, None, None, tuple(faults))
        return self._recalled(path, document, faults) or self._read_document(path, document, faults)

    def _recalled(self, path: Path, document: Document, faults: Sequence[Finding]) -> RecipeFile | None:
        """The recipe file as it was read before, None where it must be read."""
        recall = self._recall if self._lasts(path) else None
        known = recall.get(document) if recall is not None else None
        if known is None:
            return None
        self._known[document.path] = document, None, known.claims
        return RecipeFile(path, document.path, document, known.recipe, (*faults, *known.faults))

    def _read_document(self, path: Path, document: Document, faults: Sequence[Finding]) -> RecipeFile:
        from spoonproof import modules

        modules.bring_in(modules.READING)
        recipe, more = self._read_recipe(path, document)
        keeps = self._recall is not None and self._lasts(path)
        self._known[document.path] = document, more if keeps else None, None
        return RecipeFile(path, document.path, document, recipe, (*faults, *more))

    def _read_recipe(self, _path: Path, document: Document) -> tuple[Recipe | None, list[Finding]]:
        """The recipe in a text and the faults of reading; an editor goes on from what it read before."""
        from spoonproof.reading.recipe import read_recipe

        return read_recipe(document, self.knowledge.foods, self.knowledge.verbs, self.measures)

    def _lasts(self, _path: Path) -> bool:
        """Whether the text of a file is worth keeping what was read in it."""
        return True

    def _find(self, recipe: Recipe) -> Sequence[Claim]:
        """The claims of a recipe of this folder, unjudged. They are found once, and kept with what was read."""
        document, faults, claims = self._known.get(recipe.document.path, (None, None, None))
        if document is not recipe.document:
            return find_in(recipe, self.knowledge)
        if claims is None:
            claims = find_in(recipe, self.knowledge)
            self._known[document.path] = document, None, claims
            if faults is not None and self._recall is not None:
                from spoonproof.recall import Read

                self._recall.keep(Read(recipe, faults, claims))
        return claims

    @cached_property
    def measures(self) -> Measures:
        """The kitchen measures of the channel's system."""
        return self.knowledge.measures(self.channel.measures)

    @cached_property
    def namesakes(self) -> tuple[Path, ...]:
        """Recipe files whose names are one and the same once capitals and ways to write accents are evened out."""
        from spoonproof.reading.slugs import evened

        by_name: dict[str, list[Path]] = {}
        for path in self.recipe_paths:
            by_name.setdefault(evened(path.name), []).append(path)
        return tuple(path for paths in by_name.values() if len(paths) > 1 for path in paths)

    @cached_property
    def recipes(self) -> Mapping[str, Recipe]:
        """Every recipe that can be read, by slug, drafts included; each file is read when it is asked for."""
        return Recipes(self)

    def dish(self, recipe: Recipe, others: Mapping[str, Recipe] | None = None) -> Dish:
        """The dish of a recipe of this channel. ``others``: stands in for ``recipes``."""
        if others is not None:
            return Dish(recipe, self.channel, self.knowledge, others, self._find)
        return Dish(recipe, self.channel, self.knowledge, self.recipes, self._find, lambda: self._titles)

    def let_go(self, most: int = 0) -> None:
        """Forget the recipes that were read, if they are more than ``most``: what is asked for again is read again."""
        if len(self._read) > most:
            self._read.clear()
            self._known.clear()

    def select(self, paths: Sequence[Path], drafts: bool = False) -> Chosen:
        """The recipe files that ``paths`` name (folders hold theirs); all of the channel when none is named.

        Drafts come only when a path names the file itself, or with ``drafts``. Each file comes once.
        Raises PathNotFound, TooManyFiles.
        """
        if not paths:
            return Chosen(self, [(path, drafts) for path in self.recipe_paths])
        chosen: dict[str, tuple[Path, bool]] = {}
        for path in paths:
            for found, named in self._expand(path):
                place = os.path.realpath(found)  # however often and by whatever name a file is given, it comes once
                if place not in chosen or (named and not chosen[place][1]):
                    chosen[place] = chosen.get(place, (found,))[0], named or drafts
        return Chosen(self, list(chosen.values()))

    def _expand(self, path: Path) -> Iterator[tuple[Path, bool]]:
        """Recipe files under ``path``, each with whether it was named itself."""
        absolute = path if path.is_absolute() else Path.cwd() / path
        if absolute.is_dir():
            for found in _recipe_files(absolute):
                yield found, False
            return
        for candidate in (absolute, self.root / path, self.root / "recipes" / f"{path.name}.md"):
            if candidate.exists() or candidate.is_symlink():
                yield candidate, True
                return
        raise PathNotFound(f"{path}: there is no such recipe file or folder")


def _recipe_files(folder: Path) -> list[Path]:
    """Every ``.md`` file below ``folder``, by name; links to folders are not entered. Raises TooManyFiles, OSError."""
    from spoonproof.reading.files import files_below
    from spoonproof.reading.limits import CHANNEL_FILES

    found: list[Path] = []
    for path in files_below(folder):
        found += [path] if path.name.endswith(".md") else []
        if len(found) > CHANNEL_FILES:
            raise TooManyFiles(f"{folder}: more than {CHANNEL_FILES} recipe files; make channels of it")
    return sorted(found)


class Chosen:
    """Recipe files of a folder, in order, each read when its turn comes."""

    def __init__(self, folder: ChannelFolder, places: Sequence[tuple[Path, bool]]) -> None:
        """``places``: each file with whether it comes even if it is a draft."""
        self._folder = folder
        self.places = places

    def in_turn(self) -> Iterator[RecipeFile | None]:
        """One for each of the places; None for a draft that does not come."""
        for path, drafts in self.places:
            file = self._folder.read(path)
            yield file if drafts or file.recipe is None or not file.recipe.draft else None

    def __iter__(self) -> Iterator[RecipeFile]:
        return (file for file in self.in_turn() if file is not None)

    def __bool__(self) -> bool:
        return any(True for _ in self)
