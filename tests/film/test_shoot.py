"""``shoot`` as a person runs it: packages, a day, the finished film's words, a pace, and words for misuse."""

from pathlib import Path

import pytest

from spoonproof.checks.rules.film_words_overrun import check
from spoonproof.cli import main
from tests.kitchen import dish

RECIPE = """---
title: Swede mash
summary: Swede, soft and warm.
ages: 7-9 months
texture: mashed
next: {texture: lumpy, from: 9 months, how: crush it less}
foods:
  - 300 g swede, peeled, 1 cm dice
  - 2 tsp rapeseed oil
steps:
  - Boil the swede for 25-30 minutes, until a cube squashes between finger and thumb.
  - Mash the swede with the oil.
film:
  runs: 90 s
---
A story.
"""


@pytest.fixture
def channel(tmp_path: Path) -> Path:
    (tmp_path / "recipes").mkdir()
    (tmp_path / "channel.yaml").write_text("title: Tarn Kitchen\nmarkets: [GB]\nspeech: 150 words a minute\n")
    (tmp_path / "recipes" / "swede-mash.md").write_text(RECIPE)
    (tmp_path / "recipes" / "swede-again.md").write_text(RECIPE.replace("Swede mash", "Swede again"))
    return tmp_path


def run(channel: Path, *arguments: str) -> int:
    return main(["shoot", "--channel", str(channel), *arguments])


def test_a_package_and_a_day_are_written(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    recipes = [str(channel / "recipes" / f"{name}.md") for name in ("swede-mash", "swede-again")]
    assert run(channel, *recipes) == 0
    out = channel / "out" / "film"
    assert (out / "swede-mash" / "captions.vtt").read_text().startswith("WEBVTT\n")
    assert (out / "day" / "shopping.csv").read_text().splitlines()[-1].startswith("swede,600,")
    assert str(Path("film") / "swede-again" / "shots.html") in capsys.readouterr().out  # as one at her folder types it


def test_corrections_of_older_films_stand_in_the_description_once_they_are_out(channel: Path) -> None:
    (channel / "corrections.csv").write_text(
        "file,at,statement,state,advice,entry,since\n"
        "old.vtt,0:29,Honey is fine from six months,pinned,cut-untrue,honey-given-early,2026-10-01\n"
        "old.vtt,0:35,Leave the pot of soup out overnight,posted,cut-untrue,,2026-10-03\n"
        "old.vtt,0:40,Swede prevents colds,drafted,cut-untrue,prevents-anything,2026-10-02\n"
    )
    assert run(channel, str(channel / "recipes" / "swede-mash.md")) == 0
    words = (channel / "out" / "film" / "swede-mash" / "description.txt").read_text()
    assert "Correction, 1 October 2026" in words
    assert "none before twelve months" in words
    assert "chill within" in words  # what is no claim and endangers is corrected in words too
    assert "colds" not in words
    (channel / "corrections.csv").write_text("file,state\n")
    assert run(channel, str(channel / "recipes" / "swede-mash.md")) == 2


def test_the_finished_films_captions_keep_their_time_and_what_was_added_is_told(
    channel: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    film = channel / "final.srt"
    film.write_text(
        "1\n00:00:02,000 --> 00:00:05,500\nboil the swede for 25 to 30 minutes\n\n"
        "2\n00:00:05,500 --> 00:00:08,000\nuntil a cube squashes between finger and thumb\n\n"
        "3\n00:00:20,000 --> 00:00:24,000\nStay with your baby while they eat, sitting upright.\n\n"
        "4\n00:00:24,000 --> 00:00:27,000\nSwede is rich in iron.\n"
    )
    recipe = str(channel / "recipes" / "swede-mash.md")
    assert run(channel, recipe, "--timed", str(film)) == 1
    told = capsys.readouterr().out
    assert "Swede is rich in iron" in told
    assert "error" in told
    assert told.count("said-off-script") == 1
    made = (channel / "out" / "film" / "swede-mash" / "after-edit" / "captions.srt").read_text()
    assert "00:00:02,000 --> 00:00:05,500\nBoil the swede\nfor 25 to 30 minutes," in made
    assert made.count(" --> ") == 4
    film.write_text(film.read_text().split("\n4\n")[0] + "\n")
    assert run(channel, recipe, "--timed", str(film)) == 0


def test_the_pace_of_an_older_film_is_a_line_for_the_channel(channel: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cues = [f"{n}\n00:00:{n:02d},000 --> 00:00:{n + 1:02d},000\n{'ab'[n % 2]} two three" for n in range(55)]
    film = channel / "old.srt"
    film.write_text("\n\n".join(cues) + "\n")
    assert main(["shoot", "--calibrate", str(film)]) == 0
    assert capsys.readouterr().out == "speech: 180 words a minute  # old.srt: 165 words in 0.9 minutes of speech\n"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ([], "name a recipe to film"),
        (["recipes/swede-mash.md", "--timed", "nowhere.vtt"], "there is no such file"),
        (["recipes/swede-mash.md", "recipes/swede-again.md", "--timed", "channel.yaml"], "belongs to one recipe"),
        (["recipes/swede-mash.md", "--timed", "channel.yaml"], "no timed speech was found"),
        (["recipes/swede-mash.md", "--calibrate", "channel.yaml"], "give it alone"),
    ],
)
def test_misuse_is_answered_in_words(
    channel: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], arguments: list[str], words: str
) -> None:
    monkeypatch.chdir(channel)
    assert run(channel, *arguments) == 2
    assert words in capsys.readouterr().err


def test_an_overrun_is_counted_at_each_presenters_own_pace() -> None:
    say = "Boil the swede until a cube squashes between finger and thumb, and then mash it with the oil."
    text = f"film:\n  runs: 6 s\n  segments:\n    - {{name: Hook, presenter: Dev, say: '{say}'}}"
    assert list(check(dish(text)))
    assert not list(check(dish(text, "presenters: {Dev: 260 words a minute}\n")))
    (fault,) = check(dish(text, "presenters: {Dev: 100 words a minute}\n"))
    assert "their presenters' own pace" in fault.message
