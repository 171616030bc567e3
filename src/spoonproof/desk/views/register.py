"""Register: browse and search its entries, and add one of the channel's own with its source."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import timedelta
from typing import get_args

from starlette.responses import RedirectResponse, Response

from spoonproof.claims.entries import Entry
from spoonproof.desk import entry_form, live
from spoonproof.desk.ask import Ask, BadRequest
from spoonproof.desk.desk import Desk, address
from spoonproof.model.citation import short
from spoonproof.model.claim import Kind

EACH = 60
"""Entries on a page."""


def browse(desk: Desk, ask: Ask) -> Response:
    """Entries that hold all the words asked for; ``page`` from 1."""
    from spoonproof.clock import today

    register = desk.shelf.folder().knowledge.register
    words = ask.asked("find").casefold().split()
    found = [entry for entry in register.entries if all(word in _text(entry) for word in words)]
    if ask.asked("due"):
        late = {entry.id for entry in register.due(today().isoformat())}
        found = [entry for entry in found if entry.id in late]
    pages = max(1, -(-len(found) // EACH))
    number = min(ask.number("page"), pages)
    return desk.page(
        "register.html",
        "/register",
        entries=found[(number - 1) * EACH : number * EACH],
        find=ask.asked("find"),
        due=bool(ask.asked("due")),
        found=len(found),
        all=len(register.entries),
        number=number,
        pages=pages,
    )


def entry(desk: Desk, ask: Ask) -> Response:
    """One entry with its sources and its answers by market."""
    known = desk.shelf.folder().knowledge
    found = known.register.get(ask.params["entry"])
    if found is None:
        raise BadRequest("The register has no entry of this name.", 404)
    answers = [
        (
            ", ".join(allowance.markets),
            {"yes": "may be said", "with-wording": "in the law’s words", "no": "may not be said"}[allowance.answer],
            allowance.why,
            live.cited(allowance.refs, known.sources),
        )
        for allowance in found.allowed
    ]
    return desk.page(
        "entry.html", "/register", entry=found, sources=live.cited(found.refs, known.sources), answers=answers
    )


def add(desk: Desk, ask: Ask) -> Response:
    """The form for an entry of her own; once the register has checked itself with it, it is saved."""
    from spoonproof.clock import today

    known = desk.shelf.folder().knowledge
    given = {name: ask.text(name) for name in entry_form.FIELDS}
    wrong: list[str] = []
    if ask.method == "POST":
        wrong = entry_form.save(desk.root, known, given)
        if not wrong:
            return RedirectResponse(f"/register/{address(entry_form.name_of(given['id']))}", 303)
    else:
        given["checked"] = today().isoformat()
        given["due"] = (today() + timedelta(days=365)).isoformat()
    return desk.page(
        "register_add.html",
        "/register",
        422 if wrong else 200,
        given=given,
        wrong=wrong,
        kinds=get_args(Kind),
        sources=_sources(known.sources),
    )


def _sources(sources: Mapping[str, Mapping[str, object]]) -> list[tuple[str, str]]:
    listed = [(name, short(name, sources)) for name in sources]
    return sorted(listed, key=lambda each: re.sub(r"\W+", " ", each[1]).casefold())


def _text(entry: Entry) -> str:
    parts = (entry.id, *entry.about, *entry.said, *entry.effects, *entry.kinds, *entry.wording, entry.why)
    return " ".join(parts).casefold()
