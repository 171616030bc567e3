"""Facts as a table, as JSON and as a picture."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from math import inf

from hypothesis import given
from hypothesis import strategies as st

from spoonproof.foods.facts import Facts
from spoonproof.foods.picture import as_svg
from spoonproof.foods.show import as_json, as_text, bar, number, rows, with_range
from spoonproof.model.food import NUTRIENT_UNITS, PART_OF
from spoonproof.model.numbers import Estimate
from tests.foods.bench import amount, counted, heat, intakes, line, makes, table


def _dish() -> Facts:
    lines = [
        line("red-lentils", amount(150)),
        line("carrot", amount(2, "piece"), "peeled"),
        line("garam-masala", amount(1)),
    ]
    return counted(lines, {1: [heat("steamed")]}, makes(5, 60))


def test_json_has_the_shape_of_the_contract() -> None:
    reference = intakes().reference(8, "EFSA")
    out = json.loads(json.dumps(as_json(_dish(), reference, intakes().energy_from_foods(8)), allow_nan=False))
    assert {"grams", "portions", "bowls", "per_batch", "per_portion", "per_100g", "reference", "assumed"} <= out.keys()
    for per in ("per_batch", "per_portion", "per_100g"):
        assert out[per].keys() <= NUTRIENT_UNITS.keys()
        assert {"energy_kcal", "protein_g", "iron_mg", "vitamin_a_rae_ug"} <= out[per].keys()
        for key, value in out[per].items():
            assert value.keys() == {"amount", "low", "high", "unit", "coverage"}
            assert value["unit"] == NUTRIENT_UNITS[key]
            assert value["high"] is None or value["low"] <= value["amount"] <= value["high"]
    assert out["reference"].keys() == {"authority", "age_band", "nutrients", "leaves_out"}
    iron = out["reference"]["nutrients"]["iron_mg"]
    assert {"kind", "value", "unit", "share"} <= iron.keys()
    assert iron["share"] == round(out["per_portion"]["iron_mg"]["amount"] / 11, 6)
    assert "vitamin D" not in out["per_100g"]
    assert out["energy_from_foods"]["authority"] == "WHO"
    assert out["assumed"]


def test_json_without_portions_or_reference() -> None:
    out = as_json(counted([line("pear", amount(100))]))
    assert out["portions"] is None
    assert out["per_portion"] is None
    assert out["reference"] is None


def test_what_is_not_known_is_not_shown_as_nothing() -> None:
    text = as_text(_dish(), intakes().reference(8, "EFSA"), "A dish", 110)
    assert "at least" in text
    assert "Not known:" in text
    assert "follow the baby's appetite".lower() in text.lower()
    assert "covers" not in text.replace("covers nearly", "")
    narrow = as_text(_dish(), intakes().reference(8, "EFSA"), "A dish", 50)
    assert "█" not in narrow


def test_figures_have_the_digits_they_deserve() -> None:
    assert [number(x) for x in (0, 0.001, 0.0312, 0.31, 2.345, 23.45, 234.5, 12345.6)] == [
        "0", "<0.01", "0.03", "0.31", "2.3", "23", "234", "12 346",
    ]  # fmt: skip
    assert with_range(Estimate(1, 0.5, 2, "mg")) == "1.0 (0.50–2.0)"
    assert with_range(Estimate(1, 1, inf, "mg", 0.5)) == "at least 1.0"
    assert with_range(Estimate(0, 0, inf, "mg", 0.5)) == "not fully known"
    assert with_range(None) == "not known"


def test_bars_show_the_range_and_run_on() -> None:
    for row in rows(_dish(), intakes().reference(8, "EFSA")):
        drawn = bar(row)
        assert len(drawn) in (0, 21)
        assert drawn.endswith("›") == (row.share is not None and row.high > 1)


def test_the_picture_is_sound_and_says_what_it_shows() -> None:
    svg = as_svg(_dish(), intakes().reference(8, "EFSA"), "Lentils & <carrots>")
    root = ET.fromstring(svg)
    names = [child.tag.rpartition("}")[2] for child in root]
    assert names[:2] == ["title", "desc"]
    assert root.get("role") == "img"
    assert "iron" in (root[1].text or "")
    assert root.get("aria-labelledby") == f"{root[0].get('id')} {root[1].get('id')}"
    assert "Nutrition Facts" not in svg
    assert svg == as_svg(_dish(), intakes().reference(8, "EFSA"), "Lentils & <carrots>")
    assert as_svg(_dish(), intakes().reference(6, "EFSA"), "x") == ""
    assert as_svg(counted([line("pear", amount(100))]), intakes().reference(8, "EFSA"), "x") == ""


FOODS = st.deferred(lambda: st.sampled_from(sorted(food.id for food in table() if food.per_100g)))
_FIGURE = re.compile(r"\d[\d.\s]*")


def _number(shown: str) -> float:
    """What a figure as shown stands for; its thousands stand apart."""
    return float("".join(shown.split()))


@given(st.lists(FOODS, min_size=1, max_size=4), st.data())
def test_no_part_is_shown_above_its_whole(foods: list[str], data: st.DataObject) -> None:
    shares = [data.draw(st.integers(0, 200)) for _ in foods]
    lines = [line(food, amount(grams) if grams else None) for food, grams in zip(foods, shares, strict=True)]
    got = counted(lines, {0: [heat("boiled", water="kept")]}, makes(3))
    shown = {row.nutrient: row for row in rows(got, None)}
    for part, whole in PART_OF.items():
        for per in (got.per_batch, got.per_portion or {}, got.per_100g):
            if part in per and whole in per:
                assert per[part].amount <= per[whole].amount
                assert per[part].low <= per[whole].low
                assert per[part].high <= per[whole].high or per[part].high == inf
        for cell in ("portion", "per_100g", "batch"):
            said, of = getattr(shown[part], cell).replace("<0.01", "0"), getattr(shown[whole], cell)
            if said[:3] != "not" and of[:3] != "not" and (first := _FIGURE.search(said)):
                most = _FIGURE.search(of)
                assert most is not None
                assert _number(first[0]) <= _number(most[0]), (said, of)


def test_a_whole_that_is_known_less_far_than_its_part_is_at_least_the_part() -> None:
    """Some tables have a value for the retinol of a food and none for its vitamin A."""
    got = counted([line("lamb-leg", amount(90)), line("courgette", amount(10))])
    assert got.per_batch["retinol_ug"].amount > 30
    assert got.per_batch["vitamin_a_rae_ug"].amount >= got.per_batch["retinol_ug"].amount
    assert got.per_batch["vitamin_a_rae_ug"].high == inf
    shown = {row.nutrient: row.batch for row in rows(got, None)}
    assert shown["vitamin_a_rae_ug"].startswith("at least")
    assert shown["retinol_ug"].startswith("at least")
