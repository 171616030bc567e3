"""The script: complete from the recipe alone, rearranged by the author, cautions always kept."""

from itertools import pairwise
from math import ceil

import pytest

from spoonproof.film.briefly import aloud, briefly, chapter_of, named
from spoonproof.film.lists import by_setup
from spoonproof.film.material import _aloud
from spoonproof.film.screen import fits_screen, needed_seconds, screen_lines
from spoonproof.film.script import Heard, Material, Shown, Twin
from spoonproof.film.takes import all_takes
from spoonproof.film.text import chapters, clock, script_text
from spoonproof.film.writing import write_script
from spoonproof.model.recipe import Segment
from spoonproof.model.text import NOWHERE, Text

CAUTIONS = (
    Shown("Stay close, baby sitting upright", "caution", "tasting"),
    Shown("Learn what to do if a baby chokes", "caution", "tasting"),
    Shown("Reheat once, steaming hot, then cool", "caution", "close"),
)


def material(*segments: Segment, target: float | None = 60.0, **more: object) -> Material:
    given: dict[str, object] = {
        "title": "Leek and potato spoonful",
        "channel": "Lantern Row Kitchen",
        "ages": "From 7 months",
        "texture": "mashed",
        "foods": ("potatoes", "leek"),
        "steps": ("Boil the potatoes for 18 minutes, until a piece squashes between finger and thumb.", "Mash them."),
        "step_tests": ("Until a piece squashes between finger and thumb", ""),
        "twins": {0: Twin(0, "Made ahead to the end of step 1: a piece squashes", 22.0)},
        "keeping": "It keeps for 2 days in the fridge.",
        "segments": segments,
        "target": target,
        "heard": (Heard("Stay with your baby while they eat.", "tasting"),),
        "shown": (Shown("Contains milk", "allergens", "foods"), *CAUTIONS),
    }
    return Material(**{**given, **more})  # type: ignore[arg-type]


def segment(name: str, say: str, step: int | None = None, presenter: str = "") -> Segment:
    return Segment(name, NOWHERE, say=Text(say, NOWHERE), step=step, presenter=presenter)


def test_the_recipe_alone_gives_a_whole_script() -> None:
    script = write_script(material(target=None))
    assert [take.role for take in script.takes] == [
        "opening", "foods", "step", "step", "tasting", "cautions", "sources", "close",
    ]  # fmt: skip
    assert script.takes[2].say.startswith("Boil the potatoes for 18 minutes")
    assert all(abs(a.end - b.start) < 0.01 for a, b in pairwise(script.takes))
    assert abs(script.takes[-1].end - script.runs) < 0.01


def test_a_twin_says_its_state_and_when_to_start_it() -> None:
    (twin,) = [take.twin for take in write_script(material()).takes if take.twin is not None]
    assert "a piece squashes" in twin.text
    assert "22 minutes before" in twin.text


def test_what_the_author_writes_replaces_and_reorders() -> None:
    script = write_script(material(segment("Mashing", "Now mash.", step=2), segment("Hook", "A leek walks in.")))
    said = [take.say for take in script.takes]
    assert said.index("Now mash.") < said.index("A leek walks in.")
    assert "Mash them." not in said
    boil = next(take for take in script.takes if take.step == 0)
    assert boil.say == ""  # she tells the method: what she passes over is seen, and its end point shown
    assert boil.supers[0].text == "Until a piece squashes between finger and thumb"


def test_a_caution_is_heard_and_shown_where_it_belongs() -> None:
    script = write_script(material(segment("Tasting", "She likes it.")))
    tasting = next(take for take in script.takes if take.role == "tasting")
    assert tasting.say.startswith("She likes it. Stay with your baby while they eat.")
    assert [each.text for each in tasting.supers] == [
        "Stay close, baby sitting upright",
        "Learn what to do if a baby chokes",
    ]


@pytest.mark.parametrize("target", [None, 60.0, 20.0, 1.0])
def test_every_caution_and_allergen_stays_whatever_is_cut(target: float | None) -> None:
    script = write_script(material(segment("Hook", "Hello."), segment("Close", "Bye."), target=target))
    shown = [each.text for each in script.supers]
    assert all(shown.count(each.text) == 1 for each in CAUTIONS)
    assert "Contains milk" in shown
    assert any("Stay with your baby" in take.say for take in script.takes)


@pytest.mark.parametrize("target", [None, 60.0, 20.0])
def test_supers_are_read_twice_inside_their_take_and_never_cover_each_other(target: float | None) -> None:
    script = write_script(material(target=target))
    assert len(script.supers) >= 5
    assert all(each.needs >= max(3.0, 2 * len(each.text.split()) * 60 / 183) for each in script.supers)
    assert all(a.end <= b.start + 1e-6 for a, b in pairwise(script.supers))
    for take in script.takes:
        assert all(take.start - 1e-6 <= each.start and each.end <= take.end + 0.011 for each in take.supers)
    assert needed_seconds("one two") < needed_seconds("one two three four five six seven eight nine ten")


def test_short_of_time_a_step_is_named_and_its_end_point_is_shown() -> None:
    long = "Boil the potatoes in plenty of water, covered, at a gentle bubble, until a piece squashes, for 18 minutes."
    steps, tests = (long, long, "Mash them."), ("18 minutes", "18 minutes", "")
    script = write_script(material(steps=steps, step_tests=tests, twins={}, target=36.0))
    assert script.over <= 0
    assert script.silent is None
    boil = next(take for take in script.takes if take.step == 0)
    assert boil.say == "Boil the potatoes."
    assert next(each.text for each in boil.supers) == "18 minutes"
    assert script.runs < write_script(material(steps=steps, step_tests=tests, twins={}, target=None)).runs
    short = write_script(material(steps=steps, step_tests=tests, twins={}, target=34.0))
    assert short.over > 0
    assert short.silent == script.runs
    assert all(take.say for take in short.takes if take.step is not None)


def test_a_source_stands_while_its_statement_is_made() -> None:
    words = (
        "A leek walks in, slowly, as leeks do on a cold morning in the harbour, and says hello. No honey before one."
    )
    source = Shown("Source: NHS", "source", quote="No honey before one")
    script = write_script(material(segment("Hook", words), shown=(source,), target=None))
    hook = script.takes[0]
    (super_,) = (each for each in hook.supers if each.kind == "source")
    assert super_.start > 0.4 * hook.runs
    assert super_.end <= hook.end + 1e-6
    assert not any(each.kind == "source" for each in write_script(material(shown=(source,))).supers)


def test_a_method_of_very_many_steps_is_cut_at_once() -> None:
    steps = tuple(f"Boil the potatoes for {number} minutes, stirring, until soft." for number in range(1, 301))
    script = write_script(material(target=900.0, steps=steps, step_tests=("",) * 300, twins={}))
    assert script.over <= 0
    assert {take.say for take in script.takes if take.role == "step"} == {"Boil the potatoes."}


def test_with_time_to_spare_nothing_is_cut() -> None:
    assert write_script(material(target=300.0)).runs == write_script(material(target=None)).runs


def test_the_authors_words_are_never_cut() -> None:
    words = "A leek walks in, and it takes its time about it, as leeks do on a cold morning in the harbour."
    assert words in [take.say for take in write_script(material(segment("Hook", words), target=5.0)).takes]


def test_a_presenter_has_a_rate_of_their_own() -> None:
    words = "One two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen."
    slow, fast = (
        write_script(material(segment("Aside", words, presenter=who), presenters={"Dev": 200.0, "Inga": 100.0}))
        for who in ("Inga", "Dev")
    )
    assert slow.takes[0].runs > 1.6 * fast.takes[0].runs


def test_a_paid_film_says_so_first_and_shows_it() -> None:
    script = write_script(material(segment("Hook", "Hello."), disclosure="Advertisement: this film is paid for."))
    assert script.takes[0].say.startswith("Advertisement: ")
    assert script.takes[0].supers[0].kind == "disclosure"
    own = write_script(material(segment("Hook", "An ad, paid for by a farm."), disclosure="Advertisement: paid."))
    assert own.takes[0].say == "An ad, paid for by a farm."


@pytest.mark.parametrize("target", [1.0, 12.0, 20.0])
def test_a_film_that_silence_would_not_bring_to_length_keeps_its_method(target: float) -> None:
    made = material(target=target)
    script = write_script(made)
    assert script.over > 0
    assert [take.say for take in script.takes if take.step is not None] == list(made.steps)
    assert script.silent is not None
    assert target < script.silent <= script.runs
    said = script_text(script)
    assert f"{clock(script.over)} over the target" in said
    assert f"the film would still run {clock(script.silent)}" in said
    assert f" Give it {ceil(script.runs)} s" in said  # no word of hers is there to trim
    longer = write_script(material(target=float(ceil(script.runs))))
    assert longer.over <= 0
    assert all(take.say for take in longer.takes if take.step is not None)


def test_over_the_target_it_says_what_to_trim() -> None:
    script = write_script(material(segment("Hook", "word " * 60), target=5.0))
    assert "over the target of 0:05. Trim first: Hook" in script_text(script)


def test_chapters_start_at_zero_and_are_ten_seconds_apart() -> None:
    marks = chapters(write_script(material(target=None, steps=("Boil the potatoes for 18 minutes.",) * 4)))
    assert marks[0][0] == 0
    assert len(marks) >= 3
    assert all(b[0] - a[0] >= 10 for a, b in pairwise(marks))


def test_a_super_stands_in_two_even_lines() -> None:
    assert screen_lines("Stay close") == ["Stay close"]
    two = screen_lines("Severe eczema or egg allergy? See a doctor before peanut")
    assert len(two) == 2
    assert max(map(len, two)) <= 37
    assert not fits_screen("word " * 30)


def test_briefly_keeps_the_lid_and_the_end_point() -> None:
    step = "Meanwhile put the fish in a pan (a small one) and poach it, covered, for 8 minutes, until it flakes."
    assert briefly(step) == "Put the fish in a pan and poach it, covered, for 8 minutes, until it flakes."


@pytest.mark.parametrize(
    "step",
    [
        "Crush the chickpeas and the pasta with a fork, so that none of them stays whole.",
        "Flake the trout between your fingers, so that you feel any bones.",
        "Press the plums through a sieve, which holds back the skins.",
    ],
)
def test_briefly_keeps_what_must_not_be_left_in(step: str) -> None:
    assert briefly(step) == step


def test_briefly_keeps_size_and_cut() -> None:
    for step in ("Shape into 8 patties, 2 cm thick.", "Let it cool for 5 minutes, and cut it into strips."):
        assert briefly(step) == step
    assert briefly("Serve it warm from a spoon, or let the baby scoop.") == "Serve it warm from a spoon."


def test_a_title_is_said_without_a_second_colon() -> None:
    said = write_script(material(title="Swede pot: the slow way")).takes[0].say
    assert said.startswith("Today: Swede pot, the slow way. ")


def test_a_step_is_read_out_and_named() -> None:
    assert aloud("Steam for 16-20 minutes.") == "Steam for 16 to 20 minutes."
    assert aloud("Bake 25-30 mins at 200C") == "Bake 25 to 30 minutes at 200 degrees Celsius."
    assert (
        aloud("Fry for 1 min. Stir, wait 5 min. more, then rest for 1.5 hrs.")
        == "Fry for 1 minute. Stir, wait 5 minutes more, then rest for 1.5 hours."
    )
    assert aloud("Cut 2 C-shaped pieces of 3 cm.") == "Cut 2 C-shaped pieces of 3 cm."
    assert chapter_of("Steam the parsnips, covered, for 16-20 minutes.") == "Steam the parsnips"
    assert len(chapter_of("Bring " + "very " * 30 + "salty water.")) <= 49
    assert named("Tip in the peas and cook them for 4 minutes.") == "Tip in the peas."
    for guarded in ("Stir in the honey for the grown-ups.", "Lift out the cod and feel it for bones."):
        assert named(guarded) == ""


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("It contains gluten (oats) and milk. Try it.", "It contains milk and gluten from oats. Try it."),
        ("It contains gluten (barley and rye), egg.", "It contains egg and gluten from barley and rye."),
        ("It contains gluten (wheat, barley) and nuts (almonds).", "It contains wheat, barley and almonds."),
        ("It contains milk.", "It contains milk."),
    ],
)
def test_only_the_cereal_is_heard_to_bring_gluten(told: str, said: str) -> None:
    assert _aloud(told) == said


def test_a_segment_without_a_shot_is_spoken_to_the_camera() -> None:
    script = write_script(material(segment("why", "Barley keeps its bite.")))
    (row,) = [row for row in by_setup(script) if row.take.role == "own"]
    assert (row.shot.size, row.shot.subject, row.audio) == ("MS", "presenter to camera", "sync")


@pytest.mark.parametrize(("texture", "seen"), [("soft finger food", "plate"), ("lumpy", "spoon")])
def test_what_is_eaten_with_the_fingers_is_filmed_without_a_spoon(texture: str, seen: str) -> None:
    script = write_script(material(texture=texture))
    assert seen in script.takes[0].shot
    assert any("spoonful" in take.say for take in script.takes[1:]) == (seen == "spoon")


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("Heat the oven to 350 °F (180 °C).", "Heat the oven to 350 degrees Fahrenheit, 180 degrees Celsius."),
        ("Stir in the oats (rolled, not instant) and wait.", "Stir in the oats, rolled, not instant, and wait."),
        ("Drain (keep the water), then mash.", "Drain, keep the water, then mash."),
        (
            "Bake at 180C / 160C fan/gas 4, with 1/2 tsp of oil.",
            "Bake at 180 degrees Celsius or 160 degrees Celsius fan or gas 4, with 1/2 tsp of oil.",
        ),
    ],
)
def test_brackets_are_heard_as_pauses_and_slashes_as_or(written: str, said: str) -> None:
    assert aloud(written) == said


def test_what_stands_in_brackets_goes_first_where_time_is_short() -> None:
    step = "Stir in the oats (rolled, not instant) and wait for 5 minutes."
    (take,) = (take for take in all_takes(material(steps=(step,))) if take.role == "step")
    assert take.shorter[0].say == "Stir in the oats and wait for 5 minutes."
