"""A match is a claim only where what makes it one is in its sentence."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    "text",
    [
        "A longer walk before bed helped our whole household improve its digestion that spring.",
        "Not only would such a fright cause trauma for the child, it would upset the neighbours.",
    ],
)
def test_what_nothing_eaten_does_is_no_claim(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "This shelf holds a row of safe treats from four makers.",
        "Obviously the picnic has to be sesame and egg free.",
        "We were told that our soup came from a clean (and shellfish free) corner of the kitchen.",
        "What about an egg-free sponge for the raffle?",
        "Grandparents should offer soft pears that babies are able to hold.",
        "It can help to offer your baby a soft pear.",
    ],
)
def test_what_no_food_is_said_to_be_is_no_claim(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("A stewed pear before bed helped our whole household improve its digestion that spring.", "function"),
        ("Nobody in our street had headaches last winter since we all cook with turmeric.", "disease"),
        ("Aids digestion", "function"),
        ("Nothing in here prevents an illness, whatever the neighbours say of my suppers.", "disease"),
        ("Swede is a safe treat from seven months.", "safety-age"),
        ("Should babies have soft pears?", "safety-age"),
        ("We baked an egg-free cake for the raffle.", "allergen"),
        ("Sesame, egg and dairy free.", "allergen"),
        ("These buns are sesame free.", "allergen"),
    ],
)
def test_what_a_food_does_or_is_said_to_be_is_one(text: str, kind: str) -> None:
    assert kind in [claim.kind for claim in claims(text)]
