"""A site view to a folder of files, and the folder put in place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from itertools import islice
from pathlib import Path

from spoonproof import swap
from spoonproof.model.record import dataclass
from spoonproof.site import feed, sieve, stage
from spoonproof.site.amounts import SCALES, SYSTEMS
from spoonproof.site.pages import Pages, Theme
from spoonproof.site.view import href_of
from spoonproof.site.view_site import Listed, Site

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
    out = {path: b"".join(make()) for path, make in around(pages, site, theme)}
    out.update((page.href, pages.recipe(page).encode("utf-8")) for page in site.recipes)
    out.update(pictures)
    return out


def around(pages: Pages, site: Site, theme: Theme) -> Iterator[tuple[str, Callable[[], Iterator[bytes]]]]:
    """Every file but the recipes' own pages and pictures, each with what makes its pieces: that raises ThemeError."""
    every = sieve.filters(site.recipes)
    named = ["404.html", "sources.html"]
    named += [name for name, has in (("rules.html", site.rules), ("register.html", site.entries)) if has]
    if site.calendar is not None:
        named.append("calendar.html")
    made: dict[str, Callable[[], Iterable[str]]] = {"index.html": partial(pages.index, every)}
    made.update((name, partial(pages.pieces, name, name)) for name in named)
    mapped = [path for path in made if path != "404.html"]
    for path, number in _moved(site.listed):
        made.setdefault(path, partial(pages.moved, number))
    for name in THEME_FILES:
        made[name] = partial(_of_theme, theme, name)
    made["sieve.css"] = lambda: [sieve.style(every)]
    made["switch.css"] = lambda: [sieve.switches(SYSTEMS, SCALES)]
    made["feed.xml"] = lambda: feed.atom(site)
    made["robots.txt"] = lambda: [feed.robots(site)]
    if site.base_url:
        made["sitemap.xml"] = lambda: feed.sitemap(site, mapped)
    return ((path, partial(encoded, make)) for path, make in made.items())


def _moved(listed: Sequence[Listed]) -> Iterator[tuple[str, int]]:
    """The paths that recipes had before and no other has now, with the number of the recipe."""
    if any(one.former for one in listed):
        own = {one.link.href for one in listed}
        for number, one in enumerate(listed):
            for former in one.former:
                if (path := href_of(former)) not in own:
                    yield path, number


def _of_theme(theme: Theme, name: str) -> list[str]:
    return [theme.read(name) or ""]


def encoded(make: Callable[[], Iterable[str]]) -> Iterator[bytes]:
    """The bytes of these pieces, joined by the thousand: the page of a large site has tens of thousands of them."""
    rest = iter(make())
    while some := list(islice(rest, PIECES)):
        yield "".join(some).encode("utf-8")


def write(out: Path, files: Mapping[str, bytes], sources: tuple[Path, ...]) -> bool:
    """Put files that are at hand in place as ``place`` does."""
    return place(out, {path: stage.Held.of(body) for path, body in files.items()}, sources)


def place(out: Path, files: Mapping[str, stage.Held], sources: tuple[Path, ...]) -> bool:
    """Put the files in place as a whole; False when the folder already held exactly them.

    Raises OutputRefused for a folder that must not be written, Gone, OSError when the machine says no.
    """
    real = stage.refuse_dangerous(out, sources)
    with swap.locked(real):
        swap.recover(real)
        good, exact = stage.right(real, files)
        if exact:
            return False
        stage.install(real, files, keep=good)
    return True
