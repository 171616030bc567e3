"""A time in the method that nobody can cook by is said, and what cooks do write is left alone."""

from __future__ import annotations

from spoonproof.model.text import Document, Span
from spoonproof.model.tree import Mapped
from spoonproof.reading.times import wrong_times
from spoonproof.reading.yaml_tree import read_yaml
from tests.each import each
from tests.reading.readings import read_method


@each(
    ("time", "says"),
    [
        ("100000000000000000000 minutes", "up to 31 days"),
        ("1e20 minutes", "up to 31 days"),
        ("99999999999999999999999999999999999999999999999999 minutes", "…"),
        ("45 days", "up to 31 days"),
        ("3000 hours", "up to 31 days"),
        ("100000000000000000000min", "up to 31 days"),
        ("100000000000000000000 more minutes", "up to 31 days"),
        ("1,000 minutes", "can be read as"),
        ("7,5 minutes", "can be read as"),
        ("1/0 minutes", "can't be read"),
        ("05 minutes", "starts with a nought"),
    ],
)
def test_a_time_beyond_cooking_is_an_error_where_it_stands(time: str, says: str) -> None:
    _, found, _, document = read_method(["1 parsnip"], [f"Steam the parsnip for {time} and mash it."])
    (fault,) = [f for f in found if f.rule == "time-not-meant"]
    assert fault.level == "error" and document.at(fault.span) == time
    assert says in fault.message and fault.remedy is not None and fault.remedy.text


def test_the_far_end_of_a_range_and_the_second_part_of_a_time_count_too() -> None:
    said = ("Simmer for 10-100000000000000000000 minutes.", "Simmer for 1 hour 100000000000000000000 minutes.")
    for sentence in said:
        (wrong,) = wrong_times(sentence)
        assert sentence[wrong.start : wrong.end] == "100000000000000000000 minutes"


def test_no_time_at_all_is_a_warning() -> None:
    (wrong,) = wrong_times("Steam for 0 minutes.")
    assert wrong.level == "warning"


@each(
    "sentence",
    [
        "Steam for 1½ hours.", "Soak for 12-24 hours.", "Pickle for 31 days.", "Fry 90 seconds a side.",
        "Bake at 180 °C for 20 min.", "Simmer for 2/3 of an hour.", "Boil 1 hr 05.", "Cut into 0.5 cm cubes, 10 min.",
        "Use 1,000 g of swede.", "Add 300000 g of peas.", "Steam for 15·0 min.", "Chill for 0.5 h.",
    ],
)  # fmt: skip
def test_what_cooks_write_is_left_alone(sentence: str) -> None:
    assert not list(wrong_times(sentence))


def test_minutes_beside_a_sentence_are_held_to_the_same() -> None:
    text = "do: Steam the parsnip until soft.\nminutes: 100000000000000000000\n"
    node, _ = read_yaml(Document("x", text), Span(0, len(text)))
    assert isinstance(node, Mapped)
    (step,), found, _, _ = read_method(["1 parsnip"], [node])
    assert step.actions[0].time is None and [f.rule for f in found].count("time-not-meant") == 1
