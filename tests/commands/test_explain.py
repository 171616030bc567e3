"""``explain FOOD``: a record that a dietitian can read, each figure with where it comes from."""

from __future__ import annotations

from pathlib import Path

import pytest

from spoonproof.cli import main

ROOT = str(Path(__file__).parents[2])


def said(capsys: pytest.CaptureFixture[str], words: str) -> list[str]:
    assert main(["explain", "--channel", ROOT, words]) == 0
    return [line.strip() for line in capsys.readouterr().out.split("\n")]


def test_a_figure_of_another_source_is_marked_and_the_source_named(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "salmon")
    assert any(line.startswith("iodine*") for line in lines)
    assert any(line.startswith("* ") and "Ciqual" in line for line in lines)
    assert "bony: sold with small bones, or they are often left in" in lines


def test_parts_follow_what_they_are_part_of(capsys: pytest.CaptureFixture[str]) -> None:
    names = [line.split("  ")[0] for line in said(capsys, "parsnip")]
    assert names.index("of which saturated") == names.index("fat") + 1
    assert names.index("of which sugars") == names.index("carbohydrate") + 1


def test_what_was_not_determined_is_no_zero(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "parsnip")
    assert any(line.startswith("omega-3 DHA") and line.endswith("not determined") for line in lines)
    assert any(line.startswith("vitamin D") and line.endswith("assumed zero by the source") for line in lines)


def test_the_keys_of_a_file_are_told_as_the_starting_channel_promises(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "channel")
    assert lines[0] == "channel.yaml: its keys"
    assert any(line.startswith("kitchen.rings: ") for line in lines)


def test_one_key_is_told_with_those_below_it(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "makes")
    assert [line.partition(":")[0] for line in lines[1:] if line] == [
        "makes",
        "makes.portions (needed)",
        "makes.grams",
        "makes.family",
    ]


def test_a_policy_names_each_authority_and_the_default(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "nitrate")
    assert any(line.startswith("EFSA (the default): ") for line in lines)
    assert any(line.startswith("AESAN: ") for line in lines)


def test_an_entry_says_when_it_holds_and_gives_the_laws_own_words_and_terms(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "iron-brain-development-children")
    assert "holds for a food with at least 15 % of the EU NRV of iron in 100 g" in lines
    assert any(line.startswith("authorised wording: “Iron contributes to normal cognitive") for line in lines)
    assert any(line.startswith("its conditions of use: Food which is at least a source of iron") for line in lines)


def test_an_entry_that_stands_on_a_table_names_its_row(capsys: pytest.CaptureFixture[str]) -> None:
    assert "the same as a row of shared/: foods_not_yet: honey" in said(capsys, "botulism-honey")


def test_a_texture_is_found_by_the_word_a_cook_has_for_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "finger food")[0].startswith("soft finger food: a texture")


def test_an_entry_says_which_words_it_listens_for(capsys: pytest.CaptureFixture[str]) -> None:
    lines = said(capsys, "tea-means-less-iron")
    assert any(line.startswith("must say one of: “less iron”") for line in lines)
    assert any(line.startswith("and one of: “absor…”") for line in lines)
    assert any(line.startswith("and none of: “help…”") for line in lines)


def test_entries_of_the_same_food_are_told_apart(capsys: pytest.CaptureFixture[str]) -> None:
    assert {"says: that it may be given", "said of: under 6 months"} <= set(said(capsys, "water-before-six"))
    assert {"says: that it may be given", "said of: from 6 months"} <= set(said(capsys, "water-from-six"))
    assert "judged with its “no” as it stands" in said(capsys, "water-unboiled-from-six")


def test_an_authority_is_explained_by_what_it_differs_on(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "market")[0].startswith("new-foods: a policy")


@pytest.mark.parametrize(("asked", "near"), [("nosuch", ""), ("parsnpi", "did you mean parsnip?")])
def test_only_what_is_near_is_asked_about(asked: str, near: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "--channel", ROOT, asked]) == 2
    told = capsys.readouterr().err
    assert near in told
    assert bool(near) == ("did you mean" in told)
