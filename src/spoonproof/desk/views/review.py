"""Review: one page of open decisions for a dietitian, to print or to sign off; the sign-off names the version read."""

from __future__ import annotations

from starlette.responses import RedirectResponse, Response

from spoonproof.desk import live, saving
from spoonproof.desk.ask import Ask, BadRequest
from spoonproof.desk.desk import Desk, address
from spoonproof.desk.views.see import dish_of
from spoonproof.model.text import Document
from spoonproof.model.version import reviewed_version

_ASKED = frozenset({"baby", "words", "cooking"})
"""Areas whose findings a dietitian is asked about."""


def sheet(desk: Desk, ask: Ask) -> Response:
    """The page, for the recipe as its file is now."""
    key = ask.params["key"]
    path = desk.shelf.path(key)
    dish = dish_of(desk, key)
    folder = desk.shelf.folder()
    reading = live.reading_of(folder, folder.read(path))
    sources = folder.knowledge.sources
    recipe = dish.recipe
    version = reviewed_version(recipe)
    memory = [
        (view, [cite.words for cite in view.sources if "from memory" in cite.words])
        for view in (finding for group in reading.groups for finding in group.findings)
    ]
    return desk.page(
        "review.html",
        "/",
        key=key,
        dish=dish,
        reading=reading,
        version=version,
        base=saving.on_disk(path).digest,
        lapsed=recipe.review is not None and recipe.review.version != version,
        cautions=[(caution.text, live.cited([caution.source], sources)) for caution in dish.cautions],
        memory=[(view, words) for view, words in memory if words],
        open=[
            view for group in reading.groups if group.area in _ASKED for view in group.findings if view.level != "note"
        ],
        kept=[claim for claim in reading.claims if claim.keep],
    )


def signed(desk: Desk, ask: Ask) -> Response:
    """Write who read which version into the recipe; refused when the file is no longer what was read."""
    from spoonproof.clock import today
    from spoonproof.reading.edits import with_value

    key = ask.params["key"]
    path = desk.shelf.path(key)
    who = " ".join(ask.text("who").split())[:120]
    if not who:
        raise BadRequest("Who signs it off? Give a name.")
    dish = dish_of(desk, key)
    disk = saving.on_disk(path)
    if disk.digest != ask.text("base"):
        raise BadRequest("The recipe was changed since this page was opened. Read it again before signing it off.", 409)
    review = {"who": who, "on": today().isoformat(), "version": reviewed_version(dish.recipe)}
    try:
        text = with_value(Document(path.name, disk.text), ["review"], review)
    except (ValueError, KeyError):
        raise BadRequest("The head of the recipe can’t be changed as it is.", 409) from None
    outcome = saving.save(path, text, disk.digest, disk.text)
    if outcome.how != "saved":
        raise BadRequest("The recipe was changed this very moment. Read it again before signing it off.", 409)
    return RedirectResponse(f"/review/{address(key)}", 303)
