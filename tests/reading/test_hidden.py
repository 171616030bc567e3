"""What a sentence forbids or only likens to is none of what goes into the pot."""

from __future__ import annotations

import pytest

from spoonproof.reading.hidden import hidden_parts


def hidden(text: str, word: str, ends: tuple[int, ...] = ()) -> bool:
    at = text.index(word)
    return any(start <= at < end for start, end in hidden_parts(text, ends))


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("Simmer the swede without salt.", "salt"),
        ("Do not add salt, honey or stock.", "honey"),
        ("Roll it into balls the size of a walnut and bake.", "walnut"),
        ("Cook it until it is thick as jam.", "jam"),
        ("Whisk it to a smooth paste.", "paste"),
    ],
)
def test_what_is_forbidden_or_likened_is_hidden(text: str, word: str) -> None:
    assert hidden(text, word)


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("Do not forget the salt.", "salt"),
        ("Don't peel it, but stir in the butter.", "butter"),
        ("Roll it into balls the size of a walnut, then add the oil.", "oil"),
    ],
)
def test_what_goes_in_all_the_same_is_not(text: str, word: str) -> None:
    assert not hidden(text, word)


def test_a_no_reaches_no_further_than_the_next_instruction() -> None:
    text = "Never stir it add the milk"
    assert hidden(text, "milk") and not hidden(text, "milk", (text.index("add"),))
