"""The expressions that reading searches lines with take twice as long for twice the line, whatever stands on it."""

from __future__ import annotations

import re
import time

import pytest

from spoonproof.reading import amount_words, food_name, instruction, markdown, numbers, quantities, runs

LONG = 8_000
EXPRESSIONS = [
    (instruction._WITH_FIRST, " "),
    (amount_words._WORD, "a"),
    (amount_words._TWO_WORDS, "a"),
    (amount_words._THREE_WORDS, "a"),
    (food_name._FIRST_WORD, " "),
    (food_name._WORD_OF, " "),
    (food_name._LAST_WORD, "a"),
    (numbers._PLAIN, "1"),
    (markdown._SCHEME, "a"),
    (markdown._SCHEME, " "),
    (quantities._ODD, "1"),
    (runs._WORD, "1"),
]


def _work(expression: re.Pattern[str], text: str) -> float:
    def once() -> float:
        started = time.process_time()
        for _ in expression.finditer(text):
            pass
        return time.process_time() - started

    return min(once() for _ in range(3))


@pytest.mark.parametrize(("expression", "char"), EXPRESSIONS, ids=[f"{e.pattern[:20]}-{c}" for e, c in EXPRESSIONS])
def test_twice_the_line_is_twice_the_work(expression: re.Pattern[str], char: str) -> None:
    short, long = (_work(expression, char * n + "\0") for n in (LONG, LONG * 4))
    # The square would be sixteen times; what is too short to be timed is short enough.
    assert long < 8 * short or long < 0.002


def test_a_square_would_be_found() -> None:
    bad = re.compile(r"[ \t]*x")
    assert _work(bad, " " * LONG) > 6 * _work(bad, " " * (LONG // 4))
