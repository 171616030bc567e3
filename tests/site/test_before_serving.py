"""What the page asks to be checked before the first spoonful fits how the dish was made."""

from __future__ import annotations

from spoonproof.site.gather import squash
from tests.feeding.dishes import dish

OATS = ["40 g porridge oats", "150 ml whole milk", "80 g strawberries, hulled"]
OVER = [
    "Simmer the oats in the milk for 5 minutes, until thick.",
    "Mash the strawberries with a fork and stir them in.",
]


def _asked(foods: list[str], steps: list[str], texture: str) -> str:
    return " ".join(squash(dish("7-12", foods, steps, texture)))


def test_porridge_under_mashed_berries_has_no_piece_to_press() -> None:
    asked = _asked(OATS, OVER, "mashed")
    assert "piece" not in asked
    assert "cook on" not in asked
    assert "no firm lump" in asked
    assert "never hot" in asked


def test_what_is_mashed_is_pressed_before_it_is_mashed() -> None:
    steps = ["Steam the carrots for 18 minutes, until a piece squashes.", "Mash the carrots."]
    asked = _asked(["300 g carrots, peeled, 1 cm dice"], steps, "mashed")
    assert asked.startswith("Before you mash, press the biggest piece")


def test_soft_pieces_are_pressed_as_they_are() -> None:
    steps = ["Steam the carrots for 18 minutes, until a piece squashes."]
    asked = _asked(["300 g carrots, peeled, cut into batons"], steps, "soft finger food")
    assert asked.startswith("Press the biggest piece between finger and thumb")
    assert "If it doesn’t, cook on" in asked
    assert "Before you" not in asked
