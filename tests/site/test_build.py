"""The site as files: same bytes each time, every page there, everything escaped, links that lead somewhere."""

from __future__ import annotations

import dataclasses
import json
import re
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from xml.etree import ElementTree

import html5lib
import pytest

from spoonproof.site import build, feed
from spoonproof.site.pages import Pages, Theme, ThemeError
from spoonproof.site.view import Caution, Fault, RecipePage, Run, Statement, StepItem
from spoonproof.site.view_site import Site
from tests.each import each
from tests.site import sample


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    return build.files(sample.site(), Theme([sample.THEME]), sample.pictures())


def test_same_view_same_bytes(files: dict[str, bytes]) -> None:
    assert build.files(sample.site(), Theme([sample.THEME]), sample.pictures()) == files


def test_every_kind_of_page_is_there(files: dict[str, bytes]) -> None:
    assert {
        "index.html", "404.html", "sources.html", "rules.html", "register.html", "calendar.html", "feed.xml",
        "sitemap.xml", "robots.txt", "recipes/red-lentil-and-sweet-potato-pot.html",
        "recipes/lentil-pot.html",
    } <= set(files)  # fmt: skip


class _Links(HTMLParser):
    """Every address a page names, and every id it has."""

    def __init__(self) -> None:
        super().__init__()
        self.links: list[str] = []
        self.ids: list[str] = []
        self.inline: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = {name: value or "" for name, value in attrs}
        self.links += [values[name] for name in ("href", "src", "poster") if name in values]
        self.ids += [values["id"]] if "id" in values else []
        if tag == "style" or "style" in values or any(name.startswith("on") for name in values):
            self.inline.append(tag)
        if tag == "script" and "src" not in values and values.get("type") != "application/ld+json":
            self.inline.append("script")


def _parsed(body: bytes) -> _Links:
    parser = _Links()
    parser.feed(body.decode())
    return parser


def test_every_link_on_the_site_leads_to_a_file_and_an_id(files: dict[str, bytes]) -> None:
    broken = []
    for path, body in files.items():
        if not path.endswith(".html"):
            continue
        for href in _parsed(body).links:
            if re.match(r"[a-z]+:", href):
                continue
            target, _, fragment = href.partition("#")
            there = path
            target = target.removeprefix("/") if path == "404.html" else target  # shown at any depth
            if target:
                parts: list[str] = []
                for part in (PurePosixPath(path).parent / target).parts:
                    if part == "..":
                        parts.pop()
                    else:
                        parts.append(part)
                there = "/".join(parts)
            if there not in files or (fragment and fragment not in _parsed(files[there]).ids):
                broken.append(f"{path} -> {href}")
    assert not broken


def test_nothing_inline_and_no_id_twice_so_that_the_policy_holds(files: dict[str, bytes]) -> None:
    for path, body in files.items():
        if path.endswith(".html"):
            page = _parsed(body)
            assert not page.inline, path
            assert len(page.ids) == len(set(page.ids)), path
            assert b"default-src 'none'" in body or b"default-src &#39;none&#39;" in body


def test_nothing_is_fetched_from_elsewhere(files: dict[str, bytes]) -> None:
    for path, body in files.items():
        if path.endswith((".html", ".css", ".js", ".svg")):
            text = body.decode()
            assert not re.search(r"""(?:src|poster|srcset)=["']?(?:https?:)?//""", text), path
            assert not re.search(r"""(?:url\(|@import|fetch\(|import\()""", text), path
            assert not re.search(
                r"""<link[^>]+rel="(?:stylesheet|icon|preload|preconnect)"[^>]+href="https?:""", text
            ), path


@each(
    "bad",
    [
        "<script>alert(1)</script>",
        '"><img src=x onerror=alert(1)>',
        "</script><!--",
        "{{ 7919*7907 }}{% include '/etc/passwd' %}",
        "' onmouseover='alert(1)",
        "]]>&amp;\u2028",
    ],
)
def test_what_people_write_is_shown_as_text_everywhere(bad: str) -> None:
    page = dataclasses.replace(
        sample.lentil_pot(),
        title=(Run(bad, 1),),
        summary=(Run(bad),),
        ages=bad,
        portions=bad,
        cautions=(Caution(bad, (1,)),),
        steps=(StepItem(1, (Run(bad),)),),
        statements=(Statement(1, bad, bad, "true", bad, bad, bad),),
        words=bad,
        author=bad,
    )
    site = dataclasses.replace(sample.site(page), title=bad, about=bad)
    made = build.files(site, Theme([sample.THEME]), {})
    for path, body in made.items():
        text = body.decode()
        if path.endswith(".html"):
            assert "<script>alert" not in text and "<img src=x" not in text
            assert not _parsed(body).inline, path
            assert "62615533" not in text, path
            _strict(text)
        if path.endswith(".xml"):
            ElementTree.fromstring(text)
    blocks = re.findall(r'<script type="application/ld\+json">(.*?)</script>', made[page.href].decode(), re.S)
    assert json.loads(blocks[0])["name"] == bad
    assert all("<" not in block for block in blocks)


def _strict(text: str) -> None:
    html5lib.HTMLParser(strict=True).parse(text)


def test_every_page_parses_without_a_single_error(files: dict[str, bytes]) -> None:
    for path, body in files.items():
        if path.endswith(".html"):
            _strict(body.decode())


@pytest.mark.parametrize(
    ("template", "told"),
    [
        (
            '{% extends "base.html" %}\n{% block content %}\n{{ nonsense }}{% endblock %}',
            r"404\.html, line 3.*nonsense",
        ),
        ("{% if %}", r"404\.html, line 1"),
        ("{{ 1 + path }}", r"404\.html, line 1: TypeError"),
        ("\n{{ 1 // 0 }}", r"404\.html, line 2: ZeroDivisionError"),
        ("{% include '404.html' %}", r"404\.html, line 1: RecursionError"),
        ("{{ range(10 ** 6) | list }}", r"404\.html, line 1: OverflowError"),
        ("{{ '{0.__class__}'.format(site) }}", r"404\.html, line 1: .* is unsafe"),
        ("{{ site.used.update({}) }}", r"404\.html, line 1: .* is unsafe"),
        ("\udcff", r"templates/404\.html is not UTF-8 text"),
    ],
)
def test_what_a_template_may_not_or_can_not_do_is_told_with_its_line(template: str, told: str, tmp_path: Path) -> None:
    own = tmp_path
    (own / "templates").mkdir()
    (own / "templates" / "404.html").write_text(template, "utf-8", "surrogateescape")
    with pytest.raises(ThemeError, match=told):
        Pages(sample.site(), Theme([own, sample.THEME])).render("404.html", "404.html")


def test_one_template_or_the_look_alone_can_be_replaced(tmp_path: Path) -> None:
    own = tmp_path
    (own / "templates").mkdir()
    (own / "templates" / "404.html").write_text("mine {{ site.title }}")
    (own / "look.css").write_text(":root { --rim: #060; }")
    made = build.files(sample.site(), Theme([own, sample.THEME]), {})
    assert made["404.html"] == b"mine Lockside Larder"
    assert made["look.css"] == b":root { --rim: #060; }"
    assert b"skip" in made["index.html"]


def test_an_empty_channel_still_has_a_front_page() -> None:
    made = build.files(Site(title="New here"), Theme([sample.THEME]), {})
    assert b"No recipes yet" in made["index.html"]
    assert "sitemap.xml" not in made  # a site map needs full addresses


def test_a_page_published_with_errors_says_so_and_stays_out_of_the_feed() -> None:
    faults = (Fault("Line 9: the parsnip is still hard.", "too-hard-for-the-age"), Fault("Line 2: odd.", "not-listed"))
    page = dataclasses.replace(sample.pear_mash(), unfinished=faults)
    made = build.files(sample.site(page), Theme([sample.THEME]), {})
    text = made[page.href].decode()
    assert 'href="../rules.html#at-too-hard-for-the-age"' in text and "#at-not-listed" not in text
    assert 'id="at-too-hard-for-the-age"' in made["rules.html"].decode()
    assert "Not ready" in text and "still hard" in text and 'content="noindex"' in text
    assert '"@type":"Recipe"' not in text
    assert b"<entry>" not in made["feed.xml"]


def test_a_reviewer_is_not_named_on_a_page_with_health_claims(files: dict[str, bytes]) -> None:
    text = files["recipes/red-lentil-and-sweet-potato-pot.html"].decode()
    assert "Okafor" not in text and "no health statement is vouched for" in text
    pot = next(page for page in sample.site().recipes if page.slug == "red-lentil-and-sweet-potato-pot")
    plain = dataclasses.replace(pot, statements=())
    assert "Okafor" in Pages(sample.site(), Theme([sample.THEME])).recipe(plain)


def test_a_page_without_a_day_stays_out_of_the_feed() -> None:
    pot = next(page for page in sample.site().recipes if page.slug == "red-lentil-and-sweet-potato-pot")
    undated = dataclasses.replace(pot, published="", changed="")
    text = "".join(feed.atom(sample.site(undated)))
    assert "<entry>" not in text and "1970" not in text
    dated = dataclasses.replace(undated, published="2026-11-03")
    assert "<published>2026-11-03T00:00:00Z" in "".join(feed.atom(sample.site(dated)))


def test_page_of_a_recipe_with_next_to_nothing() -> None:
    page = RecipePage(slug="bare", title=(Run("Bare"),))
    text = Pages(Site(title="T"), Theme([sample.THEME])).recipe(page)
    assert "<h1>Bare</h1>" in text
    _strict(text)
