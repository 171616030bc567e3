"""Putting right: what is safe is done once, what is offered takes its finding away, all else of a file stays."""

from __future__ import annotations

from functools import cache, lru_cache
from pathlib import Path

import pytest

from spoonproof.checks.engine import check_dish
from spoonproof.checks.mend import safe_edits
from spoonproof.checks.rule import all_rules
from spoonproof.cli import main
from spoonproof.dish import Dish
from spoonproof.model.finding import Finding
from spoonproof.model.text import Document
from spoonproof.reading.edits import apply_edits, fitted
from spoonproof.reading.files import decode
from tests import kitchen
from tests.checks.cases import cases, docstring_block

HERE = Path(__file__).parent
COLON = """---
title: Leek bowl   # a comment
ages: 7-9 months
texture: mashed
foods:
  - 200 g leeks, sliced  # and another
  - 1 tbsp olive oil
steps:
  - Look: the leeks are ready when they squash.
  - Boil the leeks for 15 minutes.
  - Mash the leeks with the oil.
---
"""
SAFE = {
    "blank lines before the head": "\n\n" + COLON.replace("Look: the", "The"),
    "a fence that is none": COLON.replace("Look: the", "The").replace("---", "--", 1),
    "a colon in a step": COLON,
    "all of them, Windows line ends": ("\n" + COLON).replace("\n", "\r\n"),
}


def texts() -> list[str]:
    """Every recipe that the tests of rules and of bad input hold."""
    found = []
    for rule in all_rules():
        if rule.scope == "dish":
            found += [block for name in ("Fails", "Passes") if (block := docstring_block(rule.doc, name))]
        path = HERE / "checks" / "rules" / f"{rule.name}.md"
        found += [text for case in cases(path) for text, _ in case.recipes] if path.exists() else []
    found = [kitchen.whole_recipe(text)[0] for text in found]
    for path in sorted((HERE / "bad_inputs").glob("*/**/*.md")):
        document, _ = decode(path.read_bytes(), path.name)
        found += [document.text] if document is not None else []
    return found + list(SAFE.values())


@cache  # each text is asked for by both sweeps
def findings_of(text: str) -> tuple[Document, list[Finding]]:
    """A text as a recipe file and everything that is said of it alone."""
    recipe, faults = kitchen.read_as_is(text)
    document = recipe.document if recipe is not None else faults[0].document if faults else Document("bowl.md", text)
    if recipe is not None:
        faults = faults + check_dish(Dish(recipe, kitchen.channel(), kitchen.knowledge(), {recipe.slug: recipe}))
    return document, [fault for fault in faults if fault.document is document]


@lru_cache(maxsize=1)
def offered() -> list[tuple[str, Finding]]:
    """Every text with each of its findings that brings edits."""
    return [
        (text, finding)
        for text in dict.fromkeys(texts())
        for finding in findings_of(text)[1]
        if finding.remedy is not None and finding.remedy.edits
    ]


def told(findings: list[Finding]) -> list[tuple[str, str]]:
    return [(finding.rule, finding.message) for finding in findings]


def test_what_is_offered_takes_its_finding_away() -> None:
    seen = set()
    stays = []
    for text, finding in offered():
        assert finding.remedy is not None
        seen.add(finding.rule)
        document = finding.document
        after = apply_edits(document, sorted(fitted(document, edit) for edit in finding.remedy.edits))
        assert after != document.text
        before = told(findings_of(text)[1]).count((finding.rule, finding.message))
        if told(findings_of(after)[1]).count((finding.rule, finding.message)) >= before:
            stays.append((finding.rule, finding.message, finding.remedy.text))
    assert stays == []
    assert len(seen) >= 8, sorted(seen)


def test_what_is_safe_is_done_once() -> None:
    done = 0
    for text in dict.fromkeys(texts()):
        for _ in range(4):
            document, findings = findings_of(text)
            edits = safe_edits(findings).get(document, ())
            if not edits:
                break
            done += 1
            text = apply_edits(document, edits)
        else:
            raise AssertionError(f"never comes to an end: {text}")
    assert done >= len(SAFE)


@pytest.fixture
def channel(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "recipes").mkdir()
    (tmp_path / "channel.yaml").write_text("title: Row\nmeasures: UK\n")
    for number, text in enumerate(SAFE.values()):
        (tmp_path / "recipes" / f"bowl-{number}.md").write_bytes(text.encode())
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_command_shows_first_and_then_mends(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = {path.name: path.read_bytes() for path in (channel / "recipes").iterdir()}
    assert main(["check", "--fix", "--dry-run"]) == 0
    shown = capsys.readouterr().out
    assert "+---" in shown and '+  - "Look: the leeks are ready when they squash."' in shown
    assert {path.name: path.read_bytes() for path in (channel / "recipes").iterdir()} == before
    assert main(["check", "--fix"]) in (0, 1)
    assert "put right" in capsys.readouterr().err
    after = {path.name: path.read_bytes() for path in (channel / "recipes").iterdir()}
    assert all(after[name] != before[name] for name in before)
    assert all(b"# a comment" in text and b"# and another" in text for text in after.values())
    assert after["bowl-3.md"].count(b"\n") == after["bowl-3.md"].count(b"\r\n")
    assert main(["check", "--fix", "--dry-run"]) == 0
    assert capsys.readouterr().out == "", "nothing is left to be put right"
    assert main(["check"]) == 0
