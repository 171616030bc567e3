""" "Butter's fine" says that butter is; "spinach's iron" is of spinach."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    ("text", "kind", "subject"),
    [
        ("Ghee's fine for babies as long as it's plain.", "safety-age", "ghee"),
        ("Mackerel's a good source of vitamin D.", "nutrient-content", "mackerel"),
        ("Iron's the one that carries oxygen to the brain.", "function", "iron"),
        ("Kale's packed with calcium.", "nutrient-content", "kale"),
        ("Spinach's iron is not much.", "nutrient-content", "spinach"),
    ],
)
def test_what_is_said_of_a_food_with_a_short_is_is_heard(text: str, kind: str, subject: str) -> None:
    found = [claim for claim in claims(text) if claim.kind == kind]
    assert any(subject in said.lower() for claim in found for said in claim.subjects), claims(text)


@pytest.mark.parametrize(
    "text", ["The butter's in the fridge.", "Rhubarb's great with ginger.", "The soup's a bit thick."]
)
def test_ordinary_talk_with_it_is_not(text: str) -> None:
    assert claims(text) == []


def test_what_is_done_to_a_dish_is_not_what_speaks() -> None:
    found = claims("Split peas thickened it and doubled the protein.")
    assert [claim.subjects for claim in found] == [("split pea",)]
