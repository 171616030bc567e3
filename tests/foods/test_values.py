"""A missing value, a zero, a trace and a measured value are four things."""

from __future__ import annotations

import pytest

from spoonproof.foods.values import Values, read_value
from tests.each import each


def test_cells() -> None:
    assert read_value("2.5")[:4] == (2.5, 2.5, 2.5, "measured")
    assert read_value("2.5~0.5")[:4] == (2.5, 1.5, 3.5, "measured")
    assert read_value("0.2~0.5").low == 0
    assert read_value("2.5c").kind == "calculated"
    assert read_value("0z")[:4] == (0, 0, 0, "assumed-zero")
    assert read_value("0")[:4] == (0, 0, 0, "measured")
    assert read_value("t").kind == "trace"
    assert read_value("<0.5")[:4] == (0.25, 0, 0.5, "trace")


@each("cell", ["x", "-1", "nan", "inf", "1e9", "1~x", "~1", "c"])
def test_nonsense_is_refused(cell: str) -> None:
    with pytest.raises(ValueError):
        read_value(cell)


def test_an_empty_cell_is_no_value() -> None:
    values = Values({"iron_mg": "2", "zinc_mg": "", "sodium_mg": "0"})
    assert dict(values) == {"iron_mg": read_value("2"), "sodium_mg": read_value("0")}
    assert "zinc_mg" not in values
    assert values.get("zinc_mg") is None
    assert len(values) == 2
    with pytest.raises(KeyError):
        values["zinc_mg"]
    with pytest.raises(KeyError):
        values["no such nutrient"]


def test_a_figure_from_another_table_says_so() -> None:
    from tests.foods.bench import amount, counted, line, table

    cod = table().get("cod")
    assert cod is not None
    assert cod.per_100g["iodine_ug"].source == "ciqual-2020"
    assert cod.per_100g["iron_mg"].source == ""
    iodine = counted([line("cod", amount(100))]).per_batch["iodine_ug"]
    assert "ciqual-2020" in iodine.sources
    assert "ciqual-2020" not in counted([line("cod", amount(100))]).per_batch["iron_mg"].sources
