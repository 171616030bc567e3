"""What is refused, given up, put away or set aside gives nothing to a child; words of refusal that refuse something
else keep nothing back."""

from __future__ import annotations

from spoonproof.hearing import hear
from spoonproof.model.claim import JudgedClaim, Market
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests import kitchen
from tests.each import each

REFUSED = (
    "Popcorn is off the list for years yet.",
    "I hide my chewing gum from him at eleven months because everything goes in the mouth.",
    "Unpasteurised soft cheese should be kept from babies.",
    "Gran kept offering honey and lemon for his cough at six months and I kept saying no thank you, Gran.",
    "We left a raw milk club when we had our son, because germs can make a baby terribly ill.",
    "Offer your breastfed three-week-old extra feeds rather than bottles of water.",
    "There's no need to add salt to a baby's food.",
    "Wheat should be in the diet before the first birthday.",
    "Iron in lentils is absorbed better with vitamin C.",
    "Fruit juice is not needed by babies under one.",
    "Stock cubes are too salty for babies, so I buy the no-salt ones.",
    "If your baby has bad eczema, see the doctor before peanut.",
    "My sister offered popcorn to my one-year-old and I took it away.",
    "A whole grape can block a toddler's throat.",
    "Egg white doesn't have to wait until one.",
    "Milk remains the main drink until one.",
    "Squash isn't a drink for babies, even the sugar-free kind.",
)
GIVEN = (
    "Gran kept offering honey for his cough and I said never mind, go on.",
    "Gran offered honey for his cough and I said no problem.",
    "Popcorn is off the list of dangers for toddlers.",
    "We avoided raw milk until seven months.",
    "We dropped honey on her dummy at six months.",
    "We left a raw milk shop with a bottle for our baby.",
    "We refused the honey ban and gave it at eight months.",
    "Rather than avoiding honey, stir a little into his porridge at eight months.",
    "Instead of milk, give your newborn bottles of water.",
    "Nobody needs to keep honey from a six month old.",
    "I wouldn't give egg before the first birthday because of allergies.",
    "Iron in lentils is absorbed completely with vitamin C.",
    "Germs never make a baby ill.",
    "If she has severe eczema, skip the doctor and give peanut.",
    "Breast milk alone is enough until twelve months.",
    "These are the sugar-free ones, made with dates and honey.",
    "A whole grape doesn't block a toddler's throat.",
    "My sister offered popcorn to my one-year-old and took it to the sofa with him.",
    "Cow's milk stays her main food until one.",
    "Milk needn't be the main drink until one.",
    "Rice milk is suitable from one because it has no dairy.",
)
LION = "British Lion stamped eggs are fine runny from six months."


def heard(text: str, markets: tuple[Market, ...] = ()) -> list[JudgedClaim]:
    """All that is heard in a sentence, judged for these markets."""
    known = kitchen.knowledge()
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    judge = known.judge_without_dish(None, markets, None)
    return hear(passages, known, judge, apart=True, policies=known.policies_for(None, markets))


@each("text", REFUSED)
def test_what_is_refused_is_not_scolded(text: str) -> None:
    found = heard(text)
    assert found
    assert [(one.claim.quote, one.advice, one.why) for one in found if one.advice not in ("keep", "add")] == []


@each("text", GIVEN)
def test_what_is_given_after_all_is_not_kept(text: str) -> None:
    assert [one.claim.quote for one in heard(text) if one.advice in ("keep", "add")] == []


def test_a_market_asked_for_alone_answers_by_its_own_advice() -> None:
    assert {one.advice for one in heard(LION, ("GB",))} == {"add"}
    assert "cut-untrue" in {one.advice for one in heard(LION)}
    assert "cut-untrue" in {one.advice for one in heard(LION, ("US",))}
