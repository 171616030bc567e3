"""The baby's share taken without being lifted out in so many words, and what is the grown-ups' from there on."""

from __future__ import annotations

import pytest

from tests.reading.readings import read_method

FOODS = ("300 g pasta", "200 g passata", "1 tsp capers, for the grown-ups", "1 tin sardines", "20 g parmesan")
COOK = "Boil the pasta for 12 minutes."


def bowls(*steps: str) -> list[str | None]:
    """The bowl of each action of the last step."""
    return [action.bowl for action in read_method(FOODS, steps)[0][-1].actions]


@pytest.mark.parametrize(
    "share",
    [
        "Mash some of it with the passata for the baby.",
        "Chop two spoonfuls for the baby.",
        "Give the baby a few pieces.",
    ],
)
def test_what_is_the_grown_ups_goes_into_their_bowl_behind_it(share: str) -> None:
    assert bowls(COOK, share, "Stir in the capers.") == ["family"]
    assert bowls(COOK, share, "Stir the parmesan into the remainder.") == ["family"]


@pytest.mark.parametrize(
    "before",
    [
        (COOK,),
        ("Mash some of the sardines for the baby.",),  # nothing is cooked yet
        (COOK, "Mash the sardines for the baby."),  # all of them, and no share
        (COOK, "Salt some of it before the baby wakes."),
    ],
)
def test_without_a_share_out_of_the_pot_it_is_the_babys_too(before: tuple[str, ...]) -> None:
    assert bowls(*before, "Stir in the capers.") == [None]


def test_a_later_lifting_out_counts_alone() -> None:
    share = "Mash some of it for the baby to try."
    steps = read_method(FOODS, (COOK, share, "Stir in the capers.", "Lift out the baby's portion."))[0]
    assert [action.bowl for action in steps[2].actions] == [None]


def test_the_rest_of_a_food_tells_no_bowl() -> None:
    assert bowls(COOK, "Mash some of it for the baby.", "Stir in the rest of the parmesan.") == [None]
