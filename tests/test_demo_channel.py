"""The demo channel: its recipes check clean, and the draft's planted faults are found where they stand."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.checks.engine import check
from spoonproof.folder import ChannelFolder
from spoonproof.model.finding import Finding
from tests.each import each

ROOT = Path(__file__).parents[1]
DRAFT = "recipes/first-winter-bowl.md"

# (rule, the words that are marked): one planted fault a row, from every area.
PLANTED = [
    ("food-not-yet", "apple juice"),
    ("food-not-yet", "honey"),
    ("choking-shape", "grapes"),
    ("texture-word-disagrees", "10 whole grapes"),
    ("added-salt", "pinch of salt"),
    ("unknown-food", "parsnpis"),
    ("keeps-too-long", "fridge 7 days"),
    ("claim-not-true", "Honey is perfectly safe"),
    ("claim-not-true", "Carrots are rich in iron"),
    ("claim-unproven", "bowl prevents colds"),
    ("claim-overstated", "bowl, a superfood that boosts immunity"),
    ("claim-unproven", "Cinnamon calms a baby's tummy"),
    ("time-too-short-to-soften", "5 minutes"),
    ("hot-food-in-a-sealed-blender", "Blend everything at once"),
    ("food-not-listed", "salt"),
    ("ambiguous-number", "1,5"),
    ("unknown-key", "seson"),
    ("film-words-overrun", "So make a big batch"),
    ("words-and-super-disagree", "From 9 months"),
]


@pytest.fixture(scope="module")
def folder() -> ChannelFolder:
    return ChannelFolder(ROOT)


@pytest.fixture(scope="module")
def draft_findings(folder: ChannelFolder) -> list[Finding]:
    return list(check(folder, folder.select([ROOT / DRAFT])).findings)


def test_every_recipe_that_is_no_draft_checks_clean(folder: ChannelFolder) -> None:
    outcome = check(folder, folder.select([]), whole_channel=True)
    assert outcome.broken == []
    faults = [(f.document.path, f.rule, f.message) for f in outcome.findings if f.level != "note"]
    assert faults == []
    assert outcome.files >= 4


def test_one_recipe_is_a_family_pot(folder: ChannelFolder) -> None:
    assert any(step.splits for recipe in folder.recipes.values() for step in recipe.steps)


@each("rule, words", PLANTED)
def test_a_planted_fault_is_found_at_its_place(rule: str, words: str, draft_findings: list[Finding]) -> None:
    text = draft_findings[0].document.text
    line = text[: text.index(words)].count("\n") + 1
    column = text.index(words) - text.rfind("\n", 0, text.index(words))
    places = [f.document.position(f.span.start) for f in draft_findings if f.rule == rule]
    near = [place for place in places if place[0] == line and abs(place[1] - column) <= 12]
    assert near, f"{rule} expected at {line}:{column}, found at {places}"


def test_the_planted_faults_come_from_every_area(draft_findings: list[Finding]) -> None:
    assert {finding.area for finding in draft_findings} == {"baby", "words", "cooking", "film", "page"}


def test_no_page_promises_to_be_ready_before_one_pair_of_hands_is_done(folder: ChannelFolder) -> None:
    """The kitchen that films has two cooks; whoever reads the page has one."""
    from spoonproof.site.gather import recipe_page

    for recipe in folder.recipes.values():
        page = recipe_page(folder.dish(recipe), folder.recipes)
        assert (page.minutes or 0) >= (page.hands_on or 0), recipe.slug
