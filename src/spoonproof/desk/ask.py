"""One request as a view gets it: its address, its query, and what was sent, read with limits."""

from __future__ import annotations

import json
import os
import re
import traceback
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any
from urllib.parse import parse_qs

from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request
from starlette.responses import Response

from spoonproof.desk.shelf import NoSuchRecipe
from spoonproof.desk.turns import TooMany
from spoonproof.folder import TooManyFiles
from spoonproof.model.record import dataclass, field

if TYPE_CHECKING:
    from spoonproof.desk.desk import Desk

MOST_BYTES = 8 << 20
"""The largest body: two copies of a recipe's text, or a long film's captions."""
_MOST_FIELDS = 6000
_HALF = re.compile("[\ud800-\udfff]")


class BadRequest(Exception):
    """What was sent can't be used; the message says why, for a person. ``code`` is the HTTP status."""

    def __init__(self, words: str, code: int = 400) -> None:
        super().__init__(words)
        self.code = code


class OurFault(Exception):
    """Something of ours broke; the message says what and where."""


@dataclass(frozen=True, slots=True)
class Ask:
    """``fields``: a form's, each a list; ``sent``: what the script sent."""

    method: str
    path: str
    params: Mapping[str, str]
    query: Mapping[str, list[str]]
    fields: Mapping[str, list[str]] = field(default_factory=dict)
    sent: Mapping[str, Any] = field(default_factory=dict)

    def asked(self, name: str) -> str:
        """The first value of a query parameter, or ""."""
        return self.query.get(name, [""])[0].strip()

    def number(self, name: str) -> int:
        """The number of a query parameter, from 1 to 999,999,999; 1 where none is given."""
        digits = self.asked(name)
        return min(max(1, int(digits[:10])), 999_999_999) if digits.isdecimal() else 1

    def text(self, name: str) -> str:
        """A text of the form or of what the script sent. Raises BadRequest when it is no text that can be written."""
        if name in self.fields:
            return self.fields[name][0]
        value = self.sent.get(name, "")
        if not isinstance(value, str):
            raise BadRequest(f"{name} should be a text")
        if not value.isascii() and _HALF.search(value):
            raise BadRequest("The text holds half of a character, as a cut emoji leaves it. Take it out.")
        return value


View = Callable[["Desk", Ask], Response]


def endpoint(desk: Desk, view: View, reads: bool = False) -> Callable[[Request], Any]:
    """A view as Starlette calls it: body read with limits, work done off the loop, in its turn where it ``reads``."""

    async def answer(request: Request) -> Response:
        fields: Mapping[str, list[str]] = {}
        sent: Mapping[str, Any] = {}
        if request.method == "POST":
            try:
                body = await _body(request)
            except ClientDisconnect:  # a page that was closed while it sent: nobody is there to be told
                return Response(status_code=400)
            kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
            if kind == "application/json":
                sent = _json(body)
            elif kind == "application/x-www-form-urlencoded":
                fields = _fields(body)
            elif body:
                raise BadRequest("The desk can't read what was sent.", 415)
        query = _fields(request.url.query.encode("utf-8", "replace"))
        ask = Ask(request.method, request.url.path, request.path_params, query, fields, sent)
        if not reads:
            return await run_in_threadpool(_seen_to, view, desk, ask)
        window = sent.get("window", "")
        who = f"{ask.path} {window}" if window and ask.path.startswith("/read/") else ""
        try:
            async with desk.turns.turn(who) as newest:
                if not newest:
                    raise BadRequest("A later text of this window is read instead.", 409)
                return await run_in_threadpool(_seen_to, view, desk, ask)
        except TooMany:
            raise BadRequest("The desk has more to read than it can. Wait a little, then try again.", 503) from None

    return answer


def _seen_to(view: View, desk: Desk, ask: Ask) -> Response:
    """The view's answer; a fault of ours is told as one, never as a traceback."""
    try:
        return view(desk, ask)
    except (BadRequest, NoSuchRecipe, HTTPException, TooManyFiles, OSError):
        raise
    except Exception as error:
        if os.environ.get("SPOONPROOF_DEBUG"):
            traceback.print_exc()
        frame = traceback.extract_tb(error.__traceback__)[-1]
        place = f"{frame.filename.rpartition('spoonproof/')[2]}:{frame.lineno}"
        raise OurFault(f"{type(error).__name__}: {error} (at {place})") from error


async def _body(request: Request) -> bytes:
    got = bytearray()
    async for chunk in request.stream():
        got += chunk
        if len(got) > MOST_BYTES:
            raise BadRequest("That is more text than the desk takes at once.", 413)
    return bytes(got)


def _json(body: bytes) -> Mapping[str, Any]:
    try:
        sent = json.loads(body)
    except (ValueError, RecursionError):
        raise BadRequest("The desk can't read what was sent.") from None
    if not isinstance(sent, dict):
        raise BadRequest("The desk can't read what was sent.")
    return sent


def _fields(body: bytes) -> Mapping[str, list[str]]:
    try:
        return parse_qs(body.decode("utf-8"), keep_blank_values=True, max_num_fields=_MOST_FIELDS)
    except ValueError:
        raise BadRequest("The desk can't read what was sent.") from None
