"""An age that is told without its unit, or as one phrase, is known in months."""

from __future__ import annotations

import pytest
from finding_kit import claims


@pytest.mark.parametrize(
    ("text", "food", "months"),
    [
        ("Goat's milk isn't a drink until your baby turns one.", "goat's milk", 12),
        ("Toddlers shouldn't have whole cashews till they're five.", "cashew", 60),
        ("Babies can have smooth almond butter from six months.", "almond butter", 6),
        ("Skip unpasteurised brie before she is two.", "brie", 24),
        ("Honey is stirred into the oats but never given until they turn one.", "honey", 12),
    ],
)
def test_an_age_without_its_unit_is_known(text: str, food: str, months: float) -> None:
    found = [claim for claim in claims(text) if claim.number is not None and claim.number.value == months]
    assert any(food in said.lower() for claim in found for said in claim.subjects), claims(text)


@pytest.mark.parametrize(
    "text", ["Bake the buns until they reach 180 inside.", "Leave the loaves until they are one hour old."]
)
def test_a_number_of_something_else_is_no_age(text: str) -> None:
    assert claims(text) == []


def test_a_letter_after_vitamin_ends_a_sentence() -> None:
    said = claims("Plums hold vitamin C. Sardines hold vitamins D and B12. Seeds give them vitamin E. Oats are cheap.")
    assert [claim.subjects[0] for claim in said] == ["plum", "sardine", "seed"]


@pytest.mark.parametrize(
    "text", ["Bananas can bung some babies up.", "White rice will clog him up.", "Cheese blocks them up."]
)
def test_a_verb_parted_from_its_up_is_heard(text: str) -> None:
    assert [claim.kind for claim in claims(text)] == ["disease"]
