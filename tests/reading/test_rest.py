"""A head that breaks at one place is read on, and nothing is made of it."""

from __future__ import annotations

from spoonproof.model.text import Document
from spoonproof.reading.recipe import Reading, read_whole
from tests import kitchen
from tests.each import each

HEAD = """---
title: Pear bowl
summary: A pear, mashed.
ages: 7-9 months
texture: mashed
foods:
  - 300 g pears
  - 40 g oatz
steps:
  - Boil the pears for 12 minutes.
  - Mash everything with the oats.
keeps: fridge 1e309 h
---
The story.
"""


def read(text: str) -> Reading:
    known = kitchen.knowledge()
    return read_whole(Document("recipes/pear.md", text), known.foods, known.verbs, known.measures("UK"))


def told(text: str) -> dict[str, str]:
    """The text at each fault, by rule."""
    reading = read(text)
    assert reading.recipe is None
    return {fault.rule: fault.document.at(fault.span) for fault in reading.faults}


@each(
    ("whole", "broken"),
    [
        ("summary: A pear", "summary A pear"),
        ("summary: A pear, mashed.", "summary: A pear: mashed, \"and so"),
        ("summary: A pear, mashed.", "summary: [A pear"),
        ("summary: A pear, mashed.", "summary: *best* pear"),
        ("summary: A pear, mashed.", "summary:\n\t- A pear"),
        ("title: Pear bowl", "title Pear bowl"),
        ("ages: 7-9 months", "ages 7-9 months"),
        ("  - 300 g pears", "  - 300 g pears: \"ripe: yes"),
    ],
)  # fmt: skip
def test_the_other_faults_are_told_at_their_places(whole: str, broken: str) -> None:
    found = told(HEAD.replace(whole, broken))
    assert found["unknown-food"] == "oatz" and found["wrong-type"] == "fridge 1e309 h"
    assert not {"missing-key", "food-not-listed", "food-never-used"} & set(found)


def test_two_broken_places_are_both_told() -> None:
    reading = read(HEAD.replace("summary: A", "summary A").replace("texture: mashed", "texture: 'mashed"))
    assert [fault.rule for fault in reading.faults].count("yaml-syntax") == 2
    assert "unknown-food" in [fault.rule for fault in reading.faults]


def test_what_was_looked_at_is_said() -> None:
    (first, *_) = [f for f in read(HEAD.replace("summary:", "summary")).faults if f.rule == "yaml-syntax"]
    assert "All but “summary” was read on." in first.message
    (first, *_) = [f for f in read(HEAD.replace("foods:", "foods")).faults if f.rule == "yaml-syntax"]
    assert "can't be judged before this is put right" in first.message
    (first, *_) = [f for f in read("---\n%\nfoods: [a\n---\n").faults if f.rule == "yaml-syntax"]
    assert "Nothing else of this head was looked at." in first.message


def test_a_dish_is_judged_by_the_rest_only_where_it_is_the_same_dish() -> None:
    assert read(HEAD.replace("summary:", "summary")).rest is not None
    for key in ("title", "ages", "texture", "foods", "steps"):
        assert read(HEAD.replace(f"{key}:", key)).rest is None, key
    assert read(HEAD).rest is None and read(HEAD).recipe is not None


def test_where_one_step_is_broken_the_foods_are_still_known() -> None:
    reading = read(HEAD.replace("  - Boil the pears for", "  - Boil: the pears: for"))
    assert reading.recipe is None and reading.rest is not None and reading.foods_alone
    (first, *_) = [fault for fault in reading.faults if fault.rule == "yaml-syntax"]
    assert "only what stands under foods is judged" in first.message
    assert not read(HEAD.replace("summary:", "summary")).foods_alone
