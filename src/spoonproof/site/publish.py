"""``publish``: dishes to a site in a folder. Deterministic, whole or not at all."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from pathlib import Path

from spoonproof.dish import Dish
from spoonproof.model.channel import Channel
from spoonproof.model.record import replace
from spoonproof.model.search_needs import SMALLEST
from spoonproof.model.table import Row
from spoonproof.site import build, foods, gather, reference
from spoonproof.site.album import Album
from spoonproof.site.build import Report
from spoonproof.site.larder import Palette
from spoonproof.site.loosened import loosened
from spoonproof.site.new_foods import new_foods
from spoonproof.site.pages import Theme, ThemeError
from spoonproof.site.picture import draw
from spoonproof.site.reel import Reel
from spoonproof.site.shapes import Shape
from spoonproof.site.view import Fault, RecipePage
from spoonproof.site.view_site import Site


def publish(
    channel: Channel,
    dishes: Sequence[Dish],
    out: Path,
    theme: Sequence[Path],
    *,
    faults: Mapping[str, Sequence[Fault]] | None = None,
    sources: Sequence[Path] = (),
    checked: str = "",
    root: Path | None = None,
) -> Report:
    """Build the site of ``dishes`` into ``out``.

    ``theme``: folders, the channel's own first. ``faults``: by slug, the errors a page must own up to (the
    caller leaves such dishes out unless told otherwise). ``sources``: folders ``out`` must not hold.
    ``checked``: ISO date of this check, "" for none. ``root``: the channel's folder, where photographs lie.
    Raises ThemeError, OutputRefused or OSError; the old site is whole then.
    """
    look = Theme(theme)
    album = Album(root, out)
    reel = Reel(root)
    view = gather_site(channel, dishes, look, faults or {}, checked, album, reel)
    album.paint()
    content = build.files(view, look, {**album.files, **reel.files})
    changed = build.write(out, content, tuple(sources), album.held)
    pages = sum(1 for path in content if path.endswith(".html"))
    return Report(
        out,
        pages,
        len(content) + len(album.held),
        sum(map(len, content.values())) + sum(held.size for held in album.held.values()),
        changed,
        (*album.notes, *reel.notes, *unfound(channel)),
    )


def gather_site(
    channel: Channel,
    dishes: Sequence[Dish],
    look: Theme,
    faults: Mapping[str, Sequence[Fault]],
    checked: str,
    album: Album,
    reel: Reel | None = None,
) -> Site:
    """The whole site as a view; its pictures go into ``album``, its videos into ``reel`` (none without one)."""
    from spoonproof.checks.rule import all_rules

    reel = reel or Reel(None)
    ordered = sorted(
        dishes, key=lambda dish: (dish.recipe.ages.low, dish.recipe.title.value.casefold(), dish.recipe.slug)
    )
    published = {dish.recipe.slug: dish.recipe for dish in ordered}
    colours = palette(look)
    pages = tuple(
        _with_pictures(
            gather.recipe_page(d, published, faults.get(d.recipe.slug, ()), checked), d, colours, album, reel
        )
        for d in ordered
    )
    rules = reference.rule_items(all_rules())
    knowledge = ordered[0].knowledge if ordered else None
    entries = reference.entry_items(knowledge.register) if knowledge else ()
    cited, used = reference.used_sources(knowledge.sources if knowledge else {}, pages, rules, entries)
    measures = foods.measures_note(channel.measures, knowledge.measures(channel.measures)) if knowledge else ""
    return Site(
        title=channel.title,
        base_url=channel.base_url.rstrip("/"),
        language=channel.language,
        author=channel.author,
        about=about(channel),
        recipes=pages,
        sources=cited,
        used=used,
        rules=rules,
        entries=entries,
        calendar=new_foods(channel, [d for d in ordered if not faults.get(d.recipe.slug)]),
        measures=measures,
        loosened=loosened(channel, knowledge) if knowledge else (),
    )


def _with_pictures(page: RecipePage, dish: Dish, colours: Palette, album: Album, reel: Reel) -> RecipePage:
    parts = gather.plate(dish)

    def drawn() -> list[Shape]:
        return draw(page.slug, page.texture, parts, colours)

    svg = album.svg((page.slug, page.texture, parts, colours.rows), drawn)
    text = gather.picture_text(dish.recipe)
    photos = album.photos(dish.recipe)
    return replace(
        page,
        drawing=album.drawing(page.slug, svg, text),
        photos=photos,
        # A photograph too small for search engines leaves its place to the drawing.
        social=tuple(p for p in photos[:1] if p.width * p.height >= SMALLEST)
        or album.previews(page.slug, drawn, svg, text),
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
