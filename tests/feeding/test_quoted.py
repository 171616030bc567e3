"""What is quoted of a danger that is told in a long breath of speech."""

from __future__ import annotations

import pytest

from spoonproof.feeding.quoted import clause_around, sentence_around

BREATH = (
    "today we have melon from the fridge which he chews while he's in his buggy and I make mint ice pops and then"
    " the twins get whole grapes because they love them right so next a spoon of honey goes into her oats okay"
)


def quote(said: str, words: str) -> str:
    at = said.index(words)
    return said[slice(*clause_around(said, (0, len(said)), (at, at + len(words))))]


@pytest.mark.parametrize(
    ("words", "quoted"),
    [
        ("melon", "today we have melon from the fridge"),
        ("mint ice pops", "I make mint ice pops"),
        ("grapes", "the twins get whole grapes"),
        ("honey", "next a spoon of honey goes into her oats"),
    ],
)
def test_a_long_breath_is_quoted_by_its_clause(words: str, quoted: str) -> None:
    assert quote(BREATH, words) == quoted


def test_the_verb_that_hands_it_over_is_kept() -> None:
    said = "so that was the morning and I always let her gnaw on a carrot and a stick of celery because it is cold"
    assert quote(said, "celery") == "I always let her gnaw on a carrot and a stick of celery"


def test_a_short_sentence_is_quoted_whole_and_no_quote_is_less_than_the_words() -> None:
    assert quote("She loves honey, and so do I.", "honey") == "She loves honey, and so do I."
    long = "we all know how it goes and the salt and pepper crisps are what she loves best while we watch a film"
    assert "salt and pepper crisps" in quote(long, "salt and pepper crisps")


def test_words_that_tell_of_a_danger_are_quoted_with_their_clause_unless_it_is_much_longer() -> None:
    said = "Okay, so the dal stays on the hob until tea time and then we all sit down to eat it."
    at = said.index("stays")
    assert said[slice(*sentence_around(said, (at, said.index(" time"))))] == "the dal stays on the hob until tea time"
    alone = "left out overnight"
    said = f"the pan that my grandmother brought from her village when she came here to live with us is {alone}"
    at = said.index(alone)
    assert said[slice(*sentence_around(said, (at, at + len(alone))))] == alone
