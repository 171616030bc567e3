"""``publish``: a channel's folder to a site in a folder. Deterministic, whole or not at all."""

from __future__ import annotations

import contextlib
import csv
import json
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.cache import hashed
from spoonproof.model.channel import Channel
from spoonproof.model.record import dataclass, replace
from spoonproof.model.search_needs import SMALLEST
from spoonproof.model.table import Row
from spoonproof.site import build, foods, gather, lean, reference, stage
from spoonproof.site.album import Album, no_painter
from spoonproof.site.build import Report
from spoonproof.site.choose import theme_folders
from spoonproof.site.larder import Palette
from spoonproof.site.loosened import loosened
from spoonproof.site.new_foods import LEAST, new_foods
from spoonproof.site.pages import Pages, Theme, ThemeError
from spoonproof.site.picture import draw
from spoonproof.site.press import Press, Wanted
from spoonproof.site.reel import Reel
from spoonproof.site.shapes import Shape
from spoonproof.site.sheet import Sheet
from spoonproof.site.standing import Media, Tell, silent
from spoonproof.site.store import Made, Store
from spoonproof.site.view import RecipePage
from spoonproof.site.view_site import Calendar, Site

if TYPE_CHECKING:
    from spoonproof.dish import Dish
    from spoonproof.folder import ChannelFolder
    from spoonproof.knowledge import Knowledge
    from spoonproof.site.census import Census

SOURCES = ("recipes", "claims", "shared", "site")
"""Folders of a channel that hold what people wrote: no site is written there."""


@dataclass(frozen=True, slots=True)
class Built:
    """What a build made, a line for each recipe left out, and the photographs and videos that were looked for."""

    report: Report
    recipes: int
    left_out: tuple[str, ...]
    media: frozenset[Media]


def publish(folder: ChannelFolder, wanted: Wanted, counted: Census | None = None, tell: Tell = silent) -> Built:
    """Build the site of a channel's folder. ``counted``: what it is made from, before anything of it was read; None
    where that is in doubt or no matter. ``tell`` hears how far it is.

    Raises ThemeError, OutputRefused or OSError; the old site is whole then.
    """
    for _ in range(2):
        with contextlib.suppress(stage.Gone):  # what was kept was damaged or taken away: make that again
            return _publish(folder, wanted, counted, tell)
    return _publish(folder, wanted, None, tell)


def _publish(folder: ChannelFolder, wanted: Wanted, counted: Census | None, tell: Tell) -> Built:
    sources = tuple(folder.root / name for name in SOURCES)
    stage.refuse_dangerous(wanted.out, sources)  # before anything is worked out
    look = Theme(theme_folders(folder))
    store = Store(folder.root)
    press = Press(folder, look, wanted, store, counted, tell)
    sheets = _sheets(press, folder.recipe_paths)
    pages = sorted((sheet for sheet in sheets if sheet.state == "page"), key=lambda sheet: sheet.place)
    tell(0, 1, "putting the site together")
    files = {made.path: made for made in _around(press, folder, look, store, counted, pages)}
    files.update((made.path, made) for sheet in pages for made in sheet.files)
    changed = build.write(wanted.out, {}, sources, store.lying(files))
    notes = [note for kind in (0, 1) for sheet in pages for note in sheet.notes[kind]]
    report = Report(
        wanted.out,
        sum(1 for path in files if path.endswith(".html")),
        len(files),
        changed,
        (*no_painter(), *notes, *unfound(folder.channel)),
    )
    media = frozenset(one for sheet in pages for one in sheet.media)
    return Built(report, len(pages), tuple(sheet.why for sheet in sheets if sheet.why), media)


def _sheets(press: Press, paths: Sequence[Path]) -> list[Sheet]:
    """The sheet of each recipe file: as it was kept, or made now."""
    kept = [press.kept(path) for path in paths]
    waiting = [path for path, sheet in zip(paths, kept, strict=True) if sheet is None]
    made = iter(press.make(waiting, None, len(paths) >= LEAST))
    sheets = [sheet if sheet is not None else next(made) for sheet in kept]
    # Whom a page links to is known now; where it was taken for granted and is otherwise, the page is made again.
    titles = {sheet.slug: sheet.title for sheet in sheets if sheet.state == "page"}
    menu = sum(1 for sheet in sheets if sheet.candidate) >= LEAST
    for number, sheet in enumerate(sheets):
        if sheet.state == "page" and (
            sheet.menu != menu or any(titles.get(slug, "") != title for slug, title in sheet.links.items())
        ):
            (sheets[number],) = press.make(paths[number : number + 1], titles, menu)
    return sheets


def _around(
    press: Press, folder: ChannelFolder, look: Theme, store: Store, counted: Census | None, pages: Sequence[Sheet]
) -> list[Made]:
    """The files that are no recipe's own: as they were kept under all that they show, or made now."""
    shown = (part for sheet in pages for part in (sheet.page, sheet.candidate))
    key = hashed(counted.shared, "around", *shown) if counted is not None else ""
    with contextlib.suppress(ValueError, TypeError):
        kept = [Made(*row) for row in json.loads(store.kept(key) or b"[]")] if key else []
        if kept and all(store.lies(made) for made in kept):
            return kept
    candidates = [lean.candidate_of(sheet.candidate) for sheet in pages if sheet.candidate]
    site = whole_site(
        press.site,
        folder.knowledge,
        [lean.page_of(sheet.taken()) for sheet in pages],
        new_foods(folder.channel, folder.knowledge, candidates),
    )
    made = [store.put(path, body) for path, body in build.around(Pages(site, look), site, look)]
    if counted is not None and counted.holds(counted.rest) and counted.ours_hold() and not any(m.body for m in made):
        store.keep(key, json.dumps([one.row for one in made]).encode())
    return made


def surroundings(channel: Channel, knowledge: Knowledge) -> Site:
    """What every page shows of a channel's site: all but its recipes."""
    from spoonproof.checks.rule import all_rules

    return Site(
        title=channel.title,
        base_url=channel.base_url.rstrip("/"),
        language=channel.language,
        author=channel.author,
        about=about(channel),
        rules=reference.rule_items(all_rules()),
        entries=reference.entry_items(knowledge.register),
        measures=foods.measures_note(channel.measures, knowledge.measures(channel.measures)),
        loosened=loosened(channel, knowledge),
    )


def whole_site(around: Site, knowledge: Knowledge, pages: Sequence[RecipePage], calendar: Calendar | None) -> Site:
    """The site with its recipes, in their order."""
    cited, used = reference.used_sources(knowledge.sources, pages, around.rules, around.entries)
    return replace(around, recipes=tuple(pages), sources=cited, used=used, calendar=calendar)


def site_of_one(dish: Dish, look: Theme, album: Album) -> Site:
    """The site with one recipe alone, to look at; its pictures go into ``album``."""
    page = gather.recipe_page(dish, {dish.recipe.slug: dish.recipe})
    page = with_pictures(page, dish, palette(look), album, Reel(None))
    return whole_site(surroundings(dish.channel, dish.knowledge), dish.knowledge, [page], None)


def with_pictures(page: RecipePage, dish: Dish, colours: Palette, album: Album, reel: Reel) -> RecipePage:
    """The page with its drawing, photographs, previews and video, whose files go into ``album`` and ``reel``."""
    parts = gather.plate(dish)

    def drawn() -> list[Shape]:
        return draw(page.slug, page.texture, parts, colours)

    svg = album.svg((page.slug, page.texture, parts, colours.stamp), drawn)
    text = gather.picture_text(dish.recipe)
    photos = album.photos(dish.recipe)
    # A photograph too small for search engines leaves its place to the drawing, whose previews need full addresses.
    social = tuple(found for found in photos[:1] if found.width * found.height >= SMALLEST)
    if not social and dish.channel.base_url:
        social = album.previews(page.slug, drawn, svg, text)
    return replace(
        page,
        drawing=album.drawing(page.slug, svg, text),
        photos=photos,
        social=social,
        film=reel.film(dish.recipe),
    )


def unfound(channel: Channel) -> tuple[str, ...]:
    """What search engines can't be given for want of the channel's address."""
    if channel.base_url:
        return ()
    return (
        "no site map, no link previews and nothing for search engines: they need full addresses "
        "(base_url: https://... in channel.yaml)",
    )


def about(channel: Channel) -> str:
    """One line on what the channel is: its own, else from its ages."""
    if channel.about:
        return channel.about
    low, high = channel.ages
    span = f"from {low} to {high} months" if high is not None else f"from {low} months"
    return f"Recipes for babies {span} and the people who feed them, checked before they are published."


def palette(look: Theme) -> Palette:
    """The food colours of the theme. Raises ThemeError when the table is missing or a colour is none."""
    text = look.read("colours.csv")
    if text is None:
        raise ThemeError("colours.csv is missing from the theme")
    rows = [Row(cells, "colours.csv", at) for at, cells in enumerate(csv.DictReader(text.split("\n")), 2)]
    try:
        return Palette.from_rows(rows)
    except ValueError as error:
        raise ThemeError(str(error)) from None
