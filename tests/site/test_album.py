"""Previews are painted once: taken over from the present site or the cache, the same bytes whichever way."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest

from spoonproof import crew
from spoonproof.site import paint
from spoonproof.site.album import Album
from spoonproof.site.picture import PlatePart, draw
from spoonproof.site.shapes import to_svg
from tests.site.sample import palette

pytest.importorskip("PIL", reason="Pillow is not installed: nothing is painted")


def painted(root: Path | None, out: Path, count: int = 2) -> dict[str, bytes]:
    """The previews of some dishes, by path."""
    album = Album(root, out)
    for number in range(count):
        shapes = draw(f"pot-{number}", "lumpy", [PlatePart("red lentils", 150)], palette())
        album.previews(f"pot-{number}", shapes, to_svg(shapes), "a pot")
    album.paint()
    found = dict(album.files)
    for path, held in album.held.items():
        body = held.read()
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
