"""Views to pages: Jinja2 over the theme, strict about names, with everything escaped.

Content is only ever a value: no text of a recipe is compiled as a template.
"""

from __future__ import annotations

import contextlib
import os
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import urlsplit

from spoonproof.model.remembered import WorkedOut
from spoonproof.pile import Taken
from spoonproof.reading.recipe_keys import MONTHS
from spoonproof.site import jsonld, sieve
from spoonproof.site.typeset import lasting, typeset
from spoonproof.site.view import Link, RecipePage, plain
from spoonproof.site.view_site import Filter, Site

if TYPE_CHECKING:
    from jinja2 import Environment

POLICY = (
    "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; media-src 'self'; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'"
)
"""The Content-Security-Policy of every page: nothing but the site's own files, no inline code or style."""


_NOT_IN_AN_ID = re.compile("[^a-z0-9-]")
_SLIPS = (ArithmeticError, AttributeError, LookupError, MemoryError, OSError, RecursionError, TypeError, ValueError)
"""What a template of a channel's own may run into: it adds a word to a number, or brings itself in."""


class ThemeError(Exception):
    """A file of the theme is missing or no text, or a template can't be compiled or asks for what is not there."""


class Theme:
    """The theme's folders, the channel's own first: a file there stands in for the bundled one."""

    def __init__(self, folders: Sequence[Path]) -> None:
        """``folders``: each may hold ``templates/`` and the files beside it."""
        self.folders = tuple(folders)

    def read(self, name: str) -> str | None:
        """A text file of the theme; None when no folder has it. Raises ThemeError for one that leads out of it or is
        no text."""
        found = self._found(name)
        return None if found is None else found[0]

    def _found(self, name: str) -> tuple[str, str] | None:
        """The text and its path."""
        for folder in self.folders:
            path = folder / name
            if path.is_file():
                if not path.resolve().is_relative_to(folder.parent.resolve() / folder.name):
                    raise ThemeError(f"{folder.name}/{name} leads out of the theme's folder, and is not followed")
                try:
                    return path.read_text(encoding="utf-8"), os.fspath(path)
                except UnicodeDecodeError:
                    raise ThemeError(f"{folder.name}/{name} is not UTF-8 text") from None
        return None

    def _template(self, name: str) -> tuple[str, str, None] | None:
        found = self._found(f"templates/{name}")
        return None if found is None else (*found, None)

    def environment(self) -> Environment:
        """Jinja2 with autoescape and StrictUndefined over the theme's templates; a channel's own in a sandbox.

        A channel may come from anybody: its templates reach the values they are given, never Python behind them.
        """
        from jinja2 import Environment, FunctionLoader, StrictUndefined
        from jinja2.sandbox import ImmutableSandboxedEnvironment

        env = (Environment if len(self.folders) == 1 else ImmutableSandboxedEnvironment)(
            loader=FunctionLoader(self._template),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            auto_reload=False,
        )
        env.filters["clock"] = clock
        env.filters["day"] = day
        env.filters["short"] = sieve.short
        env.filters["anchor"] = anchor
        env.filters["host"] = host
        env.filters["lasting"] = lasting
        env.filters["set"] = WorkedOut(typeset).__getitem__  # most of what a page says, the others say too
        return env


def clock(seconds: float) -> str:
    """Seconds as m:ss."""
    whole = int(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def day(iso: str) -> str:
    """An ISO date as people read it ("2 November 2026"); text that is no date stays as it is."""
    parts = iso[:10].split("-")
    if len(parts) != 3 or not all(p.isascii() and p.isdigit() for p in parts) or not 1 <= int(parts[1]) <= 12:
        return iso
    return f"{int(parts[2])} {MONTHS[int(parts[1]) - 1]} {int(parts[0])}"


def anchor(text: str) -> str:
    """An id for an element: prefixed, so that no text of a person can name a property of the page."""
    return "at-" + _NOT_IN_AN_ID.sub("-", text.lower())


def host(address: str) -> str:
    """Whose site an address leads to ("nhs.uk")."""
    return (urlsplit(address).hostname or "").removeprefix("www.")


class Pages:
    """Renders the pages of one site."""

    def __init__(self, site: Site, theme: Theme) -> None:
        """Templates are compiled once and used for every page."""
        self.site = site
        self.env = theme.environment()
        if not site.language.lower().startswith("en"):
            self.env.filters["set"] = str  # other languages have marks of their own
        self.env.globals["rule_names"] = frozenset(rule.name for rule in site.rules)
        self.env.globals["entry_ids"] = frozenset(entry.id for entry in site.entries)
        self.menu = [Link("Recipes", "index.html")]
        if site.calendar is not None:
            self.menu.append(Link("New foods", "calendar.html"))
        self.menu.append(Link("Sources", "sources.html"))
        self.foot_menu = []
        if site.entries:
            self.foot_menu.append(Link("What we hold about health claims", "register.html"))
        if site.rules:
            self.foot_menu.append(Link("What every recipe is checked for", "rules.html"))

    def render(self, template: str, path: str, **values: Any) -> str:
        """One page at ``path`` (from the root). Raises ThemeError with the template's name and line."""
        with self._complaining(template):
            return self.env.get_template(template).render(**self._shared(path), **values)

    def pieces(self, template: str, path: str, **values: Any) -> Iterator[str]:
        """The page in its pieces, in order, each made when it is asked for. Raises ThemeError as ``render`` does."""
        with self._complaining(template):
            yield from self.env.get_template(template).generate(**self._shared(path), **values)

    def _shared(self, path: str) -> dict[str, Any]:
        """What every template is given."""
        return {
            "site": self.site,
            "path": path,
            "root": self._root(path),
            "policy": POLICY,
            "menu": self.menu,
            "foot_menu": self.foot_menu,
            "feed": True,
        }

    @contextlib.contextmanager
    def _complaining(self, template: str) -> Iterator[None]:
        """Raise ThemeError for what is wrong with a template."""
        from jinja2 import TemplateError, TemplateSyntaxError

        try:
            yield
        except TemplateSyntaxError as error:
            raise ThemeError(f"{error.name or template}, line {error.lineno}: {error.message}") from None
        except TemplateError as error:
            raise ThemeError(f"{_where(error, template)}: {error.message or type(error).__name__}") from None
        except _SLIPS as error:
            if not self.env.sandboxed:
                raise  # what goes wrong in a template of ours is our fault
            raise ThemeError(f"{_where(error, template)}: {type(error).__name__}: {error}") from None

    def _root(self, path: str) -> str:
        """What leads from a page to the site's root. The 404 page is shown at any depth, so it needs a whole path."""
        if path == "404.html" and self.site.base_url:
            return urlsplit(self.site.base_url).path.rstrip("/") + "/"
        return "../" * path.count("/")

    def recipe(self, page: RecipePage) -> str:
        """A recipe's page."""
        return self.render(
            "recipe.html",
            page.href,
            page=page,
            description=plain(page.summary) or f"{page.name}: {page.ages}, {page.texture}.",
            data=jsonld.blocks(page, self.site),
        )

    def index(self, every: Sequence[Filter]) -> Iterator[str]:
        """The front page with these filters, in its pieces."""
        recipes = self.site.recipes
        cards = Taken(range(len(recipes)), lambda at: sieve.card(recipes[at], every))
        return self.pieces("index.html", "index.html", cards=cards, filters=every, data=jsonld.index(self.site))

    def moved(self, number: int) -> Iterator[str]:
        """The page at a recipe's former address, in its pieces."""
        page = self.site.recipes[number]
        return self.pieces("moved.html", page.href, page=page)


def _where(error: Exception, template: str) -> str:
    """Template and line an error came from: the innermost frame of a template."""
    found = template
    trace = error.__traceback__
    while trace is not None:
        name = trace.tb_frame.f_code.co_filename
        if "/templates/" in name.replace("\\", "/"):
            found = f"{name.replace(chr(92), '/').rpartition('/templates/')[2]}, line {trace.tb_lineno}"
        trace = trace.tb_next
    return found
