"""Stories: no raw HTML, no unsafe link, statements linked to their answers, linear time."""

from __future__ import annotations

import pytest

from spoonproof.site import prose
from spoonproof.site.prose import render, safe_link
from tests.growth import grown


@pytest.mark.parametrize(
    "href",
    [
        "javascript:alert(1)", "JaVaScRiPt:alert(1)", "java\tscript:alert(1)", " javascript:x", "data:text/html,x",
        "vbscript:x", "file:///etc/passwd", "//evil.example", "\\\\evil", "/\\evil", "", "\x01javascript:x", "blob:x",
    ],
)  # fmt: skip
def test_unsafe_addresses_are_refused(href: str) -> None:
    assert not safe_link(href)


@pytest.mark.parametrize(
    "href", ["https://a.example/b?c=d#e", "http://a.example", "mailto:a@b.example", "other.html", "#top", "../x"]
)
def test_plain_addresses_are_kept(href: str) -> None:
    assert safe_link(href)


@pytest.mark.parametrize(
    "text",
    [
        "[x](javascript:alert(1))",
        "[x](JaVaScRiPt:alert(1))",
        "[x](java&#115;cript:alert(1))",
        "<javascript:alert(1)>",
        "[x][r]\n\n[r]: data:text/html,<script>",
        "![x](vbscript:x)",
        '![x](x.png "onerror")',
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        '[x](https://a.example/"onmouseover="alert(1))',
        "<b onclick=x>",
        "&lt;script&gt;",
    ],
)
def test_no_script_comes_through(text: str) -> None:
    html = str(render(text)).lower()
    assert "<script" not in html and "<img" not in html and "<b " not in html
    assert 'href="javascript' not in html and 'href="data' not in html and 'href="vbscript' not in html
    assert '"onmouseover' not in html.replace("&#34;", "").replace("%22", "")


def test_a_statement_is_linked_to_its_answer_even_inside_emphasis() -> None:
    text = "Lentils bring **iron** to [the bowl](https://a.example)."
    html = render(text, [(text.index("iron") + 4, 12), (len(text) - 1, 3)])
    assert '<strong>iron<a class="why" href="#why-12"' in html
    assert html.count('class="why"') == 2
    assert 'href="https://a.example"' in html


def test_a_mark_inside_an_address_vanishes_and_breaks_nothing() -> None:
    text = "See [the list](https://a.example/long-path) now."
    html = render(text, [(text.index("long"), 1)])
    assert 'href="https://a.example/long-path"' in html and "\ue000" not in html


def test_the_author_cannot_write_a_mark_of_ours() -> None:
    assert 'class="why"' not in render("a \ue000\ue011\ue001 b")
    assert "\ue000" not in render("`\ue000` ")


def test_recipe_links_lead_to_pages_that_are_there() -> None:
    html = render(
        "[stock](recipe:stock) and [gone](recipe:gone)", (), lambda slug: f"{slug}.html" if slug == "stock" else ""
    )
    assert '<a href="stock.html">stock</a>' in html and "<a>gone</a>" in html


def test_comments_are_not_shown_and_headings_leave_no_level_out() -> None:
    html = render("<!-- leave: a myth -->\n\n# One\n\n## Two\n\n### Three")
    assert "leave" not in html
    assert "<h3>One</h3>" in html and "<h3>Two</h3>" in html and "<h4>Three</h4>" in html


def test_template_marks_are_words() -> None:
    assert "{{ 7*7 }}" in render("{{ 7*7 }}")


SHAPES = ("*_", "![", '[](" ', "<", '"', "`", "> ", "[", "a**b", "- ")


@pytest.mark.parametrize("shape", SHAPES)
def test_time_grows_with_the_text_and_not_faster(shape: str) -> None:
    # Four times the text; what takes next to nothing is not told from what takes nothing.
    assert grown(lambda count: render(shape * count), 1500, 6000, times=14, spare=0.04, most=2) == ""


@pytest.mark.parametrize(
    "text",
    [
        "We mash the pear.\n\nShe eats it all.",
        'One line\nand the next, 5-6 months old.\n\n\nAnother\'s "quote"!',
        "Pear: 20 g - no more (really).\n",
        "A price of $2 + 1 = 3; see www.bowls.example/x?y#z",
        "Été, 一 and ß…\u2028",
        "Marked\ue000\ue011\ue001 here.",
        "Ends in a mark!",
        "",
    ],
)
def test_plain_paragraphs_are_set_as_the_parser_sets_them(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    quick = render(text, [(3, 1)] if text else [], curled=True)
    monkeypatch.setattr(prose, "_paragraphs", lambda *_: None)
    assert render(text, [(3, 1)] if text else [], curled=True) == quick


def test_a_plain_story_takes_no_parser(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(prose, "_parsed", lambda *_: "parsed")
    assert render("We mash the pear.\n\nShe eats it.") == "<p>We mash the pear.</p>\n<p>She eats it.</p>\n"
    assert render("We *mash* the pear.") == "parsed"
