"""``publish``: a channel's folder to a site in a folder. Deterministic, whole or not at all."""

from __future__ import annotations

import contextlib
import csv
import json
from array import array
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.model.channel import Channel
from spoonproof.model.record import dataclass, replace
from spoonproof.model.search_needs import SMALLEST
from spoonproof.model.table import Row
from spoonproof.pile import Taken
from spoonproof.site import build, foods, gather, reference, stage
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
from spoonproof.site.sheaf import Sheaf
from spoonproof.site.standing import Media, Tell
from spoonproof.site.store import Files, Made, Store
from spoonproof.site.view import RecipePage
from spoonproof.site.view_site import Calendar, Listed, Site

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


def publish(folder: ChannelFolder, wanted: Wanted, counted: Census | None, tell: Tell) -> Built:
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
    sheaf = _sheets(press, folder.recipe_paths, Sheaf(store, len(folder.recipe_paths)))
    tell(0, 1, "putting the site together")
    files = Files(store)
    files.add(_around(press, folder, look, store, counted, sheaf))
    files.add(sheaf.files())
    changed = build.place(wanted.out, files, sources)
    pages = sum(1 for path in files if path.endswith(".html"))
    notes = (*no_painter(), *sheaf.notes, *unfound(folder.channel))
    report = Report(wanted.out, pages, len(files), changed, notes)
    return Built(report, len(sheaf.pages), sheaf.left_out, frozenset(sheaf.media))


def _sheets(press: Press, paths: Sequence[Path], sheaf: Sheaf) -> Sheaf:
    """The sheet of each recipe file: as it was kept, or made now."""
    waiting = []
    for number, path in enumerate(paths):
        kept = press.kept(path)
        if kept is not None:
            sheaf.put(number, kept)
        else:
            waiting.append(number)
    _make(press, paths, waiting, sheaf, None, len(paths) >= LEAST)
    # Whom a page links to is known now; where it was taken for granted and is otherwise, the page is made again.
    menu = sheaf.dishes >= LEAST
    if astray := sheaf.astray(menu):
        _make(press, paths, astray, sheaf, sheaf.titles(), menu)
    return sheaf


def _make(
    press: Press,
    paths: Sequence[Path],
    numbers: Sequence[int],
    sheaf: Sheaf,
    titles: Mapping[str, str] | None,
    menu: bool,
) -> None:
    made = press.make([paths[number] for number in numbers], titles, menu)
    for sheet, number in zip(made, numbers, strict=True):
        sheaf.put(number, sheet)


def _around(
    press: Press, folder: ChannelFolder, look: Theme, store: Store, counted: Census | None, sheaf: Sheaf
) -> list[Made]:
    """The files that are no recipe's own: as they were kept under all that they show, or made now."""
    key = sheaf.digest(counted.shared, "around") if counted is not None else ""
    with contextlib.suppress(ValueError, TypeError):
        kept = [Made(*row) for row in json.loads(store.kept(key) or b"[]")] if key else []
        if kept and all(store.lies(made) for made in kept):
            return kept
    known = folder.knowledge
    site = whole_site(press.site, known, sheaf.pages, new_foods(folder.channel, known, sheaf.candidates()))
    made = [store.laid(store.gather(path, make)) for path, make in build.around(Pages(site, look), site, look)]
    in_cache = all(one.shelf == "contents" for one in made)
    if counted is not None and in_cache and counted.holds(counted.rest) and counted.ours_hold():
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
    listed: list[Listed] = []
    resting: dict[str, array[int]] = {}
    for number, page in enumerate(pages):
        listed.append(Listed.of(page))
        for item in page.citations:
            resting.setdefault(item.id, array("L")).append(number)
    cited = reference.used_sources(knowledge.sources, resting, around.rules, around.entries)
    used = {source: Taken(numbers, lambda at: listed[at].link) for source, numbers in resting.items()}
    return replace(around, recipes=pages, listed=listed, sources=cited, used=used, calendar=calendar)


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
        page, drawing=album.drawing(page.slug, svg, text), photos=photos, social=social, film=reel.film(dish.recipe)
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
