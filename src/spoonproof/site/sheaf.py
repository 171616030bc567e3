"""All sheets of a site: they lie on a pile, so that of each little more than its place among the others is held."""

from __future__ import annotations

import json
from array import array
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import TYPE_CHECKING

from spoonproof.cache import hashed
from spoonproof.pile import Taken
from spoonproof.site import lean
from spoonproof.site.store import Made

if TYPE_CHECKING:
    from spoonproof.feeding.calendar_order import Candidate
    from spoonproof.site.sheet import Sheet
    from spoonproof.site.standing import Media
    from spoonproof.site.store import Store
    from spoonproof.site.view import RecipePage

_MENU, _DISH = 1, 2


class Sheaf:
    """The sheets of so many recipe files, put here by the numbers of the files, and then taken in the order of the
    pages: by age, then by title."""

    def __init__(self, store: Store, count: int) -> None:
        self._store = store
        self._slips = [""] * count  # what decides on the place of a page, and where it lies
        self._marks = bytearray(count)
        self._links: dict[int, Mapping[str, str]] = {}
        self._why: dict[int, str] = {}
        self._notes: dict[int, tuple[tuple[str, ...], ...]] = {}
        self.media: set[Media] = set()

    def put(self, number: int, sheet: Sheet) -> None:
        """The sheet of a recipe file, in the place of one that was there."""
        self._slips[number], self._marks[number] = "", 0
        for told in (self._links, self._why):
            told.pop(number, None)
        if sheet.why:
            self._why[number] = sheet.why
        if sheet.state != "page":
            return
        rows = json.dumps([self._store.laid(made).row for made in sheet.files])
        at = self._store.pile.put("\n".join((sheet.page, sheet.candidate, rows)).encode())
        self._slips[number] = f"{sheet.low}\0{sheet.slug}\0{at}\0{sheet.title}"
        self._marks[number] = sheet.menu * _MENU + bool(sheet.candidate) * _DISH
        if sheet.links:
            self._links[number] = sheet.links
        if any(sheet.notes):
            self._notes[at] = sheet.notes
        self.media.update(sheet.media)

    @property
    def dishes(self) -> int:
        """How many there are that a calendar of new foods is made of."""
        return sum(1 for mark in self._marks if mark & _DISH)

    def titles(self) -> dict[str, str]:
        """The title of each page by its slug."""
        return {slug: title for _, slug, _, title in map(_parts, filter(None, self._slips))}

    def astray(self, menu: bool) -> list[int]:
        """The pages that lead to others by what these are not called, or not to the calendar as all now do."""
        titles = self.titles() if self._links else {}
        return [
            number
            for number, slip in enumerate(self._slips)
            if slip
            and (
                bool(self._marks[number] & _MENU) != menu
                or any(titles.get(slug, "") != title for slug, title in self._links.get(number, {}).items())
            )
        ]

    @property
    def left_out(self) -> tuple[str, ...]:
        """Why recipes were left out, in the order of their files."""
        return tuple(self._why[number] for number in sorted(self._why))

    @property
    def notes(self) -> list[str]:
        """What is to be said of the pages: of their pictures, then of their videos."""
        noted = [self._notes[at] for at in self._order if at in self._notes]
        return [note for kind in (0, 1) for notes in noted for note in notes[kind]]

    @cached_property
    def _order(self) -> array[int]:
        """Where the pages lie, in order. Asked for when the last sheet is here: it lets the slips go."""
        parts = map(_parts, filter(None, self._slips))
        found = sorted((int(low), title.casefold(), slug, int(at)) for low, slug, at, title in parts)
        self._slips.clear()
        return array("q", [at for *_, at in found])

    def _lines(self, at: int) -> list[str]:
        return self._store.pile.get(at).decode().split("\n")

    def digest(self, *parts: str) -> str:
        """The hash of these parts and of what is seen of the pages elsewhere."""
        found = hashed(*parts)
        for at in self._order:
            found = hashed(found, *self._lines(at)[:2])
        return found

    def candidates(self) -> Iterator[Candidate]:
        """The dishes as the calendar sees them."""
        return (lean.candidate_of(text) for at in self._order if (text := self._lines(at)[1]))

    def files(self) -> Iterator[Made]:
        """The files of all recipes."""
        return (Made(*row) for at in self._order for row in json.loads(self._lines(at)[2]))

    @property
    def pages(self) -> Sequence[RecipePage]:
        """The pages as they are seen elsewhere, each unpacked when it is asked for."""
        return Taken(self._order, lambda at: lean.page_of(self._lines(at)[0]))


def _parts(slip: str) -> list[str]:
    return slip.split("\0", 3)  # a title may hold anything
