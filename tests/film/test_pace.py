"""A presenter's pace from the captions of an earlier film."""

import pytest

from spoonproof.film.captions import captions, webvtt
from spoonproof.film.material import material
from spoonproof.film.pace import channel_lines, paces
from spoonproof.film.writing import write_script
from spoonproof.model.text import Document
from tests.kitchen import channel
from tests.kitchen import dish as made_dish

LINE = "We boil the potatoes until a cube squashes between finger and thumb, and then we mash them with the oil."


@pytest.mark.parametrize("rate", [120, 145, 170])
def test_the_pace_that_made_the_captions_is_measured_from_them(rate: int) -> None:
    says = "\n".join(f"    - {{name: Take {n}, say: '{LINE}'}}" for n in range(12))
    dish = made_dish(f"film:\n  runs: 600 s\n  segments:\n{says}", f"speech: {rate} words a minute\n")
    cues = captions(write_script(material(dish)))
    (pace,) = paces(Document("old.vtt", webvtt(cues)))
    assert pace.words_a_minute == pytest.approx(rate, rel=0.06)
    assert pace.words > 200
    assert pace.minutes == pytest.approx(pace.words / pace.words_a_minute, rel=0.01)


def test_each_presenter_has_a_pace_and_the_lines_are_read_back() -> None:
    slow, fast = "one two three four five six seven eight", "one two three four five six seven eight nine ten eleven"
    blocks = ["WEBVTT"]
    for number in range(20):
        at = number * 10
        who, words = (("Inga", slow), ("Dev O'Shea", fast))[number % 2]
        blocks.append(
            f"00:{at // 60:02d}:{at % 60:02d}.000 --> 00:{at // 60:02d}:{at % 60 + 4:02d}.000\n<v {who}>{words}"
        )
    found = paces(Document("pair.vtt", "\n\n".join(blocks) + "\n"))
    assert [pace.presenter for pace in found] == ["Dev O'Shea", "Inga"]
    lines = channel_lines(found, "pair.vtt")
    assert "words in" in lines[1]
    assert "minutes of speech" in lines[1]
    read = channel("\n".join(lines) + "\n").presenters
    assert read == {"Dev O'Shea": round(found[0].words_a_minute), "Inga": round(found[1].words_a_minute)}
    assert read["Dev O'Shea"] > read["Inga"] > 100


def test_a_channel_without_names_gets_one_line() -> None:
    text = "WEBVTT\n\n00:00:00.000 --> 00:00:04.000\nfive words and no more\n"
    (line,) = channel_lines(paces(Document("a.vtt", text)), "a.vtt")
    assert channel(line + "\n").speech == pytest.approx(78, abs=1)
    assert line.endswith("# a.vtt: 5 words in 0.1 minutes of speech")


def test_silence_has_no_pace() -> None:
    assert paces(Document("a.vtt", "WEBVTT\n")) == []
