"""A food that is divided over the steps: its rest is judged by what is done to the rest."""

from __future__ import annotations

from tests.each import each
from tests.feeding.dishes import dish, hazard_ids

UNSAFE = [
    ["Mash half of the grapes into the yoghurt.", "Top with the rest of the grapes and serve."],
    ["Mash half the grapes and stir them into the yoghurt.", "Scatter the remaining grapes over it and serve."],
    ["Quarter a few of the grapes for the top.", "Stir the other grapes into the yoghurt and serve."],
    ["Blend most of the grapes with the yoghurt.", "Serve with the last few grapes on top."],
    ["Mash the grapes, keeping a few whole, and stir them into the yoghurt."],
    ["Keep back a few of the grapes. Mash the rest and stir into the yoghurt.", "Top with those kept back."],
    ["Mash the grapes into the yoghurt. Keep back a few to drop on top."],
    ["Squash the grapes flat and stir them in.", "Leave a few whole for the top."],
    ["Set aside a handful of the grapes. Quarter the rest into the yoghurt.", "Top with those set aside."],
]
SAFE = [
    ["Quarter the grapes and stir them into the yoghurt. Keep back a few to drop on top."],
    ["Mash the grapes into the yoghurt. Keep back a few for yourself."],
    [
        "Keep back a few of the grapes. Mash the rest and stir into the yoghurt.",
        "Quarter those kept back, and top with them.",
    ],
    ["Keep back a few of the grapes for yourself. Mash the rest and stir into the yoghurt."],
    ["Quarter the grapes.", "Mash the grapes, keeping a few back for the top."],
    ["Mash the grapes, leaving none whole, and stir them into the yoghurt."],
    ["Mash half of the grapes and quarter the rest.", "Stir into the yoghurt and serve."],
    ["Mash half of the grapes.", "Quarter the rest of the grapes lengthways and scatter over the yoghurt."],
    ["Quarter the grapes lengthways. Stir half of the grapes into the yoghurt.", "Top with the rest of the grapes."],
    ["Stir half of the grapes into the yoghurt.", "Top with the rest of the grapes, then blend all until smooth."],
    ["Quarter half of the grapes for the top.", "Blend the rest of the grapes with the yoghurt until smooth."],
]
FOODS = ["80 g grapes", "100 g full-fat yoghurt"]


@each("steps", UNSAFE)
def test_the_rest_left_whole_is_a_hazard(steps: list[str]) -> None:
    assert "round-uncut" in hazard_ids(dish("12-18", FOODS, steps))


@each("steps", SAFE)
def test_the_rest_made_safe_is_none(steps: list[str]) -> None:
    assert hazard_ids(dish("12-18", FOODS, steps)) == set()
