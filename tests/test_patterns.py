"""Every regular expression of ours, on text made to hurt it: none is worse than the square of a short text.

The texts are repetitions of what the expression itself looks for, so that each of its loops is led as far as it goes
and then refused. What is searched are lines and sentences, whose length has a limit where they are read; whole files
go through readers that have doubling tests of their own (tests/reading, tests/claims, tests/site).
"""

from __future__ import annotations

import json
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from re import _constants as kinds  # type: ignore[attr-defined]  # the library keeps it to itself
from re import _parser as parser  # type: ignore[attr-defined]  # the library keeps it to itself
from typing import Any

import pytest

SHORT = 350
SECONDS = 0.25
"""Of work on twice ``SHORT`` characters; the square of them is a hundredth of it, their cube far more."""


class TooSlow(Exception):
    """An expression that does not come to an end."""


def of_a_set(items: Any) -> str:
    """A character that a set holds."""
    for kind, value in items:
        if kind is kinds.NEGATE:
            return "\x01"
        if kind is kinds.LITERAL:
            return chr(value)
        if kind is kinds.RANGE:
            return chr(value[0])
        if kind is kinds.CATEGORY:
            return {kinds.CATEGORY_DIGIT: "1", kinds.CATEGORY_SPACE: " ", kinds.CATEGORY_NOT_WORD: " "}.get(value, "a")
    return "a"


def shortest(tree: Any, units: set[str]) -> str:
    """A text that a parsed expression finds; what its parts and loops look for comes into ``units``."""
    found = ""
    for kind, value in tree:
        if kind is kinds.LITERAL:
            part = chr(value)
        elif kind is kinds.IN:
            part = of_a_set(value)
        elif kind in (kinds.ANY, kinds.NOT_LITERAL):
            part = "a"
        elif kind in (kinds.MAX_REPEAT, kinds.MIN_REPEAT, kinds.POSSESSIVE_REPEAT):
            part = shortest(value[2], units) * max(1, value[0])
        elif kind is kinds.SUBPATTERN:
            part = shortest(value[3], units)
        elif kind is kinds.ATOMIC_GROUP:
            part = shortest(value, units)
        elif kind is kinds.BRANCH:
            parts = [shortest(branch, units) for branch in value[1]]
            units.update(part for part in parts[:4] if part)
            part = parts[0]
        else:
            part = ""
        if len(part) <= 3:
            units.add(part)
        found += part
    return found


def units_of(pattern: str, flags: int) -> list[str]:
    """What to repeat: pieces of what the expression looks for, and all of it."""
    units: set[str] = set()
    whole = shortest(parser.parse(pattern, flags), units)
    short = sorted((unit for unit in units if unit), key=lambda unit: (len(unit), unit))[:8]
    return [*dict.fromkeys([whole or "a", " ", "a", "1", "\n", *short, *(unit + " " for unit in short[:3])])]


def work(expression: re.Pattern[str], text: str, most: float) -> float:
    """Seconds of work to find all of it in a text, from its start on, and to hold it against the whole."""

    def stop(*_: object) -> None:
        raise TooSlow

    signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, most)
    started = time.process_time()
    try:
        for _ in expression.finditer(text):
            pass
        expression.fullmatch(text)
    except TooSlow:
        return 9.0
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
    return time.process_time() - started


def slow(pattern: str, flags: int, most: float = SECONDS) -> Iterator[str]:
    """The texts on which an expression is slower than it may be."""
    expression = re.compile(pattern, flags)
    for unit in units_of(pattern, flags):
        for end in ("", "\0"):
            # Of work up to the fourth power of the length, a sixteenth of it on half the text says as much.
            if len(unit) < 8 and work(expression, unit * (SHORT // len(unit)) + end, most / 8) < most / 16:
                continue
            text = unit * max(2, 2 * SHORT // len(unit)) + end
            seconds = work(expression, text, most)
            if seconds > most:  # a neighbour on the same core may have slowed it: what is slow is slow again
                seconds = min(seconds, work(expression, text, most))
            if seconds > most:
                yield f"{unit!r} ... {end!r}: {seconds:.2f} s"


DEAD = re.compile(r"(?:\\b|[ ])\(\?:(?:[^()]*\|)?n(?:\['’\]|['’])t")
"""The end of a word where a word begins: "(?:not|n't) sure" behind a space, which never finds "isn't sure"."""


@pytest.mark.skipif(not hasattr(signal, "setitimer"), reason="needs a clock of work")
def test_every_expression_of_ours_comes_to_an_end() -> None:
    root = Path(__file__).resolve().parents[1]
    done = subprocess.run(
        [sys.executable, str(root / "tests" / "collect_patterns.py")],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
        env={**os.environ, "PYTHONPATH": os.pathsep.join([str(root / "src"), os.environ.get("PYTHONPATH", "")])},
    )
    assert done.returncode == 0, done.stderr[-2000:]
    heard = json.loads(done.stdout.strip().split("\n")[-1])
    assert len(heard) > 300
    assert [place for place, pattern, _ in heard if DEAD.search(pattern)] == []
    assert [(place, pattern[:80], text) for place, pattern, flags in heard for text in slow(pattern, flags)] == []


@pytest.mark.parametrize("bad", [r" (?:not|n't) sure", r"\b(?:never|n['’]t) let"])
def test_one_that_never_finds_anything_would_be_found(bad: str) -> None:
    assert DEAD.search(bad)


@pytest.mark.parametrize("bad", [r"(a+)+$", r"(?:a|a)*b", r"\s*x?\s*y?\s*z"])
def test_a_bad_one_would_be_found(bad: str) -> None:
    assert next(slow(bad, 0, most=SECONDS / 5), None)
