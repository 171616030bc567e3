"""Who may speak to the desk: this machine's own browser, with the token, from the desk's own pages; nobody else.

Against a name that another site lets point at this machine: the Host is checked. Against another site's forms and
scripts: Origin and Sec-Fetch-Site are checked, the cookie is SameSite=Strict. Against other people's programs on the
machine: the token. Every answer carries a policy that lets no page load or send anything elsewhere.
"""

from __future__ import annotations

import hmac
from collections.abc import Mapping
from http.cookies import CookieError, SimpleCookie
from typing import Any
from urllib.parse import parse_qs

from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

POLICY = (
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; "
    "frame-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
"""Nothing but the desk's own files: no inline code or style, no other address."""

INERT = "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self'; base-uri 'none'; form-action 'none'; "
INERT += "frame-ancestors 'self'"
"""For a page shown inside the desk (the site's page, the script): it may look as it does, and do nothing."""

RUNNING = INERT + "; script-src 'unsafe-inline'; sandbox allow-scripts"
"""For the prompter, which runs on its own: shut off from the desk, as a page from nowhere, and from every address."""

TOKEN_HEADER = "x-desk-token"
_HEADERS = {
    "cache-control": "no-store",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "referrer-policy": "same-origin",
    "x-content-type-options": "nosniff",
}


class Guard:
    """Lets through to ``app`` what comes from the desk's own pages."""

    def __init__(self, app: ASGIApp, token: str, port: int) -> None:
        """``port``: the one the server listens on."""
        self.app = app
        self.token = token
        self.hosts = frozenset({f"127.0.0.1:{port}", f"localhost:{port}"})
        self.cookie = f"desk-{port}"

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request: an answer of our own, or the app's with our headers."""
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        if scope["type"] != "http":
            return
        answer = self._answer(scope)
        await (answer or self.app)(scope, receive, _with_headers(send))

    def _answer(self, scope: Scope) -> Response | None:
        """The refusal, or the way in with a token; None for what may pass."""
        headers: dict[str, list[str]] = {}
        for name, value in scope["headers"]:
            headers.setdefault(name.decode("latin-1").lower(), []).append(value.decode("latin-1"))
        host = headers.get("host", [])
        if len(host) != 1 or host[0].lower() not in self.hosts:
            return _refused(421, "This is not the desk's address. Open the one that spoonproof desk printed.")
        if scope["method"] not in ("GET", "HEAD", "POST"):
            return _refused(405, "The desk does not know this method.")
        if any(site not in ("same-origin", "none") for site in headers.get("sec-fetch-site", [])):
            return _refused(403, "Another page tried to use the desk. Open the desk from its own address.")
        own = f"http://{host[0].lower()}"
        if any(origin.lower() != own for origin in headers.get("origin", [])):
            return _refused(403, "Another page tried to use the desk. Open the desk from its own address.")
        known = self._known(headers)
        if not known and scope["method"] == "GET" and scope["path"] == "/":
            given = parse_qs(scope["query_string"].decode("latin-1"), max_num_fields=8).get("token", [""])[0]
            if self._right(given):
                return self._let_in()
        if not known:
            return _refused(
                403, "The desk needs the address that spoonproof desk printed when it started, token and all."
            )
        if scope["method"] == "POST" and not headers.get("origin") and TOKEN_HEADER not in headers:
            return _refused(403, "A change has to come from one of the desk's own pages.")
        return None

    def _known(self, headers: Mapping[str, list[str]]) -> bool:
        if any(self._right(value) for value in headers.get(TOKEN_HEADER, [])):
            return True
        for line in headers.get("cookie", []):
            try:
                found = SimpleCookie(line).get(self.cookie)
            except CookieError:
                continue
            if found is not None and self._right(found.value):
                return True
        return False

    def _right(self, given: str) -> bool:
        return hmac.compare_digest(given.encode("utf-8", "replace"), self.token.encode())

    def _let_in(self) -> Response:
        answer = RedirectResponse("/", 303)
        answer.set_cookie(self.cookie, self.token, path="/", httponly=True, samesite="strict")
        return answer


def _refused(code: int, words: str) -> Response:
    return PlainTextResponse(f"{words}\n", code)


def _with_headers(send: Send) -> Send:
    async def wrapped(message: Message) -> None:
        if message["type"] == "http.response.start":
            present: list[tuple[bytes, bytes]] = list(message.get("headers", []))
            names = {name.lower() for name, _ in present}
            more: dict[str, Any] = {"content-security-policy": POLICY, **_HEADERS}
            present += [
                (name.encode(), str(value).encode()) for name, value in more.items() if name.encode() not in names
            ]
            message["headers"] = present
        await send(message)

    return wrapped
