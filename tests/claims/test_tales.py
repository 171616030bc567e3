"""How long a thing went on, what a recipe is called, who had a fright: no claim; ages and dangers beside them are."""

from __future__ import annotations

from finding_kit import claims

from tests.each import each


@each(
    "text",
    [
        "Over the last six years we have learned to like swede.",
        "We hope to hold off solids for another 3 weeks, since the move comes first.",
        "Our youngest (7 months on Sunday) was treated to her first solid food.",
        "There is a small girl in our house who is getting interested in food and watches every spoon.",
        "At three years old, a child is moving from baby food to what the family eats.",
        "Throwing is a normal part of development.",
        "I nearly had a heart attack when the pear went everywhere.",
        "My niece was having meltdowns over some swede.",
        "I printed a recipe for Healthy Plum Oat Squares.",
        "You learn which sweets are always sesame-free.",
        "All week I was searching for quick ways to prepare nourishing suppers for toddlers.",
        "In the first few months of weaning we washed a bib a day.",
        "Spoons come of themselves, which doesn't happen until about 10 months old with us.",
        "I had a healthy diet back then, and my one vice was toast.",
        "What is gluten, nut, and egg-free and can be had from a shop?",
        "My little one has made it plain that she is ready for her first solids.",
        "He's over 25 weeks old now, can sit up and watches every spoon.",
        "I'd say she was showing interest in food, or at least in forks.",
        "Our small man was 6 months old a fortnight ago, and I'd put off weaning him until then.",
        "The rule ensures you pack a protein, a carb and something green.",
        "Teething can upset a mealtime for a week.",
        "At the clinic I was diagnosed with a walnut allergy.",
        "He is badly allergic to walnut and would have a reaction to anything with walnut protein.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind"),
    [
        ("We give Ottilie cow's milk from 7 months.", "safety-age"),
        ("We begin solids at 12 weeks in our family.", "safety-age"),
        ("My rule is porridge from four months.", "safety-age"),
        ("We want to start him on solids at 3 months.", "safety-age"),
        ("I wouldn't offer this before a year.", "safety-age"),
        ("We say no honey before one.", "safety-age"),
        ("My rule is that grapes are cut lengthwise until five.", "safety-age"),
        ("She should have no solids before 17 weeks.", "safety-age"),
        ("Milk is their main drink for the first twelve months.", "safety-age"),
        ("These healthy plum bars keep well.", "general-benefit"),
        ("Wheat bread has gluten.", "allergen"),
        ("These bars are made without salt.", "nutrient-content"),
        ("Mashed swede gives a taste of the season without the added sugar.", "nutrient-content"),
        ("Cold cucumber eases teething.", "function"),
        ("Babies who can sit up are ready for solids.", "safety-age"),
        ("Eggs are a good source of protein.", "nutrient-content"),
        ("This lunch is safe for babies from six months.", "safety-age"),
        ("Iron is vital for healthy blood.", "function"),
        ("She eats lentils for the iron.", "nutrient-content"),
        ("Milk has a protein called casein.", "nutrient-content"),
        ("Prunes treat constipation.", "disease"),
        ("If your baby is under six months, give no solids.", "safety-age"),
        ("Lentils add iron to porridge.", "nutrient-content"),
        ("Raw kidney beans are poisonous.", "safety-age"),
        ("Iron is good for development.", "function"),
        ("Which of these are safe? Cooked egg is safe for babies.", "safety-age"),
    ],
)
def test_what_is_said_beside_it_is_heard(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}
