"""An age no food is given at, a nap, a place or a person that is safe, people of other cultures: no claim."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    "text",
    [
        "Most babies as young as nine weeks can begin to enjoy a bath and a book.",
        "By three your child needs a bedtime and a story, and drinking milk right before sleep is a nuisance.",
        "The children were running around and the cake was eaten.",
        "There are two cafes we know are safe, and many are not.",
        "I scraped out the last of the pureed goodness from the pouch.",
        "An uncle had a stomach complaint that put him on apple sauce.",
        "It is a comfort to know my child will be safe.",
        "It is hard to find somewhere safe to eat.",
        "You make a calmer atmosphere, which can help a cautious eater thrive.",
        "I read how children of other cultures are given spice and heat.",
        "The butter and the sugar cut the acidity.",
        "This routine helps his brain to calm down.",
        "From 2-9 months, nearly anything went for us.",
        "He was only just over 10 months old and took a sip of milk.",
        "She had been hoping to hold off on solids until Otto was six months old.",
        "My son has never been very interested in food.",
        "Whatever kind of chocolate is safe for your lot will do.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Babies of six months can eat mashed pear.", "safety-age"),
        ("From six months they may have egg.", "safety-age"),
        ("Babies as young as six months can enjoy porridge.", "safety-age"),
        ("From 6 months, soft toast.", "safety-age"),
        ("At six months they can have anything but honey.", "safety-age"),
        ("No honey before one year.", "safety-age"),
        ("At six months avoid honey.", "safety-age"),
        ("Before a year, no cow's milk as a drink.", "safety-age"),
        ("Honey at one, not before six months.", "safety-age"),
        ("Wait with salt until one year.", "safety-age"),
        ("Milk before bed helps him sleep.", "function"),
        ("Oats make her sleep.", "function"),
        ("Banana brings sleep.", "function"),
        ("Beans upset the stomach.", "function"),
        ("Ginger calms a stomach.", "function"),
        ("Children should not eat while running around.", "safety-age"),
        ("Is this safe for babies?", "safety-age"),
        ("They can eat soft lumps safely.", "safety-age"),
        ("Is raw egg safe for babies?", "safety-age"),
        ("Peanut butter is safe from six months.", "safety-age"),
        ("Oats are full of goodness.", "general-benefit"),
        ("All the goodness of lentils.", "general-benefit"),
        ("Yoghurt has live cultures.", "nutrient-content"),
        ("This kefir is full of cultures.", "nutrient-content"),
        ("Buttermilk reduces acidity.", "disease"),
        ("Garlic, which can help with colds, is cheap.", "disease"),
        ("Fish that can help the brain is worth it.", "function"),
        ("This porridge helps his brain.", "function"),
        ("This drink helps his digestion.", "function"),
        ("This soup helps his brain.", "function"),
    ],
)
def test_what_is_said_beside_it_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}
