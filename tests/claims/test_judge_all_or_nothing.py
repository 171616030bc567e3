"""All and nothing, a use allowed beside one that is not, dishes from an age on, and a "no" that is the point."""

from __future__ import annotations

import pytest
from test_judge_labelled import spoken

from tests.each import each

ALL_KEPT = (
    "Steaming keeps all of the vitamins in.",
    "Steaming locks in every one of the vitamins.",
    "Steaming retains every single one of the vitamins.",
    "Steaming retains 100% of vitamin C.",
    "Steaming preserves the whole lot of the folate.",
    "Microwaving keeps the full amount of vitamin C.",
)
NO_FALSE_PROMISE = (
    "Steaming keeps more of the vitamins than boiling.",
    "Steaming peas keeps most of the vitamin C.",
    "Steaming does not keep all of the vitamins.",
    "Steaming does not preserve all of the vitamin C.",
    "Blending keeps all of the fibre.",
)
SOUND = (
    "Cow's milk is fine to cook with but not as a drink until they are one.",
    "Cow's milk is okay in porridge but not as a drink before one.",
    "Whole milk is all right in pancakes but not as a drink until the first birthday.",
    "Cow's milk is good in porridge from six months but not as a drink before one.",
    "Turnip and apple mash for babies from seven months.",
    "Suitable for babies 6 months+",
    "Pumpkin soup is fine from eight months.",
    "The World Health Organization says six months.",
    "Calcium isn't spinach's strong point.",
    "Protein is not a carrot's strong suit.",
    "I skip the salt because kidneys can't cope with much of it.",
)
WRONG = (
    "Cow's milk is fine to cook with but not as a drink until nine months.",
    "Honey is fine to cook with but not as a drink until they are one.",
    "Turnip and honey mash for babies from seven months.",
    "Marshmallow pancakes for babies from seven months.",
    "Swordfish stew for babies from seven months.",
    "Turnip and apple mash for babies from four months.",
    "Rum and raisin porridge, suitable for babies 6 months+",
    "Salted porridge for babies from seven months.",
    "Iron isn't liver's strong point.",
    "Steamed parsnips lose nothing of their vitamin C.",
    "Salt is no problem, tiny kidneys can cope with plenty of it.",
)


def _kept(said: str) -> set[str]:
    return {one.advice for one in spoken(said)}


@each("said", ALL_KEPT)
def test_that_all_is_kept_is_overstated(said: str) -> None:
    assert "overstated" in {one.truth for one in spoken(said)}
    assert not _kept(said) & {"keep", "add"}


@pytest.mark.parametrize("said", NO_FALSE_PROMISE)
def test_that_more_is_kept_or_not_all_stands(said: str) -> None:
    assert _kept(said) and _kept(said) <= {"keep", "add"}


@each("said", SOUND)
def test_sound_guidance_stands(said: str) -> None:
    assert "keep" in _kept(said)
    assert not _kept(said) & {"cut-untrue", "soften"}


@each("said", WRONG)
def test_a_named_danger_is_judged_by_its_own_row(said: str) -> None:
    assert "keep" not in _kept(said)
