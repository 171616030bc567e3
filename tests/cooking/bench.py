"""A small bench for the cooking tests: the project's own tables, foods made by hand, recipes from plain sentences.

The reading of sentences here is deliberately small (verbs by the verb table, foods by name, "N minutes"): these tests
are about what the kitchen makes of a recipe once read.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import cast

from spoonproof.cooking.softness import CookTimes
from spoonproof.cooking.treatment import treat
from spoonproof.cooking.verbs import VerbTable
from spoonproof.model.finding import Bowl
from spoonproof.model.food import Food, Hardness, NameMatch
from spoonproof.model.recipe import Action, AgeRange, Cut, CutShape, FoodLine, Minutes, Recipe, Step
from spoonproof.model.table import Row
from spoonproof.model.text import NOWHERE, Document, Span, Spanned
from spoonproof.model.treatment import Treatment

SHARED = Path(__file__).resolve().parents[2] / "shared"
HARDNESS: dict[str, Hardness] = {
    "parsnip": "hard", "carrot": "hard", "potato": "hard", "swede": "hard", "beetroot": "hard", "sweet potato": "hard",
    "pear": "firm", "apple": "hard", "courgette": "firm", "broccoli": "firm", "leek": "firm", "onion": "firm",
    "spinach": "leaf", "pea": "firm", "banana": "soft", "avocado": "soft", "red lentils": "grain",
    "white rice": "grain",
    "porridge oats": "grain", "oil": "liquid", "water": "liquid", "stock": "liquid", "milk": "liquid",
    "cumin": "powder", "cinnamon": "powder", "yoghurt": "paste", "bay leaf": "leaf", "durian": "firm",
    "raspberry": "soft",
}  # fmt: skip


def rows(table: str) -> list[Row]:
    """The rows of one of the project's tables."""
    with (SHARED / f"{table}.csv").open(newline="", encoding="utf-8") as file:
        reader = csv.DictReader(file)
        return [
            Row({key: (cell or "").strip() for key, cell in cells.items()}, f"{table}.csv", reader.line_num)
            for cells in reader
        ]


@lru_cache(maxsize=1)
def verbs() -> VerbTable:
    return VerbTable.from_rows(rows("verbs"))


@lru_cache(maxsize=1)
def times() -> CookTimes:
    return CookTimes.from_rows(rows("cook_times"))


class Larder:
    """Foods by id: all that the kitchen asks for. What it reads out of words, the reading room answers."""

    def get(self, food: str) -> Food | None:
        name = food.replace("-", " ")
        if name not in HARDNESS:
            return None
        group = "oil" if name == "oil" else "vegetable"
        return Food(food, "", name, (name,), group, hardness=HARDNESS[name], softens_as=food)

    def variant(self, food: str, state: str) -> str:  # noqa: ARG002 (no food here has another state)
        return food

    def match(self, words: str) -> NameMatch | None:
        raise NotImplementedError

    def find(self, text: str) -> Sequence[NameMatch]:
        raise NotImplementedError

    def nearest(self, words: str, most: int = 3) -> Sequence[str]:
        raise NotImplementedError


def food_line(text: str, state: str = "") -> FoodLine:
    """ "parsnip, 10 mm dice" as a food line."""
    name, _, cut = text.partition(", ")
    cuts: tuple[Cut, ...] = ()
    if cut:
        match = re.fullmatch(r"(?:(\d+) mm )?(\w+)", cut)
        assert match, cut
        size = float(match[1]) if match[1] else None
        shape = cast(CutShape, match[2])
        cuts = (Cut(shape, NOWHERE, size, size),)
    return FoodLine(text, NOWHERE, name, NOWHERE, food=name.replace(" ", "-"), cuts=cuts, state=state)


def recipe(foods: list[str], steps: list[str], age: int = 7) -> Recipe:
    """A recipe of these food lines and sentences; "[family]" and "[baby]" before a sentence say whose bowl."""
    lines = tuple(food_line(text) for text in foods)
    text, built = "", []
    for index, sentence in enumerate(steps):
        whose = re.match(r"\[(\w+)\] ", sentence)
        bowl = cast(Bowl, whose[1]) if whose else None
        sentence = re.sub(r"^\[\w+\] ", "", sentence)
        start = len(text)
        text += sentence + "\n"
        built.append(_step(index, sentence, start, lines, bowl))
    document = Document("bowl.md", text)
    return Recipe(document, "bowl", Spanned("Bowl", NOWHERE), AgeRange(age, None, NOWHERE), lines, tuple(built))


def treated(foods: list[str], steps: list[str]) -> tuple[Treatment, ...]:
    """What the kitchen makes of these foods and sentences."""
    return treat(recipe(foods, steps), Larder(), verbs(), times())


def _step(index: int, sentence: str, start: int, lines: tuple[FoodLine, ...], bowl: Bowl | None) -> Step:
    found = verbs().find(sentence)
    actions = []
    for at, match in enumerate(found):
        end = found[at + 1].start if at + 1 < len(found) else len(sentence)
        clause = sentence[match.end if at else 0 : end]
        stated = re.search(r"(\d+)(?:-(\d+))? (minutes|hours)( more)?", clause)
        minutes = None
        if stated:
            unit = 60 if stated[3] == "hours" else 1
            minutes = Minutes(float(stated[1]) * unit, float(stated[2] or stated[1]) * unit)
        named = {m.start(): i for i, line in enumerate(lines) for m in re.finditer(rf"\b{line.name}", clause)}
        actions.append(
            Action(
                verb=match.verb,
                span=Span(start + match.start, start + match.end),
                foods=tuple(dict.fromkeys(named[key] for key in sorted(named))),
                everything="everything" in clause,
                time=minutes,
                more=bool(stated and stated[4]),
                soft_test="squashes" in clause,
                with_liquid="water" in clause,
            )
        )
    lifted = next((m.start for m in found if m.verb == "lift-out" and "baby's portion" in sentence), None)
    return Step(index, sentence, Span(start, start + len(sentence)), tuple(actions), bowl, lifted)
