"""What the last build left: whether the site stands as it should, without reading a recipe.

The record holds under the census of everything the site was made from, and under the stamps of every file of the site
(see ``census``): whatever was changed, there or here, the site is made again and mended. A record that somebody else
made counts for nothing.
"""

from __future__ import annotations

import json
import os
import time
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from spoonproof.cache import Cache, blake2b, hashed
from spoonproof.model.record import NamedTuple
from spoonproof.site import census

if TYPE_CHECKING:
    from spoonproof.model.recipe import Recipe

Media = tuple[str, str]
"""The folder where a photograph or video is looked for first, and its name as a recipe gives it."""


def media_of(recipe: Recipe) -> tuple[Media, ...]:
    """The photographs, video and captions that a recipe names."""
    video = recipe.video
    films = [name for name in (video.file, video.captions) if name] if video is not None else []
    return *(("pictures", picture.file) for picture in recipe.pictures), *(("videos", name) for name in films)


Tell = Callable[[int, int, str], object]
"""Hears how far a build is: things done, of how many, and what is being done."""


def silent(_done: int, _of: int, _doing: str) -> None:
    """Where nobody wants to know."""


class Said(NamedTuple):
    """What a build tells: what was made and what is to be known of it, a line for each recipe left out, and the exit
    code. The lines hold what people wrote as it is."""

    out: tuple[str, ...]
    errors: tuple[str, ...]
    code: int


def stands(root: Path, out: Path, counted: census.Census) -> Said | None:
    """What the last build said, where the site it left is the one that would be made now; None in any doubt."""
    try:
        kept = json.loads(_shelf(root).get(_key(out)) or b"null")
        if kept is None or kept["from"] != _made_from(root, counted, kept["media"]) or kept["site"] != _site(out):
            return None
        return Said(tuple(kept["out"]), tuple(kept["errors"]), kept["code"])
    except (ValueError, TypeError, KeyError, OSError, RecursionError):
        return None


def keep(root: Path, out: Path, counted: census.Census, media: Iterable[Media], said: Said) -> None:
    """Keep what a build said, where nothing it was made from was touched since it was ``counted``."""
    try:
        media = sorted(media)
        made_from = _made_from(root, counted, media)
        site = _site(out, patient=True)
    except OSError:
        return
    if site is not None and counted.holds() and counted.ours_hold():
        kept = {"from": made_from, "media": media, "site": site, **said._asdict()}
        _shelf(root).put(_key(out), json.dumps(kept).encode())


def _shelf(root: Path) -> Cache:
    return Cache(root, "standing", sealed=True)


def _key(out: Path) -> str:
    return hashed(os.path.realpath(out))


def _made_from(root: Path, counted: census.Census, media: Sequence[Media]) -> str:
    recipes = [part for pair in counted.recipes.items() for part in pair]
    return hashed(counted.shared, *recipes, "", *(part for one in media for part in (*one, census.media(root, *one))))


def _site(out: Path, patient: bool = False) -> str | None:
    """The hash of the stamps of every file of a site; None where it is a link, where the remains of a killed build lie
    beside it, or where its files were touched just now (``patient``: that is waited for)."""
    if out.is_symlink() or any(os.path.lexists(out.parent / f".{out.name}.{left}") for left in ("new", "old")):
        return None
    now = time.time_ns()
    last = 0
    found = blake2b(digest_size=16)
    for path, status in census.tree(os.fspath(out)):
        stamp = census.stamp_of(status)
        last = max(last, stamp[3])
        found.update(f"{path} {stamp}\n".encode("utf-8", "surrogatepass"))
    if census.settled(last, now):
        return found.hexdigest()
    if not patient:
        return None
    time.sleep(census.TICK / 1e9)
    return _site(out)
