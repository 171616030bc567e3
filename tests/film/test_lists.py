"""The package of every demo recipe: complete, on time, the same twice, and read back by other parsers."""

import csv
import io
from itertools import groupby, pairwise
from pathlib import Path

import html5lib
import pytest
import webvtt

from spoonproof.dish import Dish
from spoonproof.film.lists import COLUMNS
from spoonproof.film.material import STRICTER, material
from spoonproof.film.package import package
from spoonproof.film.screen import fits_screen
from spoonproof.film.script import write_script
from spoonproof.folder import ChannelFolder

ROOT = Path(__file__).parents[2]
DRAFT = "first-winter-bowl"  # the draft of faults: fifteen seconds for all it has to say


def dishes() -> list[Dish]:
    folder = ChannelFolder(ROOT)
    files = folder.select([ROOT / "recipes"], drafts=False)
    return [folder.dish(file.recipe) for file in files if file.recipe is not None and file.recipe.slug != DRAFT]


DISHES = dishes()
each_dish = pytest.mark.parametrize("dish", DISHES, ids=lambda dish: dish.recipe.slug)


def test_there_are_demo_films() -> None:
    assert len(DISHES) >= 10


@each_dish
def test_a_demo_film_keeps_to_its_target_with_every_caution(dish: Dish) -> None:
    script = write_script(material(dish))
    assert script.target is not None
    assert script.over <= 0, f"{script.runs} of {script.target}"
    shown = {each.text for each in script.supers}
    ids = {caution.id for caution in dish.cautions}
    assert {each.screen for each in dish.cautions if not ids & STRICTER.get(each.id, frozenset())} <= shown
    assert all(caution.screen and fits_screen(caution.screen) for caution in dish.cautions)
    assert all(a.end <= b.start + 1e-6 for a, b in pairwise(script.supers))


@each_dish
def test_other_parsers_read_it_back_and_twice_is_the_same(dish: Dish) -> None:
    made = package(dish)
    assert made == package(dish)
    script = write_script(material(dish))
    supers = webvtt.from_buffer(io.StringIO(made["supers.vtt"].decode()))
    assert [cue.text.replace("\n", " ") for cue in supers] == [each.text for each in script.supers]
    marks = webvtt.from_buffer(io.StringIO(made["chapters.vtt"].decode()))
    assert len(marks) >= 3
    assert marks[0].start_in_seconds == 0
    assert all(a.end_in_seconds == b.start_in_seconds for a, b in pairwise(marks))
    rows = list(csv.DictReader(io.StringIO(made["shots.csv"].decode())))
    assert tuple(rows[0]) == COLUMNS
    assert sorted(int(row["shot"]) for row in rows) == list(range(1, len(script.takes) + 1))
    setups = [name for name, _ in groupby(row["set-up"] for row in rows)]
    assert len(setups) == len(set(setups))
    for page in ("script.html", "prompter.html"):
        html5lib.HTMLParser(strict=True).parse(made[page].decode())


def test_a_long_steam_has_its_twin_in_shot_list_and_script() -> None:
    dish = next(dish for dish in DISHES if dish.recipe.slug == "parsnip-and-pear-spoon-mash")
    made = package(dish)
    state = "a cube of parsnip squashes between finger and thumb; start it 30 minutes before this shot"
    assert all(state in " ".join(made[name].decode().split()) for name in ("shots.csv", "twins.txt"))
    assert "Twin: Made ahead to the end of step 3" in " ".join(made["script.html"].decode().split())
