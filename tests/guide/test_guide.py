"""The guide does what it says: its files are written, its commands run and its words seen, page after page."""

from __future__ import annotations

import importlib.util
import re
import shlex
from pathlib import Path

import pytest

from spoonproof.checks.engine import finding_of
from spoonproof.checks.rule import Rule
from spoonproof.cli import main
from tests import kitchen
from tests.checks.cases import docstring_block
from tests.guide.walk import Doing, doings

GUIDE = Path(__file__).parents[2] / "guide"
PAGES = (
    "first-recipe",
    "claims",
    "old-videos",
    "filming",
    "new-foods",
    "where-authorities-differ",
    "on-every-change",
    "for-developers",
)
SERVED = {"editor", "desk"}  # they start servers, which tests/editor and tests/desk speak with
NOT_RUN = ("spoonproof desk", "spoonproof editor")


def text_of(page: str) -> str:
    return (GUIDE / f"{page}.md").read_text(encoding="utf-8")


def test_every_page_is_run_or_served() -> None:
    assert {path.stem for path in GUIDE.glob("*.md")} == {*PAGES, *SERVED, "index"}
    assert all(any(one.kind == "run" for one in doings(text_of(page))) for page in PAGES)


def test_the_index_names_every_page_and_no_link_leads_nowhere() -> None:
    linked = set(re.findall(r"\]\(([\w./-]+\.md)\)", text_of("index")))
    assert {f"{page}.md" for page in (*PAGES, *SERVED)} <= linked
    for path in GUIDE.rglob("*.md"):
        for target in re.findall(r"\]\(((?!https?:)[^)#]+)\)", path.read_text(encoding="utf-8")):
            assert (path.parent / target).exists(), f"{path.name} links to {target}"


def test_what_the_guide_does_works(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    for page in PAGES:
        steps = doings(text_of(page))
        for place, step in enumerate(steps):
            after = steps[place + 1] if place + 1 < len(steps) else None
            _do(step, after, page, monkeypatch, capsys)
    assert Path("out/site/index.html").is_file()


def _do(
    step: Doing, after: Doing | None, page: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    if step.kind == "file" and not step.name.startswith("src/"):
        path = Path(step.name)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(step.text, encoding="utf-8")
    elif step.kind == "run" and step.name.startswith("cd "):
        monkeypatch.chdir(step.name.removeprefix("cd "))
    elif step.kind == "run" and not step.name.startswith(NOT_RUN):
        code = main(shlex.split(step.name)[1:])
        said = capsys.readouterr()
        shown = after.text.split("\n") if after is not None and after.kind == "shows" else []
        # Where the page shows what is found, something is found; elsewhere all is well.
        finds = any(f"spoonproof {name}" in step.name for name in ("check", "listen", "where", "sources"))
        assert code in ((0, 1) if shown or finds else (0,)), f"{page}: {step.name}\n{said.out}{said.err}"
        flat = " ".join(said.out.split())
        for line in filter(None, shown):
            assert " ".join(line.split()) in flat, f"{page}: {step.name} does not show {line!r}\n{said.out}"


def test_the_rule_of_the_guide_is_a_rule(tmp_path: Path) -> None:
    (step,) = [one for one in doings(text_of("for-developers")) if one.name.startswith("src/")]
    path = tmp_path / "title_in_capitals.py"
    path.write_text(step.text, encoding="utf-8")
    spec = importlib.util.spec_from_file_location("title_in_capitals", path)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    rule = Rule("title-in-capitals", "dish", "page", module.LEVEL, module.SOURCES, module.__doc__ or "", module.check)
    found = {}
    for heading in ("Fails", "Passes"):
        dish = kitchen.dish(docstring_block(rule.doc, heading) or "")
        found[heading] = [finding_of(rule, fault, dish.recipe.document) for fault in rule.check(dish)]
    assert [finding.message for finding in found["Fails"]] == ["This title is written in capitals."]
    assert found["Passes"] == []


def test_doings_tell_files_commands_and_words_apart() -> None:
    page = "This is `a/b.txt`:\n\n```text\nhello\n```\n\n    spoonproof check\n\n"
    page += "```text\nfound\n```\n\n```yaml\nx: 1\n```\n"
    assert doings(page) == [
        Doing("file", "a/b.txt", "hello\n"),
        Doing("run", "spoonproof check"),
        Doing("shows", "", "found\n"),
    ]
