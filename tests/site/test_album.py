"""Previews are painted once: taken over from the present site or the cache, the same bytes whichever way."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest

from spoonproof import crew
from spoonproof.cache import Cache
from spoonproof.dish import Dish
from spoonproof.model.record import replace
from spoonproof.site import paint
from spoonproof.site.album import Album
from spoonproof.site.pages import Theme
from spoonproof.site.picture import PlatePart, draw
from spoonproof.site.publish import site_of_one
from spoonproof.site.shapes import Shape, is_drawing, to_svg
from spoonproof.site.store import Store
from tests import kitchen
from tests.site.sample import THEME, palette

pytest.importorskip("PIL", reason="Pillow is not installed: nothing is painted")


def painted(root: Path | None, out: Path, count: int = 2) -> dict[str, bytes]:
    """The previews of some dishes, by path."""
    album = Album(root, out)
    for number in range(count):
        parts = [PlatePart("red lentils", 150)]

        def drawn(slug: str = f"pot-{number}", parts: list[PlatePart] = parts) -> list[Shape]:
            return draw(slug, "lumpy", parts, palette())

        svg = album.svg((number, parts), drawn)
        assert svg == to_svg(drawn())
        album.previews(f"pot-{number}", drawn, svg, "a pot")
    album.paint()
    found = dict(album.files)
    for path, held in album.held.items():
        body = Store(root).held(held).read()
        assert body is not None and len(body) == held.size
        found[path] = body
    return found


def refuse(*_: object) -> Any:
    raise AssertionError("painted again")


def test_painted_once_and_the_same_with_and_without_the_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = tmp_path / "channel"
    root.mkdir()
    first = painted(root, tmp_path / "out")
    assert len(first) == 2 * len(paint.PREVIEWS) and first == painted(None, tmp_path / "out")
    with monkeypatch.context() as patch:
        patch.setattr(paint, "previews", refuse)
        assert painted(root, tmp_path / "out") == first
        shutil.rmtree(root / ".spoonproof")
        with pytest.raises(AssertionError, match="again"):
            painted(root, tmp_path / "out")
    for path, body in first.items():
        (tmp_path / "out" / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "out" / path).write_bytes(body)
    monkeypatch.setattr(paint, "previews", refuse)
    assert painted(root, tmp_path / "out") == first


def test_only_pages_with_a_full_address_have_previews(tmp_path: Path) -> None:
    dish = kitchen.dish(
        "title: Pot\nages: 7-9 months\ntexture: mashed\nfoods:\n  - 200 g parsnips, peeled, 1 cm dice\n"
        "steps:\n  - Steam the parsnips for 20 minutes.\n  - Mash them.\n"
    )
    for address, count in (("", 0), ("https://pots.example", len(paint.PREVIEWS))):
        album = Album(None, tmp_path)
        addressed = replace(dish.channel, base_url=address)
        site = site_of_one(Dish(dish.recipe, addressed, dish.knowledge), Theme([THEME]), album)
        album.paint()
        assert len([path for path in album.files if path.endswith(".png")]) == count == len(site.recipes[0].social)


def test_a_damaged_entry_is_painted_again(tmp_path: Path) -> None:
    first = painted(tmp_path, tmp_path / "out")
    for path in (tmp_path / ".spoonproof" / "cache").glob("pictures-*/*"):
        path.write_bytes(path.read_bytes()[:-30])
    assert painted(tmp_path, tmp_path / "out") == first


def test_painted_by_two_processes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    alone = painted(None, tmp_path / "out", 5)
    monkeypatch.setattr(crew, "workers", lambda: 2)
    monkeypatch.setattr("spoonproof.site.album.PAINT_LEAST", 2)
    assert painted(None, tmp_path / "out", 5) == painted(tmp_path, tmp_path / "out", 5) == alone


def test_a_kept_drawing_that_holds_more_than_shapes_is_drawn_again(tmp_path: Path) -> None:
    shapes = draw("pot", "lumpy", [PlatePart("red lentils", 150)], palette())
    svg = to_svg(shapes)
    assert is_drawing(svg) and not is_drawing("") and not is_drawing(svg[:-20])
    album = Album(tmp_path, tmp_path / "out")
    assert album.svg("pot", lambda: shapes) == svg == album.svg("pot", list)
    (kept,) = (tmp_path / ".spoonproof" / "cache").glob("drawings-*/*")
    cache = Cache(tmp_path, kept.parent.name)
    for wrong in ("<script>", '<path d="M0 0" fill="#000000" onload="x"/>', "<!-- -->", "<a>"):
        cache.put(kept.name, svg.replace("</svg>", f"{wrong}\n</svg>").encode())
        assert album.svg("pot", lambda: shapes) == svg
