"""Times are said in their own unit, the same in every room."""

from __future__ import annotations

from collections.abc import Callable

from spoonproof.model.durations import days_kept, hours_kept, lasting, lasting_briefly
from tests.each import each


@each(
    ("say", "number", "words"),
    [
        (lasting, 1, "1 minute"),
        (lasting, 89, "89 minutes"),
        (lasting, 93, "1 h 33 min"),
        (lasting, 120, "2 hours"),
        (lasting, 47 * 60, "47 hours"),
        (lasting, 48 * 60 + 5, "2 days"),
        (lasting, 18_000, "12 days 12 hours"),
        (lasting, 49 * 60, "2 days 1 hour"),
        (lasting_briefly, 89, "89 min"),
        (lasting_briefly, 90, "1 h 30 min"),
        (lasting_briefly, 180, "3 h"),
        (lasting_briefly, 18_000, "12 days 12 h"),
        (hours_kept, 1.0, "1 hour"),
        (hours_kept, 48.0, "48 hours"),
        (hours_kept, 1.5, "1.5 hours"),
        (days_kept, 1.0, "1 day"),
        (days_kept, 5.0, "5 days"),
        (days_kept, 7.0, "a week"),
        (days_kept, 21.0, "3 weeks"),
        (days_kept, 30.0, "a month"),
        (days_kept, 91.0, "3 months"),
    ],
)
def test_a_time_is_said_in_its_own_unit(say: Callable[[float], str], number: float, words: str) -> None:
    assert say(number) == words
