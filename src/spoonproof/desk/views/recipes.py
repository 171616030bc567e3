"""The list of recipes, fifty at a time, and the start of a new one."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import quote

from starlette.responses import JSONResponse, RedirectResponse, Response

from spoonproof.desk import live
from spoonproof.desk.ask import Ask, BadRequest
from spoonproof.desk.desk import Desk
from spoonproof.desk.shelf import DeskFolder
from spoonproof.model.record import dataclass

EACH = 50
"""Recipes on a page of the list."""


@dataclass(frozen=True, slots=True)
class Listed:
    """A recipe in the list."""

    key: str
    title: str
    ages: str
    texture: str
    draft: bool
    readable: bool


def listed(desk: Desk, ask: Ask) -> Response:
    """The list; ``find``: words that must all stand in the file or its name; ``page`` from 1."""
    folder = desk.shelf.folder()
    words = ask.asked("find")
    paths = [path for path in folder.recipe_paths if _addressed(desk, path)]
    found = [path for path in paths if _holds(desk, path, words)] if words else paths
    pages = max(1, -(-len(found) // EACH))
    number = min(ask.number("page"), pages)
    rows = [_row(desk, folder, path) for path in found[(number - 1) * EACH : number * EACH]]
    return desk.page(
        "recipes.html", "/", rows=rows, find=words, number=number, pages=pages, found=len(found), all=len(paths)
    )


def _addressed(desk: Desk, path: Path) -> bool:
    return not any(part.startswith(".") for part in path.relative_to(desk.root / "recipes").parts)


def _holds(desk: Desk, path: Path, words: str) -> bool:
    wanted = words.casefold().split()
    name = desk.shelf.key(path).casefold()
    if all(word in name for word in wanted):
        return True
    try:
        text = path.read_bytes()[: 1 << 20].decode("utf-8", "replace").casefold()
    except OSError:
        return False
    return all(word in text or word in name for word in wanted)


def _row(desk: Desk, folder: DeskFolder, path: Path) -> Listed:
    key = desk.shelf.key(path)
    recipe = folder.read(path).recipe
    if recipe is None:
        return Listed(key, key, "", "", False, False)
    texture = recipe.texture.value if recipe.texture else ""
    return Listed(key, recipe.title.value or key, recipe.ages.told, texture, recipe.draft, True)


def state(desk: Desk, ask: Ask) -> Response:
    """How many findings of each level a recipe has, for the list."""
    folder = desk.shelf.folder()
    file = folder.read(desk.shelf.path(ask.params["key"]))
    return JSONResponse(live.counted(live.findings_of(folder, file)))


def started(desk: Desk, ask: Ask) -> Response:
    """A new recipe from the starter, opened for writing; one that is there is never written over."""
    from spoonproof.reading.edits import yaml_text
    from spoonproof.reading.files import write_atomically
    from spoonproof.reading.slugs import slug_problem, suggested
    from spoonproof.starters import RECIPE

    name = " ".join(ask.text("name").split())[:120]
    slug = suggested(name)
    if not slug or (problem := slug_problem(slug)):
        why = f": {problem}" if slug else ""
        raise BadRequest(f"“{name}” can’t be made a file name{why}. Give the recipe another name.")
    path = desk.root / "recipes" / f"{slug}.md"
    if path.exists():
        raise BadRequest(f"There is a recipe called {slug} already. Give this one another name.", 409)
    path.parent.mkdir(parents=True, exist_ok=True)
    write_atomically(path, RECIPE.format(title=yaml_text(name[:1].upper() + name[1:])).encode("utf-8"))
    return RedirectResponse(f"/write/{quote(slug)}", 303)
