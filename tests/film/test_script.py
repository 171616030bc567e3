"""The script: complete from the recipe alone, rearranged by the author, cautions always kept."""

from itertools import pairwise

from spoonproof.film.script import Material, Warned, needed_seconds, write_script
from spoonproof.film.text import chapters, script_text
from spoonproof.model.recipe import Segment
from spoonproof.model.text import NOWHERE, Text


def material(*segments: Segment, target: float | None = 60.0) -> Material:
    return Material(
        title="Leek and potato spoonful",
        channel="Lantern Row Kitchen",
        ages="From 7 months",
        texture="mashed",
        foods=("200 g potatoes", "1 leek"),
        steps=("Boil the potatoes for 18 minutes.", "Mash them."),
        step_minutes=(18.0, 2.0),
        segments=segments,
        target=target,
        words_a_minute=145.0,
        cautions=(
            Warned("Stay close, baby sitting upright", "Stay with your baby while they eat.", "tasting"),
            Warned("No honey before 12 months", "No honey before twelve months.", "foods"),
        ),
        allergens=("milk",),
        sources=("NHS, Safe weaning",),
    )


def segment(name: str, say: str, step: int | None = None) -> Segment:
    return Segment(name, NOWHERE, say=Text(say, NOWHERE), step=step)


def test_the_recipe_alone_gives_a_whole_script() -> None:
    script = write_script(material())
    assert [take.role for take in script.takes] == [
        "opening", "foods", "step", "step", "tasting", "sources", "close",
    ]  # fmt: skip
    assert script.takes[2].say == "Boil the potatoes for 18 minutes."
    assert abs(script.takes[-1].start + script.takes[-1].runs - script.runs) < 0.01


def test_a_long_step_asks_for_a_twin() -> None:
    assert "18 minutes" in write_script(material()).takes[2].twin


def test_what_the_author_writes_replaces_and_reorders() -> None:
    script = write_script(material(segment("Mashing", "Now mash.", step=2), segment("Hook", "A leek walks in.")))
    said = [take.say for take in script.takes]
    assert said.index("Now mash.") < said.index("A leek walks in.")
    assert "Mash them." not in said
    assert "Boil the potatoes for 18 minutes." not in said  # she tells the method: what she passes over is seen
    assert [take.role for take in script.takes].count("step") == 2


def test_cautions_stay_whatever_the_author_writes() -> None:
    script = write_script(
        material(segment("Hook", "Hello."), segment("Tasting", "She likes it."), segment("Close", "Bye."))
    )
    shown = [each.text for take in script.takes for each in take.supers if each.kind == "caution"]
    assert sorted(shown) == ["No honey before 12 months", "Stay close, baby sitting upright"]
    heard = " ".join(take.say for take in script.takes)
    assert "She likes it. Stay with your baby while they eat." in heard
    assert "No honey before twelve months." in heard


def test_every_super_stands_long_enough_to_be_read_twice() -> None:
    for take in write_script(material()).takes:
        assert take.runs >= sum(each.needs for each in take.supers) - 0.01
    assert needed_seconds("one two") < needed_seconds("one two three four five six seven eight nine ten")


def test_over_the_target_it_says_what_to_trim() -> None:
    words = script_text(write_script(material(target=5.0)))
    assert "over the target of 0:05. Trim first:" in words


def test_chapters_start_at_zero_and_are_ten_seconds_apart() -> None:
    marks = chapters(write_script(material()))
    assert marks[0][0] == 0
    assert all(b[0] - a[0] >= 10 for a, b in pairwise(marks))
