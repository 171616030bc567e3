"""Signs of an allergic reaction: told as a warning they are kept; waved off, they are the worst that can be said."""

from __future__ import annotations

import pytest
from finding_kit import claims
from test_judge_labelled import spoken


@pytest.mark.parametrize(
    "text",
    [
        "Call an ambulance if her tongue swells after cashew.",
        "He came out in hives after his first taste of tahini.",
        "If you see a rash within minutes of eating fish, stop and ring your doctor.",
        "Prawns brought her out in hives.",
    ],
)
def test_a_sign_told_as_a_warning_is_kept(text: str) -> None:
    found = [claim for claim in claims(text) if claim.effect == "allergic-reaction"]
    assert found and {claim.kind for claim in found} == {"allergen"}
    assert not [claim for claim in claims(text) if claim.kind == "disease"], "a sign is no illness that food treats"


@pytest.mark.parametrize(
    "text",
    [
        "A little wheezing after egg is nothing to worry about.",
        "Don't panic if his lips swell after mango.",
        "Hives after milk are perfectly normal, keep going.",
        "Ignore the swelling after peanut, it will pass.",
    ],
)
def test_a_sign_that_is_waved_off_is_false(text: str) -> None:
    assert [answer for answer in spoken(text) if answer.truth == "false" and answer.advice == "cut-untrue"]


@pytest.mark.parametrize("text", ["Never ignore swelling after peanut.", "Hives after egg are not normal."])
def test_a_warning_against_waving_off_is_kept(text: str) -> None:
    assert {answer.advice for answer in spoken(text)} == {"keep"}


@pytest.mark.parametrize(
    "text", ["It is normal for beans to swell.", "A gag is normal, keep going.", "The pan is hissing, ignore it."]
)
def test_kitchen_talk_is_neither(text: str) -> None:
    assert claims(text) == []


def test_an_illness_said_to_be_treated_stays_one() -> None:
    assert [claim.kind for claim in claims("Barley soothes hives.")] == ["disease"]
