"""Whole statements, found and judged as ``listen`` does, as a paediatric dietitian and a food lawyer would."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import pytest
from judging_kit import Kitchen, exact, judged

from spoonproof.claims.find import find_claims
from spoonproof.knowledge import Knowledge
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document
from spoonproof.reading.speech import read_statements
from tests.each import each


@lru_cache(maxsize=1)
def _known() -> Knowledge:
    return Knowledge()


def heard(text: str) -> list[JudgedClaim]:
    passages, _ = read_statements(Document("said.txt", text), lines=True)
    judge = _known().judge_without_dish(None, (), None)
    found = [judge(claim) for claim in find_claims(passages, _known().lexicon)]
    assert found, text
    return found


@each(
    "text",
    [
        "Kohlrabi prevents colds.",
        "this stew cures reflux",
        "Swede fights off the flu.",
        "A little dill kills germs.",
        "Apricots get rid of constipation.",
        "barley broth heals the gut",
        "Fennel tea stops colic.",
        "This porridge prevents iron deficiency.",
        "Courgette fights cancer.",
        "Vitamin C prevents colds.",
        "There is no way they can choke on it.",
        "Waking at night means your baby is ready for solids.",
        "Almond milk can replace formula from seven months.",
        "Popcorn is safe from one year.",
    ],
)
def test_promises_of_a_cure_and_dangers_are_cut(text: str) -> None:
    found = heard(text)
    assert any(judged.advice.startswith("cut-") for judged in found), [judged.advice for judged in found]
    assert not any(judged.advice == "keep" for judged in found)


@each(
    "text",
    [
        "Quarter the grapes lengthways.",
        "There is no need to delay fish once your baby has started solids.",
        "Babies don't need any fruit juice.",
        "Breast milk or formula stays the main source of nutrition in the first year.",
        "There's sesame in this one so skip it if your baby has a sesame allergy.",
        "Offer one new food at a time if you worry about allergies.",
        "Red lentils contain iron.",
        "Give allergens one at a time and watch for a reaction.",
        "whole cherry tomatoes are a choking hazard for young children",
    ],
)
def test_true_guidance_is_kept(text: str) -> None:
    assert {judged.advice for judged in heard(text)} == {"keep"}


@pytest.mark.parametrize("text", ["Dill may help with colds.", "The banana in this helps with diarrhoea."])
def test_a_mild_word_on_illness_asks_for_its_source(text: str) -> None:
    assert {judged.advice for judged in heard(text)} == {"source-it"}


def test_fibre_and_drink_for_constipation_are_advice_not_medicine() -> None:
    (judged,) = heard("Prunes can help with constipation.")
    assert (judged.truth, judged.advice) == ("true", "add")
    assert "health visitor" in (judged.wording or "")


def test_a_denied_cure_is_no_harm() -> None:
    assert all(
        judged.harm <= 1 and not judged.advice.startswith("cut") for judged in heard("Garlic doesn't cure colds.")
    )


@pytest.mark.parametrize(
    ("text", "piece"), [("An egg has about six grams of protein.", "6"), ("A banana has 420 mg of potassium.", "420")]
)
def test_one_of_it_is_what_the_number_is_said_of(text: str, piece: str) -> None:
    amounts = [judged for judged in heard(text) if judged.claim.kind == "quantity"]
    assert [(judged.truth, judged.advice) for judged in amounts] == [("true", "keep")], piece
    assert "per piece" in amounts[0].why


def test_what_is_said_of_one_food_never_speaks_of_the_dish() -> None:
    for text in ("Apples are packed with iron.", "Cucumber is rich in vitamin C."):
        assert all("dish" not in judged.why for judged in heard(text))


@pytest.mark.parametrize(
    "text", ["There is no evidence that turnips help with teething.", "It has not been shown that dill cures colic."]
)
def test_saying_that_nothing_shows_it_is_kept(text: str) -> None:
    assert {judged.advice for judged in heard(text)} == {"keep"}


def test_a_cure_is_cut_even_where_a_milder_wording_stands() -> None:
    (cured,) = heard("Prune juice cures constipation.")
    assert cured.advice == "cut-untrue"
    assert {judged.advice for judged in heard("Iron helps prevent anaemia.")} == {"soften"}


def test_what_sweetens_counts_as_added() -> None:
    assert {judged.advice for judged in heard("No added sugar, just dates.")} == {"soften"}
    assert heard("sesame can cause an allergic reaction so watch for hives")[0].advice == "keep"


def test_myths_and_borrowed_wordings_are_not_kept() -> None:
    assert {each.advice for each in heard("don't heat honey, it becomes toxic")} == {"source-it"}
    assert {each.advice for each in heard("DHA contributes to normal brain development")} == {"soften"}
    assert {each.advice for each in heard("DHA contributes to normal visual development of infants")} == {"keep"}


@pytest.mark.parametrize("subject", ["it", "This", "my bowl", "the recipe"])
def test_in_a_recipe_what_points_at_nothing_else_is_the_dish(subject: str) -> None:
    bowl = Kitchen(
        dish_100g={"iron_mg": exact(5.0), "energy_kcal": exact(80, "kcal")}, grams=exact(100, "g"), bowl=("lentils",)
    )
    words: dict[str, Any] = {"level": "high", "nutrients": ("iron_mg",), "subjects": (subject,)}
    found = judged(f"{subject} is high in iron", "nutrient-content", bowl, **words)
    assert (found.truth, found.advice) == ("true", "keep")
    assert "the dish as eaten" in found.why.lower()
    other = judged("the sauce is high in iron", "nutrient-content", bowl, **(words | {"subjects": ("the sauce",)}))
    assert other.truth == "unproven"


def test_in_speech_without_stops_a_claim_is_judged_by_its_own_breath() -> None:
    said = (
        "so these parsnips boost the brain they really do and the bit of garlic kills germs in the gut as my gran says "
        "and if he is constipated you stir in a spoon of prune juice which always helps and there is no choking on raw "
        "carrot because we have grated it so finely that it is gone and then you serve it up"
    )
    why = {judged.claim.trigger: judged.why for judged in heard(said)}
    germs = " ".join(text for trigger, text in why.items() if "kills" in trigger)
    constipation = " ".join(text for trigger, text in why.items() if "constipated" in trigger)
    assert germs and "brain" not in germs
    assert constipation and "choking" not in constipation


def test_a_promise_is_not_made_true_by_what_stands_beside_it() -> None:
    text = "dill tea works like a natural antibiotic and for older babies you leave in some lumps"
    assert all(judged.advice != "keep" for judged in heard(text))


@each(
    "text",
    [
        "No need to stay away from honey.",
        "You don't have to steer well clear of honey.",
        "There's no point in staying away from honey.",
        "Grapes don't need to be halved for toddlers.",
        "It is best to provide your baby with raw eggs.",
        "Honey may be given in porridge for babies.",
        "Whole grapes can't get stuck in a child's throat.",
        "Nuts rarely get caught in a toddler's airway.",
        "Freezing keeps every vitamin.",
        "Don't skip it if your child has a cashew allergy.",
    ],
)
def test_what_is_told_outright_against_guidance_is_not_kept(text: str) -> None:
    found = heard(text)
    assert found
    assert "keep" not in {judged.advice for judged in found}


@each(
    "text",
    [
        "Stay away from honey.",
        "Steer well clear of whole nuts.",
        "Keep popcorn away from your toddler.",
        "Always quarter grapes.",
        "Whole grapes can get stuck in a child's throat.",
        "Popcorn can slip into the airway.",
        "If your child has a cashew allergy, skip it.",
        "Leave it out if she has an egg allergy.",
    ],
)
def test_what_is_told_outright_as_guidance_has_it_is_kept(text: str) -> None:
    assert {judged.advice for judged in heard(text)} == {"keep"}
