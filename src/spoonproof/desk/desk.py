"""The desk itself: the folder it stands over, its pages, and the work it has been set to."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import quote

from starlette.responses import HTMLResponse, Response

from spoonproof.desk.shelf import Shelf
from spoonproof.desk.turns import Turns
from spoonproof.desk.work import Bench
from spoonproof.reading.bundle import bundle_root

if TYPE_CHECKING:
    from jinja2 import Environment

MENU = (
    ("Recipes", "/"),
    ("Listen", "/listen"),
    ("Comments", "/comments"),
    ("Register", "/register"),
    ("New foods", "/new-foods"),
    ("Filming day", "/filming-day"),
    ("Out", "/out"),
)
_SHOWN = 8
"""Pages made for looking at that are kept in memory."""


class Desk:
    """What every view works with."""

    def __init__(self, root: Path) -> None:
        """``root``: the channel's folder, absolute."""
        self.root = root
        self.shelf = Shelf(root)
        self.bench = Bench(root)
        self.turns = Turns()
        self.shown: OrderedDict[str, Mapping[str, bytes]] = OrderedDict()

    @cached_property
    def pages(self) -> Environment:
        """Templates with everything escaped; content is only ever a value."""
        from jinja2 import Environment, FileSystemLoader, StrictUndefined

        pages = Environment(
            loader=FileSystemLoader(bundle_root() / "site" / "desk" / "templates", encoding="utf-8"),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        pages.filters["address"] = address
        return pages

    def page(self, template: str, path: str, code: int = 200, **values: object) -> Response:
        """A page of the desk; ``path`` says which entry of the menu it belongs to."""
        channel = self.shelf.folder().channel
        html = self.part(template, menu=MENU, path=path, channel=channel.title, language=channel.language, **values)
        return HTMLResponse(html, code)

    def part(self, template: str, **values: object) -> str:
        """A piece of a page."""
        return self.pages.get_template(template).render(**values)

    def show(self, name: str, files: Mapping[str, bytes]) -> None:
        """Keep made pages for looking at."""
        self.shown[name] = files
        self.shown.move_to_end(name)
        while len(self.shown) > _SHOWN:
            self.shown.popitem(last=False)


def address(key: str) -> str:
    """A recipe's key as part of an address."""
    return quote(key, safe="/")
