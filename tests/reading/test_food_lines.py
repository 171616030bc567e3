"""An entry of foods that holds several foods, or none."""

from __future__ import annotations

import pytest

from spoonproof.checks.mend import safe_edits
from spoonproof.reading.edits import apply_edits
from tests.each import each
from tests.kitchen import read, read_as_is
from tests.reading.readings import read_line

STEPS = "steps:\n  - Boil the onion, the leek and the swede for 25 minutes.\n"


def test_foods_behind_commas_are_all_read_and_written_out() -> None:
    text = "foods:\n  - 1 onion, 2 leeks, sliced and 200 g swede, 1 cm dice   # base\n" + STEPS
    recipe, found = read(text)
    assert recipe is not None
    assert [line.food for line in recipe.foods] == ["onion", "leek", "swede"]
    assert [(fault.rule, fault.level) for fault in found] == [("foods-on-one-line", "note")]
    ((document, edits),) = safe_edits(found).items()
    assert "foods:\n  - 1 onion\n  - 2 leeks, sliced\n  - 200 g swede, 1 cm dice   # base\n" in apply_edits(
        document, edits
    )


@each(
    ("line", "written"),
    [
        ("2 tsp each onion powder and dried thyme", ["2 tsp onion powder", "2 tsp dried thyme"]),
        ("1 tbsp each of raisins, ground almonds and oats", ["1 tbsp raisins", "1 tbsp ground almonds", "1 tbsp oats"]),
        (
            "3 tbsp each finely chopped mint, dill and chives",
            ["3 tbsp finely chopped mint", "3 tbsp dill, finely chopped", "3 tbsp chives, finely chopped"],
        ),
        ("Couscous & flatbread, to serve", ["Couscous, to serve", "flatbread, to serve"]),
        ("Paprika and dried thyme, to taste", ["Paprika, to taste", "dried thyme, to taste"]),
        ("1/2 leek and 1/2 onion, sliced", ["1/2 leek", "1/2 onion, sliced"]),
        ("2 tbsp cornflour mixed with 3 tbsp milk", ["2 tbsp cornflour", "3 tbsp milk"]),
    ],
)
def test_foods_that_share_their_amount_or_their_use(line: str, written: list[str]) -> None:
    recipe, found = read(f"foods:\n  - {line}\n")
    assert recipe is not None and [one.text for one in recipe.foods] == written
    ((document, edits),) = safe_edits(found).items()
    again, _ = read_as_is(apply_edits(document, edits))
    assert again is not None
    assert [(one.food, one.has("optional"), [cut.shape for cut in one.cuts]) for one in again.foods] == [
        (one.food, one.has("optional"), [cut.shape for cut in one.cuts]) for one in recipe.foods
    ]


def test_a_cut_said_before_the_first_is_not_given_to_what_cannot_be_cut() -> None:
    recipe, _ = read("foods:\n  - 1 tbsp each chopped fresh dill, plain flour and olive oil\n" + STEPS)
    assert recipe is not None
    assert [[cut.shape for cut in line.cuts] for line in recipe.foods] == [["chopped"], [], []]


@pytest.mark.parametrize(
    "line",
    [
        "2 leeks, cooked in honey",  # what comes second has no amount
        "1 onion, 40 g flurbs, 1 leek",  # one of them is no food that is known
        "2 carrots, 1 cm dice",
        "1 onion (or 1 leek)",
    ],
)
def test_what_is_no_list_of_foods_stays_one_line(line: str) -> None:
    recipe, found = read(f"foods:\n  - {line}\n{STEPS}")
    assert recipe is not None and len(recipe.foods) == 1
    assert "foods-on-one-line" not in {fault.rule for fault in found}


@pytest.mark.parametrize(
    "line",
    ["8 wooden skewers, soaked", "cocktail sticks", "6 paper cases", "baking paper, for the tin", "kitchen foil"],
)
def test_a_thing_of_the_kitchen_is_no_unknown_food(line: str) -> None:
    recipe, found = read(f"foods:\n  - 1 onion\n  - {line}\n{STEPS.replace(', the leek and the swede', '')}")
    assert recipe is not None and [one.food for one in recipe.foods] == ["onion"]
    assert [(fault.rule, fault.level) for fault in found] == [("no-food-but-a-tool", "note")]


def test_a_food_beside_a_tool_is_still_asked_for() -> None:
    recipe, found = read(f"foods:\n  - 4 blorps on wooden skewers\n{STEPS}")
    assert recipe is not None and len(recipe.foods) == 1
    assert "unknown-food" in {fault.rule for fault in found}


@pytest.mark.parametrize(
    "line", ['"For the gravy:"', "For the topping", '"Vegetables:"', "To finish", "For the sauce:"]
)
def test_a_heading_among_the_foods_is_no_food(line: str) -> None:
    recipe, found = read(f"foods:\n  - {line}\n  - 1 onion\n{STEPS.replace(', the leek and the swede', '')}")
    assert recipe is not None and [one.food for one in recipe.foods] == ["onion"]
    assert [(fault.rule, fault.level) for fault in found] == [("no-food-but-a-tool", "note")]


def test_foods_under_a_heading_are_read() -> None:
    text = "foods:\n  - For the base:\n      - 1 onion\n      - 2 leeks, sliced\n  - 200 g swede\n" + STEPS
    recipe, _ = read(text)
    assert recipe is not None and [one.food for one in recipe.foods] == ["onion", "leek", "swede"]


@pytest.mark.parametrize("line", ['"Honey:"', "For serving, 2 tsp honey", '"For the baby: 1 tsp honey"'])
def test_a_food_is_never_taken_for_a_heading(line: str) -> None:
    recipe, found = read(f"foods:\n  - 1 onion\n  - {line}\n{STEPS.replace(', the leek and the swede', '')}")
    assert recipe is not None
    seen = {one.food for one in recipe.foods} | {
        "honey" for fault in found if fault.rule == "second-food-on-a-line" or fault.rule == "unknown-food"
    }
    assert "honey" in seen


def test_foods_joined_by_a_plus_are_read_apart() -> None:
    recipe, found = read("foods:\n  - 1 leek + 2 garlic cloves\nsteps:\n  - Fry the leek and garlic for 12 minutes.\n")
    assert recipe is not None and [one.food for one in recipe.foods] == ["leek", "garlic"]
    assert [fault.rule for fault in found] == ["foods-on-one-line"]


@each(
    ("line", "food"),
    [
        ("90 ml water, for the millet", "water"),
        ("600 g turnips, peeled and cut up", "turnip"),
        ("2 smoked mackerel fillets, skin and bones taken off", "smoked-mackerel"),
        ("1 lb 85% lean ground turkey", "turkey-mince"),
        ("2 tsp ginger – garlic paste", "ginger"),
        ("120 g flank steak, sliced across the grain", "beef-lean"),
    ],
)
def test_what_is_said_beside_the_food_is_read(line: str, food: str) -> None:
    one, found, _ = read_line(line)
    assert one.food == food
    assert [fault.rule for fault in found] == []


def test_parts_taken_off_are_prepared() -> None:
    one, _, _ = read_line("1 mango, stone out, mashed")
    assert [word for word, _ in one.prepared] == ["stoned"]


def test_what_is_said_for_the_grown_ups_is_said_of_both() -> None:
    recipe, _ = read(
        "foods:\n  - 300 g swede, 1 cm dice\n  - salt and parmesan, for the adults\nsteps:\n  - Steam the swede.\n"
    )
    assert recipe is not None
    assert [line.has("for-others") for line in recipe.foods] == [False, True, True]


def test_what_is_denied_leaves_no_word_over() -> None:
    one, found, _ = read_line("1 pack (240 g) cooked beetroot, no vinegar")
    assert one.food == "beetroot-boiled" and found == []
