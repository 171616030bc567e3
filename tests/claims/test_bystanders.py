"""What is said of a person, of an aim or of what the cook does is no claim about a food."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@each(
    "text",
    [
        "We do without sugar in our house.",
        "Everything for the party has to be egg free.",
        "At two she was dairy free.",
        "Pack a drink, such as water or sugar free squash.",
        "My son's health was all I thought of at this stage.",
        "We took teething biscuits on the train.",
        "Go for supermarket oat bars from the baby aisle that are free from added salt.",
        "I fret about his body and what it needs to be healthy.",
        "When Ivy turned 5 months old she demanded we start porridge.",
        "Weaning is fun, whatever the concerns about choking.",
        'One more "healthy" flapjack that tastes of sawdust.',
        "No amount of added sugar makes up for a ripe plum.",
        "For flapjacks we can do better.",
        "My aunt never forgot about his egg allergy.",
        "It began with a hunt for a truly safe breakfast.",
        "Supper had to be nutritious and quick.",
        "My nephew Ned was six months old when weaning began.",
        "A bake you can feel good about, and one your six-year-old asks for.",
        "Let us break down why these minerals matter in the recipe.",
        "It wasn't the plums, nor the bread, nor the protein.",
        "If there are family allergies, see your GP before starting weaning.",
        "I didn't begin with swede until he reached 6 months.",
        "Two mums have been weaning since four months, and both are tired.",
        "She was 7 months and spooned up her first porridge.",
        "He seems very interested in food now and stares at our forks.",
        "A shelf of stage 1 purees stood by the till.",
    ],
)
def test_it_claims_nothing(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind"),
    [
        ("The muffins do without sugar.", "nutrient-content"),
        ("These waffles are egg free.", "allergen"),
        ("If you are coeliac you can eat these gluten free muffins.", "allergen"),
        ("Figs are good for my baby's health.", "general-benefit"),
        ("These diets are tempting, but they bring no lasting benefits for your health.", "general-benefit"),
        ("Gelatine gives the soup protein.", "nutrient-content"),
        ("The benefits of including figs in the diet are many.", "general-benefit"),
        ("Barley keeps children healthy.", "general-benefit"),
        ("Barley makes children stronger.", "function"),
        ("Steaming prevents folate from leaching out into the cooking water.", "process"),
        ("Use the steaming water in the mash as it keeps the folate.", "process"),
        ("Use as little water as you can to keep the folate in.", "process"),
        ("This bake is great for a baby starting around 8 months.", "safety-age"),
        ("A healthy walnut muffin", "general-benefit"),
        ("Porridge is good for his egg allergy.", "allergen"),
        ("Your nine-month-old can have yoghurt.", "safety-age"),
        ("Iron levels are higher in lentils than in rice.", "comparative"),
        ("Tinned sardines can compete with cheese on calcium.", "comparative"),
        ("There are foods like honey that should not be given to infants.", "safety-age"),
        ("I didn't give honey at first, as babies should not have honey before 12 months.", "safety-age"),
        ("Babies who seem interested in food are ready for solids.", "safety-age"),
        ("Omit honey for babies under one.", "safety-age"),
        ("Stage 1 purees are for babies from six months.", "safety-age"),
    ],
)
def test_what_is_said_of_the_food_still_is_one(text: str, kind: str) -> None:
    assert kind in {claim.kind for claim in claims(text)}


@pytest.mark.parametrize(
    ("text", "polarity"),
    [
        ("Don't throw it out, the skin has more fibre.", "asserts"),
        ("Never strain it, they contain iron.", "asserts"),
        ("The bran doesn't have more fibre.", "denies"),
        ("No, the bran does not have iron.", "denies"),
    ],
)
def test_a_no_ends_with_its_clause(text: str, polarity: str) -> None:
    assert {claim.polarity for claim in claims(text) if claim.kind in ("nutrient-content", "comparative")} == {polarity}


def test_the_skin_that_holds_something_is_a_fruits() -> None:
    assert [claim.kind for claim in claims("Don't peel it, the skin has more fibre.")] == ["nutrient-content"]
    assert "function" in {claim.kind for claim in claims("The skin needs vitamin C.")}
