"""Whether a weight is of the food as bought or of what is eaten of it, by where the words of the line stand."""

from __future__ import annotations

import pytest

from spoonproof.foods.weigh import Weight, weigh
from tests.each import each
from tests.kitchen import knowledge, read


def of(text: str) -> Weight:
    """What a food line weighs, read as one of a recipe."""
    recipe, _ = read(f"foods:\n  - {text}\n")
    assert recipe is not None
    (line,) = recipe.foods
    food = knowledge().foods.get(line.food or "")
    assert food is not None, text
    got = weigh(line, food, knowledge().measures("UK"))
    assert isinstance(got, Weight), got
    return got


@each(
    "text",
    [
        "200 g broccoli florets",
        '"200 g broccoli florets"',
        "200 g diced mango",
        "200 g avocado flesh",
        "200 g cherries, stoned weight",
        "200 g orange segments",
        "200 g finely grated carrot",
    ],
)
def test_what_was_weighed_ready_loses_nothing(text: str) -> None:
    got = of(text)
    assert got.edible.mid == 200 < got.bought.mid
    assert any("no waste taken off" in said for said in got.assumed)


@pytest.mark.parametrize(
    "text",
    ["200 g broccoli, cut into florets", "200 g mango, diced", "200 g carrots grated", "200 g whole carrots, peeled"],
)
def test_what_was_weighed_as_bought_loses_its_waste(text: str) -> None:
    got = of(text)
    assert got.bought.mid == 200 > got.edible.mid


def test_drained_behind_the_bracket_is_said_of_the_whole_tin() -> None:
    assert of("1 can chickpeas (400 g), drained").edible.mid < 300
    assert of("1 can chickpeas (240 g drained)").edible.mid == 240
    assert of("1 tin (95 g drained) mackerel in olive oil").edible.mid == 95


def test_juice_and_zest_weigh_what_the_fruit_yields() -> None:
    assert of("juice and zest of 1 lemon").edible.mid < of("1 lemon").edible.mid


def test_plum_tomatoes_have_a_weight_of_their_own_and_come_in_tins() -> None:
    assert of("2 plum tomatoes").edible.mid < of("2 tomatoes").edible.mid
    assert of("1 x 400 g tin plum tomatoes").edible.mid == 400


def test_a_measure_goes_by_a_portion_of_its_own_kind() -> None:
    cup, spoon = of("1 cup fresh basil").edible.mid, of("16 tbsp chopped basil").edible.mid
    assert cup < spoon  # whole leaves lie looser than chopped ones


def test_zest_and_juice_in_either_order_weigh_the_same() -> None:
    assert of("zest and juice of 1 lime").edible == of("juice and zest of 1 lime").edible
