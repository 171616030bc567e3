"""A day's reference intakes: by authority and age, never mixed, and none at six months."""

from __future__ import annotations

import pytest

from spoonproof.foods.intakes import Intakes, authority_for
from spoonproof.model.numbers import Estimate
from spoonproof.model.table import Row
from tests.foods.bench import intakes, rows


def test_six_months_has_none_and_says_so() -> None:
    for authority in ("EFSA", "US"):
        got = intakes().reference(6, authority)
        assert got.nutrients == {}
        assert "no reference intakes" in got.leaves_out[0]


def test_each_authority_by_itself() -> None:
    efsa, us = intakes().reference(8, "EFSA"), intakes().reference(8, "US")
    assert (efsa.age_band, us.age_band) == ("7-11 months", "7-12 months")
    assert efsa.nutrients["vitamin_c_mg"].value == 20
    assert us.nutrients["vitamin_c_mg"].value == 50
    assert efsa.nutrients["iron_mg"].kind == "PRI"
    assert us.nutrients["iron_mg"].kind == "RDA"
    assert efsa.nutrients["potassium_mg"].kind == us.nutrients["potassium_mg"].kind == "AI"
    older = intakes().reference(14, "EFSA")
    assert older.age_band == "1-3 years"
    assert older.nutrients["iron_mg"].value == 7
    assert intakes().reference(60, "EFSA").nutrients == {}


def test_a_share_says_what_it_leaves_out() -> None:
    got = intakes().reference(8, "EFSA")
    share = got.share("iron_mg", Estimate(1.1, 0.9, 1.4, "mg"))
    assert share is not None
    assert share.share == pytest.approx(0.1)
    assert share.low < share.share < share.high
    assert any("milk" in said for said in got.leaves_out)
    assert any("appetite" in said for said in got.leaves_out)
    assert got.share("sugars_g", Estimate(1, 1, 1, "g")) is None


def test_no_upper_limit_is_among_them() -> None:
    kinds = {row.text("kind") for row in rows("intakes")}
    assert kinds == {"PRI", "AI", "RDA", "safe and adequate intake", "energy from foods beside breast milk"}


def test_energy_from_foods_beside_milk() -> None:
    energy = intakes().energy_from_foods(7)
    assert energy is not None
    assert energy.value == 200
    energy = intakes().energy_from_foods(10)
    assert energy and energy.value == 300
    assert intakes().energy_from_foods(30) is None


def test_the_authority_of_a_channel() -> None:
    assert authority_for(["US", "EU"]) == "US"
    assert authority_for(["GB"]) == authority_for(["EU", "US"]) == authority_for([]) == "EFSA"


def test_a_broken_row_says_where() -> None:
    cells = {"authority": "EFSA", "from_months": "7", "to_months": "11", "nutrient": "iron_mg", "value": "11"}
    with pytest.raises(ValueError, match=r"i\.csv:3"):
        Intakes.from_rows([Row({**cells, "value": "0"}, "i.csv", 3)])
    with pytest.raises(ValueError, match=r"i\.csv:3"):
        Intakes.from_rows([Row({**cells, "nutrient": "love"}, "i.csv", 3)])
    with pytest.raises(ValueError, match="twice"):
        Intakes.from_rows([Row(cells, "i.csv", 2), Row(cells, "i.csv", 3)])
