"""Write: the recipe's text with its reading beside it, saved without losing anybody's edit."""

from __future__ import annotations

import secrets
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from starlette.responses import JSONResponse, RedirectResponse, Response

from spoonproof.desk import live, saving
from spoonproof.desk.ask import Ask, BadRequest
from spoonproof.desk.desk import Desk, address
from spoonproof.desk.shelf import MOST_CHARACTERS
from spoonproof.model.text import Document
from spoonproof.model.tree import Mapped, Scalar

FORM = ("title", "ages", "texture", "makes", "keeps")
"""Keys of the head that the form offers."""


def opened(desk: Desk, ask: Ask) -> Response:
    """The page to write on; ``unsaved`` takes up what was typed in another window and never saved."""
    key = ask.params["key"]
    path = desk.shelf.path(key)
    try:
        disk = saving.on_disk(path)
    except UnicodeDecodeError:
        raise BadRequest("This file is not UTF-8 text. Save it as UTF-8 first.") from None
    left = [each for each in saving.unsaved_of(desk.root, key) if each.text != disk.text]
    taken = next((each for each in left if each.window == ask.asked("unsaved")), None)
    if taken is not None:
        return _page(desk, key, (taken.text, taken.base, taken.base_text), taken.window)
    return _page(desk, key, (disk.text, disk.digest, disk.text), secrets.token_hex(6), left[:3])


def _page(
    desk: Desk,
    key: str,
    texts: tuple[str, str, str],
    window: str,
    unsaved: Sequence[saving.Unsaved] = (),
    outcome: saving.Saved | None = None,
) -> Response:
    """The page to write on. ``texts``: the text, and the digest and the text of the file it was made from."""
    path = desk.shelf.path(key)
    text, base, base_text = texts
    reading = live.read(desk.shelf.folder(), path, text)
    return desk.page(
        "write.html",
        "/",
        409 if outcome is not None and outcome.how == "clash" else 200,
        key=key,
        text=text,
        base=base,
        base_text=base_text,
        window=window,
        reading=reading,
        marks=_marks(reading),
        form=form_of(path, text),
        unsaved=unsaved,
        outcome=outcome,
    )


def saved_by_form(desk: Desk, ask: Ask) -> Response:
    """A save without the script: the page again, with what came of it."""
    key = ask.params["key"]
    path = desk.shelf.path(key)
    text = _text(ask)
    outcome = saving.save(path, text, ask.text("base"), ask.text("base_text"))
    window = ask.text("window")
    if outcome.how == "saved":
        saving.forget_unsaved(desk.root, key, window)
        return RedirectResponse(f"/write/{address(key)}", 303)
    return _page(desk, key, (outcome.text, outcome.base, outcome.base_text), window, outcome=outcome)


def read_aloud(desk: Desk, ask: Ask) -> Response:
    """The reading of a text as it is typed; the text is kept until it is saved."""
    key = ask.params["key"]
    path = desk.shelf.path(key)
    text = _text(ask)
    kept = saving.Unsaved(ask.text("window"), text, ask.text("base"), ask.text("base_text"))
    if len(kept.base_text) <= MOST_CHARACTERS:
        saving.keep_unsaved(desk.root, key, kept)
    return JSONResponse(_answer(desk, path, text))


def saved(desk: Desk, ask: Ask) -> Response:
    """A save from the script: what came of it, and what the editor should hold."""
    key = ask.params["key"]
    path = desk.shelf.path(key)
    outcome = saving.save(path, _text(ask), ask.text("base"), ask.text("base_text"))
    if outcome.how != "clash":
        saving.forget_unsaved(desk.root, key, ask.text("window"))
    answer: dict[str, Any] = {"how": outcome.how, "base": outcome.base, "base_text": outcome.base_text}
    if outcome.how != "saved":
        answer |= {"text": outcome.text, "told": desk.part("outcome.html", outcome=outcome)}
        answer |= _answer(desk, path, outcome.text)
    return JSONResponse(answer, 409 if outcome.how == "clash" else 200)


def mended(desk: Desk, ask: Ask) -> Response:
    """The text with one remedy, or the wording of one claim, in its place."""
    path = desk.shelf.path(ask.params["key"])
    text = live.mended(desk.shelf.folder(), path, _text(ask), ask.text("remedy"))
    if text is None:
        raise BadRequest("The text has moved on since; the reading is being made again.", 409)
    return JSONResponse({"text": text, **_answer(desk, path, text)})


def formed(desk: Desk, ask: Ask) -> Response:
    """The text with one key of the head set by form; everything else of it stays as it is."""
    from spoonproof.reading.edits import with_value

    path = desk.shelf.path(ask.params["key"])
    name, value = ask.text("name"), " ".join(ask.text("value").split())
    if name not in FORM:
        raise BadRequest("The form does not know this key.")
    text = _text(ask)
    if not value and name not in form_of(path, text)[1]:
        raise BadRequest(f"{name} is not in the text, so there is nothing to take out.")
    try:
        text = with_value(Document(path.name, text), [name], value or None)
    except (ValueError, KeyError):
        raise BadRequest("The head of the recipe can't be read as it is; put that right in the text first.") from None
    return JSONResponse({"text": text, **_answer(desk, path, text)})


def forgotten(desk: Desk, ask: Ask) -> Response:
    """Throw away what was typed in a window and never saved."""
    key = ask.params["key"]
    desk.shelf.path(key)
    saving.forget_unsaved(desk.root, key, ask.text("window"))
    return RedirectResponse(f"/write/{address(key)}", 303)


def stamp(desk: Desk, ask: Ask) -> Response:
    """What tells the file's content now from its content before."""
    return JSONResponse({"stamp": saving.on_disk(desk.shelf.path(ask.params["key"])).digest})


def form_of(path: Path, text: str) -> tuple[dict[str, str], frozenset[str]]:
    """What the form shows: the keys that are plain texts (or not there yet), and those that are there."""
    from spoonproof.reading.front_matter import split_head
    from spoonproof.reading.yaml_tree import read_yaml

    document = Document(path.name, text)
    head = split_head(document)[0]
    root = read_yaml(document, head)[0] if head is not None else None
    if not isinstance(root, Mapped):
        return {}, frozenset()
    found = {name: root.get(name) for name in FORM}
    values = {name: node.value if isinstance(node, Scalar) else "" for name, node in found.items()}
    plain = {name: value for name, value in values.items() if found[name] is None or isinstance(found[name], Scalar)}
    return plain, frozenset(name for name, node in found.items() if node is not None)


def _answer(desk: Desk, path: Path, text: str) -> dict[str, Any]:
    reading = live.read(desk.shelf.folder(), path, text)
    return {
        "reading": desk.part("reading.html", reading=reading),
        "marks": _marks(reading),
        "form": form_of(path, text)[0],
        "counts": dict(reading.counts),
    }


def _marks(reading: live.Reading) -> list[list[object]]:
    """Claims to underline: where, whether it may stand, and which entry of the list it opens."""
    return [[claim.start, claim.end, "keep" if claim.keep else "mend", claim.key] for claim in reading.claims]


def _text(ask: Ask) -> str:
    text = saving.plain(ask.text("text"))
    if len(text) > MOST_CHARACTERS:
        raise BadRequest("This text is longer than a recipe file may be.", 413)
    return text
