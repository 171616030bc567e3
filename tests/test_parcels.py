"""Values that are taken out of a made file one by one are what was put in."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from spoonproof.parcels import Heap, Packed, PackedRow


def _there_and_back(path: Path, value: object, heap: Heap) -> Any:
    with path.open("w+b") as file:
        heap.write(value, file)
    with path.open("rb") as file:
        return Heap.read(file)


def test_a_mapping_gives_back_what_was_put_in(tmp_path: Path) -> None:
    heap = Heap()
    values = {"pear": ["a", "b"], "plum": {"c": 1}, "": ()}
    others = {("a", 1): "x", ("b", 2): "y"}
    held = [Packed.of(values, heap), Packed.of(others, heap), Packed.of({}, heap)]
    assert held == [values, others, {}]
    found, more, empty = _there_and_back(tmp_path / "part", held, heap)
    assert list(found) == list(values) and len(found) == 3 and not empty and not list(empty)
    assert "pear" in found and "fig" not in found and found.get("fig", 5) == 5
    assert dict.__len__(found) == 0, "nothing was taken out yet"
    assert found["plum"] == {"c": 1} and found["plum"] is found["plum"] and dict.__len__(found) == 1
    assert found == values and dict(found) == values and {**found} == values and list(found.values())[2] == ()
    assert more == others and found != others
    with pytest.raises(KeyError):
        found["fig"]


def test_a_row_gives_back_what_was_put_in_and_holds_what_is_shared_once(tmp_path: Path) -> None:
    heap, shared = Heap(), ["one for all"]
    row = PackedRow.of([{"by": shared[0], "at": at} for at in range(4)], heap, shared)
    found = _there_and_back(tmp_path / "part", row, heap)
    assert [each["at"] for each in found] == [0, 1, 2, 3] and found[-1]["at"] == 3 and len(found) == 4
    assert found[1] is found[1] and found[1]["by"] is found[2]["by"]
    assert [each["at"] for each in found[1:3]] == [1, 2]
    with pytest.raises(IndexError):
        found[4]


@pytest.mark.parametrize("more", [b"", b"and more"])
def test_a_heap_that_is_cut_short_or_too_long_is_refused(tmp_path: Path, more: bytes) -> None:
    heap, path = Heap(), tmp_path / "part"
    _there_and_back(path, Packed.of({"a": "b" * 100}, heap), heap)
    path.write_bytes(path.read_bytes()[:-1] if not more else path.read_bytes() + more)
    with path.open("rb") as file, pytest.raises(ValueError, match="not whole"):
        Heap.read(file)
