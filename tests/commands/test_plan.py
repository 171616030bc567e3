"""``plan``: the timeline, methods side by side, and a filming day that fits the kitchen."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

from spoonproof.cli import main

ROOT = Path(__file__).parents[2]
MASH = str(ROOT / "recipes" / "parsnip-and-pear-spoon-mash.md")
CREAM = str(ROOT / "recipes" / "broccoli-and-white-bean-cream.md")


def said(capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 0) -> str:
    assert main(["plan", "--channel", str(ROOT), *arguments]) == code
    return capsys.readouterr().out


def test_the_timeline_and_the_order_of_the_pot(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, MASH)
    assert text.count("Parsnip and pear spoon-mash") == 1
    assert text.index("Bring to the boil") < text.index("Steam: parsnips")
    assert "until the hardest piece squashes between finger and thumb" in text


def test_json_gives_iso_durations_and_tasks_in_order(capsys: pytest.CaptureFixture[str]) -> None:
    plan = json.loads(said(capsys, MASH, "--format", "json"))
    prep, cook, total = (int(plan[part].removeprefix("PT").removesuffix("M")) for part in ("prep", "cook", "total"))
    assert prep + cook == total
    starts = [task["start"] for task in plan["tasks"]]
    assert starts == sorted(starts)
    steam = next(task for task in plan["tasks"] if task["does"].startswith("Steam"))
    boil = next(task for task in plan["tasks"] if task["does"].startswith("Bring"))
    assert boil["end"] <= steam["start"]


def test_methods_side_by_side_always_with_time_and_test(capsys: pytest.CaptureFixture[str]) -> None:
    text = said(capsys, MASH, "--methods")
    assert "pressure-cook" in text and "min to soft" in text
    assert "Softness comes before vitamins" in text


def test_a_day_keeps_to_the_kitchen(capsys: pytest.CaptureFixture[str]) -> None:
    pytest.importorskip("ortools", reason='the extra "day" is not installed')
    day = json.loads(said(capsys, MASH, CREAM, "--day", "--format", "json"))
    assert day["dropped"] == []
    steams = [(t["start"], t["end"]) for t in day["tasks"] if t["does"].startswith("Steam")]
    for start, _ in steams:  # two steamer tiers
        assert sum(a <= start < b for a, b in steams) <= 2
    assert all(570 <= t["start"] < t["end"] <= 870 for t in day["tasks"])


def test_two_questions_at_once_are_refused(capsys: pytest.CaptureFixture[str]) -> None:
    said(capsys, MASH, "--day", "--methods", code=2)


def test_a_recipe_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "--channel", str(ROOT), "no-such-recipe"]) == 2
    assert "no-such-recipe" in capsys.readouterr().err


def test_without_the_solver_a_day_says_so(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "spoonproof.cooking.day_solver", None)
    text = said(capsys, MASH, "--day")
    assert "list schedule" in text and "not installed" in text


def test_a_day_is_drawn(capsys: pytest.CaptureFixture[str]) -> None:
    drawn = ElementTree.fromstring(said(capsys, MASH, "--day", "--format", "svg"))
    assert drawn.tag == "{http://www.w3.org/2000/svg}svg"
    assert "A filming day" in "".join(drawn.itertext())
