"""What is kept of food lines and steps changes nothing: each state of a text is read as if it were the first."""

from __future__ import annotations

import random
from typing import Any

import pytest

from spoonproof.model.text import Document
from spoonproof.reading import step as steps
from spoonproof.reading.instruction import StepReader
from spoonproof.reading.kept import CARRIED, Kept
from spoonproof.reading.recipe import Reading, read_whole
from tests.each import each
from tests.kitchen import knowledge

HEAD = """---
title: Lentil bowl with two oils
ages: 9-12 months
foods:
  - 200 g split red lentils
  - "2 medium pears, peeled"
  - 2 tsp rapeseed oil
  - 1 tbsp olive oil
  - 60 g frozen peas
  - food: 20 g butter
  - 10 g quoxel
  - 5 skewers
steps:
  - Rinse the lentils and simmer them in 400 ml water for 20 minutes.
  - Add the oil, the pears and the peas, and cook for 5 minutes more.
  - 'Heat the oven to 180 °C (400 °F), and don''t salt it; add honey and cinnamon.'
  - >
    Stir in the butter, the honey
    and a pinch of salt.
  - Lift out the baby's portion.
  - do: Mash it with the olive oil.
    minutes: 2
  - Press a piece between finger and thumb, until it squashes.
  - Add salt and honey to the rest, and cut it into 2 cm strips.
  - Serve.
makes: 4 x 90 g
---
A bowl.
"""
BITS = (
    "honey |a pinch of salt |  - Stir in the oil.\n|  - Lift out the baby's portion.\n|everything |1|, peeled|"
    "  - 1 egg\n|'|\"|\n|\n    |\\|for 5 minutes |é|it |oil |Add the quoxel. |  - do: Add the peas.\n    bowl: baby\n"
    "|x|: |the 2 tsp |until soft |, covered|\u2028|-|salt the rest; "
).split("|")


def read(text: str, kept: Kept | None = None, document: Document | None = None) -> Reading:
    known = knowledge()
    given = document or Document("recipes/bowl.md", text)
    return read_whole(given, known.foods, known.verbs, known.measures("UK"), kept)


def edited(text: str, chance: random.Random) -> str:
    at = chance.randint(0, len(text)) if chance.random() < 0.2 else chance.randint(HEAD.index("  - 200"), len(text))
    if chance.random() < 0.65:
        bit = chance.choice(BITS)
        if bit.startswith("  - "):
            at = text.find("\n", at) + 1
        return text[:at] + bit + text[at:]
    return text[:at] + text[at + chance.randint(1, 12) :]


@each("seed", range(8))
def test_read_with_what_was_kept_is_as_read_afresh(seed: int) -> None:
    chance, kept, text = random.Random(seed), Kept(), HEAD
    for number in range(14):
        document = Document("recipes/bowl.md", text)
        assert read(text, kept, document) == read(text, None, document), text
        text = HEAD if number % 7 == 6 else edited(text, chance)


def counted(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """The numbers of the steps that are read, as they are read."""
    numbers: list[int] = []
    whole = steps._read

    def noted(reader: Any, index: int, scalar: Any) -> Any:
        numbers.append(index)
        return whole(reader, index, scalar)

    monkeypatch.setattr(steps, "_read", noted)
    return numbers


def test_only_the_step_that_changed_is_read_again(monkeypatch: pytest.MonkeyPatch) -> None:
    numbers, kept = counted(monkeypatch), Kept()
    read(HEAD, kept)
    assert numbers == list(range(9))
    numbers.clear()
    read(HEAD.replace("more.", "more, now and then."), kept)
    assert numbers == [1]


def test_what_rests_on_a_changed_step_is_read_again(monkeypatch: pytest.MonkeyPatch) -> None:
    numbers, kept = counted(monkeypatch), Kept()
    read(HEAD, kept)
    numbers.clear()
    read(HEAD.replace("Lift out the baby's portion.", "Stir."), kept)
    assert {4, 7} <= set(numbers) and not {0, 1, 2, 3} & set(numbers)
    numbers.clear()
    read(HEAD.replace("200 g split", "210 g split").replace("portion.", "portion:"), kept)
    assert {0, 1, 2, 3} <= set(numbers)


def test_a_hint_that_ran_out_is_not_given_from_what_was_kept() -> None:
    unknown = "".join(f"  - {n} g parsnipp{'abcdefghijklmnopqrstuvwxyz'[n]}s\n" for n in range(1, 26))
    kept = Kept()
    for text in (HEAD.replace("  - 10 g quoxel\n", unknown), HEAD.replace("  - 200", unknown + "  - 200")):
        document = Document("recipes/bowl.md", text)
        assert read(text, kept, document) == read(text, None, document)


def test_nothing_else_is_carried_from_step_to_step() -> None:
    fields = set(StepReader.__dataclass_fields__)
    assert fields == {"document", "lines", "tables", "names", "title", *CARRIED, "findings"}
