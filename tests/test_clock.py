"""Today is a day and nothing finer, wherever it comes from."""

from __future__ import annotations

import datetime

import pytest

from spoonproof.clock import ClockError, stated_day, today


@pytest.mark.parametrize(
    ("name", "value", "day"),
    [("SPOONPROOF_TODAY", "2026-05-28", "2026-05-28"), ("SOURCE_DATE_EPOCH", "1780000000", "2026-05-28")],
)
def test_a_stated_day_is_a_date(monkeypatch: pytest.MonkeyPatch, name: str, value: str, day: str) -> None:
    monkeypatch.delenv("SPOONPROOF_TODAY", raising=False)
    monkeypatch.setenv(name, value)
    assert type(today()) is datetime.date
    assert stated_day() == today().isoformat() == day


def test_a_day_that_is_none_is_complained_of(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SPOONPROOF_TODAY", "yesterday")
    with pytest.raises(ClockError):
        today()
