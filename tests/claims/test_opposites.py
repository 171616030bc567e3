"""What is kept is not kept turned round: one word of each sentence is put for its opposite, and nothing is kept."""

from __future__ import annotations

import re

from tests.each import each
from tests.test_hearing import heard

OPPOSITES = (
    ("with", "without"),
    ("before", "after"),
    ("after", "before"),
    ("under", "over"),
    ("over", "under"),
    ("until", "from"),
    ("whole", "quartered"),
    ("more", "less"),
    ("less", "more"),
    ("contain", "lack"),
    ("contains", "lacks"),
    ("carry", "lack"),
    ("risk", "blessing"),
    ("ready", "unready"),
    ("helps", "harms"),
    ("help", "harm"),
    ("good", "bad"),
    ("better", "worse"),
    ("high", "low"),
    ("hard", "soft"),
    ("raw", "cooked"),
    ("never", "always"),
    ("harmful", "harmless"),
    ("keep", "stop keeping"),
    ("common", "rare"),
    ("safe", "dangerous"),
)
KEPT = (
    "Honey isn't safe for babies under twelve months.",
    "No honey before the first birthday because of the risk of botulism.",
    "Honey should wait until after the first birthday.",
    "Honey is off the list until the first birthday because it can carry spores.",
    "Rice drinks are not for children under five because they contain arsenic.",
    "Rice drinks should not be given to a child under five.",
    "Popcorn is not for children under five.",
    "Popcorn should be held back until five.",
    "Whole nuts are a choking risk for children under five.",
    "Whole nuts shouldn't be given until five.",
    "Whole grapes are a choking risk.",
    "Never give whole grapes to a toddler.",
    "Don't give a toddler whole cherry tomatoes.",
    "You mustn't serve whole grapes.",
    "Cut grapes lengthways before you serve them.",
    "Quarter cherry tomatoes lengthways before they go on the plate.",
    "Because of choking I never give raw carrot.",
    "Babies are ready for solids at around six months.",
    "A baby who can sit up and hold her head steady is ready for solids.",
    "No solids before four months.",
    "Solids before seventeen weeks are too early.",
    "You shouldn't start solids before seventeen weeks.",
    "If your baby has severe eczema, speak to a doctor before offering peanut.",
    "If your child has severe eczema, ask a doctor before the first taste of peanut.",
    "Vitamin C helps the body take up iron.",
    "Vitamin C helps the body absorb iron from lentils.",
    "The vitamin C in peppers helps the body absorb iron from beans.",
    "Serve peppers with the beans so that the iron is better absorbed.",
    "Vitamin D helps the body absorb calcium.",
    "A baby's kidneys cannot cope with much salt.",
    "Too much salt is harmful for a baby's kidneys.",
    "Babies under one should have less than one gram of salt a day.",
    "Babies under one shouldn't have more than a gram of salt a day.",
    "Shark, swordfish and marlin are high in mercury and not for children.",
    "Swordfish contains more mercury than cod.",
    "Kidney beans must be boiled hard, because undercooked ones contain a toxin.",
    "Undercooked kidney beans contain a toxin.",
    "Unpasteurised milk can carry listeria and isn't for babies.",
    "Egg is a common allergen.",
    "Tahini contains sesame, which is a common allergen.",
    "Goat's milk is not suitable for a baby with a cow's milk allergy.",
    "Bread is not for babies with coeliac disease.",
    "Lentils are a good source of iron.",
    "Paneer is a good source of protein.",
    "Chickpeas are a good source of protein.",
    "Rice contains some arsenic.",
    "Frozen peas keep their vitamin C.",
    "Boiling vegetables loses more vitamin C than steaming them.",
    "Microwaved vegetables keep their vitamins better than boiled ones.",
    "Breast milk or formula stays the main drink until one.",
    "Sweet potatoes contain beta-carotene.",
    "Spinach is high in nitrates and not for babies under three months.",
    "Stay in the room with your one-year-old while he eats.",
    "Sitting up with a steady head is a sign of readiness.",
    "Growing children need more iron.",
    "Homemade mayonnaise with raw egg isn't safe for little ones.",
    "Sushi with raw fish should wait until five.",
    "Cow's milk is fine as a drink after the first birthday.",
    "Honey is okay after the first birthday.",
)
TRUE_TOO = frozenset(
    {"quartered nuts are a choking risk for children under five.", "quartered nuts shouldn't be given until five."}
)
"""What is true, or nobody's falsehood, the other way round as well."""


def turned() -> list[str]:
    """Every sentence with one word put for its opposite."""
    found = []
    for sentence in KEPT:
        for word, opposite in OPPOSITES:
            place = re.search(rf"(?<![\w-]){word}(?![\w-])", sentence, re.IGNORECASE)
            if place:
                found.append(sentence[: place.start()] + opposite + sentence[place.end() :])
    return [one for one in found if one not in TRUE_TOO]


@each("sentence", KEPT)
def test_what_is_so_is_kept(sentence: str) -> None:
    assert [one.advice for one in heard(sentence) if one.advice != "keep"] == []


@each("sentence", turned())
def test_turned_round_it_is_not_kept(sentence: str) -> None:
    assert [(one.claim.quote, one.entry) for one in heard(sentence) if one.advice == "keep"] == []
