"""Every row of bad input gets the answer its ``expect`` file asks for, in time and within memory."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from tests.bad_inputs.run_rows import HERE, SECONDS, expectation, rows

MEMORY_KB = 256 << 10
ROOT = HERE.parents[1]


@lru_cache(maxsize=1)
def outcomes() -> dict[str, dict[str, Any]]:
    """What came of every row, all run in one other process."""
    done = subprocess.run(
        [sys.executable, str(Path(__file__).with_name("run_rows.py"))],
        capture_output=True,
        text=True,
        encoding="utf-8",
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONUTF8": "1"},
        timeout=180,
        check=False,
    )
    lines = [json.loads(line) for line in done.stdout.split("\n") if line.startswith("{")]
    assert done.returncode == 0, f"after {lines[-1]['row'] if lines else 'nothing'}: {done.stderr[-2000:]}"
    return {str(line["row"]): line for line in lines}


@pytest.mark.timeout(200)
@pytest.mark.parametrize("row", [folder.name for folder in rows()])
def test_row(row: str) -> None:
    folder = HERE / row
    assert (folder / "expect").is_file(), "every row says what it must answer"
    wanted = expectation(folder)
    outcome = outcomes()[row]
    assert "broke" not in outcome, outcome["broke"]
    found = [str(line) for line in outcome["found"]]
    expected = wanted.get("found", [])
    door = wanted.get("door", ["recipe"])[0]
    if door.startswith("c") and door != "channel":
        for line in expected:
            assert any(_same(line, other) for other in found), f"{line} is not among {found}"
        codes = outcome["exit"] if isinstance(outcome["exit"], list) else [outcome["exit"]]
        assert [str(code) for code in codes] == wanted.get("exit", ["1"]), outcome["printed"]
        assert "Traceback" not in str(outcome["printed"])
        assert outcome.get("written", []) == []
        assert not any(c < " " and c != "\n" for c in str(outcome["printed"])), "something a terminal obeys was printed"
    else:
        assert len(found) == len(expected), f"{expected} wanted, {found} found"
        for line, other in zip(expected, found, strict=True):
            assert _same(line, other), f"{expected} wanted, {found} found"
        _the_command_says_so_too(door, found, outcome["told"])
    said = "\n".join(str(line) for line in outcome["said"])
    for words in wanted.get("says", []):
        assert words in said, f"{words!r} is not in {said}"
    for words in wanted.get("never", []):
        assert words not in str(outcome["printed"]), f"{words!r} was printed"
    if wanted.get("reads"):
        assert outcome["values"] == wanted["reads"]
    assert float(str(outcome["seconds"])) <= float(wanted.get("seconds", [str(SECONDS)])[0])
    assert int(str(outcome["memory"])) <= MEMORY_KB


def _the_command_says_so_too(door: str, found: list[str], told: list[tuple[int, str, str]]) -> None:
    """The command ends as it should, shows no traceback, and a check names every place the reader named."""
    for code, printed, complained in told:
        assert code in (0, 1, 2), complained
        assert "Traceback" not in printed + complained
        if door != "recipe":
            continue
        places = {f"{f['line']}:{f['column']} {f['rule']}" for f in map(json.loads, printed.split("\n")[:-1])}
        for line in found:
            where = line.rpartition(" ")[0].rpartition(".md ")[2]
            assert where in places, f"check does not tell {line}: {places} {complained}"


def _same(wanted: str, found: str) -> bool:
    """Whether a finding is the one wanted; its level counts only where it is named."""
    return found == wanted or found.rpartition(" ")[0] == wanted
