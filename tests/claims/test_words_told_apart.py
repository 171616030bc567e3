"""Words of two senses: each is heard where it claims something, and not in its other sense."""

from __future__ import annotations

import pytest
from finding_kit import claims, only

from tests.each import each


@pytest.mark.parametrize(
    "text",
    [
        "The lentil stew is very satisfying.",
        "This soup is so satisfying after a walk.",
        "She kept chives for nine months in a pot on the sill.",
        "Her healing journey began with a garden.",
        "She was twice her birth weight at Easter.",
    ],
)
def test_in_their_other_sense_they_claim_nothing(text: str) -> None:
    assert claims(text) == []


@each(
    ("text", "kind", "relates"),
    [
        ("Porridge keeps you satisfied.", "function", "keeps you satisfied (satiety)"),
        (
            "Is he ready once he has doubled his birth weight?",
            "safety-age",
            "doubled his birth weight (readiness signs)",
        ),
        ("Are these bars free from allergens?", "allergen", "free from allergens (allergy)"),
        ("You can forget about the iron drops.", "safety-age", "can forget about (drops)"),
        ("Say goodbye to vitamin drops.", "safety-age", "Say goodbye to (drops)"),
        ("Milk puddings help them sleep right through.", "function", "sleep right through"),
        ("Barley water before bed and they sleep straight through.", "function", "sleep straight through"),
        ("Orange juice boosts how much iron they take in.", "function", "iron (absorption)"),
        ("Leave it out if she has an egg allergy.", "allergen", "egg allergy"),
    ],
)
def test_in_the_sense_that_claims_they_are_heard(text: str, kind: str, relates: str) -> None:
    assert str(only(text, kind).relates_to).startswith(relates)


def test_bones_waved_through_are_a_matter_of_choking() -> None:
    found = claims("The bones in tinned salmon are perfectly safe to chew.")
    assert "choking" in {claim.effect for claim in found}


def test_an_organisation_of_health_promises_no_health() -> None:
    found = claims("The World Health Organization's advice is to wait until six months.")
    assert [claim.kind for claim in found] == ["safety-age"]
