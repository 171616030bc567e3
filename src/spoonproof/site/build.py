"""A site view to a folder of files, and the folder put in place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial
from io import BytesIO
from itertools import islice
from pathlib import Path

from spoonproof import swap
from spoonproof.model.record import dataclass
from spoonproof.site import feed, sieve, stage
from spoonproof.site.amounts import SCALES, SYSTEMS
from spoonproof.site.pages import Pages, Theme
from spoonproof.site.view_site import Site

THEME_FILES = ("look.css", "style.css", "site.js", "icon.svg")
PIECES = 1000
"""Pieces of a page that are joined at a time."""


@dataclass(frozen=True, slots=True)
class Report:
    """What a build did: pages made, files in all, whether anything differed from what was there."""

    out: Path
    pages: int
    files: int
    changed: bool
    notes: tuple[str, ...] = ()


def files(site: Site, theme: Theme, pictures: Mapping[str, bytes]) -> dict[str, bytes]:
    """Every file of the site by its path from the root. Raises ThemeError. Same view, same bytes."""
    pages = Pages(site, theme)
    out = dict(around(pages, site, theme))
    out.update((page.href, pages.recipe(page).encode("utf-8")) for page in site.recipes)
    out.update(pictures)
    return out


def around(pages: Pages, site: Site, theme: Theme) -> Iterator[tuple[str, bytes]]:
    """Every file but the recipes' own pages and pictures, each made when it is asked for. Raises ThemeError."""
    named = ["404.html", "sources.html"]
    named += [name for name, has in (("rules.html", site.rules), ("register.html", site.entries)) if has]
    if site.calendar is not None:
        named.append("calendar.html")
    made: dict[str, Callable[[], Iterable[str]]] = {"index.html": pages.index}
    made.update((name, partial(pages.pieces, name, name)) for name in named)
    own = {page.href for page in site.recipes}
    mapped = [*(path for path in made if path != "404.html"), *(page.href for page in site.recipes)]
    for page in site.recipes:
        for former in page.renamed_from:
            if (path := f"recipes/{former}.html") not in own:
                made.setdefault(path, partial(pages.moved, page))
    for name in THEME_FILES:
        made[name] = partial(_of_theme, theme, name)
    made["sieve.css"] = lambda: [sieve.style(sieve.filters(site.recipes))]
    made["switch.css"] = lambda: [sieve.switches(SYSTEMS, SCALES)]
    made["feed.xml"] = lambda: [feed.atom(site)]
    made["robots.txt"] = lambda: [feed.robots(site)]
    if site.base_url:
        made["sitemap.xml"] = lambda: [feed.sitemap(site, mapped)]
    return ((path, encoded(make())) for path, make in made.items())


def _of_theme(theme: Theme, name: str) -> list[str]:
    return [theme.read(name) or ""]


def encoded(pieces: Iterable[str]) -> bytes:
    """The file of these pieces. They are joined by the thousand: the page of a large site has tens of thousands, each
    of which takes more room by itself than in the text."""
    rest = iter(pieces)
    made = BytesIO()
    while some := list(islice(rest, PIECES)):
        made.write("".join(some).encode("utf-8"))
    return made.getvalue()


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
