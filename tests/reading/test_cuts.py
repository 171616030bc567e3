"""Cut words to a shape and millimetres."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.each import each
from tests.reading.readings import cut_words, measures


@each(
    ("text", "cuts"),
    [
        ("1 cm dice", "dice 10-10"),
        ("1cm dice", "dice 10-10"),
        ("5 mm", "dice 5-5"),
        ("half-inch cubes", "dice 12.7-12.7"),
        ("1 in cubes", "dice 25.4-25.4"),
        ("½-inch dice", "dice 12.7-12.7"),
        ('1" cubes', "dice 25.4-25.4"),
        ("1-2 cm chunks", "chunk 10-20"),
        ("1 cm to 2 cm chunks", "chunk 10-20"),
        ("diced (1 cm)", "dice 10-10"),
        ("dice of about 1 cm", "dice"),
        ("1 cm thick slices", "slice 10-10"),
        ("slices 1 cm thick", "slice 10-10"),
        ("finger-length batons", "baton 10-15"),
        ("thin rounds", "coin 2-3"),
        ("coins", "coin 3-5"),
        ("matchsticks", "baton 2-4"),
        ("ribbons", "strip 1-3"),
        ("wedges", "wedge"),
        ("quartered lengthways", "quarter along"),
        ("quartered, lengthways", "quarter along"),
        ("halved", "half"),
        ("whole", "whole"),
        ("into small florets", "floret 10-20"),
        ("coarsely grated", "grated 3-5"),
        ("finely chopped", "chopped 1-4"),
        ("chopped", "chopped 5-20"),
        ("pea-sized pieces", "chopped 5-8"),
        ("the size of a pea", "chopped 5-8"),
        ("cut into 2 cm lengths", "chunk 20-20"),
        ("2 cm pieces", "chunk 20-20"),
        ("pieces", ""),
        ("sliced into 5 mm rounds", "coin 5-5"),
        ("peeled, sliced, then chopped", "slice, chopped 5-20"),
        ("peeled", ""),
        ("", ""),
    ],
)
def test_cuts(text: str, cuts: str) -> None:
    assert ", ".join(cut_words(found.cut) for found in measures().cuts.find(text)) == cuts


@given(st.text(alphabet="0123456789.,/½¼-– cmindeqhlartuogsw()\"'", max_size=60))
def test_any_text_gives_cuts_inside_it(text: str) -> None:
    for found in measures().cuts.find(text, verbs=True):
        assert 0 <= found.start < found.end <= len(text)
        low, high = found.cut.low_mm, found.cut.high_mm
        assert low is None or (high is not None and 0 <= low <= high)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("1.5 cm x 7 cm batons", 15, 15),
        ("1 x 6 cm sticks", 10, 10),
        ("7 cm batons", 10, 15),
        ("batons 1cm by 8cm", 10, 10),
    ],
)
def test_the_length_of_a_stick_is_not_its_thickness(text: str, low: float, high: float) -> None:
    (found,) = measures().cuts.find(text)
    assert (found.cut.shape, found.cut.low_mm, found.cut.high_mm) == ("baton", low, high)
