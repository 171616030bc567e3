"""Advice that endangers is heard however it is worded, and none of it is kept; what protects is."""

from __future__ import annotations

import pytest

from spoonproof.claims.find import find_claims
from spoonproof.model.claim import JudgedClaim
from spoonproof.model.text import Document, Passage, Piece
from tests.each import each
from tests.kitchen import knowledge


def _heard(text: str) -> list[JudgedClaim]:
    known = knowledge()
    passage = Passage(text, Document("said", text), (Piece(0, 0, len(text)),))
    judge = known.judge_without_dish(None, (), None)
    return [judge(claim) for claim in find_claims([passage], known.lexicon)]


@each(
    "text",
    [
        "A drop of honey is fine once it has boiled.",
        "they say no honey in the first year but a little baked in is fine",
        "just drizzle on some honey if your toddler won't eat it",
        "a lick of honey on the dummy",
        "A pinch of salt won't hurt your baby.",
        "a runny yolk is perfectly safe",
        "You don't need to quarter the grapes.",
        "no need to cut the blueberries for her",
        "whole grapes are a lovely finger food",
        "let your baby nibble a breadstick in the car seat",
        "My twins had popcorn and nothing happened.",
        "babies can drink watered-down juice",
    ],
)
def test_advice_that_endangers_is_heard_and_not_kept(text: str) -> None:
    advices = [judged.advice for judged in _heard(text)]
    assert advices
    assert "keep" not in advices


@each(
    "text",
    [
        "You don't have to peel the carrots.",
        "The recipe is fine without nutmeg, and nobody will notice.",
        "A pinch of cumin is plenty.",
        "Drizzle the oil over the squash and roast it.",
        "Leave the lid ajar and let it cool.",
        "You don't need to soak red lentils.",
        "Put the bowl on the counter and stir in the oats.",
        "a bit of patience won't hurt",
    ],
)
def test_ordinary_kitchen_talk_is_left_alone(text: str) -> None:
    assert _heard(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "Never put honey on a dummy.",
        "No honey before one, but after that it is fine.",
        "Don't let your child eat while running about.",
        "Always cut grapes lengthways into quarters.",
    ],
)
def test_what_protects_is_kept(text: str) -> None:
    advices = {judged.advice for judged in _heard(text)}
    assert advices == {"keep"}
