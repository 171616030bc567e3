"""Choosing recipes for the calendar and the filming day."""

from __future__ import annotations

from pathlib import Path

from spoonproof.desk.desk import Desk
from spoonproof.desk.views.planning import _choices


def test_recipes_are_offered_by_their_titles(tmp_path: Path) -> None:
    (tmp_path / "channel.yaml").write_text("title: Quay kitchen\n")
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "leek-pot.md").write_text("---\ntitle: The quay's leek pot\n---\n")
    (tmp_path / "recipes" / "half-done.md").write_text("nothing yet\n")
    desk = Desk(tmp_path)
    assert _choices(desk, desk.shelf.folder()) == [("half-done", "half-done"), ("leek-pot", "The quay's leek pot")]
