"""What was found in a text, kept for the next who asks: rules ask the same of a sentence, each keystroke asks again."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

K = TypeVar("K")
V = TypeVar("V")

MOST = 1024
"""Texts that are kept; all are forgotten when there are more, so that memory stays flat."""


class Remembered(dict[K, V]):
    """Answers by what was asked. They are shared: whoever takes one may not change it."""

    def keep(self, asked: K, answer: V) -> V:
        """``answer``, kept."""
        if len(self) >= MOST:
            self.clear()
        self[asked] = answer
        return answer

    def __reduce__(self) -> tuple[type[Remembered[K, V]], tuple[()]]:
        """Not kept beyond the process."""
        return Remembered, ()


class WorkedOut(dict[K, V]):
    """Answers by what was asked, each worked out when it is first asked for: as quick to ask as a dictionary."""

    def __init__(self, work: Callable[[K], V], most: int = 4 * MOST) -> None:
        """``work`` gives an answer; all are forgotten when there are ``most``."""
        super().__init__()
        self._work, self._most = work, most

    def __missing__(self, asked: K) -> V:
        if len(self) >= self._most:
            self.clear()
        answer = self[asked] = self._work(asked)
        return answer
