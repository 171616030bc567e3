"""What once broke a reader stays whole; and a short blind walk from every seed, the same each time."""

from __future__ import annotations

import random
import time
from pathlib import Path

import pytest

from tests.fuzz.fuzz import KEPT, SLOW, Keeper, changed
from tests.fuzz.targets import TARGETS, seeds

WALK = {"recipe": 60, "register": 40}
"""Inputs of the dearer targets; 150 of each other one."""


@pytest.mark.parametrize("path", sorted(KEPT.iterdir()), ids=lambda path: path.name)
def test_what_once_broke_holds(path: Path) -> None:
    started = time.process_time()
    TARGETS[path.name.partition("-")[0]](path.read_bytes())
    assert time.process_time() - started < SLOW


@pytest.mark.parametrize("name", TARGETS)
def test_a_short_walk(name: str, tmp_path: Path) -> None:
    chance = random.Random(20261125)
    pool = seeds(name)
    assert pool
    keeper = Keeper(name, TARGETS[name], tmp_path)
    for _ in range(WALK.get(name, 150)):
        keeper(changed(chance.choice(pool), pool, chance))
    assert keeper.seen == set()
    assert keeper.runs == WALK.get(name, 150)


def test_the_keeper_keeps_one_input_for_each_way_to_fail(tmp_path: Path) -> None:
    def broken(data: bytes) -> None:
        if data.startswith(b"x"):
            raise ValueError("no x")
        assert data != b"y"

    keeper = Keeper("broken", broken, tmp_path)
    for data in (b"x1", b"a", b"x2", b"y", b"y"):
        keeper(data)
    assert keeper.runs == 5 and len(list(tmp_path.iterdir())) == 2
