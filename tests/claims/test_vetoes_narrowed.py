"""What a veto of tales and families must leave alone: the claim whose words are near those of a tale."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@each(
    ("text", "kind"),
    [
        ("Parsnip is hypoallergenic.", "allergen"),
        ("Millet is a low allergy grain.", "allergen"),
        ("Walnut is an allergen, so offer a crumb of it first.", "allergen"),
        ("Millet is seldom allergenic, which is why many like it.", "allergen"),
        ("Don't put off solids past eight months.", "safety-age"),
        ("You can wait a week or two past six months if he is poorly.", "safety-age"),
        ("Kidney every day is great for iron.", "nutrient-content"),
        ("Sugar is what causes tooth decay.", "disease"),
        ("Scatter pumpkin seeds over it for a protein boost.", "nutrient-content"),
        ("When it comes to iron, lentils are the champions.", "nutrient-content"),
        ("If it's calcium you're after, try tahini.", "nutrient-content"),
        ("Nutmeg isn't a nut, and people with a nut allergy can eat it.", "allergen"),
        ("She weighs eight kilos so she is ready for solids.", "safety-age"),
        ("I always tell parents to start between five and six months.", "safety-age"),
        ("Your child is ready for solids once they double their birth weight.", "safety-age"),
        ("Doctor recommended for picky eaters.", "function"),
    ],
)
def test_a_claim_near_a_tale_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@pytest.mark.parametrize(
    "text",
    [
        "Olive is allergic to walnut.",
        "Over the past seven months we cooked with parsnip.",
        "On the great day, nut free was the rule.",
        "Nobody knows what causes allergies.",
        "On Mondays there is a protein, a carb and some fruit.",
        "We were looking for a healthy lunch.",
        "For children with walnut allergies a party takes planning.",
        "Babies are born with taste buds.",
    ],
)
def test_a_tale_still_claims_nothing(text: str) -> None:
    assert claims(text) == []
