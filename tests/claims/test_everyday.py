"""What cooks say in everyday words is a claim all the same; kitchen talk of the same shape is none."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("This bowl suits babies from seven months.", "safety-age"),
        ("From 9 months", "safety-age"),
        ("Oat drinks are no replacement for breast milk.", "safety-age"),
        ("Never give raw milk.", "safety-age"),
        ("Constipation: prunes, pears and water", "disease"),
        ("Cold-busting ginger soup", "disease"),
        ("Tummy-friendly barley", "function"),
        ("Walnut oil keeps hair shiny.", "function"),
        ("Oats keep them full until lunch.", "function"),
        ("May contain traces of nuts", "allergen"),
        ("no dairy, no egg in this one", "allergen"),
        ("Offer one new allergen at a time.", "allergen"),
    ],
)
def test_it_is_found(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@pytest.mark.parametrize(
    "text",
    [
        "Replace the milk with oat milk if you like.",
        "The tin contains six rolls.",
        "Family-friendly, budget-busting suppers.",
        "Make the pastry thick and shiny with egg wash.",
        "Stir until the sauce is full of bubbles.",
        "Hungry? Try the muffins.",
        "Always cut the pastry with a cold knife.",
    ],
)
def test_kitchen_talk_is_left_alone(text: str) -> None:
    assert claims(text) == []
