"""Phrases found as whole words."""

from __future__ import annotations

from spoonproof.claims.words import has_any, has_word, plain
from tests.each import each

PHRASES = ("no need to", "without", "keep* away", "harm*", "baby's first", "5 %", "n't", "n't wait", "")


@each(
    "text",
    [
        "There's no need to wait.", "There is no need.", "Done without salt", "It goes without-saying", "Keeps away",
        "keep it away", "harmless", "unharmed", "Baby’s first spoon", "a baby's second", "about 5%", "No. Need to go",
        "", "without", "You needn't wait.", "Wait, don't.",
    ],
)  # fmt: skip
def test_any_of_the_phrases_is_one_of_them(text: str) -> None:
    words = plain(text)
    for phrases in (PHRASES[:-1], *((phrase,) for phrase in PHRASES), ()):
        assert has_any(words, phrases) == any(has_word(words, phrase) for phrase in phrases)
