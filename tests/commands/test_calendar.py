"""``calendar``: names instead of ids, ages beside dishes, and iCalendar that an independent parser reads."""

from __future__ import annotations

import json
from datetime import date
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
    assert min(event.decoded("dtstart") for event in events) == date(2026, 12, 1)


def test_a_day_that_is_none_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["calendar", "--channel", ROOT, "--from", "2026-02-30"]) == 2
    assert "2026-02-30" in capsys.readouterr().err


def test_a_week_of_recipes_is_noted_and_never_ordered(capsys: pytest.CaptureFixture[str]) -> None:
    pot = str(Path(ROOT) / "recipes" / "slow-beef-and-barley-pot.md")
    mash = str(Path(ROOT) / "recipes" / "parsnip-and-pear-spoon-mash.md")
    text = said(capsys, pot, mash, "--week", "--meals", "1")
    assert "Day 1  Slow beef and barley pot" in text and "Day 2  Parsnip and pear spoon-mash" in text
    assert "No dish with meat, fish, pulses or fortified cereal on days 2, 4 and 6" in text
    assert "notes, not orders" in text and "[efsa-iron-2015]" in text


def test_nothing_is_served_to_a_baby_too_young_for_it(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, str(Path(ROOT) / "recipes" / "slow-beef-and-barley-pot.md"), "--week", "--age", "6")
    assert "Day 1" not in text and "None of these dishes is for a baby of 6 months." in text


def test_a_week_says_what_is_for_later_and_refuses_what_it_cannot_be(capsys: pytest.CaptureFixture[str]) -> None:
    week = json.loads(said(capsys, "--week", "--age", "7", "--format", "json"))
    assert week["months"] == 7 and len(week["days"]) == 7 and week["meals"] == 2
    assert "Slow beef and barley pot" in week["for_later"]
    dishes = {dish for day in week["days"] for dish in day}
    assert "Slow beef and barley pot" not in dishes and "Three-vegetable base" not in dishes
    outgrown = json.loads(said(capsys, "--week", "--format", "json"))
    assert outgrown["months"] == 10 and all("Parsnip and pear spoon-mash" not in day for day in outgrown["days"])
    for arguments in (["--week", "--format", "ics"], ["--week", "--meals", "0"], ["--week", "--age", "99"]):
        assert main(["calendar", "--channel", ROOT, *arguments]) == 2
        assert capsys.readouterr().err
