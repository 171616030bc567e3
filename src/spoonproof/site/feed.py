"""Files for machines beside the pages: Atom feed, site map, robots.txt, redirects."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from xml.sax.saxutils import escape, quoteattr

from spoonproof.site.view import RecipePage, plain
from spoonproof.site.view_site import Site

EMPTY = "2005-12-01"
"""The date of a feed with nothing in it (the month of the feed format's own specification): one must stand there."""

_CONTROL = {code: None for code in range(32) if code not in (9, 10, 13)} | {0xFFFE: None, 0xFFFF: None}


def _xml(text: str) -> str:
    return escape(text.translate(_CONTROL))


def _moment(day: str) -> str:
    """A page's own last day; "" where it says none: such a page stays out of the feed, which must have dates."""
    return day if "T" in day or not day else f"{day}T00:00:00Z"


def atom(site: Site) -> Iterator[str]:
    """The feed in its pieces, newest first; dates are those of the recipes, never the build's."""
    dated = [number for number, one in enumerate(site.listed) if one.day and not one.owns_up]
    dated.sort(key=lambda number: site.listed[number].slug)
    dated.sort(key=lambda number: _moment(site.listed[number].day), reverse=True)
    checked = max((one.checked for one in site.listed), default="")
    updated = _moment(site.listed[dated[0]].day if dated else checked or EMPTY)
    home = site.address("index.html")
    identity = f"{site.base_url}/" if site.base_url else f"urn:x-channel:{_slug(site.title)}"
    lines = [
        '<?xml version="1.0" encoding="utf-8"?>',
        f'<feed xmlns="http://www.w3.org/2005/Atom" xml:lang={quoteattr(site.language)}>',
        f"<id>{_xml(identity)}</id>",
        f"<title>{_xml(site.title)}</title>",
        f"<updated>{updated}</updated>",
        f"<author><name>{_xml(site.author or site.title)}</name></author>",
        f'<link rel="self" type="application/atom+xml" href={quoteattr(site.address("feed.xml"))}/>',
        f'<link rel="alternate" type="text/html" href={quoteattr(home)}/>',
        "",
    ]
    yield "\n".join(lines)
    for number in dated:
        yield "\n".join(_entry(site, site.recipes[number], identity))
    yield "</feed>\n"


def _entry(site: Site, page: RecipePage, identity: str) -> tuple[str, ...]:
    return (
        "<entry>",
        f"<id>{_xml(f'{identity}{page.href}')}</id>",
        f"<title>{_xml(page.name)}</title>",
        f"<updated>{_moment(page.changed or page.published)}</updated>",
        *([f"<published>{page.published}T00:00:00Z</published>"] if page.published else []),
        f'<link rel="alternate" type="text/html" href={quoteattr(site.address(page.href))}/>',
        f"<summary>{_xml(plain(page.summary) or f'{page.ages}, {page.texture}')}</summary>",
        "</entry>",
        "",
    )


def _slug(text: str) -> str:
    return "".join(c if c.isascii() and c.isalnum() else "-" for c in text.lower()).strip("-") or "channel"


def sitemap(site: Site, around: Iterable[str]) -> Iterator[str]:
    """The site map in its pieces; only made where the site has a full address. ``around``: the pages that are no
    recipes'."""
    yield '<?xml version="1.0" encoding="utf-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n'
    for path, day in sorted([*((path, "") for path in around), *((one.link.href, one.day) for one in site.listed)]):
        when = f"<lastmod>{day}</lastmod>" if day else ""
        yield f"<url><loc>{_xml(site.address(path))}</loc>{when}</url>\n"
    yield "</urlset>\n"


def robots(site: Site) -> str:
    """Everything may be read; the map is named where there is one."""
    lines = ["User-agent: *", "Allow: /"]
    if site.base_url:
        lines.append(f"Sitemap: {site.address('sitemap.xml')}")
    return "\n".join([*lines, ""])
