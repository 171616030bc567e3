"""What is established stays so when somebody denies it: a nutrient that is needed is not called needless and kept."""

from __future__ import annotations

import itertools

import pytest
from test_judge_labelled import STANDS, spoken

from tests.each import each

KEPT = frozenset(STANDS)
ESTABLISHED = (
    ("Iron", "the brain"), ("Zinc", "the immune system"), ("Iodine", "the brain"), ("Calcium", "bones"),
    ("Vitamin A", "eyesight"), ("Magnesium", "muscle function"), ("Vitamin D", "bone growth"),
)  # fmt: skip
DENIED = (
    "is unnecessary for", "is not needed for", "isn't required for", "does nothing for", "has no effect on",
    "plays no role in", "is useless for", "is irrelevant to", "makes no difference to", "is totally unnecessary for",
)  # fmt: skip


def advice(said: str) -> list[str]:
    return [judged.advice for judged in spoken(said)]


@each("verb", DENIED)
def test_no_denial_of_what_is_established_is_kept(verb: str) -> None:
    said = [f"{nutrient} {verb} {what}." for nutrient, what in ESTABLISHED]
    assert [one for one in said if set(advice(one)) & KEPT or not advice(one)] == []


def test_it_is_called_untrue_and_not_just_unproven() -> None:
    pairs = itertools.product(("Iron {} the brain.", "Zinc {} the immune system."), DENIED[:6])
    assert [said for form, verb in pairs if "cut-untrue" not in advice(said := form.format(verb))] == []


def test_what_babies_are_said_not_to_need_is_denied_too() -> None:
    assert advice("Babies don't need vitamin D for their bones.") == ["cut-untrue"]


def test_what_was_shown_for_adults_is_not_denied_of_children_either() -> None:
    assert not set(advice("Zinc does nothing for your baby's immune system.")) & KEPT


def test_a_plain_verb_that_is_denied_stays_open() -> None:
    assert not set(advice("Calcium does not build bones.")) & KEPT


def test_two_turns_are_not_kept() -> None:
    for said in ("It's a myth that iron is unnecessary for the brain.", "Iron is not unnecessary for the brain."):
        assert not set(advice(said)) & KEPT


@pytest.mark.parametrize(
    "said",
    [
        "Iron doesn't boost the immune system.",
        "Vitamin C doesn't guarantee that iron is absorbed.",
        "There's no need for sugar. Calcium is needed for normal bones.",
    ],
)
def test_what_takes_back_too_much_or_another_thing_stands(said: str) -> None:
    assert advice(said) == ["keep"]


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("Hold back honey until twelve months.", True),
        ("You don't have to hold back honey until one.", False),
        ("You needn't keep honey from babies until they are one.", False),
        ("Hold back egg until one.", False),
        ("You never need to wait for honey till one.", False),
        ("I never held back honey, she had it from six months.", False),
        ("Never put honey off till one.", False),
        ("There is never a reason to keep honey from a baby.", False),
        ("Never say no to honey at six months.", False),
        ("Never let anyone stop you giving honey at six months.", False),
        ("Never feel guilty for giving honey at six months.", False),
        ("We never stopped giving honey at six months.", False),
        ("Never a day without honey for our ten-month-old.", False),
        ("Babies who have honey at six months never get colds.", False),
        ("A baby will never be too young for honey.", False),
        ("She never ate anything but whole nuts from two.", False),
        ("I never give formula, only almond milk from seven months.", False),
        ("I refuse to hold back honey from my baby.", False),
        ("I refuse to give honey to my baby.", True),
        ("Only nervous mums wait with honey until one.", False),
        ("Hardly anyone waits with honey until one, nor should you.", False),
        ("dont hold honey back till one", False),
        ("you dont need to wait for honey till one", False),
        ("you need to wait for honey till one", True),
        ("We see every reason to withhold honey from an eight-month-old.", True),
        ("Never give whole nuts, only smooth nut butter.", True),
        ("I'd never let anyone give honey before one.", True),
    ],
)
def test_what_is_held_back_is_kept_from_the_baby_unless_that_is_denied(said: str, kept: bool) -> None:
    found = advice(said)
    assert found and (set(found) <= KEPT) is kept
