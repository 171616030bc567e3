"""The answer a page gives to a statement: by what holds of it, not by what its author is to do."""

from __future__ import annotations

from types import SimpleNamespace
from typing import cast

from spoonproof.model.claim import JudgedClaim
from spoonproof.site.claims import ANSWERS, NOT_SHOWN, SET_WORDS, answer
from tests.each import each


@each(
    ("truth", "advice", "told"),
    [
        ("unproven", "soften", NOT_SHOWN),
        ("unproven", "cut-untrue", NOT_SHOWN),
        ("overstated", "soften", ANSWERS["soften"]),
        ("overstated", "cut-untrue", ANSWERS["soften"]),
        ("true", "soften", SET_WORDS),
        ("false", "cut-untrue", ANSWERS["cut-untrue"]),
        ("unproven", "source-it", ANSWERS["source-it"]),
        ("true", "keep", ANSWERS["keep"]),
    ],
)
def test_nothing_unproven_is_called_half_true_and_nothing_true_too_much(truth: str, advice: str, told: str) -> None:
    assert answer(cast(JudgedClaim, SimpleNamespace(truth=truth, advice=advice))) == told
