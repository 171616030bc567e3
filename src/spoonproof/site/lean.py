"""What the pages around a recipe need of its page, as plain data that JSON holds, and back.

A site's index, feed, map and sources see title, picture, ages and the like; foods, steps and story are on the recipe's
own page alone and are let go when that is written.
"""

from __future__ import annotations

import json
from functools import lru_cache
from sys import intern
from typing import Any

from spoonproof.feeding.calendar_order import Candidate
from spoonproof.site.view import Allergen, Citation, Fault, Picture, RecipePage, Run

_AS_THEY_ARE = (
    "slug", "ages", "age_low", "age_high", "texture", "minutes", "season", "checked", "published", "changed", "author",
    "words",
)  # fmt: skip


def lean(page: RecipePage) -> str:
    """The part of a page that is seen around it, as JSON."""
    return json.dumps(
        [
            [getattr(page, name) for name in _AS_THEY_ARE],
            page.title,
            page.summary,
            page.months,
            [[a.name, a.foods, a.maybe, a.key] for a in page.allergens],
            [item.id for item in page.citations],
            [_picture(found) for found in ([page.drawing] if page.drawing else [])],
            [_picture(found) for found in page.photos],
            [_picture(found) for found in page.social],
            page.renamed_from,
            page.unfinished,
        ],
        separators=(",", ":"),
    )


def page_of(text: str) -> RecipePage:
    """The page that ``lean`` was given, without what stands on it alone; its sources are ids without words.
    Raises ValueError or TypeError for text that ``lean`` did not make."""
    plain, title, summary, months, allergens, cited, drawing, photos, social, renamed, unfinished = json.loads(text)
    return RecipePage(
        **_plain(plain),
        title=tuple(Run(*run) for run in title),
        summary=tuple(Run(*run) for run in summary),
        months=tuple(months),
        allergens=tuple(
            Allergen(intern(name), tuple(map(intern, foods)), maybe, key and intern(key))
            for name, foods, maybe, key in allergens
        ),
        citations=tuple(map(_cited, range(1, 1 + len(cited)), cited)),
        drawing=_picture_of(drawing[0]) if drawing else None,
        photos=tuple(_picture_of(found) for found in photos),
        social=tuple(_picture_of(found) for found in social),
        renamed_from=tuple(renamed),
        unfinished=tuple(Fault(*fault) for fault in unfinished),
    )


def _plain(values: list[Any]) -> dict[str, Any]:
    """The fields that are as they are; what many pages say alike ("mashed", a date, an author) is held once."""
    alike = (intern(value) if value.__class__ is str else value for value in values)
    return dict(zip(_AS_THEY_ARE, alike, strict=True))


@lru_cache(maxsize=4096)
def _cited(number: int, source: str) -> Citation:
    """A source under its number; many pages hold the same one."""
    return Citation(number, source, "")


def _picture(found: Picture) -> list[Any]:
    return [found.file, found.width, found.height, found.text, found.larger]


def _picture_of(found: list[Any]) -> Picture:
    file, width, height, text, larger = found
    return Picture(file, width, height, text, tuple((name, size) for name, size in larger))


def candidate_text(one: Candidate) -> str:
    """A dish as the calendar sees it, as JSON."""
    return json.dumps(
        [
            one.slug, one.title, one.foods, dict(one.allergens), one.iron_rich, one.from_months, one.names,
            one.unfit, one.unknown, dict(one.traces),
        ],
        separators=(",", ":"),
    )  # fmt: skip


def candidate_of(text: str) -> Candidate:
    """The dish that ``candidate_text`` was given. Raises ValueError or TypeError for other text."""
    slug, title, foods, allergens, iron_rich, from_months, names, unfit, unknown, held = json.loads(text)
    brings = {food: tuple(brought) for food, brought in allergens.items()}
    traces = {food: tuple(brought) for food, brought in held.items()}
    lists = tuple(unfit), tuple(unknown)
    return Candidate(slug, title, tuple(foods), brings, iron_rich, from_months, names, *lists, traces)
