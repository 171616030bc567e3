"""The author's Markdown as HTML that can hold no script: raw HTML off, link schemes by a short list.

A statement that is explained further down is marked in the text before it is rendered, with private-use
characters that can't come from the author (hers are replaced first), and turned into a link afterwards.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from markupsafe import Markup, escape

if TYPE_CHECKING:
    from markdown_it import MarkdownIt

SCHEMES = ("https:", "http:", "mailto:")
"""Where a link may lead; anything without a scheme stays on the site."""

_MARK_OPEN, _MARK_CLOSE, _DIGIT = "\ue000", "\ue001", 0xE010
_PRIVATE = re.compile("[\ue000-\ue01f]")
_MARK = re.compile("\ue000([\ue010-\ue019]+)\ue001")
_SCHEME = re.compile(r"[a-zA-Z][a-zA-Z0-9+.\-]*:")
_COMMENT = re.compile(r"<!--[\s\S]*?-->")


def safe_link(href: str) -> bool:
    """Whether a page may link there: a short list of schemes, or a place on the site itself."""
    # Browsers drop control characters and spaces before they look for a scheme; so do we.
    bare = "".join(c for c in href if c > " " and c != "\x7f")
    if not bare or bare.startswith(("//", "\\")):
        return False
    scheme = _SCHEME.match(bare)
    return scheme is None or scheme.group().lower() in (*SCHEMES, "recipe:")


def render(text: str, marks: Iterable[tuple[int, int]] = (), recipe_link: Callable[[str], str] | None = None) -> Markup:
    """HTML of ``text``. ``marks``: (offset after the statement, its number). ``recipe_link`` gives the
    address of ``recipe:slug`` links, "" for one that is not there. Time grows with the text, not faster."""
    parts: list[str] = []
    at = 0
    for offset, number in sorted(marks):
        offset = max(at, min(offset, len(text)))
        parts.append(_PRIVATE.sub("\ufffd", text[at:offset]))
        parts.append(_MARK_OPEN + "".join(chr(_DIGIT + int(d)) for d in str(number)) + _MARK_CLOSE)
        at = offset
    parts.append(_PRIVATE.sub("\ufffd", text[at:]))
    # Comments are the author's notes to the desk, not words for the reader.
    source = _COMMENT.sub("", "".join(parts))
    html: str = _parser().render(source, {"recipe_link": recipe_link, "headings": {}})
    return Markup(_PRIVATE.sub("", html))


@lru_cache(maxsize=1)
def _parser() -> MarkdownIt:
    from markdown_it import MarkdownIt

    # maxNesting keeps a thousand ">" from becoming a thousand elements.
    parser = MarkdownIt("commonmark", {"html": False, "maxNesting": 20, "typographer": False}).enable("table")
    parser.validateLink = safe_link  # type: ignore[method-assign, assignment]
    parser.add_render_rule("text", _text)
    parser.add_render_rule("link_open", _link_open)
    parser.add_render_rule("image", _image)
    parser.add_render_rule("heading_open", _heading)
    parser.add_render_rule("heading_close", _heading)
    parser.add_render_rule("fence", _code)
    parser.add_render_rule("code_block", _code)
    return parser


def _text(_self: Any, tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    return _MARK.sub(_why, str(escape(tokens[index].content)))


def _why(found: re.Match[str]) -> str:
    number = "".join(str(ord(c) - _DIGIT) for c in found.group(1))
    return f'<a class="why" href="#why-{number}" aria-label="Why we say this: statement {number}">{number}</a>'


def _link_open(_self: Any, tokens: Sequence[Any], index: int, _options: Any, env: Any) -> str:
    token = tokens[index]
    href = _PRIVATE.sub("", str(token.attrGet("href") or ""))
    find = env.get("recipe_link")
    if href.startswith("recipe:"):
        href = find(href.removeprefix("recipe:")) if find else ""
    outside = bool(_SCHEME.match(href))
    title = token.attrGet("title")
    more = f' title="{escape(_PRIVATE.sub("", str(title)))}"' if title else ""
    rel = ' rel="noopener"' if outside else ""
    return f'<a href="{escape(href)}"{rel}{more}>' if href else f"<a{more}>"


def _image(_self: Any, tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    # Pictures come from the recipe's own list, with a size and a text; one in the prose is told in words.
    return f"<em>{escape(_PRIVATE.sub('', tokens[index].content))}</em>"


def _heading(_self: Any, tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    # The page has its own h1 and an h2 over the story, so the story's headings start at h3.
    token = tokens[index]
    level = min(6, max(3, int(token.tag[1]) + 1))
    return f"</h{level}>\n" if token.nesting < 0 else f"<h{level}>"


def _code(_self: Any, tokens: Sequence[Any], index: int, _options: Any, _env: Any) -> str:
    return f'<pre tabindex="0"><code>{escape(tokens[index].content)}</code></pre>\n'
