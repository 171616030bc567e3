"""The desk's addresses, and what is said when something can't be answered."""

from __future__ import annotations

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, Response
from starlette.routing import Route
from starlette.types import ASGIApp

from spoonproof.desk.ask import Ask, BadRequest, OurFault, View, endpoint
from spoonproof.desk.desk import Desk
from spoonproof.desk.guard import Guard
from spoonproof.desk.shelf import NoSuchRecipe
from spoonproof.desk.views import listen, out, planning, recipes, register, review, see, write
from spoonproof.folder import TooManyFiles
from spoonproof.reading.bundle import bundle_root

_OWN = {"look.css": "look.css", "desk.css": "desk/desk.css", "desk.js": "desk/desk.js", "icon.svg": "icon.svg"}
_TYPES = {"css": "text/css", "js": "text/javascript", "svg": "image/svg+xml"}

VIEWS: tuple[tuple[str, str, View], ...] = (
    ("GET", "/", recipes.listed),
    ("POST", "/recipes", recipes.started),
    ("GET", "/state/{key:path}", recipes.state),
    ("GET", "/write/{key:path}", write.opened),
    ("POST", "/write/{key:path}", write.saved_by_form),
    ("POST", "/read/{key:path}", write.read_aloud),
    ("POST", "/save/{key:path}", write.saved),
    ("POST", "/mend/{key:path}", write.mended),
    ("POST", "/form/{key:path}", write.formed),
    ("POST", "/forget/{key:path}", write.forgotten),
    ("GET", "/stamp/{key:path}", write.stamp),
    ("GET", "/see/{key:path}", see.seen),
    ("GET", "/film/{key:path}/{page}.html", see.film),
    ("GET", "/shown/{name}/{file:path}", see.shown),
    ("GET", "/review/{key:path}", review.sheet),
    ("POST", "/review/{key:path}", review.signed),
    ("GET", "/listen", listen.listen),
    ("POST", "/listen", listen.listen),
    ("GET", "/comments", listen.comments),
    ("POST", "/comments", listen.comments),
    ("GET", "/register", register.browse),
    ("GET", "/register/add", register.add),
    ("POST", "/register/add", register.add),
    ("GET", "/register/{entry:path}", register.entry),
    ("GET", "/new-foods", planning.new_foods),
    ("GET", "/filming-day", planning.filming_day),
    ("GET", "/out", out.out),
    ("POST", "/out/start", out.start),
    ("POST", "/out/stop", out.stop),
    ("GET", "/out/state", out.state),
    ("GET", "/site/{file:path}", out.site),
)

READS = frozenset({
    recipes.state, write.opened, write.read_aloud, write.mended, write.formed, see.seen, see.film, review.sheet,
    listen.listen, listen.comments, planning.new_foods, planning.filming_day,
})  # fmt: skip
"""Views that read and judge whole texts: they wait for their turn; all others, and every save, wait for nobody."""


def make_app(desk: Desk, token: str, port: int) -> ASGIApp:
    """The desk as an ASGI app behind its guard."""

    async def unusable(request: Request, error: Exception) -> Response:
        if isinstance(error, BadRequest):
            return _said(desk, request, str(error), error.code)
        if isinstance(error, NoSuchRecipe):
            return _said(desk, request, "There is no such recipe in this channel.", 404)
        if isinstance(error, TooManyFiles):
            return _said(desk, request, str(error), 413)
        if isinstance(error, HTTPException):
            return _said(desk, request, "There is no such page on the desk.", error.status_code)
        if isinstance(error, OSError):
            words = f"The machine said no: {error.strerror or error}. Nothing was left half-written."
            return _said(desk, request, words, 500)
        return _said(desk, request, f"A fault of ours, not yours: {error}. Nothing was left half-written.", 500)

    handlers = dict.fromkeys((BadRequest, NoSuchRecipe, HTTPException, OSError, TooManyFiles, OurFault), unusable)
    routes = [Route(path, endpoint(desk, view, view in READS), methods=[method]) for method, path, view in VIEWS]
    routes.append(Route("/own/{file}", endpoint(desk, _own)))
    app = Starlette(routes=routes, exception_handlers=handlers)
    return Guard(app, token, port)


def _own(_desk: Desk, ask: Ask) -> Response:
    """The desk's own style, script and icon."""
    name = _OWN.get(ask.params["file"])
    if name is None:
        raise HTTPException(404)
    data = (bundle_root() / "site" / name).read_bytes()
    return Response(data, media_type=_TYPES[name.rpartition(".")[2]])


def _said(desk: Desk, request: Request, words: str, code: int) -> Response:
    if "application/json" in request.headers.get("content-type", ""):
        return JSONResponse({"wrong": words}, code)
    try:
        return desk.page("wrong.html", "", code, words=words)
    except Exception:  # the channel itself may be what can't be read
        return PlainTextResponse(f"{words}\n", code)
