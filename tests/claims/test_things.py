"""A thing named after a food, a course of a meal, a material, what the cook brings off: no claim."""

from __future__ import annotations

from finding_kit import claims

from tests.each import each


@each(
    "text",
    [
        "The ice packs we own are slim and light.",
        "The egg cutters are slim enough for a drawer.",
        "We bought bottled water so the kettle has no mineral deposits.",
        "Each box has a fruit, a grain, protein, dairy and something crunchy.",
        "School gives them milk, which leaves me room with protein and dairy.",
        "Carbs: bread, rice, potatoes.",
        "She is a bean pole, a string bean even, and I don't worry about calories.",
        "I cook a month of baby food at once (a big boy has a big appetite).",
        "Rolls are fine, but with healthy fillings.",
        "They each get a wrap with some kind of protein and a plum.",
        "The water pens are great for children in the car.",
        "My niece is a string bean, and we never think of calories.",
        "The menu says snacks must be wrapped, tidy and not full of sugar.",
        "I ate two bites of Buttered Death, which was the potato bake.",
        "They don't come to the table unless it's for sugar.",
        "Varied boxes cut lunchtime decision fatigue.",
        "She won't touch a cold homemade dumpling.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@each(
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
        ("Water is great for babies from six months.", "safety-age"),
        ("She eats beans, and they give her iron.", "nutrient-content"),
        ("She sleeps longer when she has had oats.", "function"),
        ("My skin glows when I drink carrot juice.", "function"),
        ("These snacks are full of sugar.", "nutrient-content"),
        ("Death from botulism comes from honey.", "disease"),
        ("Raw milk can bring death.", "disease"),
        ("It is sugar.", "nutrient-content"),
        ("Oats are for fibre.", "nutrient-content"),
        ("We give it for the iron in lentils.", "nutrient-content"),
        ("Lentils fight fatigue.", "disease"),
        ("Honey For Colds And Flu", "disease"),
        ("Ginger Soup For The Common Cold", "disease"),
        ("Sugar creates tooth decay.", "disease"),
        ("Garlic is good against a cold.", "disease"),
    ],
)
def test_what_is_said_beside_it_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}
