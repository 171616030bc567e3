"""A pile of bytes: what is put on it lies in memory while it is little, else in a file without a name, gone when nobody
has it open. So what is made of thousands of recipes need not be held."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Sequence
from typing import IO, TypeVar, overload

T = TypeVar("T")

AT_HAND = 1 << 19
"""Bytes that are held as they are before a file is worth its while."""


class Pile:
    """Bytes by the place they got. One process alone puts on it and takes from it."""

    def __init__(self) -> None:
        self._held: dict[int, bytes] = {}  # what is little, and what found no room on the disk
        self._file: IO[bytes] | None = None
        self._end = 0

    def put(self, body: bytes) -> int:
        """Lay it down; its place."""
        at = self._end
        self._end += 8 + len(body)
        if self._end <= AT_HAND or not self._laid(at, body):
            self._held[at] = body
        return at

    def get(self, at: int) -> bytes:
        """What lies at a place."""
        held = self._held.get(at)
        if held is not None:
            return held
        assert self._file is not None
        self._file.seek(at)
        return self._file.read(int.from_bytes(self._file.read(8), "big"))

    def _laid(self, at: int, body: bytes) -> bool:
        with contextlib.suppress(OSError):
            if self._file is None:
                from tempfile import TemporaryFile
                from weakref import finalize

                self._file = TemporaryFile(buffering=0)  # noqa: SIM115 - as long as anything may be taken from it
                finalize(self, self._file.close)
            self._file.seek(at)
            whole = len(body).to_bytes(8, "big") + body
            return self._file.write(whole) == len(whole)
        return False


class Taken(Sequence[T]):
    """A sequence of things that are taken from somewhere, each time that one of them is asked for."""

    def __init__(self, numbers: Sequence[int], take: Callable[[int], T]) -> None:
        """``take`` gives the thing of each of these numbers."""
        self._numbers, self._take = numbers, take

    @overload
    def __getitem__(self, at: int) -> T: ...
    @overload
    def __getitem__(self, at: slice) -> Taken[T]: ...
    def __getitem__(self, at: int | slice) -> T | Taken[T]:
        if isinstance(at, slice):
            return Taken(self._numbers[at], self._take)
        return self._take(self._numbers[at])

    def __len__(self) -> int:
        return len(self._numbers)
