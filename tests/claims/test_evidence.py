"""A match is a claim only where what makes it one is in its sentence."""

from __future__ import annotations

import pytest
from finding_kit import claims

from tests.each import each


@pytest.mark.parametrize(
    "text",
    [
        "A longer walk before bed helped our whole household improve its digestion that spring.",
        "Not only would such a fright cause trauma for the child, it would upset the neighbours.",
        "Picture the new pear press as a smaller version of the old one, made with a baby's digestive system in mind.",
        "For a whole year I kept walnuts out of each supper in the house for the benefit of my mother, our lodger.",
    ],
)
def test_what_nothing_eaten_does_is_no_claim(text: str) -> None:
    assert claims(text) == []


@each(
    "text",
    [
        "It was the healthiest supper I'd cooked all spring and he fed it to the hens.",
        "There was calcium in the kettle at my aunt's.",
        "Someone had cooked a safe pudding, and we ate it in the car.",
        "Our cousins have a gift for colic and chess.",
        "While he is teething I keep a spoon in the fridge.",
        "This shelf holds a row of safe treats from four makers.",
        "Obviously the picnic has to be sesame and egg free.",
        "We were told that our soup came from a clean (and shellfish free) corner of the kitchen.",
        "What about an egg-free sponge for the raffle?",
        "Grandparents should offer soft pears that babies are able to hold.",
        "It can help to offer your baby a soft pear.",
        "It's been nearly four years since he last avoided the swede.",
        "I put plums and cheese in the box, not expecting them to eat it all.",
        "I remember our son asking if there was any safe bread for him at the long table.",
        "He is a healthy toddler who throws plums.",
        "The cook told us to bring carbohydrates such as pasta or bread for the long table.",
    ],
)
def test_what_no_food_is_said_to_be_is_no_claim(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind"),
    [
        ("A stewed pear before bed helped our whole household improve its digestion that spring.", "function"),
        ("Nobody in our street had headaches last winter since we all cook with turmeric.", "disease"),
        (
            "Nobody minds that this stuff is plain, for it will make her tummy feel full until the middle of the day.",
            "function",
        ),
        ("Most guests with an egg allergy can eat this cake.", "allergen"),
        (
            "Breastfeeding, though it has many benefits, is hard to fit around two jobs and a long walk to the train.",
            "general-benefit",
        ),
        ("The best drink for toddlers is milk.", "general-benefit"),
        ("Aids digestion", "function"),
        ("Nothing in here prevents an illness, whatever the neighbours say of my suppers.", "disease"),
        (
            "In the clinic's report there is a link between a walnut allergy and asthma in children of that age.",
            "allergen",
        ),
        (
            "Of all that we tried that winter, with the stove out and the snow high, pears helped our digestion most.",
            "function",
        ),
        ("Swede is a safe treat from seven months.", "safety-age"),
        ("Should babies have soft pears?", "safety-age"),
        ("We baked an egg-free cake for the raffle.", "allergen"),
        ("Sesame, egg and dairy free.", "allergen"),
        ("These buns are sesame free.", "allergen"),
    ],
)
def test_what_a_food_does_or_is_said_to_be_is_one(text: str, kind: str) -> None:
    assert kind in [claim.kind for claim in claims(text)]
