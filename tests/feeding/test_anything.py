"""Whatever a person writes, the feeding room answers and never raises; the same text gives the same answer."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from spoonproof.dish import Dish
from spoonproof.feeding.contradictions import contradictions
from spoonproof.feeding.pictures import picture_hazards
from spoonproof.feeding.words import words
from tests import kitchen

WORDS = st.sampled_from(
    """honey salt grapes whole raw quartered lengthways no without 2 cm dice blend until smooth lift out the baby's
    portion family before season to taste nuts ½ é 🍇 peel , . ( ) : - egg runny of or and""".split()
)
LINES = st.lists(WORDS, min_size=1, max_size=9).map(" ".join)


def everything(text: str) -> tuple[object, ...]:
    recipe, _ = kitchen.read(text)
    if recipe is None:
        return ()
    dish = Dish(recipe, kitchen.channel(), kitchen.knowledge())
    known = dish.knowledge.feeding
    return (
        dish.hazards,
        dish.texture,
        dish.allergens,
        dish.cautions,
        dish.keeping,
        [(p.id, p.span) for p in picture_hazards(recipe, known)],
        [(c.caution, c.span) for c in contradictions(recipe.passages, known)],
    )


@settings(max_examples=40, deadline=None)
@given(st.lists(LINES, min_size=1, max_size=4), st.lists(LINES, min_size=1, max_size=4), st.integers(0, 40))
def test_any_words_are_answered_and_twice_alike(foods: list[str], steps: list[str], age: int) -> None:
    quoted = [line.replace("'", "''") for line in foods], [line.replace("'", "''") for line in steps]
    text = f"ages: {age}-{age + 3} months\nfoods:\n" + "".join(f"  - '{line}'\n" for line in quoted[0])
    text += "steps:\n" + "".join(f"  - '{line}'\n" for line in quoted[1])
    assert everything(text) == everything(text)


@given(st.text(max_size=200))
def test_words_stand_where_they_say(text: str) -> None:
    for word in words(text):
        assert text[word.start : word.end].lower() == word.plain


def test_long_lines_stay_linear() -> None:
    from time import process_time

    known = kitchen.knowledge().feeding

    def seconds(times: int) -> float:
        text = "no honey, salt free grapes and nuts " * times
        start = process_time()
        known.phrases.find(text)
        return process_time() - start

    seconds(50)
    small, large = max(seconds(200), 1e-3), seconds(1600)
    assert large < small * 8 * 4
