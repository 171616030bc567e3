"""A missing value, a zero, a trace and a measured value are four things."""

from __future__ import annotations

import pytest

from spoonproof.foods.values import Values, read_value


def test_cells() -> None:
    assert read_value("2.5") == (2.5, 2.5, 2.5, "measured")
    assert read_value("2.5~0.5") == (2.5, 1.5, 3.5, "measured")
    assert read_value("0.2~0.5").low == 0
    assert read_value("2.5c").kind == "calculated"
    assert read_value("0z") == (0, 0, 0, "assumed-zero")
    assert read_value("0") == (0, 0, 0, "measured")
    assert read_value("t").kind == "trace"
    assert read_value("<0.5") == (0.25, 0, 0.5, "trace")


@pytest.mark.parametrize("cell", ["x", "-1", "nan", "inf", "1e9", "1~x", "~1", "c"])
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
