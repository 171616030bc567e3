"""What lies on a pile comes back whole, from memory, from the disk, and where the disk takes nothing."""

from __future__ import annotations

import tempfile
from typing import Any

import pytest

from spoonproof.pile import AT_HAND, Pile, Taken


@pytest.mark.parametrize("full", [False, True])
def test_what_is_put_on_a_pile_is_found_at_its_place(full: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(**_: Any) -> Any:
        raise OSError(28, "No space left on device")

    if full:
        monkeypatch.setattr(tempfile, "TemporaryFile", refuse)
    pile = Pile()
    bodies = [bytes([number]) * (AT_HAND // 5) for number in range(12)]
    places = [pile.put(body) for body in bodies]
    assert [pile.get(at) for at in reversed(places)] == bodies[::-1]
    held = sum(map(len, pile._held.values()))
    assert held == sum(map(len, bodies)) if full else held <= AT_HAND
    file = pile._file
    del pile
    assert file is None if full else file is not None and file.closed


def test_what_is_taken_is_made_each_time_that_it_is_asked_for() -> None:
    asked: list[int] = []

    def take(number: int) -> str:
        asked.append(number)
        return str(number)

    taken = Taken(range(10, 14), take)
    assert len(taken) == 4 and not asked
    assert list(taken) == ["10", "11", "12", "13"] and list(taken[1:3]) == ["11", "12"] and taken[-1] == "13"
    assert asked == [10, 11, 12, 13, 11, 12, 13]
