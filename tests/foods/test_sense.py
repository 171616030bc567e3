"""Figures that do not add up, in the table and in a recipe."""

from __future__ import annotations

from dataclasses import replace

import pytest

from spoonproof.foods.sense import mismatch, odd_figures
from spoonproof.foods.values import Values
from tests.foods.bench import amount, counted, line, makes, recipe, table, trial


def test_every_food_of_the_table_adds_up() -> None:
    odd = {food.id: said for food in table() if (said := list(odd_figures(food)))}
    # Records whose parts were measured apart and add up to a little more than there is: left as published.
    assert set(odd) <= {"single-cream", "yellowtail"}


@pytest.mark.parametrize(
    ("cells", "words"),
    [
        ({"energy_kcal": "400"}, "400 kcal"),
        ({"energy_kcal": "5"}, "5 kcal"),
        ({"water_g": "160"}, "weigh"),
        ({"sugars_g": "60"}, "more than"),
    ],
)
def test_what_cannot_be_is_told(cells: dict[str, str], words: str) -> None:
    food = table().get("pear")
    assert food is not None
    figures = {"energy_kcal": "57", "protein_g": "0.4", "fat_g": "0.1", "carbohydrate_g": "15", "water_g": "84"}
    assert list(odd_figures(replace(food, per_100g=Values(figures)))) == []
    assert any(words in said for said in odd_figures(replace(food, per_100g=Values({**figures, **cells}))))


LINES = [line("parsnip", amount(300), before="peeled"), line("pear", amount(200), before="cored")]


def test_makes_against_what_goes_in() -> None:
    for count, kind in ((8, None), (12, "more"), (2, "less")):
        made = recipe(LINES, makes(count, 60))
        got = mismatch(made, counted(LINES, makes=makes(count, 60)))
        assert (got.kind if got else None) == kind


def test_a_trial_that_cannot_be() -> None:
    for grams, kind in ((480.0, None), (4800.0, "trial")):
        trials = [trial("2026-11-02", grams)]
        made = recipe(LINES, makes(8, 60), trials=trials)
        got = mismatch(made, counted(LINES, makes=makes(8, 60), trials=trials))
        assert (got.kind if got else None) == kind


def test_nothing_stated_nothing_wrong() -> None:
    assert mismatch(recipe(LINES), counted(LINES)) is None
    assert mismatch(recipe(LINES, makes(400)), counted(LINES, makes=makes(400))) is None
    unweighed = [*LINES, line("carrot", None)]
    assert mismatch(recipe(unweighed, makes(40, 60)), counted(unweighed, makes=makes(40, 60))) is None
