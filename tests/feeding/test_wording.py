"""Foods and their problems as sentences that read well."""

import pytest

from spoonproof.feeding.wording import is_plural, sentence
from tests.each import each


@each(
    ("name", "problem", "said"),
    [
        ("grapes", "is round", "Grapes are round."),
        ("tahini", "is sticky", "Tahini is sticky."),
        ("hummus", "has salt", "Hummus has salt."),
        ("cherries in juice", "has a stone", "Cherries in juice have a stone."),
        ("crisps", "breaks into pieces", "Crisps break into pieces."),
        ("marshmallows", "swells and may stick", "Marshmallows swell and may stick."),
        ("plums", "may have a stone in it", "Plums may have a stone in it."),
        ("honey", "can carry spores", "Honey can carry spores."),
    ],
)
def test_a_sentence_agrees_with_its_food(name: str, problem: str, said: str) -> None:
    assert sentence(name, problem) == said


def test_an_aside_stands_between_commas() -> None:
    assert sentence("salt", "is much", "named in this step") == "Salt, named in this step, is much."


@pytest.mark.parametrize("name", ["couscous", "asparagus", "watercress", "swiss cheese", "spoonful of peas"])
def test_what_only_looks_plural(name: str) -> None:
    assert not is_plural(name)
