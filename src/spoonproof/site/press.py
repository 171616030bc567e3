"""Recipes to sheets: each is judged, worked out and written once, kept, and let go.

What was kept is used where nothing that it rests on has changed; the others are shared among processes.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.cache import hashed
from spoonproof.model.record import dataclass
from spoonproof.site import census, standing
from spoonproof.site.sheet import ALL, Noting, Published, Sheet, unpacked
from spoonproof.site.store import Made, Store

if TYPE_CHECKING:
    from spoonproof.dish import Dish
    from spoonproof.folder import ChannelFolder, RecipeFile
    from spoonproof.model.recipe import Recipe
    from spoonproof.site.album import Album
    from spoonproof.site.larder import Palette
    from spoonproof.site.pages import Pages, Theme
    from spoonproof.site.reel import Reel
    from spoonproof.site.view import Fault
    from spoonproof.site.view_site import Site

PRESS_LEAST = 12
"""New recipes for which another process is worth its start (measured: a process costs what three recipes do)."""

BATCH = 200
"""Sheets after which it is looked whether anything they were made from was touched meanwhile."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be published, and where: ``drafts`` and ``with_errors`` as the command has them, ``checked`` the day
    to print, ``out`` the site as it is now."""

    out: Path
    drafts: bool = False
    with_errors: bool = False
    checked: str = ""


class Press:
    """Makes the sheets of one channel."""

    def __init__(
        self,
        folder: ChannelFolder,
        look: Theme,
        wanted: Wanted,
        store: Store,
        counted: census.Census | None,
        tell: standing.Tell = standing.silent,
    ) -> None:
        """``counted``: None keeps nothing and uses nothing that was kept. ``tell`` hears how many sheets are made."""
        self._folder = folder
        self._look = look
        self._wanted = wanted
        self._store = store
        self._counted = counted
        self._tell = tell
        self._process = os.getpid()
        self._waiting: list[tuple[str, tuple[str, ...], bytes]] = []
        self._printers: dict[bool, Pages] = {}

    # what was kept

    def kept(self, path: Path) -> Sheet | None:
        """The sheet of a recipe file as it was kept, if all that it rests on is as it was; its links are not looked
        at, since they rest on the other sheets."""
        if self._counted is None:
            return None
        body = self._store.kept(self._key(self._folder.shown(path)))
        sheet = unpacked(body) if body is not None else None
        if sheet is None or not all(self._store.lies(made) for made in sheet.files):
            return None
        same = all(self._hash_of(slug) == known for slug, known in sheet.asked.items()) and all(
            census.media(self._folder.root, *one) == state for one, state in sheet.media.items()
        )
        return sheet if same else None

    def _key(self, shown: str) -> str:
        assert self._counted is not None
        return hashed(self._counted.shared, shown, self._counted.recipes[shown])

    @cached_property
    def _by_slug(self) -> Mapping[str, str]:
        """Where each recipe lies, as it is shown."""
        from spoonproof.folder import slugs_of

        return {slug: self._folder.shown(path) for slug, path in slugs_of(self._folder.recipe_paths).items()}

    def _files_of(self, slug: str) -> list[str]:
        """The file of a recipe, those of all under ALL."""
        return [path for name, path in self._by_slug.items() if slug in (name, ALL)]

    def _hash_of(self, slug: str) -> str:
        """What stands for the file of a recipe, "" for none; for all of them under ALL."""
        assert self._counted is not None
        paths = self._files_of(slug) if slug == ALL or slug in self._by_slug else []
        return hashed(*(part for path in paths for part in (path, self._counted.recipes[path]))) if paths else ""

    # what is made

    def make(self, paths: Sequence[Path], pages: Mapping[str, str] | None, menu: bool) -> Iterator[Sheet]:
        """The sheets of recipe files, made anew. ``pages``: the title of each page by slug, None while it is not known;
        ``menu``: whether there is a calendar to lead to. Raises ThemeError."""
        from spoonproof.crew import spread

        def work(share: Sequence[Path]) -> Iterator[Sheet]:
            for number, path in enumerate(share):
                if os.getpid() == self._process:  # the others are as far as this one
                    self._tell(number * len(paths) // len(share), len(paths), f"making the page of {path.stem}")
                yield self._sheet(path, pages, menu)
            self._keep()

        yield from work(paths[:1])  # what it loads the processes have in common
        yield from spread(work, paths[1:], PRESS_LEAST)  # to the end: then each process keeps what it made

    def _sheet(self, path: Path, pages: Mapping[str, str] | None, menu: bool) -> Sheet:
        from spoonproof.site.choose import unreadable

        folder = self._folder
        file = folder.read(path)
        sheet = Sheet(menu=menu)
        if file.recipe is None:
            sheet.state = "left out"
            sheet.why = unreadable(file)
        elif self._wanted.drafts or not file.recipe.draft:
            self._fill(sheet, file, file.recipe, pages)
        folder.let_go()
        body = sheet.packed() if self._counted is not None else None
        if body is not None:
            self._waiting.append((file.shown, tuple(sheet.asked), body))
            if len(self._waiting) >= BATCH:
                self._keep()
        return sheet

    def _fill(self, sheet: Sheet, file: RecipeFile, recipe: Recipe, pages: Mapping[str, str] | None) -> None:
        from spoonproof.site.choose import faults_of, left_out

        def asked(slug: str, _found: Recipe | None) -> None:
            if self._counted is not None:
                sheet.asked[slug] = self._hash_of(slug)

        def linked(slug: str, found: Recipe | None) -> None:
            sheet.links[slug] = found.title.value if found is not None else ""

        folder = self._folder
        dish = folder.dish(recipe, Noting(folder.recipes, asked))
        faults = faults_of(file, dish)
        sheet.slug, sheet.title, sheet.low = recipe.slug, recipe.title.value, recipe.ages.low
        if faults and not self._wanted.with_errors:
            sheet.state, sheet.why = "left out", left_out(file, len(faults))
            return
        sheet.state = "page"
        sheet.media = {one: census.media(folder.root, *one) for one in standing.media_of(recipe)}
        self._print(sheet, dish, Noting(Published(folder.recipes, pages, self._wanted.drafts), linked), faults)

    def _print(self, sheet: Sheet, dish: Dish, published: Mapping[str, Recipe], faults: Sequence[Fault]) -> None:
        from spoonproof.site import gather, lean
        from spoonproof.site.new_foods import OLDEST
        from spoonproof.site.publish import with_pictures

        page = gather.recipe_page(dish, published, faults, self._wanted.checked)
        page = with_pictures(page, dish, self._colours, self._album, self._reel)
        self._album.paint()
        files, held, notes = self._album.taken()
        films, sources, more = self._reel.taken()
        sheet.files = (
            self._store.put(page.href, self._pages(sheet.menu).recipe(page).encode("utf-8")),
            *(self._store.put(path, body) for path, body in files.items()),
            *held.values(),
            *(self._film(path, body, sources.get(path)) for path, body in films.items()),
        )
        sheet.notes = tuple(notes), tuple(more)
        sheet.page = lean.lean(page)
        if not faults and sheet.low <= OLDEST:
            sheet.candidate = lean.candidate_text(dish.candidate)

    def _film(self, path: str, body: bytes, source: Path | None) -> Made:
        return self._store.media(path, source, body) if source is not None else self._store.put(path, body)

    @cached_property
    def site(self) -> Site:
        """What every page shows of the site: all but the recipes."""
        from spoonproof.site.publish import surroundings

        return surroundings(self._folder.channel, self._folder.knowledge)

    def _pages(self, menu: bool) -> Pages:
        from spoonproof.model.record import replace
        from spoonproof.site.pages import Pages
        from spoonproof.site.view_site import Calendar

        if menu not in self._printers:
            calendar = Calendar("", ()) if menu else None
            self._printers[menu] = Pages(replace(self.site, calendar=calendar), self._look)
        return self._printers[menu]

    @cached_property
    def _colours(self) -> Palette:
        from spoonproof.site.publish import palette

        return palette(self._look)

    @cached_property
    def _album(self) -> Album:
        from spoonproof.site.album import Album

        return Album(self._folder.root, self._wanted.out, self._store)

    @cached_property
    def _reel(self) -> Reel:
        from spoonproof.site.reel import Reel

        return Reel(self._folder.root)

    def _keep(self) -> None:
        """Keep the sheets that wait, if nothing they were made from was touched since it was counted."""
        waiting, self._waiting = self._waiting, []
        counted = self._counted
        if counted is None or not waiting or not counted.holds(counted.rest) or not counted.ours_hold():
            return
        for shown, asked, body in waiting:
            if counted.holds({shown}.union(*map(self._files_of, asked))):
                self._store.keep(self._key(shown), body)
