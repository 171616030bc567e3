"""One recipe's part of a site, as it is kept: its page, what is seen of it elsewhere, and all that it rests on.

A sheet is kept under its recipe's text and all that every page shares (see ``census``). Beyond these it rests on the
other recipes that its dish asked for, the photographs and videos it names, and the pages it links to: each is written
down as it was met, and a sheet is used only while every one of them is the same.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from typing import TypeVar

from spoonproof.model.recipe import Recipe
from spoonproof.model.record import dataclass, field
from spoonproof.site.standing import Media
from spoonproof.site.store import Made

T = TypeVar("T")
_PLAIN = ("state", "why", "slug", "title", "low", "page", "candidate", "menu")  # as Sheet takes them
ALL = "*"
"""Among the recipes asked for: every one of them."""


@dataclass(slots=True)
class Sheet:
    """``state`` is "page", "left out" (``why`` says it) or "draft". ``page`` and ``candidate`` are JSON (see ``lean``);
    ``menu`` whether the site's calendar was among its links."""

    state: str = "draft"
    why: str = ""
    slug: str = ""
    title: str = ""
    low: int = 0
    page: str = ""
    candidate: str = ""
    menu: bool = False
    files: tuple[Made, ...] = ()
    notes: tuple[tuple[str, ...], tuple[str, ...]] = ((), ())  # of pictures, of videos
    asked: dict[str, str] = field(default_factory=dict)  # slug (or ALL) -> the hash of its file, "" for none
    links: dict[str, str] = field(default_factory=dict)  # slug -> the title of its page, "" for none
    media: dict[Media, str] = field(default_factory=dict)

    def packed(self) -> bytes | None:
        """All of it as JSON; None where a file of it is kept nowhere."""
        if any(made.body is not None for made in self.files):
            return None
        return json.dumps(
            [
                [getattr(self, name) for name in _PLAIN],
                [made.row for made in self.files],
                self.notes,
                self.asked,
                self.links,
                list(self.media.items()),
            ],
            separators=(",", ":"),
        ).encode()


def unpacked(body: bytes) -> Sheet | None:
    """The sheet that was packed, None for anything else."""
    try:
        plain, files, notes, asked, links, media = json.loads(body)
        sheet = Sheet(*plain)
        sheet.files = tuple(Made(*row) for row in files)
        sheet.notes = tuple(notes[0]), tuple(notes[1])
        sheet.asked, sheet.links = asked, links
        sheet.media = {(folder, name): state for (folder, name), state in media}
        return sheet
    except (ValueError, TypeError, IndexError, RecursionError):
        return None


class Noting(Mapping[str, T]):
    """A mapping that writes down which of its keys were asked for, and what they gave."""

    def __init__(self, inner: Mapping[str, T], noted: Callable[[str, T | None], object]) -> None:
        """``noted`` gets each key with its value, None for none; ALL with None where all were gone through."""
        self._inner = inner
        self._noted = noted

    def __getitem__(self, key: str) -> T:
        found = self._inner.get(key)
        self._noted(key, found)
        if found is None:
            raise KeyError(key)
        return found

    def __iter__(self) -> Iterator[str]:
        self._noted(ALL, None)
        return iter(self._inner)

    def __len__(self) -> int:
        self._noted(ALL, None)
        return len(self._inner)

    def __bool__(self) -> bool:
        return True  # none and empty are looked up alike


class Published(Mapping[str, Recipe]):
    """The recipes that have a page, by slug; before that is known, all that may get one."""

    def __init__(self, recipes: Mapping[str, Recipe], pages: Mapping[str, str] | None, drafts: bool) -> None:
        """``pages``: the title of each page by slug, None while it is not known. ``drafts``: whether drafts get one."""
        self._recipes = recipes
        self._pages = pages
        self._drafts = drafts

    def __getitem__(self, slug: str) -> Recipe:
        found = self._recipes[slug] if self._pages is None or slug in self._pages else None
        if found is None or (found.draft and not self._drafts):
            raise KeyError(slug)
        return found

    def __iter__(self) -> Iterator[str]:
        return (slug for slug in self._recipes if slug in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)
