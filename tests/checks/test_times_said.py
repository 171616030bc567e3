"""Times in findings are said as a cook says them."""

from __future__ import annotations

from spoonproof.checks.from_cooking import minutes_words
from spoonproof.model.recipe import Minutes
from tests.each import each


@each(
    ("low", "high", "words"),
    [
        (1, 1, "1 minute"),
        (18, 22, "18-22 minutes"),
        (60, 120, "60 minutes to 2 hours"),
        (2 * 24 * 60, 3 * 24 * 60, "2 days to 3 days"),
    ],
)
def test_a_time_is_said_in_its_own_unit(low: float, high: float, words: str) -> None:
    assert minutes_words(Minutes(low, high)) == words
