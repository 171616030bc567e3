"""Tasks of a filming day moved by hand: each thing that breaks is told, and nothing when nothing does."""

from __future__ import annotations

from spoonproof.cooking.day import DayProblem, DayTask, Use
from spoonproof.cooking.day_moved import broken

CUT = DayTask("a", "mash", "Cut", 10, (Use("hands", 10),))
STEAM = DayTask("b", "mash", "Steam", 20, (Use("ring", 20),), after=("a",))
MASH = DayTask("c", "mash", "Mash", 5, (Use("hands", 5),), after=("b",), soon=("b",))
OTHER = DayTask("d", "soup", "Stir", 10, (Use("hands", 10),))
DAY = DayProblem((CUT, STEAM, MASH, OTHER), {"hands": 1, "ring": 1}, 120, ((60, 90),))
GOOD = {"a": 0, "b": 10, "c": 30, "d": 40}


def told(**moved: int) -> str:
    """What breaks with some starts moved."""
    return " ".join(broken(DAY, {**GOOD, **moved}))


def test_a_day_that_holds_says_nothing() -> None:
    assert broken(DAY, GOOD) == []


def test_each_thing_that_breaks_is_told() -> None:
    assert "starts 5 min before this is done: “Cut” (mash)" in told(b=5)
    assert "Too few pairs of hands (there is 1) for" in told(d=5)
    assert "outside the filming day" in told(d=115)
    assert "nobody is in the kitchen" in told(d=55)
    assert "hot pan wait 62 min" in told(c=92)


def test_a_task_left_out_breaks_nothing() -> None:
    assert broken(DAY, {"c": 30}) == []
