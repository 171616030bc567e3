"""The register as made serves on any day; what is due that day is found all the same."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from spoonproof.compiled import pack_register
from spoonproof.knowledge import Knowledge
from spoonproof.model.record import replace
from spoonproof.model.text import Document
from spoonproof.parcels import Heap

NO_FILE = Document("", "")


@pytest.mark.parametrize(("day", "due"), [("2026-11-28", False), ("2032-01-01", True), ("2020-01-01", True)])
def test_the_same_entries_on_any_day_and_what_is_due(monkeypatch: pytest.MonkeyPatch, day: str, due: bool) -> None:
    monkeypatch.setenv("SPOONPROOF_TODAY", day)
    known, read = Knowledge(), Knowledge(made=False)
    made, afresh = ([replace(e, document=NO_FILE) for e in k.register.entries] for k in (known, read))
    assert made == afresh
    assert [f.message for f in known.register_faults] == [f.message for f in read.register_faults]
    assert any(found.rule == "register-entry-due" for found in known.register_faults) is due


def test_entries_are_taken_out_one_by_one_and_share_their_files(tmp_path: Path) -> None:
    register = Knowledge(made=False).register
    heap = Heap()
    with (tmp_path / "register").open("w+b") as file:
        heap.write(pack_register((register, ()), heap)[0], file)
        file.seek(0)
        packed: Any = Heap.read(file).entries
    assert replace(packed[3], document=NO_FILE) == replace(register.entries[3], document=NO_FILE)
    assert packed._taken.keys() == {3}
    assert len(packed) == len(register.entries) and [e.id for e in packed] == [e.id for e in register.entries]
    assert len({id(e.document) for e in packed}) == len({id(e.document) for e in register.entries})
    assert packed[2:4] == [packed[2], packed[3]]
