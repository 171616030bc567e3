"""A thing named after a food, a course of a meal, a material, what the cook brings off: no claim."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    "text",
    [
        "The ice packs we own are slim and light.",
        "The egg cutters are slim enough for a drawer.",
        "We bought bottled water so the kettle has no mineral deposits.",
        "Each box has a fruit, a grain, protein, dairy and something crunchy.",
        "School gives them milk, which leaves me room with protein and dairy.",
        "Carbs: bread, rice, potatoes.",
        "She is a bean pole, a string bean even, and I don't worry about calories.",
        "I had no idea how to turn KJ's cake into a boat.",
        "The lid is made of BPA-free plastic.",
        "These cups are silicone, which means BPA free, and stack well.",
        "It is a cookbook that helps you hide healthy things in supper.",
        "The children danced, the cake went, and sugar was in high demand.",
        "So not every supper needs to include baby food.",
        "I cook a month of baby food at once (a big boy has a big appetite).",
        "A balanced diet is crucial for health and well-being.",
        "How could I feed my child a healthy, well-balanced diet without milk and eggs?",
        "The milk they drink there can be the protein or the dairy.",
        "Then she wakes me asking for gummy vitamins.",
        "I wish I could make your skin clear, right honey?",
        "Rolls are fine, but with healthy fillings.",
        "They each get a wrap with some kind of protein and a plum.",
        "The added benefit that the broth can be used again is not small.",
        "Her cake is more important than another child's health.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("The ice in this drink keeps them slim.", "function"),
        ("Water is full of mineral salts.", "nutrient-content"),
        ("Carrot cake keeps you slim.", "function"),
        ("Kiwis pack a punch of vitamin C.", "nutrient-content"),
        ("Green beans keep you slim.", "function"),
        ("Lentils, peas and tofu bring protein.", "nutrient-content"),
        ("Protein comes from dairy and eggs.", "nutrient-content"),
        ("Yoghurt has protein, iron and calcium.", "nutrient-content"),
        ("Iron: spinach, lentils, beef.", "nutrient-content"),
        ("The grain has protein.", "nutrient-content"),
        ("Worry about the calories in juice.", "nutrient-content"),
        ("There are calories in beans.", "nutrient-content"),
        ("Rice is 130 kcal of energy.", "quantity"),
        ("Cake gives them calories.", "nutrient-content"),
        ("Beans have few calories.", "nutrient-content"),
        ("Rice cakes contain arsenic.", "safety-age"),
        ("Spinach is free of pesticides.", "safety-age"),
        ("This puree is free from BPA.", "safety-age"),
        ("Tuna contains mercury.", "safety-age"),
        ("Plastic bottles leach BPA into milk.", "safety-age"),
        ("Oats help you stay healthy.", "function"),
        ("Broth helps you fight a cold.", "disease"),
        ("Milk helps you grow.", "function"),
        ("Porridge helps you sleep.", "function"),
        ("Eggs help your baby to grow.", "function"),
        ("Crisps are high in sugar.", "nutrient-content"),
        ("Juice is high in sugar in every season.", "nutrient-content"),
        ("Bread is low in sugar.", "nutrient-content"),
        ("Beans are high in fibre.", "nutrient-content"),
        ("These bars are high in sugar.", "nutrient-content"),
        ("A cup of lentils meets his iron needs.", "nutrient-content"),
        ("Liver covers her needs for iron.", "nutrient-content"),
        ("Milk dulls the appetite.", "function"),
        ("Ginger gives a good appetite.", "function"),
        ("Squash ruins his appetite.", "function"),
        ("A low fat diet is healthy.", "general-benefit"),
        ("Lentils make a healthy meal.", "general-benefit"),
        ("This soup is a nutritious dinner.", "general-benefit"),
        ("To make a nutritious lunch, add lentils.", "general-benefit"),
        ("Dals are part of a healthy diet.", "general-benefit"),
        ("Milk is the protein they need.", "nutrient-content"),
        ("Tofu is protein.", "nutrient-content"),
        ("Honey keeps your skin clear.", "function"),
        ("Right, honey keeps skin clear.", "function"),
        ("Carrots have vitamins.", "nutrient-content"),
        ("Milk and its vitamins.", "nutrient-content"),
        ("Oat rolls are healthy.", "general-benefit"),
        ("The benefit of oats is that they lower cholesterol.", "general-benefit"),
        ("Tofu has protein of a good kind.", "nutrient-content"),
        ("Oats have health benefits.", "general-benefit"),
        ("These sandwiches are healthy.", "general-benefit"),
        ("Beans are good for your health.", "general-benefit"),
    ],
)
def test_what_is_said_beside_it_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}
