"""Where words on the screen stand: over the step that speaks of the same things."""

from __future__ import annotations

import pytest

from spoonproof.film.screen import spread, super_of

STEPS = ["Simmer the lentils until soft.", "Mix in the oats, the egg and the cumin.", "Flake the salmon with a fork."]


def test_what_finds_no_room_over_the_foods_stands_over_a_step() -> None:
    roles = ["foods", "step", "step"]
    words = ["You need oats.", "Stir the oats.", "Wilt the chard."]
    supers = [super_of("Contains gluten", "allergens", "foods"), super_of("Chard: once a day", "caution", "foods")]
    assert [len(each) for each in spread(roles, words, [4.0, 9.0, 9.0], supers)] == [1, 0, 1]
    assert [len(each) for each in spread(roles, words, [4.0, 9.0, 1.0], supers)] == [1, 1, 0]
    assert [len(each) for each in spread(roles, words, [4.0, 0.0, 0.0], supers)] == [2, 0, 0]


def test_cautions_do_not_pile_up_over_one_silent_picture() -> None:
    roles = ["foods", "step", "step"]
    supers = [super_of(text, "caution", "foods") for text in ("No whole nuts under five", "Ask a doctor before peanut")]
    placed = spread(roles, ["You need oats.", "Stir the oats.", "Serve."], [0.0, 3.5, 3.5], supers)
    assert [len(each) for each in placed] == [0, 1, 1]


def test_how_warm_it_is_stays_before_the_meal() -> None:
    warm = super_of("Stir it, test how warm it is", "caution", "tasting")
    placed = spread(["tasting", "cautions"], ["Some days a spoonful.", "It keeps."], [0.0, 2.0], [warm])
    assert [len(each) for each in placed] == [1, 0]


@pytest.mark.parametrize(
    ("text", "about", "step"),
    [
        ("Cook egg until it is solid", "Cook egg until white and yolk are solid.", 1),
        ("Feel for bones", "Feel through the salmon for bones.", 2),
    ],
)
def test_a_caution_about_a_step_stands_over_it(text: str, about: str, step: int) -> None:
    placed = spread(["step"] * 3, STEPS, [60.0] * 3, [super_of(text, "caution", "step", about=about)])
    assert [len(supers) for supers in placed] == [int(at == step) for at in range(3)]
