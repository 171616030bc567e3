"""The reading printed back for a cook."""

from __future__ import annotations

from spoonproof.reading.echo import echo
from tests.kitchen import knowledge, read

HEAD = """
title: Parsnip bowl
ages: 7-9 months
texture: mashed
foods:
  - 300 g parsnips, peeled, 1 cm dice
  - 2 x 400 g tins of chickpeas in water, drained
  - {food: 1 tsp rapeseed oil, or: 1 tsp olive oil}
  - 10 g blorp
steps:
  - Steam the parsnips, covered, for 16-20 minutes, until a cube squashes between finger and thumb.
  - Add the chickpeas and a pinch of salt, and steam for 4 minutes more.
  - Lift out the baby's portion and mash it with the oil.
  - Hum a tune.
"""


def test_each_line_stands_beside_what_was_understood() -> None:
    recipe, _ = read(HEAD)
    assert recipe is not None
    known = knowledge()
    text = echo(recipe, known.foods, known.verbs)
    rows = text.split("\n")
    assert text == echo(recipe, known.foods, known.verbs)
    assert "300 g · parsnip [usda:11298] · dice 10 mm · peeled" in text
    assert "2 tin of 400 g each" in text
    assert "or 1 tsp · olive oil" in text
    assert "? blorp" in text
    assert "steam · parsnips · 16-20 min · until a cube squashes" in text
    assert "(squash test) · covered" in text
    assert "add · chickpeas · ? salt, not under foods" in text
    assert "the baby's portion is lifted out here" in text
    assert "? nothing was read out of this" in text
    starts = {row.index("300 g ·") for row in rows if "300 g ·" in row} | {
        row.index("add ·") for row in rows if "add ·" in row
    }
    assert len(starts) == 1
    assert all(not row.endswith(" ") for row in rows)
