"""A true statement within words that don't vouch for it, or that call it untrue, is never kept."""

from __future__ import annotations

import pytest
from test_judge_labelled import spoken

TRUE = (
    "honey can carry the spores of infant botulism",
    "whole grapes are a choking hazard",
    "vitamin C helps the body take up iron from lentils",
    "babies should not be given salt",
    "most babies are ready for solids at around six months",
    "raw milk can carry harmful germs",
    "popcorn is a choking hazard for under-fives",
    "peanut butter can be given from six months",
    "no food has been shown to cure a cold",
    "sugar is bad for teeth",
    "swordfish is high in mercury",
    "a baby's kidneys can't deal with much salt",
)
HEADS = (
    "Science has overturned the idea that {}.",
    "Only fools believe that {}.",
    "The clinic has dropped its line that {}.",
    "Researchers threw out the theory that {}.",
    "Grandma was ridiculed for saying that {}.",
    "It's time to retire the advice that {}.",
    "No serious doctor would tell you that {}.",
    "It was once thought that {}.",
    "The leaflet used to say that {}.",
    "Several studies dispute that {}.",
    "You may have read that {}.",
    "Doctors no longer say {}.",
    "The clinic has stopped warning parents that {}.",
)
TAILS = (
    "{}, as people wrongly believe.",
    "{}, which has been disproved.",
    "{}, but that is out of date.",
    "{}, which experts now reject.",
    "{} - a tale for the credulous.",
    "{}, a view nobody holds today.",
    "{}, forget it.",
)
VOUCHED = (
    "The NHS says that {}.",
    "Nobody denies that {}.",
    "It's true that {}.",
    "Remember that {}.",
    "My health visitor told me that {}.",
    "Studies show that {}.",
    "It's a well-known fact that {}.",
    "{}, as the NHS says.",
    "{}, which is why we wait.",
)
NOT_KEPT_ALONE = {"no food has been shown to cure a cold"}
"""A frame that takes it back may leave the illness denied: what is kept then is that nothing cures it."""


def _said(frame: str, true: str) -> str:
    said = frame.format(true)
    return said[0].upper() + said[1:]


@pytest.mark.parametrize("frame", [*HEADS, *TAILS])
def test_what_nobody_vouches_for_is_never_kept(frame: str) -> None:
    kept = [
        said
        for said in (_said(frame, true) for true in TRUE if true not in NOT_KEPT_ALONE)
        if any(one.advice == "keep" for one in spoken(said))
    ]
    assert not kept


@pytest.mark.parametrize("frame", ["{}.", *VOUCHED])
def test_what_is_vouched_for_stays(frame: str) -> None:
    refused = [
        said for said in (_said(frame, true) for true in TRUE) if not any(one.advice == "keep" for one in spoken(said))
    ]
    assert not refused
