"""A page that was kept is used only while all that it rests on is the same; every change that it shows is shown."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from spoonproof.cli import main
from spoonproof.site.press import Press
from spoonproof.site.sheaf import Sheaf
from spoonproof.site.sheet import Sheet
from spoonproof.site.store import Store

BASE = """---
title: Carrot base
ages: 7-9 months
texture: smooth
next: {texture: lumpy, from: 9 months, how: blend it less}
makes: 4 x 60 g
foods:
  - 250 g carrots, peeled, 1 cm dice
steps:
  - Steam the carrots, covered, for 25 minutes, until a cube squashes between finger and thumb.
  - Blend until smooth.
---
A base for other bowls.
"""
BOWL = """---
title: Carrot and potato bowl
ages: 7-9 months
texture: mashed
makes: 4 x 90 g
foods:
  - {recipe: carrot-base, amount: 200 g}
  - 200 g potatoes, peeled, 1 cm dice
steps:
  - Boil the potatoes for 20 minutes and drain.
  - Mash the potatoes with the carrot base.
---
Soft and orange.
"""


@pytest.fixture
def channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Two recipes, one the other's food, published once."""
    monkeypatch.setenv("SPOONPROOF_TODAY", "2026-11-25")
    monkeypatch.setenv("SPOONPROOF_PREVIEWS", "off")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "own"))
    root = tmp_path / "channel"
    (root / "recipes").mkdir(parents=True)
    (root / "channel.yaml").write_text("title: Tide Bowls\nmarkets: [GB]\nmeasures: UK\n")
    (root / "recipes" / "carrot-base.md").write_text(BASE)
    (root / "recipes" / "bowl.md").write_text(BOWL)
    monkeypatch.chdir(root)
    assert main(["publish", "--out", "pages"]) == 0
    return root


def _tree(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


def _as_if_new(channel: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, bytes]:
    """The site as it is made where nothing was kept."""
    with monkeypatch.context() as without:
        without.setenv("SPOONPROOF_CACHE", "off")
        main(["publish", "--out", "fresh"])
    return _tree(channel / "fresh")


def _published(channel: Path) -> dict[str, bytes]:
    main(["publish", "--out", "pages"])
    return _tree(channel / "pages")


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("recipes/carrot-base.md", "250 g carrots", "250 g parsnips"),
        ("recipes/carrot-base.md", "title: Carrot base", "title: Carrots for everything"),
        ("recipes/carrot-base.md", "---\nA base", "draft: yes\n---\nA base"),
        ("recipes/bowl.md", "Soft and orange.", "Soft, and as orange as a buoy."),
        ("channel.yaml", "Tide Bowls", "Ebb Bowls"),
    ],
)
def test_a_change_shows_on_every_page_that_rests_on_it(
    channel: Path, monkeypatch: pytest.MonkeyPatch, file: str, old: str, new: str
) -> None:
    path = channel / file
    before = _tree(channel / "pages")
    path.write_text(path.read_text().replace(old, new))
    now = _published(channel)
    assert now != before
    assert now == _as_if_new(channel, monkeypatch)


def test_a_sheet_that_is_made_again_takes_the_place_of_the_first() -> None:
    sheaf = Sheaf(Store(None), 2)
    sheaf.put(0, Sheet("page", slug="a", title="A\0b", page="{}", candidate="{}", links={"gone": "Gone"}))
    assert (sheaf.titles(), sheaf.astray(menu=False), sheaf.dishes) == ({"a": "A\0b"}, [0], 1)
    sheaf.put(0, Sheet("left out", "it has an error"))
    assert (sheaf.titles(), sheaf.astray(menu=False), sheaf.dishes) == ({}, [], 0)
    assert not sheaf.pages and sheaf.left_out == ("it has an error",)
    sheaf = Sheaf(Store(None), 1)
    sheaf.put(0, Sheet("left out", "it has an error"))
    sheaf.put(0, Sheet("page", slug="a", title="A", page="{}"))
    assert len(sheaf.pages) == 1 and not sheaf.left_out


def test_a_kept_page_that_was_damaged_is_made_again(channel: Path) -> None:
    before = _tree(channel / "pages")
    for kept in (channel / ".spoonproof").rglob("*"):
        if kept.is_file():
            kept.write_bytes(kept.read_bytes()[:-3] + b"?!?")
    (channel / "pages" / "index.html").write_text("spoilt")
    assert _published(channel) == before


def test_pages_edited_in_place_are_mended_and_the_others_stay_as_they_were_kept(
    channel: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _published(channel)  # what is kept may be the very file of a site
    before = _tree(channel / "pages")
    for name in ("index.html", "recipes/bowl.html", "pictures/bowl.svg"):
        (channel / "pages" / name).write_text("mine")
    made = _made_anew(monkeypatch)
    assert _published(channel) == before and set(made) <= {"bowl.md"}


def _made_anew(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The recipes whose sheets are made from now on."""
    made: list[str] = []
    make = Press._sheet

    def counted(press: Press, path: Path, *more: Any) -> Sheet:
        made.append(path.name)
        return make(press, path, *more)

    monkeypatch.setattr(Press, "_sheet", counted)
    return made


def test_a_page_with_a_false_statement_is_left_out_though_another_page_says_the_same(channel: Path) -> None:
    for name in ("carrot-base.md", "bowl.md"):
        path = channel / "recipes" / name
        path.write_text(path.read_text() + "\nA pinch of honey is fine at seven months.\n")
    now = _published(channel)
    assert not [name for name in now if name.startswith("recipes/")]


def test_a_port_without_a_watch_is_refused(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["publish", "--out", "elsewhere", "--port", "8123"]) == 2
    assert "--watch" in capsys.readouterr().err
    assert not (channel / "elsewhere").exists()
