"""Files for machines beside the pages: Atom feed, site map, robots.txt, redirects."""

from __future__ import annotations

from xml.sax.saxutils import escape, quoteattr

from spoonproof.site.view import RecipePage, plain
from spoonproof.site.view_site import Site

EMPTY = "2005-12-01"
"""The date of a feed with nothing in it (the month of the feed format's own specification): one must stand there."""

_CONTROL = {code: None for code in range(32) if code not in (9, 10, 13)} | {0xFFFE: None, 0xFFFF: None}


def _xml(text: str) -> str:
    return escape(text.translate(_CONTROL))


def _moment(page: RecipePage) -> str:
    """The page's own last day; "" where it says none: such a page stays out of the feed, which must have dates."""
    day = page.changed or page.published
    return day if "T" in day or not day else f"{day}T00:00:00Z"


def atom(site: Site) -> str:
    """The feed, newest first; dates are those of the recipes, never the build's."""
    pages = sorted((p for p in site.recipes if not p.unfinished and _moment(p)), key=lambda p: p.slug)
    pages.sort(key=_moment, reverse=True)
    checked = max((p.checked for p in site.recipes if p.checked), default="")
    updated = _moment(pages[0]) if pages else f"{checked or EMPTY}T00:00:00Z"
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
    ]
    for page in pages:
        address = site.address(page.href)
        lines += [
            "<entry>",
            f"<id>{_xml(f'{identity}{page.href}')}</id>",
            f"<title>{_xml(page.name)}</title>",
            f"<updated>{_moment(page)}</updated>",
            *([f"<published>{page.published}T00:00:00Z</published>"] if page.published else []),
            f'<link rel="alternate" type="text/html" href={quoteattr(address)}/>',
            f"<summary>{_xml(plain(page.summary) or f'{page.ages}, {page.texture}')}</summary>",
            "</entry>",
        ]
    return "\n".join([*lines, "</feed>", ""])


def _slug(text: str) -> str:
    return "".join(c if c.isascii() and c.isalnum() else "-" for c in text.lower()).strip("-") or "channel"


def sitemap(site: Site, paths: list[str]) -> str:
    """The site map; only made where the site has a full address."""
    dates = {page.href: (page.changed or page.published) for page in site.recipes}
    lines = [
        '<?xml version="1.0" encoding="utf-8"?>',
        '<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">',
    ]
    for path in sorted(paths):
        when = f"<lastmod>{dates[path]}</lastmod>" if dates.get(path) else ""
        lines.append(f"<url><loc>{_xml(site.address(path))}</loc>{when}</url>")
    return "\n".join([*lines, "</urlset>", ""])


def robots(site: Site) -> str:
    """Everything may be read; the map is named where there is one."""
    lines = ["User-agent: *", "Allow: /"]
    if site.base_url:
        lines.append(f"Sitemap: {site.address('sitemap.xml')}")
    return "\n".join([*lines, ""])
