"""The expressions that reading searches lines with take twice as long for twice the line, whatever stands on it."""

from __future__ import annotations

import re
import time
from collections.abc import Callable

import pytest

from spoonproof.reading import (
    amount_words,
    food_lines,
    food_name,
    instruction_words,
    line_amount,
    markdown,
    numbers,
    quantities,
    runs,
    times,
)

LONG = 8_000
EXPRESSIONS = [
    (instruction_words._WITH_FIRST, " "),
    (amount_words._WORD, "a"),
    (amount_words._TWO_WORDS, "a"),
    (amount_words._THREE_WORDS, "a"),
    (food_name._FIRST_WORD, " "),
    (food_name._WORD_OF, " "),
    (line_amount.LAST_WORD, "a"),
    (line_amount._PLUS_LATER, " "),
    (food_lines._BETWEEN, " "),
    (food_lines._BETWEEN, ","),
    (food_lines._EACH, " "),
    (quantities._PORTIONS, "1"),
    (quantities._ALL, "1"),
    (times._LID_ON, " "),
    (numbers._PLAIN, "1"),
    (markdown._SCHEME, "a"),
    (markdown._SCHEME, " "),
    (quantities._ODD, "1"),
    (runs._WORD, "1"),
]


def _work(expression: re.Pattern[str], text: str) -> float:
    started = time.process_time()
    for _ in expression.finditer(text):
        pass
    return time.process_time() - started


def _works(expression: re.Pattern[str], short: str, long: str, holds: Callable[[float, float], bool]) -> bool:
    """Whether the least work on either text holds. They are timed in turn, three times at least; on a machine that
    is busy with others as often as it takes both to be left alone once, fifteen times at most."""
    least_short = least_long = float("inf")
    for turn in range(15):
        least_short = min(least_short, _work(expression, short))
        least_long = min(least_long, _work(expression, long))
        if turn >= 2 and holds(least_short, least_long):
            return True
    return False


def _linear(short: float, long: float) -> bool:
    """Four times the text: the square would be sixteen times; what is too short to be timed is short enough."""
    return long < 8 * short or long < 0.002


@pytest.mark.parametrize(("expression", "char"), EXPRESSIONS, ids=[f"{e.pattern[:20]}-{c}" for e, c in EXPRESSIONS])
def test_twice_the_line_is_twice_the_work(expression: re.Pattern[str], char: str) -> None:
    assert _works(expression, char * LONG + "\0", char * 4 * LONG + "\0", _linear)


def test_a_square_would_be_found() -> None:
    assert not _works(re.compile(r"[ \t]*x"), " " * (LONG // 8), " " * (LONG // 2), _linear)
