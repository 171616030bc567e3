"""The cook-time model against published figures that are not in its table, or not used to make the prediction."""

import math

import pytest

from spoonproof.cooking.heat import minutes_to_heat
from spoonproof.cooking.softness import CookTimes
from spoonproof.model.recipe import Cut
from spoonproof.model.text import NOWHERE
from tests.cooking.bench import rows


def dice(mm: float) -> Cut:
    return Cut("dice", NOWHERE, mm, mm)


# A table of an electric steamer's manual (source id steamer-manual-rc): 3 cm pieces, "just tender, slightly firm",
# 250 to 500 g, heating up included. Predicted from sources that give other sizes.
THREE_CENTIMETRES = [("carrot", 15, 20), ("sweet-potato", 12, 17), ("winter-squash", 15, 20)]


@pytest.mark.parametrize(("food", "low", "high"), THREE_CENTIMETRES)
def test_three_centimetre_pieces_from_the_other_sources(food: str, low: float, high: float) -> None:
    others = [
        row
        for row in rows("cook_times")
        if row.text("source") in ("kitchen-questions-steaming", "all-about-food-steaming")
    ]
    need = CookTimes.from_rows(others).needed(food, dice(30), "steam")
    assert need is not None
    assert need.crisp.low <= high and need.crisp.high >= low, "the ranges overlap"
    assert abs((need.crisp.low + need.crisp.high) / 2 - (low + high) / 2) <= 4, "and their middles are near"


# First-order softening of carrot at 100 °C (source id lee-2017-texture-kinetics, Table 1): the slowest and the fastest
# published rate bound the time to half and to a tenth of the firmness.
def test_published_times_are_about_half_the_firmness_and_a_baby_needs_a_tenth() -> None:
    rates = [row.number("k100_per_min") or 1.0 for row in rows("softening") if row.text("foods") == "carrot"]
    half = (math.log(2) / max(rates), math.log(2) / min(rates))
    tenth = (math.log(10) / max(rates), math.log(10) / min(rates))
    need = CookTimes.from_rows(rows("cook_times")).needed("carrot", Cut("slice", NOWHERE, 6.35, 6.35), "steam")
    assert need is not None
    heating = minutes_to_heat("slab", 6.35)
    assert half[0] <= need.crisp.low - heating and need.crisp.high - heating <= half[1]
    assert tenth[0] <= need.soft.low - heating and need.soft.high - heating <= tenth[1]


# Thermal diffusivity of potato: 0.097 cm² a minute (named in source id potato-sphere-1981 as an earlier paper's value).
def test_the_unit_of_the_diffusivity() -> None:
    (fitted,) = [row.number("alpha_1e7") for row in rows("thermal") if row.text("source") == "potato-sphere-1981"]
    assert fitted == pytest.approx(0.097 * 1e-4 / 60 * 1e7, abs=0.01)


# Vitamin C after five minutes (source id vitamin-c-five-minutes): losses of 14.3 and 11.1 % in steam, 54.6 and
# 50.5 % in boiling water, for broccoli and spinach.
@pytest.mark.parametrize(
    ("food", "method", "loss"),
    [("broccoli", "steam", 14.3), ("spinach", "steam", 11.1), ("broccoli", "boil", 54.6), ("spinach", "boil", 50.5)],
)
def test_vitamin_c_kept_is_the_published_loss_turned_round(food: str, method: str, loss: float) -> None:
    kept = [
        row.number("kept_low")
        for row in rows("vitamins_kept")
        if food in row.items("foods")
        and row.text("method") == method
        and row.text("nutrient") == "vitamin C"
        and row.text("minutes_low") == "5"
    ]
    assert kept == [pytest.approx(100 - loss)]
