"""Sound sentences, and each of them with a "no" put in, doubled or taken out: what says the opposite is never kept."""

from __future__ import annotations

import re
from collections.abc import Iterator

from spoonproof.hearing import hear
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

SOUND = (
    "Honey should not be given before a year because of the risk of botulism.",
    "Honey is not safe for a baby of nine months.",
    "A baby under one must never eat honey.",
    "Babies should not have honey before their first birthday.",
    "Whole almonds should not be given to children under five.",
    "Popcorn should not be given to a child of three because of choking.",
    "Grapes should be quartered lengthways for a two-year-old.",
    "Cherry tomatoes must be cut into quarters for a two-year-old.",
    "Whole grapes are a choking hazard for toddlers.",
    "Raw carrot can get stuck in a baby's throat.",
    "Fish bones can get stuck in a small throat.",
    "Marlin should be avoided by children because of its mercury.",
    "Swordfish is best avoided by children because of the mercury.",
    "Rice drinks should be avoided under five because of arsenic.",
    "Rice milk should not be given to a child of two because of arsenic.",
    "Raw milk can carry listeria.",
    "Unpasteurised milk should not be given to young children.",
    "Brie can contain listeria and should be avoided by babies.",
    "Dried kidney beans must be boiled hard, since underdone ones contain a toxin.",
    "Salt should be avoided in the first year.",
    "Babies should not be given added salt.",
    "Added sugar should be avoided under two.",
    "Fruit juice is not needed before twelve months.",
    "Cow's milk is not suitable as a main drink before twelve months.",
    "Tea and coffee are not suitable for babies.",
    "Wine should never be given to a child.",
    "Low fat milk is not suitable for a child of eighteen months.",
    "Goat's milk is not suitable for a baby with a cow's milk allergy.",
    "Most babies are ready for solid food at about six months.",
    "Your baby is ready for solids when she can sit up and hold her head steady.",
    "Holding her head steady is a sign of readiness.",
    "Peanut can be given from six months if it is smooth.",
    "Babies can have well cooked egg from six months.",
    "Breastfed babies are advised a vitamin D supplement.",
    "Iron-rich foods should come first.",
    "Egg is one of the common allergens.",
    "Sesame is an allergen.",
    "Kiwi can make the lips swell in a child who's allergic.",
    "A rash and a swelling can be signs of an allergic reaction.",
    "Chickpeas are a source of protein.",
    "Lentils are high in fibre.",
    "Pears are not high in iron.",
    "Cod is not a source of vitamin C.",
    "Pears do not contain vitamin B12.",
    "There is no evidence that ginger prevents colds.",
    "Nobody has shown that turmeric prevents colds.",
    "Garlic does not cure colds.",
    "No diet has been shown to cure autism.",
    "Gagging is not the same as choking.",
    "Too much milk can crowd out food with iron.",
    "The iron from plants is taken up less well than the iron from meat.",
    "Vitamin C helps the body take up iron.",
    "Steaming keeps more of the vitamin C than boiling.",
    "White rice has hardly any fibre.",
    "Avocado is low in protein.",
    "Ordinary oats are not safe for a coeliac child.",
    "Frozen peas keep their vitamin C.",
    "Water is not needed before six months.",
    "Baby-led weaning is as safe as spoons when the food is right.",
    "Solid food before four months is too early.",
    "Infant botulism can come from honey.",
    "There is no need to delay peanut past six months.",
    "Babies need iron from six months on.",
    "Raw milk carries listeria and should not be given to a toddler.",
    "Cow's milk should not be the main drink before one.",
    "Skip honey if your child is younger than one.",
    "Wait until your son is five before you give him whole nuts.",
    "A child who is allergic to milk should skip the cheese.",
    "Their kidneys can't deal with so much salt.",
)
_HELPER = re.compile(r"\b(?:is|are|can|should|may|must|has|have)\b(?! not|n't|'t)")
_SHORT = (("is", "isn't"), ("are", "aren't"), ("should", "shouldn't"), ("can", "can't"), ("can", "cannot"))
_TURNED = (
    *_SHORT,
    ("does", "doesn't"),
    ("need", "do not need"),
    ("keep", "stop keeping"),
    ("hold", "stop holding"),
    ("Holding", "Not holding"),
)
_NO = re.compile(r"(?: not|n't| never)\b")
_NONE = re.compile(r"\bno (?=[a-z])")


def turned(sentence: str) -> Iterator[str]:
    """The sentence with one "no" more or less."""
    if helper := _HELPER.search(sentence):
        for no in ("not", "no longer"):
            yield f"{sentence[: helper.end()]} {no}{sentence[helper.end() :]}"
    for plain, negated in _TURNED:
        if found := re.search(rf"\b{plain}\b(?!')", sentence):
            yield f"{sentence[: found.start()]}{negated}{sentence[found.end() :]}"
    for lost in (_NO, _NONE):
        if found := lost.search(sentence):
            yield sentence[: found.start()] + sentence[found.end() :]


def heard(text: str) -> list[JudgedClaim]:
    """All that is heard in a sentence."""
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    judge = known.judge_without_dish(kitchen.channel("markets: [GB]\npaid: editorial\n"), (), None)
    return hear(passages, known, judge, apart=True)


@each("text", SOUND)
def test_what_is_sound_is_kept(text: str) -> None:
    found = heard(text)
    assert found
    assert {one.advice for one in found} <= {"keep", "add"}


@each("text", (other for one in SOUND for other in turned(one)))
def test_what_is_turned_round_is_never_kept(text: str) -> None:
    assert [(one.claim.quote, one.entry) for one in heard(text) if one.advice == "keep"] == []
