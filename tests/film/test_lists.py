"""The package of every demo recipe: complete, on time, the same twice, and read back by other parsers."""

import csv
import io
import json
import re
from functools import lru_cache
from itertools import groupby, pairwise
from pathlib import Path

import html5lib
import pytest
import webvtt

from spoonproof.dish import Dish
from spoonproof.film.day import day_files, props, shopping, timetable
from spoonproof.film.lists import COLUMNS, as_csv
from spoonproof.film.material import allergens_shown, cautions_of, material
from spoonproof.film.package import Package, before_edit, package
from spoonproof.film.screen import fits_screen
from spoonproof.film.setups import read_shot
from spoonproof.film.writing import write_script
from spoonproof.folder import ChannelFolder
from tests.kitchen import dish as made_dish

ROOT = Path(__file__).parents[2]
DRAFT = "first-winter-bowl"  # the draft of faults: fifteen seconds for all it has to say


SLUGS = sorted(path.stem for path in (ROOT / "recipes").glob("*.md") if path.stem != DRAFT)
each_dish = pytest.mark.parametrize("dish", SLUGS, indirect=True)


@lru_cache(maxsize=1)  # by the worker that needs them alone
def dishes() -> list[Dish]:
    folder = ChannelFolder(ROOT)
    files = folder.select([ROOT / "recipes"], drafts=False)
    return [folder.dish(file.recipe) for file in files if file.recipe is not None and file.recipe.slug != DRAFT]


def named(slug: str) -> Dish:
    return next(dish for dish in dishes() if dish.recipe.slug == slug)


@lru_cache(maxsize=64)  # each is asked for by several tests, one of which makes it a second time
def filmed(slug: str) -> Package:
    return before_edit(named(slug))


@pytest.fixture
def dish(request: pytest.FixtureRequest) -> Dish:
    return named(request.param)


def test_there_are_demo_films() -> None:
    assert len(SLUGS) >= 10
    assert [dish.recipe.slug for dish in dishes()] == SLUGS


@each_dish
def test_a_demo_film_keeps_to_its_target_with_every_caution(dish: Dish) -> None:
    script = write_script(material(dish))
    assert script.target is not None
    assert script.over <= 0, f"{script.runs} of {script.target}"
    shown = {each.text for each in script.supers}
    assert {each.screen for each in cautions_of(dish)} <= shown
    assert len(dish.cautions) - len(cautions_of(dish)) <= 1
    assert all(caution.screen and fits_screen(caution.screen) for caution in dish.cautions)
    assert all(a.end <= b.start + 1e-6 for a, b in pairwise(script.supers))


@each_dish
def test_other_parsers_read_it_back_and_twice_is_the_same(dish: Dish) -> None:
    made = filmed(dish.recipe.slug).files
    assert made == package(dish)
    script = write_script(material(dish))
    supers = webvtt.from_buffer(io.StringIO(made["supers.vtt"].decode())).captions
    assert [cue.text.replace("\n", " ") for cue in supers] == [each.text for each in script.supers]
    marks = webvtt.from_buffer(io.StringIO(made["chapters.vtt"].decode())).captions
    assert len(marks) >= 3
    assert marks[0].start_in_seconds == 0
    assert all(a.end_in_seconds == b.start_in_seconds for a, b in pairwise(marks))
    rows = list(csv.DictReader(io.StringIO(made["shots.csv"].decode())))
    assert tuple(rows[0]) == COLUMNS
    assert sorted(int(row["shot"]) for row in rows) == list(range(1, len(script.takes) + 1))
    setups = [name for name, _ in groupby(row["set-up"] for row in rows)]
    assert len(setups) == len(set(setups))
    for page in ("script.html", "prompter.html", "shots.html"):
        html5lib.HTMLParser(strict=True).parse(made[page].decode())


def test_no_film_has_two_keeping_times() -> None:
    for slug in ("salmon-potato-and-pea-fork-mash", "moong-dal-khichdi"):
        made = filmed(slug).files
        for name in ("script.txt", "description.txt", "supers.vtt"):
            assert "48 hours" not in " ".join(made[name].decode().split())


def test_a_caution_about_a_step_stands_over_that_step() -> None:
    dish = named("salmon-potato-and-pea-fork-mash")
    bones = [take for take in write_script(material(dish)).takes if any("bones" in s.text for s in take.supers)]
    assert [take.step for take in bones] == [3]


def test_a_step_is_filmed_where_its_food_is() -> None:
    bowl = made_dish(
        "foods:\n  - 1 tbsp rapeseed oil\n  - 1 leek, sliced\n  - 1 clove garlic, crushed\n  - 300 g potatoes, diced\n"
        "  - 600 ml water\n  - 60 g soup pasta\n  - 30 g cheddar, grated, for the grown-ups\n"
        "steps:\n  - Warm the oil in a deep pan and soften the leek for 8 minutes.\n"
        "  - Add the garlic and stir for 1 minute.\n  - Add the potatoes and the water and cook for 15 minutes.\n"
        "  - Tip in the soup pasta and cook for 8 minutes.\n  - Take off the heat and stir in the oil.\n"
        "  - Lift out the baby's portion.\n  - Stir the cheddar into the family's pot."
    )
    seen = [read_shot(shot).setup.partition(",")[0] for shot in material(bowl).step_shots]
    assert seen[:5] == ["hob", "hob", "hob", "hob", "table"]
    assert not any("frying" in shot for shot in material(bowl).step_shots)
    assert [each.text for each in material(bowl).shown if each.kind == "allergens"] == [
        "Contains gluten (wheat), milk (family's bowl)"
    ]


@each_dish
def test_every_word_of_a_demo_package_stands_before_the_judge(dish: Dish) -> None:
    assert filmed(dish.recipe.slug).findings == ()


def test_what_is_untrue_in_our_own_words_is_found() -> None:
    untrue = made_dish("title: Honeyed carrots rich in iron\nfilm: {runs: 60 s}")
    found = before_edit(untrue).findings
    assert any(finding.level == "error" and "iron" in finding.message for finding in found)
    places = {finding.document.path for finding in found} | {o.document.path for f in found for o in f.related}
    assert any("(film, title)" in place for place in places)
    assert any("(film, post)" in place for place in places)


def test_a_film_over_its_target_is_told_with_what_to_trim() -> None:
    long = " ".join(["We boil them until they are soft."] * 20)
    found = before_edit(made_dish(f"film: {{runs: 20 s, segments: [{{name: Hook, say: '{long}'}}]}}")).findings
    assert [finding.rule for finding in found] == ["film-over-target"]
    assert "over the target of 0:20. Trim first: Hook" in found[0].message
    assert found[0].document.at(found[0].span).startswith("{runs: 20 s")


def test_claims_stand_in_metadata_cues_at_the_time_they_are_made() -> None:
    dish = made_dish(
        "film:\n  runs: 60 s\n  segments:\n"
        "    - {name: Hook, say: 'We cook potatoes again, as we do in winter. Potatoes are rich in iron.'}"
    )
    made = before_edit(dish).files["claims.vtt"].decode()
    (cue,) = webvtt.from_buffer(io.StringIO(made)).captions
    claim = json.loads(cue.text)
    assert (claim["quote"], claim["truth"], claim["advice"]) == ("Potatoes are rich in iron", "false", "cut-untrue")
    assert claim["sources"]
    assert 3.0 < cue.start_in_seconds < 5.0


def test_a_claim_that_rests_on_a_source_shows_it_while_it_is_made() -> None:
    dish = made_dish(
        "film:\n  runs: 90 s\n  segments:\n    - {name: Hook, say: 'Never give honey before twelve months.'}"
    )
    take = write_script(material(dish)).takes[0]
    assert any(each.kind == "source" and "NHS" in each.text for each in take.supers)


def test_what_is_not_so_gets_no_source() -> None:
    dish = made_dish("film:\n  runs: 90 s\n  segments:\n    - {name: Hook, say: 'Potatoes are rich in iron.'}")
    script = write_script(material(dish))
    assert not any(each.kind == "source" for each in script.supers)
    assert "1924/2006" not in package(dish)["description.txt"].decode()


@pytest.mark.parametrize("name", ["description.txt", "post.txt", "title.txt", "before-it-goes-up.txt", "shots.html"])
def test_the_upload_kit_is_there(name: str) -> None:
    assert filmed(SLUGS[0]).files[name].strip()


def test_barley_is_said_to_bring_gluten_and_wheat_need_not_be() -> None:
    said = {slug: filmed(slug).files["script.txt"].decode() for slug in SLUGS}
    words = {slug: " ".join(line[40:].strip() for line in text.splitlines()) for slug, text in said.items()}
    assert "contains gluten from barley." in words["slow-beef-and-barley-pot"]
    assert "contains wheat and egg." in words["turkey-and-courgette-patties"]


def test_the_description_passes_on_what_the_labels_say() -> None:
    text = filmed("peanut-and-raspberry-yoghurt").files["description.txt"].decode()
    assert "Contains: peanut, milk." in text
    assert "May contain, by its foods' labels: nuts, sesame." in text


def test_the_description_holds_what_it_must() -> None:
    dish = named("red-lentil-and-sweet-potato-pot")
    text = before_edit(dish, ["Correction, 2026-11-25: an older film."]).files["description.txt"].decode()
    marks = re.findall(r"^(\d+):(\d\d) (.+)$", text, re.MULTILINE)
    seconds = [60 * int(minutes) + int(rest) for minutes, rest, _ in marks]
    assert seconds[0] == 0
    assert len(seconds) >= 3
    assert all(b - a >= 10 for a, b in pairwise(seconds))
    assert all(line.text in text for line in dish.recipe.foods)
    assert all(caution.text in text for caution in cautions_of(dish))
    assert "Contains: celery" in text
    assert "- 2026-10-20: we said" in text
    assert "an older film" in text
    assert "NHS, Storing and reheating food" in text


def test_a_thumbnail_is_checked_by_what_it_shows() -> None:
    def sheet(pictures: str) -> str:
        made = made_dish(f"pictures: {pictures}\nfilm: {{runs: 60 s}}")
        return before_edit(made).files["before-it-goes-up.txt"].decode()

    assert "whole grapes" in sheet('[{file: a.jpg, text: "A bowl", shows: [whole grapes on a spoon]}]')
    assert "can close a small child's airway" in sheet('[{file: a.jpg, text: "A", shows: [whole grapes on a spoon]}]')
    assert "Nothing dangerous" in sheet('[{file: a.jpg, text: "A bowl", shows: [mashed bowl, adult present]}]')
    assert "could not be checked" in sheet("[a.jpg]")


def test_a_long_or_shouted_title_is_told() -> None:
    long = "Potatoes and more potatoes and " * 3
    said = before_edit(made_dish(f"film: {{runs: 60 s, title: {long}}}")).files["before-it-goes-up.txt"].decode()
    assert "Lists show about 70 characters" in said
    assert "It does not say from which age: 7 months" in said
    assert (
        "shouting" in before_edit(made_dish("film: {runs: 60 s, title: MASH}")).files["before-it-goes-up.txt"].decode()
    )


def test_what_is_counted_or_poured_is_bought_so() -> None:
    (egg, leek, milk) = shopping(
        [
            made_dish(
                "foods:\n  - 1 egg\n  - 100 ml whole milk\n  - 1/2 leek, sliced\nsteps:\n  - Bake for 30 minutes.\n"
            ),
            made_dish("foods:\n  - 2 eggs\n  - 0.5 dl whole milk\nsteps:\n  - Bake it all for 30 minutes.\n"),
        ]
    )
    assert egg.told.startswith("3 (")
    assert leek.told.startswith("1 (")
    assert milk.told.endswith(" g")  # two measures are not added up


def test_no_cell_runs_in_a_spreadsheet() -> None:
    assert as_csv(("film", "grams"), [["=1+1", "-5 g"]]) == "film,grams\n'=1+1,'-5 g\n"


def test_a_day_has_one_shopping_list_and_each_set_up_once() -> None:
    three = [dish for dish in dishes() if dish.recipe.slug.startswith(("slow", "three", "red-lentil-and-sweet"))]
    made = day_files(three)
    assert made == day_files(three)
    rows = {row["food"]: row for row in csv.DictReader(io.StringIO(made["shopping.csv"].decode()))}
    assert int(rows["carrots"]["grams as bought"]) == 300 + 200
    assert "water" not in rows
    assert any("cook it first" in food for food in rows)
    told = {item.name: item.told for item in shopping(three)}
    assert told["carrots"] == "500 g"
    shots = list(csv.DictReader(io.StringIO(made["shots.csv"].decode())))
    setups = [name for name, _ in groupby(row["set-up"] for row in shots)]
    assert len(setups) == len(set(setups))
    assert {row["film"] for row in shots} == {dish.recipe.title.value for dish in three}
    html5lib.HTMLParser(strict=True).parse(made["day.html"].decode())
    assert "peeler" in dict(props(three))


def test_a_day_has_a_timetable_with_its_twins() -> None:
    both = [named("egg-and-spinach-ribbons"), named("parsnip-and-pear-spoon-mash")]
    rows = timetable(both)
    assert rows[0][0] == "09:30"
    assert [time for time, _, _ in rows] == sorted(time for time, _, _ in rows)
    assert {title for _, title, _ in rows} == {dish.recipe.title.value for dish in both}
    assert any(work.startswith("Twin, made ahead") for _, _, work in rows)
    assert not any("12:00" < time < "13:00" and "steam" in work.lower() for time, _, work in rows)  # the nap


def test_many_allergens_take_several_supers() -> None:
    words = ["gluten (wheat, oats)", "crustaceans", "egg", "fish", "milk", "mustard", "sesame", "sulphites", "soya"]
    shown = allergens_shown(words)
    assert len(shown) == 2
    assert all(fits_screen(text) for text in shown)
    assert ", ".join(shown).replace("Contains ", "").replace("Also ", "") == ", ".join(words)
    assert allergens_shown([]) == []


def test_supers_stand_clear_of_the_captions_in_type_that_fits() -> None:
    made = filmed(SLUGS[0]).files["supers.vtt"].decode()
    assert all(line.endswith("line:10%") for line in made.split("\n") if " --> " in line)
    assert "1920 x 1080: at most 77 px" in made
    assert 77 * 0.6 * 37 <= 1920 * 0.9


def test_a_long_steam_has_its_twin_in_shot_list_and_script() -> None:
    made = filmed("parsnip-and-pear-spoon-mash").files
    state = "a cube of parsnip squashes between finger and thumb; start it 30 minutes before "
    assert f"{state}this shot" in made["shots.csv"].decode()
    assert f"{state}shot 6, Squash test." in made["twins.txt"].decode()
    assert "Twin: Made ahead to the end of step 3" in " ".join(made["script.html"].decode().split())


@each_dish
def test_the_description_says_each_thing_to_mind_once(dish: Dish) -> None:
    words = filmed(dish.recipe.slug).files["description.txt"].decode().lower()
    for said in ("upright", "stay with your baby", "high chair", "choke a child", "medical advice"):
        assert words.count(said) == 1, said


def test_a_pinch_is_not_bought_as_nothing() -> None:
    (item,) = shopping([made_dish("foods:\n  - 1 pinch turmeric\n")])
    assert item.told == "0.2 g"
    rows = csv.DictReader(
        io.StringIO(day_files([made_dish("foods:\n  - 1 pinch turmeric\n")])["shopping.csv"].decode())
    )
    assert [row["grams as bought"] for row in rows] == ["0.2"]


def test_the_words_under_a_film_name_what_may_stand_in_a_food_s_place() -> None:
    made = made_dish(
        "foods:\n  - 300 g potatoes, peeled, 1 cm dice\n  - food: 1 tbsp almond butter\n    or: 1 tbsp seed butter"
    )
    assert "- 1 tbsp almond butter (or 1 tbsp seed butter)\n" in before_edit(made).files["description.txt"].decode()


def test_the_baby_s_milk_is_named_as_hers() -> None:
    made = made_dish("foods:\n  - 300 g floury potatoes, peeled, 1 cm dice\n  - usual milk, to thin")
    assert "your baby's usual milk" in before_edit(made).files["script.txt"].decode().replace("\n", " ")
