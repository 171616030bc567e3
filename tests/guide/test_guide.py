"""Every command in the guide runs, in the order of its pages, in a folder that is not the repository."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from spoonproof.cli import main

GUIDE = Path(__file__).parents[2] / "guide"
PAGES = ("first-recipe", "claims", "filming", "for-developers")
SCRIPT = "Honey is not for babies under twelve months.\n"


def commands(page: str) -> list[str]:
    """The command lines of a page: what is indented and starts with the tool or with cd."""
    text = (GUIDE / f"{page}.md").read_text(encoding="utf-8")
    return re.findall(r"^    ((?:spoonproof|cd) .+)$", text, re.MULTILINE)


def test_every_page_is_run() -> None:
    served = {"editor"}  # starts the language server, which tests/editor speaks with
    assert {path.stem for path in GUIDE.glob("*.md")} == set(PAGES) | served
    assert all(commands(page) for page in PAGES)


def test_every_command_of_the_guide_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    for page in PAGES:
        for line in commands(page):
            words = shlex.split(line)
            if words[0] == "cd":
                monkeypatch.chdir(words[1])
                Path("script.txt").write_text(SCRIPT, encoding="utf-8")
                continue
            code = main(words[1:])
            said = capsys.readouterr()
            assert code == 0, f"{page}: {line}\n{said.out}{said.err}"
    assert Path("out/site/index.html").is_file()
