"""An allergen that is given by itself for the first time is named in a form that a baby may have."""

from __future__ import annotations

import pytest

from spoonproof.feeding.calendar import calendar
from spoonproof.feeding.calendar_order import Candidate
from tests import kitchen


@pytest.mark.parametrize(
    ("food", "allergen", "form"),
    [
        ("egg", "egg", "white and yolk are solid"),
        ("cashew", "nuts", "never whole"),
        ("peanut-butter", "peanut", "never whole"),
        ("plain-flour", "gluten", "never as raw flour"),
        ("cod", "fish", "every bone taken out"),
    ],
)
def test_the_form_stands_in_the_plan(food: str, allergen: str, form: str) -> None:
    one = Candidate("a", "A dish", (food,), {food: (allergen,)})
    plan = calendar([one], frozenset(), kitchen.knowledge().feeding)
    told = [event.why for event in plan.events if event.kind == "allergen"]
    assert len(told) == 1
    assert form in told[0]
