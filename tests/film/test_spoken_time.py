"""The film's clock against an independent one: a speech synthesiser says the same words."""

import io
import shutil
import subprocess
import wave
from functools import lru_cache

import pytest

from spoonproof.film.material import material
from spoonproof.film.writing import write_script
from spoonproof.reading.spoken import as_spoken, seconds, tokens, word_count
from tests.each import each
from tests.film.test_lists import dishes

RATE = 145
SPEAKS = shutil.which("espeak-ng")
needs_a_voice = pytest.mark.skipif(SPEAKS is None, reason="espeak-ng, the independent clock, is not installed")


@lru_cache(maxsize=512)
def said_by_a_machine(text: str) -> float:
    """Seconds espeak-ng takes for a text at ``RATE``."""
    assert SPEAKS is not None
    command = [SPEAKS, "-v", "en-gb", "-s", str(RATE), "--stdout", text]
    sound = subprocess.run(command, capture_output=True, check=True, timeout=30).stdout
    with wave.open(io.BytesIO(sound)) as file:  # a piped file's header does not know its length
        bytes_a_second: int = file.getframerate() * file.getsampwidth() * file.getnchannels()
    return (len(sound) - 44) / bytes_a_second


@needs_a_voice
def test_each_demo_film_takes_the_time_a_machine_takes_for_it() -> None:
    ratios = {}
    for dish in dishes()[::4]:
        says = [take.say for take in write_script(material(dish)).takes if take.say]
        ours = sum(seconds(say, RATE) for say in says)
        ratios[dish.recipe.slug] = ours / sum(said_by_a_machine(say) for say in says)
    # A person at work needs a little longer than the machine, and about as much longer in one film as in another.
    assert all(1.0 <= ratio <= 1.25 for ratio in ratios.values()), ratios
    assert max(ratios.values()) / min(ratios.values()) <= 1.12, ratios


@needs_a_voice
@pytest.mark.parametrize(
    "text",
    [
        "Bake at 350 °F (177 °C) for 25 minutes, until the centre reaches 165 °F.",
        "Steam for 16-20 minutes, then weigh out 250 g and stir in 1½ tbsp of oil.",
        "Cut 1.5 cm dice out of 2 kg of swede, that is 60-70 pieces.",
    ],
)
def test_figures_take_the_time_of_their_words(text: str) -> None:
    """Counted as written, these lines would be too short by a fifth and more."""
    machine = said_by_a_machine(as_spoken(text))
    assert 0.85 <= seconds(text, RATE) / machine <= 1.35
    assert len(text.split()) * 60 / RATE < 0.8 * seconds(text, RATE)


@each(
    ("text", "words"),
    [
        ("350 °F", 5), ("1½ tsp", 5), ("16-20 minutes", 4), ("250 g", 4), ("1.5 cm", 4), ("½ tsp", 5), ("20 %", 3),
        ("2,5", 2), ("1 h", 2), ("mash, warm", 2), ("", 0), ("— …", 0),
    ],
)  # fmt: skip
def test_words_are_counted_as_they_are_said(text: str, words: int) -> None:
    assert word_count(text) == words


def test_a_figure_and_its_unit_are_one_piece() -> None:
    pieces = tokens("Steam for 16–20 minutes at 350 °F, then 3 cm more.")
    assert [piece.text for piece in pieces] == [
        "Steam", "for", "16–20", "minutes", "at", "350 °F,", "then", "3 cm", "more.",
    ]  # fmt: skip
    assert pieces[2].words == ("sixteen", "to", "twenty")
    assert pieces[7].words == ("three", "centimetres")
    assert all(
        piece.text == "Steam for 16–20 minutes at 350 °F, then 3 cm more."[piece.start : piece.end] for piece in pieces
    )
