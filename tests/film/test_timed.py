"""After the edit: the film's own timing, the script's words, and only what was said off script."""

from pathlib import Path

import pytest
import webvtt

from spoonproof.dish import Dish
from spoonproof.film.aligned import align
from spoonproof.film.captions import captions, subrip
from spoonproof.film.captions import webvtt as to_webvtt
from spoonproof.film.material import material
from spoonproof.film.offscript import claims_said, findings
from spoonproof.film.package import after_edit
from spoonproof.film.script import Script
from spoonproof.film.timed import Edited, edited
from spoonproof.film.writing import write_script
from spoonproof.model.finding import Finding
from spoonproof.model.text import Document
from spoonproof.reading.spoken import tokens
from tests.kitchen import dish as made_dish

HEAD = """
title: Turnip and plum crush
ages: 8-12 months
film:
  runs: 90 s
  segments:
    - {name: Hook, say: "Turnips are the vegetable nobody asks for. This bowl changes that."}
    - {name: Steam, step: 1, say: "Boil the potatoes for twenty to twenty-five minutes, until a cube squashes."}
    - {name: Tasting, say: "Some days she eats a bowlful, some days two spoons."}
"""


@pytest.fixture(scope="module")
def dish() -> Dish:
    return made_dish(HEAD)


def spoken(*cues: tuple[float, float, str], name: str = "film.vtt") -> Document:
    """A WebVTT file of these cues."""
    blocks = ["WEBVTT"]
    for start, end, words in cues:
        blocks.append(f"00:00:{start:06.3f} --> 00:00:{end:06.3f}\n{words}")
    return Document(name, "\n\n".join(blocks) + "\n")


def heard(dish: Dish, *cues: tuple[float, float, str]) -> tuple[Edited, list[Finding]]:
    film = edited(spoken(*cues), write_script(material(dish)))
    return film, findings(dish, film, claims_said(dish, film))


def planned(dish: Dish) -> Script:
    return write_script(material(dish))


def test_the_planned_captions_come_back_as_they_were(dish: Dish) -> None:
    script = planned(dish)
    made = captions(script)
    for name, text in (("a.vtt", to_webvtt(made)), ("a.srt", subrip(made))):
        film = edited(Document(name, text), script)
        assert film.captions == made
        assert film.off_script == ()
        assert film.unsaid == ()


def test_the_timing_is_the_films_and_the_words_are_the_scripts(dish: Dish) -> None:
    film, _ = heard(
        dish,
        (1.5, 4.25, "turnips are the vegetable nobody asks for"),
        (4.25, 6.0, "this bowl changes that"),
        (9.5, 14.0, "boil the potatos for 20 to 25 minutes until a cube squashes"),
    )
    assert [(cue.start, cue.end) for cue in film.captions] == [(1.5, 4.25), (4.25, 6.0), (9.5, 14.0)]
    assert [cue.text for cue in film.captions] == [
        "Turnips are the vegetable nobody asks for.",
        "This bowl changes that.",
        "Boil the potatoes for twenty to twenty-five minutes, until a cube squashes.",
    ]
    assert film.off_script == ()


def test_a_full_cue_stays_one_cue_in_wider_lines(dish: Dish) -> None:
    words = "turnips are the vegetable nobody asks for this bowl changes that"
    film, _ = heard(dish, (1.0, 5.0, words))
    (cue,) = film.captions
    assert (cue.start, cue.end) == (1.0, 5.0)
    assert len(cue.lines) == 2
    assert max(map(len, cue.lines)) <= 42


def test_rolling_captions_without_marks_are_understood(dish: Dish) -> None:
    film, found = heard(
        dish,
        (1.0, 3.0, "turnips are the vegetable"),
        (3.0, 5.0, "turnips are the vegetable\nnobody asks for this bowl"),
        (5.0, 7.0, "nobody asks for this bowl\nchanges that and it cures colds"),
    )
    assert " ".join(cue.text for cue in film.captions).startswith(
        "Turnips are the vegetable nobody asks for. This bowl"
    )
    assert [off.said for off in film.off_script] == ["and it cures colds"]
    assert any(finding.level == "error" for finding in found)


def test_only_what_was_said_off_script_is_told(dish: Dish) -> None:
    film, found = heard(
        dish,
        (1.0, 4.0, "Turnips are the vegetable nobody asks for."),
        (4.0, 8.0, "My aunt grew them by the wall. This bowl changes that."),
    )
    assert [off.text.strip() for off in film.off_script] == ["My aunt grew them by the wall."]
    mine = [finding for finding in found if finding.rule == "said-off-script"]
    assert [finding.level for finding in mine] == ["note"]


def test_a_claim_off_script_is_judged_at_its_place(dish: Dish) -> None:
    _, found = heard(
        dish,
        (1.0, 4.0, "Turnips are the vegetable nobody asks for."),
        (4.0, 8.0, "Potatoes are rich in iron. This bowl changes that."),
    )
    wrong = [finding for finding in found if finding.level == "error"]
    assert len(wrong) == 1
    assert wrong[0].document.at(wrong[0].span) == "Potatoes are rich in iron"
    assert wrong[0].document.position(wrong[0].span.start)[0] == 7


@pytest.mark.parametrize(
    ("words", "level"),
    [
        ("Stir in a spoonful of honey.", "error"),
        ("You can leave her alone with it while you cook.", "error"),
        ("Get her to finish the bowl.", "warning"),
        ("Let her gnaw on a stick of raw carrot meanwhile.", "error"),
        ("Never stir honey into it.", "note"),
    ],
)
def test_what_is_dangerous_off_script_is_found(dish: Dish, words: str, level: str) -> None:
    _, found = heard(dish, (1.0, 4.0, "This bowl changes that."), (4.0, 8.0, words))
    assert level in {finding.level for finding in found if finding.rule == "said-off-script"}
    if level == "note":
        assert {finding.level for finding in found if finding.rule == "said-off-script"} == {"note"}


def test_another_number_than_the_scripts_is_told(dish: Dish) -> None:
    film, found = heard(dish, (1.0, 6.0, "Boil the potatoes for ten to fifteen minutes, until a cube squashes."))
    assert "ten to fifteen" in film.captions[0].text
    assert any("a number is not the recipe's" in finding.message for finding in found)


def test_a_caution_nobody_says_is_missed(dish: Dish) -> None:
    _, found = heard(dish, (1.0, 4.0, "This bowl changes that."))
    assert any(f.rule == "caution-not-said" and "Stay with your baby" in f.message for f in found)
    _, found = heard(dish, (1.0, 4.0, "Stay with your baby while they eat, sitting upright."))
    assert not any(f.rule == "caution-not-said" for f in found)


def test_a_cue_that_cannot_be_read_is_told(dish: Dish) -> None:
    text = spoken((1.0, 4.0, "This bowl changes that.")).text + "\n00:00:05 --> soon\nLost words.\n"
    film = edited(Document("film.vtt", text), write_script(material(dish)))
    assert "cue-not-read" in {finding.rule for finding in findings(dish, film, claims_said(dish, film))}


def test_fillers_are_no_news(dish: Dish) -> None:
    film, _ = heard(dish, (1.0, 4.0, "Um, so, this bowl changes that."))
    assert film.off_script == ()
    assert film.captions[0].text == "This bowl changes that."


def test_who_speaks_is_kept(dish: Dish) -> None:
    film, _ = heard(dish, (1.0, 4.0, "<v Inga>This bowl changes that."))
    assert film.captions[0].voice == "Inga"
    assert "\n<v Inga>This bowl changes that." in to_webvtt(film.captions)


def test_a_figure_matches_whole_or_not_at_all() -> None:
    found = align(tokens("steam for sixteen to twenty-five minutes"), tokens("Steam for 16 to 20 minutes."))
    assert found.said == (0, 1, 2, 3, None, 5)


def test_the_files_after_the_edit_are_read_back_and_the_same_twice(dish: Dish, tmp_path: Path) -> None:
    film = spoken((1.0, 4.0, "Turnips are the vegetable nobody asks for."), (12.0, 16.0, "It is rich in iron."))
    made = after_edit(dish, film)
    assert made.files == after_edit(dish, film).files
    path = tmp_path / "claims.vtt"
    path.write_bytes(made.files["after-edit/claims.vtt"])
    read = webvtt.read(str(path))
    assert [(cue.start, cue.end) for cue in read.captions] == [("00:00:12.000", "00:00:16.000")]


def test_a_file_without_speech_is_refused_in_words(dish: Dish) -> None:
    with pytest.raises(ValueError, match="no timed speech"):
        edited(Document("empty.vtt", "WEBVTT\n"), planned(dish))
