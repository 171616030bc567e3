"""The guide: pages of Markdown as a site of their own, in the theme of the channel's pages.

A folder of ``.md`` files becomes a folder of pages with the same names. A link from one ``.md`` file to
another leads to its page; a file beside them that a page links to (an example) is taken along as it is.
``index.md`` names the pages in its own order; where there is none, the front page lists them by name.
"""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from markupsafe import Markup

from spoonproof.model.record import dataclass
from spoonproof.site import build, prose
from spoonproof.site.build import Report
from spoonproof.site.pages import POLICY, Theme
from spoonproof.site.view_site import Site

TITLE = "Spoonproof guide"
LARGEST = 1024 * 1024
"""Bytes of a page or of a file beside it; a larger one is refused."""


class GuideError(Exception):
    """The folder is no guide: nothing in it, a page without a title, or a link that leads nowhere."""


@dataclass(frozen=True, slots=True)
class GuidePage:
    """A page: its address from the guide's root, its title, its first paragraph in plain words, its HTML.

    ``links`` are the addresses of other pages it leads to, in order.
    """

    href: str
    title: str
    told: str
    body: Markup
    links: tuple[str, ...] = ()

    @property
    def part(self) -> str:
        """The folder it stands in, as a word; "" for the pages at the top."""
        folder = posixpath.dirname(self.href)
        return folder.replace("-", " ").replace("_", " ")


def publish_guide(folder: Path, out: Path, theme: Sequence[Path]) -> Report:
    """Build the guide in ``folder`` into ``out``, whole or not at all.

    Raises GuideError, ThemeError, OutputRefused or OSError; what stood in ``out`` is whole then.
    """
    content = guide_files(folder, Theme(theme))
    changed = build.write(out, content, (folder,))
    pages = sum(1 for path in content if path.endswith(".html"))
    return Report(out, pages, len(content), changed)


def guide_files(folder: Path, theme: Theme) -> dict[str, bytes]:
    """Every file of the guide's site by its path. Same folder, same bytes. Raises GuideError and ThemeError."""
    texts, beside = _read(folder)
    pages = {href: _page(href, text, texts, beside) for href, text in texts.items()}
    order = _order(pages)
    # Searched and filtered by nobody: the guide needs the look alone.
    out = {name: (theme.read(name) or "").encode("utf-8") for name in ("look.css", "style.css", "site.js", "icon.svg")}
    out.update(beside)
    env = theme.environment()
    template = env.get_template("guide.html")
    site = Site(title=TITLE)
    if "index.html" not in pages:
        pages["index.html"] = GuidePage("index.html", TITLE, "", Markup(""))
    listed = [pages[href] for href in order]
    for href, page in pages.items():
        at = order.index(href) if href in order else -1
        html = template.render(
            site=site,
            page=page,
            path=href,
            root="../" * href.count("/"),
            policy=POLICY,
            menu=(),
            foot_menu=(),
            feed=False,
            pages=listed,
            before=listed[at - 1] if at > 0 else None,
            after=listed[at + 1] if at + 1 < len(listed) else None,
        )
        out[href] = html.encode("utf-8")
    return out


def _read(folder: Path) -> tuple[dict[str, str], dict[str, bytes]]:
    """The pages' Markdown by the address of their page, and the other files by their path; both sorted."""
    texts: dict[str, str] = {}
    beside: dict[str, bytes] = {}
    root = folder.resolve()
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if not path.is_file() or any(part.startswith(".") for part in name.split("/")):
            continue
        if not path.resolve().is_relative_to(root):
            raise GuideError(f"{name} leads out of the guide's folder")
        if path.stat().st_size > LARGEST:
            raise GuideError(f"{name} is larger than a page may be ({LARGEST // 1024} KB)")
        if path.suffix == ".md":
            texts[name[:-3] + ".html"] = path.read_text(encoding="utf-8")
        else:
            beside[name] = path.read_bytes()
    if not texts:
        raise GuideError(f"there are no pages (.md files) in {folder}")
    return texts, beside


def _page(href: str, text: str, pages: Iterable[str], files: Mapping[str, bytes]) -> GuidePage:
    source = href[:-5] + ".md"
    known = set(pages)
    links: list[str] = []

    def lead(address: str) -> str:
        """A link of the page as it must stand in the HTML."""
        path, mark, rest = address.partition("#")
        if not path:
            return address
        target = posixpath.normpath(posixpath.join(posixpath.dirname(href), path))
        if path.endswith(".md"):
            target = target[:-3] + ".html"
            if target in known:
                links.append(target)
                return f"{path[:-3]}.html{mark}{rest}"
        elif target in files:
            return address
        raise GuideError(f"{source}: the link to {address} leads to no page of the guide")

    written = prose.whole(text, lead)
    if not written.title:
        raise GuideError(f"{source} does not start with a title (# Title)")
    told = f"{written.told[:-1]}." if written.told.endswith(":") else written.told
    return GuidePage(href, written.title, told, written.body, tuple(dict.fromkeys(links)))


def _order(pages: Mapping[str, GuidePage]) -> list[str]:
    """The pages as the front page names them, then the others by folder and title; the front page first."""
    front = pages.get("index.html")
    named = [href for href in front.links if href in pages] if front is not None else []
    rest = sorted(
        (href for href in pages if href not in named and href != "index.html"),
        key=lambda href: (posixpath.dirname(href), pages[href].title.casefold(), href),
    )
    return [*(["index.html"] if front is not None else []), *named, *rest]
