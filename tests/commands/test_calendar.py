"""``calendar``: names instead of ids, ages beside dishes, and iCalendar that an independent parser reads."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from icalendar import Calendar

from spoonproof.cli import main

ROOT = str(Path(__file__).parents[2])


def said(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert main(["calendar", "--channel", ROOT, *arguments]) == 0
    return capsys.readouterr().out


def test_text_names_foods_and_ages(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys)
    assert "Parsnip and pear spoon-mash (from 7 months): new with it: parsnip" in text
    assert "olive-oil" not in text
    assert "a dish for a later age waits for it" in text


def test_an_allergen_never_shares_its_day_with_another(capsys: pytest.CaptureFixture[str]) -> None:
    events = json.loads(said(capsys, "--format", "json", "--from", "2026-12-01"))["events"]
    days = [event["day"] for event in events if event["kind"] == "allergen"]
    assert days and len(days) == len(set(days))
    assert events[0]["date"] == "2026-12-01"


def test_icalendar_is_read_back(capsys: pytest.CaptureFixture[str]) -> None:
    read = Calendar.from_ical(said(capsys, "--format", "ics", "--from", "2026-12-01"))
    events = read.walk("VEVENT")
    assert len(events) == len(json.loads(said(capsys, "--format", "json"))["events"])
    assert min(event["dtstart"].dt.isoformat() for event in events) == "2026-12-01"


def test_a_day_that_is_none_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calendar", "--channel", ROOT, "--from", "2026-02-30"]) == 2
    assert "2026-02-30" in capsys.readouterr().err
