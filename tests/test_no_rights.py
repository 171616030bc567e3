"""A folder that may not be looked into is told: in silence its recipes would pass for clean, or go from the site."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from spoonproof.cli import main


@pytest.fixture
def closed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A channel that is published, whose folders of recipes and films are closed afterwards."""
    monkeypatch.chdir(tmp_path)
    assert main(["new", "channel", "gulls"]) == 0
    root = tmp_path / "gulls"
    (root / "films").mkdir()
    (root / "films" / "first.txt").write_text("Honey is fine from six months.\n")
    monkeypatch.chdir(root)
    assert main(["publish"]) == 0
    scan = os.scandir

    def refuse(path: str = ".") -> object:
        if os.fspath(path).rstrip("/").endswith(("recipes", "films")) and "out" not in Path(path).parts:
            raise PermissionError(13, "Permission denied", os.fspath(path))
        return scan(path)

    monkeypatch.setattr(os, "scandir", refuse)
    return root


@pytest.mark.parametrize(
    "words", [["check"], ["publish"], ["calendar", "--age", "6"], ["where", "honey"], ["listen", "films"]]
)
def test_a_closed_folder_is_told_and_nothing_is_lost(
    words: list[str], closed: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    capsys.readouterr()
    assert main(words) == 3
    told = capsys.readouterr()
    assert "Permission denied" in told.err
    assert "Give yourself the right" in told.err
    assert (closed / "out" / "site" / "recipes" / "potato-and-courgette-mash.html").is_file()
