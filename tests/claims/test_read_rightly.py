"""What a sentence says, and of what: each frame of ``frames/read_rightly.csv`` over foods, allergens and nutrients is
heard with its own subject and relation, or left alone; the everyday talk of ``frames/everyday.txt`` is none.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from pathlib import Path

from finding_kit import claims

from spoonproof.model.plural import singular

FRAMES = Path(__file__).parent / "frames"
ALLERGENS = (("egg", 0), ("almonds", 1), ("sesame", 0), ("soy", 0), ("hazelnuts", 1))
OTHERS = ("milk", "wheat", "cashews", "fish", "prawns")
DISHES = ("waffles", "meatballs", "curry", "scones", "flapjacks")
FOODS = (("peas", 1), ("broccoli", 0), ("cauliflower", 0), ("black beans", 1), ("tofu", 0))
MORE = ("turkey", "apricots", "millet", "yoghurt", "mushrooms")
NUTRIENTS = ("iron", "vitamin A", "magnesium", "fibre", "potassium")
AGES = ("six", "7", "eight", "9", "ten")
EVERY = 4
"""One in so many of all frames over all words, each in its turn."""


def filled(said: str, turn: int) -> str:
    """A frame with the words of its turn, and its verbs for one or for many."""
    (allergen, some), (food, many) = ALLERGENS[turn], FOODS[turn]
    several = some if "{a}" in said.lower() else many
    words = {"a": allergen, "b": OTHERS[turn], "d": DISHES[turn], "f": food, "g": MORE[turn], "n": NUTRIENTS[turn]}
    words |= {"k": AGES[turn], "m": NUTRIENTS[turn - 2]}
    agreed = re.sub(r"<([^/>]*)/([^>]*)>", lambda m: m.group(1 + several), said)
    for name, word in words.items():
        agreed = agreed.replace(f"{{{name}}}", word).replace(f"{{{name.upper()}}}", word[0].upper() + word[1:])
    return agreed


def frames(silent: bool) -> Iterator[tuple[dict[str, str], str]]:
    """Each frame in its turn with a sentence made of it."""
    turn = 0
    with (FRAMES / "read_rightly.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if (row["kind"] == "none") is not silent:
                continue
            for words in range(len(FOODS) if "{" in row["said"] else 1):
                turn += 1
                if turn % EVERY == 0:
                    yield {name: filled(text, words) for name, text in row.items()}, filled(row["said"], words)


def touch(said: str, wanted: str) -> bool:
    """Whether one word at least begins alike, or nothing is wanted."""
    heard, asked = ({singular(w)[:5] for w in re.findall(r"[a-z0-9]{3,}", text.lower())} for text in (said, wanted))
    return not asked or not heard.isdisjoint(asked)


def read(row: dict[str, str], text: str) -> bool:
    """Whether a claim of the kind is heard that is about the subject and the relation."""
    return any(
        claim.kind in row["kind"].split(";")
        and touch(" ".join(claim.subjects), row["subject"])
        and touch(claim.relates_to or "", row["relates_to"])
        for claim in claims(text)
    )


def test_each_frame_is_read_rightly() -> None:
    assert [text for row, text in frames(silent=False) if not read(row, text)] == []


def test_the_same_words_of_cooking_are_left_alone() -> None:
    assert [text for _, text in frames(silent=True) if claims(text)] == []


def test_everyday_talk_is_left_alone() -> None:
    lines = (FRAMES / "everyday.txt").read_text("utf-8").splitlines()
    assert [text for text in lines if claims(text)] == []
