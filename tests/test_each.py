"""Cases gathered in one test are all run, and what fails among them is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.each import each


def test_every_case_is_run_and_each_that_fails_is_told() -> None:
    seen = []

    @each("one, other", [(1, 1), (2, 3), (4, 4), (5, 0)])
    def alike(one: int, other: int) -> None:
        seen.append(one)
        assert 10 // other and one == other

    with pytest.raises(ExceptionGroup, match="2 of 4 cases") as raised:
        alike()
    assert seen == [1, 2, 4, 5]
    assert [type(error) for error in raised.value.exceptions] == [AssertionError, ZeroDivisionError]
    assert [error.__notes__ for error in raised.value.exceptions] == [
        ["given {'one': 2, 'other': 3}"],
        ["given {'one': 5, 'other': 0}"],
    ]


@each("name", ["one", "two"])
def test_a_fixture_is_asked_for_as_ever(tmp_path: Path, name: str) -> None:
    assert tmp_path.is_dir() and name in ("one", "two")


def test_no_case_is_no_test() -> None:
    with pytest.raises(AssertionError):
        each("one", [])
