"""Foods that a line offers in the place of its own become choices, so that nothing in them is unseen."""

from __future__ import annotations

import pytest

from tests import kitchen
from tests.each import each
from tests.reading.readings import amount_words, read_line


@each(
    ("text", "food", "choices"),
    [
        ("1 tsp olive oil (or unsalted butter)", "olive-oil", ["butter"]),
        ("500 ml olive, sunflower or vegetable oil", "olive-oil", ["sunflower-oil", "rapeseed-oil"]),
        ("2 cups hot beef or chicken stock", "beef-stock", ["chicken-stock"]),
        ("2 tbsp butter or coconut oil", "butter", ["coconut-oil"]),
        ("300 g mixed fish (e.g. salmon, cod, smoked haddock)", "mixed-fish", ["salmon", "cod", "smoked-haddock"]),
        ("1 tbsp oil (olive)", "rapeseed-oil", ["olive-oil"]),
        ("1 cup dried red lentils/split peas", "red-lentils", ["split-peas"]),
        ("1/4 cup maple syrup or honey", "maple-syrup", ["honey"]),
        ("100 g peas, fresh or frozen", "pea", []),
        (
            "60 ml whole milk (can be breast milk, formula or oat drink)",
            "whole-milk",
            ["breast-milk", "infant-formula-made-up", "oat-drink"],
        ),
        ("150 ml oat drink (you can also use milk)", "oat-drink", ["whole-milk"]),
        ("1 tbsp fresh herbs: parsley, dill", "fresh-herbs", ["parsley", "dill"]),
        ("1 cup mixed vegetables (carrot, beans, peas)", "mixed-vegetables", ["carrot", "pea"]),
        ("2 tbsp seeds (sunflower, pumpkin, sesame)", "mixed-seeds", ["pumpkin-seeds", "sesame-seeds"]),
        ("1/2 cup chopped nuts - almonds or cashews", "mixed-nuts", ["almond", "cashew"]),
        ("1 cup oat flour (or 1/2 cup oat flour + 1/2 cup baby oatmeal)", "oat-flour", ["baby-oat-cereal"]),
        ("1 cup water or homemade, no-salt vegetable broth", "water", ["vegetable-stock"]),
    ],
)
def test_what_may_stand_in_is_a_choice(text: str, food: str, choices: list[str]) -> None:
    line, found, _ = read_line(text)
    assert (line.food.split("-frozen")[0] if line.food else None) == food
    assert [choice.food for choice in line.choices] == choices
    assert found == []


@pytest.mark.parametrize(
    "text", ["100 g peas with butter", "100 g peas and butter", "1 apple, no butter or honey", "100 g rice plus an egg"]
)
def test_what_is_added_or_denied_is_no_choice(text: str) -> None:
    assert read_line(text)[0].choices == ()


def test_each_choice_has_its_own_amount_and_what_is_done_to_it() -> None:
    line, _, document = read_line("10 grapes, quartered, or 20 g raisins, chopped")
    (raisins,) = line.choices
    assert (amount_words(line.amount), amount_words(raisins.amount)) == ("10 piece", "20 g")
    assert "quarter" in {cut.shape for cut in line.cuts}
    assert {cut.shape for cut in raisins.cuts} == {"chopped"}
    assert document.at(raisins.name_span) == "raisins"


def test_an_offered_food_that_nobody_knows_is_said() -> None:
    assert {fault.rule for fault in read_line("1 tsp olive oil or blorp")[1]} == {"words-not-understood"}


@pytest.mark.parametrize("text", ["1 tsp beetroot powder", "2 tbsp kale flakes", "1 tbsp carrot powder"])
def test_a_suggestion_is_never_what_was_written(text: str) -> None:
    line, (fault,), document = read_line(text)
    written = document.at(fault.span)
    assert line.food is None and fault.remedy is not None
    assert written == text.split(" ", 2)[2]  # the whole name, not the part of it that is known
    assert f"“{written}”" not in fault.remedy.text and f"“{written.split()[0]}”" in fault.remedy.text


def test_a_food_with_an_allergen_of_its_own_is_never_taken_for_a_word_of_the_name() -> None:
    _, found, _ = read_line("200 ml almond drink, the sweet sort, then milk")
    assert [fault.rule for fault in found if fault.level == "error"] == ["second-food-on-a-line"]


def test_a_comma_in_a_swap_without_quotes_is_explained() -> None:
    head = "ages: 7-9 months\nfoods:\n  - {food: 1 carrot, grated, or: '1 courgette, grated'}\nsteps:\n  - Mix.\n"
    (said,) = [one.message for one in kitchen.read(head)[1] if one.rule == "unknown-key"]
    assert "comma before “grated”" in said and "quotation marks" in said
