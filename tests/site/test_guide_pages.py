"""The guide's Markdown as pages in the theme: links, headings, tables, order, and what is refused."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest

from spoonproof.cli import main
from spoonproof.reading.bundle import bundle_root
from spoonproof.site.guide import GuideError, guide_files, publish_guide
from spoonproof.site.pages import POLICY, Theme
from tests.site import sample

FIRST = """\
# A first step

Take a spoon, and go on:

## What to do

See [the second](more/second.md#what-to-do) or [a file](more/example.yml) or [the web](https://example.org/).

## What to do

| key | for |
| --- | --- |
| `a` | <b>this</b> |
"""
SECOND = "# Second\n\nBack to [the first](../first.md).\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    root = tmp_path / "guide"
    (root / "more").mkdir(parents=True)
    (root / "first.md").write_text(FIRST)
    (root / "more" / "second.md").write_text(SECOND)
    (root / "more" / "example.yml").write_text("a: 1\n")
    return root


def built(folder: Path) -> dict[str, str]:
    files = guide_files(folder, Theme([sample.THEME]))
    return {path: body.decode() for path, body in files.items() if path.endswith((".html", ".yml"))}


def test_pages_link_to_each_other_and_to_files_beside_them(folder: Path) -> None:
    pages = built(folder)
    assert set(pages) == {"index.html", "first.html", "more/second.html", "more/example.yml"}
    first = pages["first.html"]
    assert 'href="more/second.html#what-to-do"' in first and 'href="more/example.yml"' in first
    assert 'href="https://example.org/" rel="noopener"' in first
    assert 'href="../first.html"' in pages["more/second.html"]
    assert 'href="../style.css"' in pages["more/second.html"] and html.unescape(first).count(POLICY) == 1


def test_headings_have_ids_and_keep_their_level_and_html_is_shown_as_text(folder: Path) -> None:
    first = built(folder)["first.html"]
    assert re.findall(r'<(h\d) id="([^"]+)"', first) == [
        ("h1", "a-first-step"), ("h2", "what-to-do"), ("h2", "what-to-do-2"),
    ]  # fmt: skip
    assert "&lt;b&gt;this" in first and "<b>" not in first and 'role="group" aria-label="Table"' in first
    assert 'content="Take a spoon, and go on."' in first


def test_the_front_page_lists_all_or_is_written_and_sets_the_order(folder: Path) -> None:
    assert built(folder)["index.html"].index("A first step") < built(folder)["index.html"].index("Second")
    (folder / "index.md").write_text("# Welcome\n\nStart with [this](more/second.md).\n")
    pages = built(folder)
    assert '<h1 id="welcome">' in pages["index.html"]
    assert 'Next: <a href="../first.html">' in pages["more/second.html"]


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("a.md", "# A\n\n[x](nowhere.md)\n", "a.md: the link to nowhere.md leads to no page"),
        ("a.md", "# A\n\n[x](../../etc/passwd)\n", "leads to no page"),
        ("a.md", "No title\n", "does not start with a title"),
    ],
)
def test_a_faulty_page_is_told_with_its_name(folder: Path, name: str, text: str, said: str) -> None:
    (folder / name).write_text(text)
    with pytest.raises(GuideError, match=re.escape(said)):
        built(folder)


def test_a_link_out_of_the_folder_and_an_empty_folder_are_refused(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "secret").write_text("hush")
    (folder / "leak.yml").symlink_to(tmp_path / "secret")
    with pytest.raises(GuideError, match="leads out"):
        built(folder)
    (tmp_path / "none").mkdir()
    with pytest.raises(GuideError, match="no pages"):
        publish_guide(tmp_path / "none", tmp_path / "out", [sample.THEME])


def test_the_guide_that_comes_with_the_tool_is_built_by_one_command(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)  # no channel here
    assert main(["publish", "--guide", "--out", "pages"]) == 0
    assert "the guide," in capsys.readouterr().out
    written = {
        path.relative_to(bundle_root() / "guide").with_suffix("") for path in (bundle_root() / "guide").rglob("*.md")
    }
    made = {path.relative_to("pages").with_suffix("") for path in Path("pages").rglob("*.html")}
    assert written <= made
    assert main(["publish", "--guide", "--out", "pages"]) == 0
    assert "already as it should be" in capsys.readouterr().out
