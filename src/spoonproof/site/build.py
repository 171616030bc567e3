"""A site view to a folder of files, and the folder put in place."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from spoonproof import swap
from spoonproof.model.record import dataclass
from spoonproof.site import feed, sieve, stage
from spoonproof.site.amounts import SCALES, SYSTEMS
from spoonproof.site.pages import Pages, Theme
from spoonproof.site.view_site import Site

THEME_FILES = ("look.css", "style.css", "site.js", "icon.svg")


@dataclass(frozen=True, slots=True)
class Report:
    """What a build did: pages made, files in all, bytes, whether anything differed from what was there."""

    out: Path
    pages: int
    files: int
    bytes: int
    changed: bool
    notes: tuple[str, ...] = ()


def files(site: Site, theme: Theme, pictures: Mapping[str, bytes]) -> dict[str, bytes]:
    """Every file of the site by its path from the root. Raises ThemeError. Same view, same bytes."""
    pages = Pages(site, theme)
    out = around(pages, site, theme)
    out.update((page.href, pages.recipe(page).encode("utf-8")) for page in site.recipes)
    out.update(pictures)
    return out


def around(pages: Pages, site: Site, theme: Theme) -> dict[str, bytes]:
    """Every file but the recipes' own pages and pictures. Raises ThemeError."""
    text: dict[str, str] = {"index.html": pages.index(), "404.html": pages.render("404.html", "404.html")}
    text["sources.html"] = pages.render("sources.html", "sources.html")
    if site.rules:
        text["rules.html"] = pages.render("rules.html", "rules.html")
    if site.entries:
        text["register.html"] = pages.render("register.html", "register.html")
    if site.calendar is not None:
        text["calendar.html"] = pages.render("calendar.html", "calendar.html")
    own = {page.href for page in site.recipes}
    mapped = [*(path for path in text if path != "404.html"), *(page.href for page in site.recipes)]
    for page in site.recipes:
        for former in page.renamed_from:
            if (path := f"recipes/{former}.html") not in own:
                text.setdefault(path, pages.moved(page))
    for name in THEME_FILES:
        text[name] = theme.read(name) or ""
    text["sieve.css"] = sieve.style(sieve.filters(site.recipes))
    text["switch.css"] = sieve.switches(SYSTEMS, SCALES)
    text["feed.xml"] = feed.atom(site)
    text["robots.txt"] = feed.robots(site)
    if site.base_url:
        text["sitemap.xml"] = feed.sitemap(site, mapped)
    return {path: body.encode("utf-8") for path, body in text.items()}


def write(
    out: Path,
    content: Mapping[str, bytes],
    sources: tuple[Path, ...],
    held: Mapping[str, stage.Held] = stage.NOTHING,
) -> bool:
    """Put the files in place as a whole; False when the folder already held exactly them.

    Raises OutputRefused for a folder that must not be written, Gone, OSError when the machine says no.
    """
    real = stage.refuse_dangerous(out, sources)
    with swap.locked(real):
        swap.recover(real)
        good, exact = stage.right(real, content, held)
        if exact:
            return False
        stage.install(real, content, held=held, keep=good)
    return True
