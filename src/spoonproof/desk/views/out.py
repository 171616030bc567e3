"""Out: publish the site and make film packages, with what is being done and a way to stop it."""

from __future__ import annotations

from pathlib import Path

from starlette.responses import JSONResponse, RedirectResponse, Response

from spoonproof.desk.ask import Ask, BadRequest
from spoonproof.desk.desk import Desk
from spoonproof.desk.guard import INERT
from spoonproof.desk.shelf import NoSuchRecipe

TYPES = {
    ".html": "text/html", ".css": "text/css", ".svg": "image/svg+xml", ".png": "image/png", ".jpg": "image/jpeg",
    ".jpeg": "image/jpeg", ".webp": "image/webp", ".avif": "image/avif", ".xml": "application/xml",
    ".json": "application/json", ".txt": "text/plain",
}  # fmt: skip
"""What a made page may consist of; scripts rest while a page is looked at on the desk."""


def out(desk: Desk, _ask: Ask) -> Response:
    """What can be made, what is being made, and where it lies."""
    site = desk.root / "out" / "site" / "index.html"
    film = desk.root / "out" / "film"
    packages = sorted(path.parent.name for path in film.glob("*/script.html"))
    keys = [desk.shelf.key(path) for path in desk.shelf.folder().recipe_paths]
    work = desk.bench.work.told() if desk.bench.work is not None else None
    return desk.page(
        "out.html", "/out", work=work, published=site.is_file(), packages=packages, keys=keys, root=str(desk.root)
    )


def start(desk: Desk, ask: Ask) -> Response:
    """Set to work on what the form asks for."""
    if ask.text("what") == "publish":
        begun = desk.bench.start("Publishing the site", "publish")
    else:
        key = ask.text("key").strip()
        try:
            desk.shelf.path(key)
        except NoSuchRecipe:
            raise BadRequest("There is no such recipe in this channel; choose one of the list.") from None
        begun = desk.bench.start(f"The film package of {key}", "shoot", key)
    if not begun:
        raise BadRequest("Something is being made already. Wait for it, or stop it.", 409)
    return RedirectResponse("/out", 303)


def stop(desk: Desk, _ask: Ask) -> Response:
    """Stop what is being made."""
    desk.bench.stop()
    return RedirectResponse("/out", 303)


def state(desk: Desk, _ask: Ask) -> Response:
    """What is being made: as a piece of the page, and whether it goes on."""
    work = desk.bench.work.told() if desk.bench.work is not None else None
    return JSONResponse({"html": desk.part("work.html", work=work), "state": work["state"] if work else "none"})


def site(desk: Desk, ask: Ask) -> Response:
    """A file of the published site, to look at: it can't do anything."""
    base = desk.root / "out" / "site"
    return made(base, ask.params["file"] or "index.html")


def made(base: Path, name: str) -> Response:
    """A file under ``base``, inert. Nothing outside it, nothing hidden, nothing of another kind."""
    parts = name.split("/")
    path = base.joinpath(*parts)
    usual = all(part and not part.startswith(".") and "\\" not in part and part.isprintable() for part in parts)
    if not usual or path.suffix not in TYPES or not path.is_file() or not path.resolve().is_relative_to(base.resolve()):
        raise BadRequest("There is no such file among what was made.", 404)
    return inert(path.read_bytes(), path.suffix)


def inert(data: bytes, suffix: str) -> Response:
    """Something made, to be looked at."""
    return Response(data, media_type=TYPES[suffix], headers={"content-security-policy": INERT})
