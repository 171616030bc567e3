"""Slugs: the names that recipes are addressed by, good as a file name on every system; and recipes called by their
titles."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from pathlib import PurePosixPath

from spoonproof.model.finding import Finding, Related
from spoonproof.model.recipe import Recipe
from spoonproof.model.record import replace
from spoonproof.model.text import Document
from spoonproof.reading import limits
from spoonproof.reading.faults import fault, quoted

_SLUG = re.compile(rf"[a-z0-9-]{{1,{limits.SLUG_CHARACTERS}}}")
# Names that Windows keeps for devices, whatever the suffix.
_DEVICES = frozenset(("con", "prn", "aux", "nul", *(f"com{n}" for n in range(10)), *(f"lpt{n}" for n in range(10))))
# Pages the site makes itself.
_PAGES = frozenset(
    "index 404 about search season tags ages textures allergens calendar corrections sources feed sitemap robots "
    "assets static print recipes".split()
)


def slug_of(document: Document) -> str:
    """The slug that a recipe's file name gives, as written."""
    name = PurePosixPath(document.path.replace("\\", "/")).name
    return unicodedata.normalize("NFC", name[:-3] if name.lower().endswith(".md") else name)


def slug_problem(slug: str) -> str:
    """Why a name is no slug, "" when it is one."""
    if slug in _DEVICES:
        return f"{quoted(slug)} is kept for a device on some systems"
    if slug in _PAGES:
        return f"{quoted(slug)} is the name of a page the site makes itself"
    if not slug:
        return "the name is empty"
    if len(slug) > limits.SLUG_CHARACTERS:
        return f"the name is longer than {limits.SLUG_CHARACTERS} characters"
    if not _SLUG.fullmatch(slug):
        return f"{quoted(slug[:80])} has more in it than small letters a to z, digits and hyphens"
    if slug.startswith("-") or slug.endswith("-"):
        return f"{quoted(slug)} starts or ends with a hyphen"
    return ""


def suggested(name: str) -> str:
    """A slug near to ``name``: accents off, everything else hyphens."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]{1,200}", "-", plain.lower())[: limits.SLUG_CHARACTERS].strip("-")


def evened(path: str) -> str:
    """The slug of a recipe's file with capitals and ways to write accents evened out."""
    return unicodedata.normalize("NFKC", slug_of(Document(path, ""))).casefold()


def clashes(documents: Iterable[Document]) -> list[Finding]:
    """Recipes whose slugs are one and the same once capitals and ways to write accents are evened out."""
    first: dict[str, Document] = {}
    findings = []
    for document in documents:
        other = first.setdefault(evened(document.path), document)
        if other is not document:
            message = f"This recipe has the same name as {other.path}. Rename one of the two files."
            related = (Related(other, other.whole, "the other one"),)
            findings.append(fault("duplicate-id", document, document.whole, message, related=related))
    return findings


_TITLE_WITHIN = 4_000  # characters of a file in which its title stands


def title_in(text: str) -> str:
    """The title in the head of a recipe's text, found without reading the rest; "" where none stands on its line."""
    for line in text[:_TITLE_WITHIN].split("\n"):
        if line.startswith("title:"):
            return line[6:].strip().strip("\"'").strip()
    return ""


def slugs_by_title(titles: Iterable[tuple[str, str]]) -> Mapping[str, tuple[str, ...]]:
    """From pairs of slug and title, the slugs that have a title: keyed by the title as a slug, capitals evened out."""
    found: dict[str, tuple[str, ...]] = {}
    for slug, title in titles:
        name = suggested(title)
        if name:
            found[name] = (*found.get(name, ()), slug)
    return found


def with_slugs(recipe: Recipe, by_title: Mapping[str, tuple[str, ...]], slugs: Mapping[str, object]) -> Recipe:
    """``recipe`` with the slug in the place of each title that one recipe alone has; the rest as it stands."""
    foods = tuple(
        replace(line, recipe=named[0])
        if line.recipe and line.recipe not in slugs and len(named := by_title.get(line.recipe, ())) == 1
        else line
        for line in recipe.foods
    )
    return replace(recipe, foods=foods) if foods != recipe.foods else recipe
