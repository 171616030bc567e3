"""The author's Markdown as HTML that can hold no script: raw HTML off, link schemes by a short list.

The parser is the one the checks read with, so what is shown is what was checked. A statement that is
explained further down is marked in the text before it is parsed, with private-use characters that can't
come from the author (hers are replaced first), and turned into a link in the output.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from typing import Any

from markupsafe import Markup, escape

from spoonproof.model.record import NamedTuple
from spoonproof.reading.plain_prose import plain_paragraphs
from spoonproof.site.typeset import typeset

SCHEMES = ("https", "http", "mailto", "tel")
"""Where a link may lead; an address without a scheme stays on the site."""

_MARK_OPEN, _MARK_CLOSE, _DIGIT = "\ue000", "\ue001", 0xE010
_PRIVATE = re.compile("[\ue000-\ue01f]")
_IN_ADDRESS = re.compile("%EE%80%(?:8[01]|9[0-9])")  # the same, as an address spells them
_MARK = re.compile("\ue000([\ue010-\ue019]{1,6})\ue001")
_SCHEME = re.compile(r"([a-zA-Z][a-zA-Z0-9+.\-]{0,40}):")

RecipeLink = Callable[[str], str]
"""A recipe's slug to the address of its page, "" when it is not published."""


def safe_link(href: str) -> bool:
    """Whether a page may link there: a short list of schemes, or a place on the site itself."""
    # Browsers drop control characters and spaces before they look for a scheme; so do we.
    bare = "".join(c for c in href if c > " " and c != "\x7f")
    if not bare or bare.startswith(("//", "/\\", "\\")):
        return False
    scheme = _SCHEME.match(bare)
    return scheme is None or scheme[1].lower() in SCHEMES


def render(
    text: str, marks: Iterable[tuple[int, int]] = (), recipe_link: RecipeLink | None = None, *, curled: bool = True
) -> Markup:
    """HTML of ``text``. ``marks``: (offset after the statement, its number). ``recipe_link`` serves
    ``recipe:slug`` links; where it gives "" the words stay and the link goes. ``curled``: set English marks."""
    from spoonproof.reading.markdown import story_text

    parts: list[str] = []
    at = 0
    for offset, number in sorted(marks):
        offset = max(at, min(offset, len(text)))
        parts.append(_PRIVATE.sub("\ufffd", text[at:offset]))
        parts.append(_MARK_OPEN + "".join(chr(_DIGIT + int(d)) for d in str(number)) + _MARK_CLOSE)
        at = offset
    parts.append(_PRIVATE.sub("\ufffd", text[at:]))
    shown = story_text("".join(parts))
    html = _paragraphs(shown, typeset if curled else str)
    if html is None:
        html = _parsed(shown, recipe_link or (lambda _slug: ""), typeset if curled else str)
    return Markup(_PRIVATE.sub("", html))


def _paragraphs(text: str, typeset: Callable[[str], str]) -> str | None:
    """What the parser would make of a story of plain paragraphs, None for any other: it takes ten times as long."""
    paragraphs = plain_paragraphs((line, 0) for line in text.split("\n"))
    if paragraphs is None:
        return None
    told = ("\n".join(_set(line, typeset) for line, _ in paragraph) for paragraph in paragraphs)
    return "".join(f"<p>{words}</p>\n" for words in told)


def _parsed(text: str, recipe_link: RecipeLink, typeset: Callable[[str], str]) -> str:
    from spoonproof.reading.markdown import prose_parser

    parser = prose_parser()
    env: dict[str, Any] = {"recipe_link": recipe_link, "typeset": typeset}
    return str(_renderer().render(parser.parse(text, env), parser.options, env))


class Written(NamedTuple):
    """A whole page written in Markdown: its title and first paragraph in plain words, and all of it as HTML."""

    title: str
    told: str
    body: Markup


def whole(text: str, lead: Callable[[str], str]) -> Written:
    """A page that is Markdown from its title on: headings keep their level and get an id to link to.

    ``lead`` gives the address a relative link must have; "" takes the link away and leaves its words.
    """
    from spoonproof.reading.markdown import prose_parser

    parser = prose_parser()
    env: dict[str, Any] = {"recipe_link": lambda _slug: "", "lead": lead, "ids": {}, "typeset": typeset}
    tokens = parser.parse(_PRIVATE.sub("\ufffd", text), env)
    html = _renderer().render(tokens, parser.options, env)
    first = next((i for i, token in enumerate(tokens) if token.type == "paragraph_open"), None)
    title = _words(tokens[1]) if tokens and tokens[0].type == "heading_open" and tokens[0].tag == "h1" else ""
    return Written(title, _words(tokens[first + 1]) if first is not None else "", Markup(html))


def _words(token: Any) -> str:
    """An inline token without its marks."""
    kept = ("text", "text_special", "code_inline", "softbreak")
    parts = [" " if t.type == "softbreak" else t.content for t in token.children or () if t.type in kept]
    return " ".join("".join(parts).split())


def slug(text: str) -> str:
    """An id for a heading: its words in lower case, joined by hyphens."""
    return "-".join("".join(c if c.isalnum() else " " for c in text.lower()).split()) or "part"


@lru_cache(maxsize=1)
def _renderer() -> Any:
    from markdown_it.renderer import RendererHTML

    renderer = RendererHTML(None)
    rules: Any = renderer.rules
    rules.update(
        text=_text,
        text_special=_text,
        link_open=_link_open,
        image=_image,
        heading_open=_heading,
        heading_close=_heading,
        hr=lambda *_: "<hr>\n",
        hardbreak=lambda *_: "<br>\n",
        table_open=_table,
        table_close=_table,
        fence=_code,
        code_block=_code,
        html_block=_as_text,
        html_inline=_as_text,
    )
    return renderer


def _text(tokens: Sequence[Any], index: int, _options: Any, env: Any) -> str:
    return _set(tokens[index].content, env["typeset"])


def _set(text: str, typeset: Callable[[str], str]) -> str:
    return _MARK.sub(_why, str(escape(typeset(text))))


def _as_text(tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    return str(escape(tokens[index].content))


def _why(found: re.Match[str]) -> str:
    number = "".join(str(ord(c) - _DIGIT) for c in found[1])
    return f'<a class="why" href="#why-{number}" aria-label="Why we say this: statement {number}">{number}</a>'


def _link_open(tokens: Sequence[Any], index: int, _options: Any, env: Any) -> str:
    token = tokens[index]
    href = _IN_ADDRESS.sub("", _PRIVATE.sub("", str(token.attrGet("href") or "")))
    if href.startswith("recipe:"):
        href = env["recipe_link"](href.removeprefix("recipe:"))
    elif not safe_link(href):
        href = ""
    elif "lead" in env and _SCHEME.match(href) is None:
        href = env["lead"](href)
    title = token.attrGet("title")
    more = f' title="{escape(_PRIVATE.sub("", str(title)))}"' if title else ""
    if not href:
        return "<a>"  # a link that leads nowhere: the words stay
    rel = ' rel="noopener"' if _SCHEME.match(href) else ""
    return f'<a href="{escape(href)}"{rel}{more}>'


def _image(tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    # Pictures come from the recipe's own list, with a size and a text; one in the prose is told in words.
    return f"<em>{escape(_PRIVATE.sub('', tokens[index].content))}</em>"


def _heading(tokens: Sequence[Any], index: int, _options: Any, env: Any) -> str:
    token = tokens[index]
    if "ids" in env:
        return _own_heading(tokens, index, env["ids"])
    # The page has its own h1 and an h2 over the story, so the story's headings start at h3.
    level = min(6, max(3, int(token.tag[1]) + 1))
    return f"</h{level}>\n" if token.nesting < 0 else f"<h{level}>"


def _own_heading(tokens: Sequence[Any], index: int, ids: dict[str, int]) -> str:
    """A heading at its own level; two of one name get two ids."""
    token = tokens[index]
    if token.nesting < 0:
        return f"</{token.tag}>\n"
    name = slug(_words(tokens[index + 1]))
    ids[name] = ids.get(name, 0) + 1
    name = name if ids[name] == 1 else f"{name}-{ids[name]}"
    return f'<{token.tag} id="{escape(name)}">'


def _table(tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    # A wide table scrolls in a box of its own, which the keyboard can reach.
    if tokens[index].nesting < 0:
        return "</table></div>\n"
    return '<div class="scroll" tabindex="0" role="group" aria-label="Table"><table>\n'


def _code(tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    return f'<pre tabindex="0"><code>{escape(_PRIVATE.sub("", tokens[index].content))}</code></pre>\n'
