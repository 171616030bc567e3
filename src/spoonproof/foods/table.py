"""The food table: records by id, and the food that words name (never a guess: allergens hang on it)."""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import Any

from spoonproof.foods.compiled import VERSION, compile_foods, food_of
from spoonproof.foods.words import (
    A_THING,
    AFTER,
    BEFORE,
    CHANGES,
    DOUBTFUL,
    FINGERS,
    GROWN,
    IN_FINGERS,
    LEFT_OPEN,
    MADE_BY_MANY,
    NOT_AFTER,
    NOT_BEFORE,
    NOT_OF_FRUIT,
    ORIGINS,
    SAID_AFTER,
    SAYS_KIND,
    STOP,
    Token,
    key,
    tokens,
)
from spoonproof.model.food import Food, NameMatch
from spoonproof.model.numbers import Estimate, Per
from spoonproof.model.remembered import Remembered
from spoonproof.model.table import Row

# What a state word means where the table has several cooked records of one food: the first that exists.
_COOKED_FORMS = ("boiled", "baked", "steamed", "fried", "poached", "scrambled", "boiled-in-skin", "omelette")
_STATES = {"tinned": "canned", "raw": "raw", "fresh": "raw"}


class FoodTable:
    """All foods. Names are looked up by their plain words (``words.key``); the longest name wins."""

    def __init__(self, data: Mapping[str, Any]) -> None:
        """``data`` as ``compiled.compile_foods`` makes it. Raises ValueError for data of another version."""
        if data.get("version") != VERSION:
            raise ValueError("the compiled food table is of another version")
        self._data = data
        self._made: dict[str, Food] = {}
        self._found: Remembered[str, Sequence[NameMatch]] = Remembered()
        self._near: Remembered[str, Sequence[tuple[float, str]]] = Remembered()
        self.estimates: Remembered[tuple[str, str, Per], Estimate | None] = Remembered()
        """What ``KitchenNumbers`` was asked of foods by id, nutrient and basis."""
        self._as_written: Mapping[str, str] = data["as_written"]
        self._bought: Mapping[str, str] = data["bought"]
        self._records: Mapping[str, str] = data["records"]
        self._variants: Mapping[str, str] = data["variants"]

    @cached_property
    def _names(self) -> Mapping[str, str]:
        """The food of each name, had when the first name is looked for: what was read before names its foods by id."""
        return self._data["names"]  # type: ignore[no-any-return]

    @cached_property
    def _longest(self) -> Mapping[str, int]:
        return self._data["longest"]  # type: ignore[no-any-return]

    @classmethod
    def from_rows(
        cls, foods: Sequence[Row], values: Sequence[Row] = (), portions: Sequence[Row] = (), more: Sequence[Row] = ()
    ) -> FoodTable:
        """The table from the rows of foods.csv, food_values.csv, food_portions.csv and food_values_more.csv (figures
        of nutrients that a food's own record lacks, from another table: one a row, with its source).

        Raises ValueError with file and line when a cell is no number or a parent is no food of the table.
        """
        return cls(compile_foods(foods, values, portions, more))

    def __iter__(self) -> Iterator[Food]:
        return (self._food(food) for food in self._data["foods"])

    def __len__(self) -> int:
        return len(self._data["foods"])

    def __contains__(self, food: object) -> bool:
        return food in self._data["foods"]

    def _food(self, food: str) -> Food:
        made = self._made.get(food)
        if made is None:
            made = self._made[food] = food_of(self._data, food)
        return made

    def names(self) -> Iterator[tuple[str, str]]:
        """Every name with the id of the food it names, plain foods first; no name twice."""
        said: set[str] = set()
        for food in sorted(self, key=lambda food: bool(food.parent)):
            for name in (food.name, *food.names):
                words = " ".join(key(name))
                if not name.startswith("=") and words not in said and self._names.get(words) == food.id:
                    said.add(words)
                    yield name, food.id

    def get(self, food: str) -> Food | None:
        """The record of a food id, or of a published record number ("usda:11124")."""
        if food in self._data["foods"]:
            return self._food(food)
        by_record = self._records.get(food.lower())
        return self._food(by_record) if by_record is not None else None

    def variant(self, food: str, state: str) -> str:
        """The id of the same food in another state or form ("canned", "cooked", "boiled", "peeled"); the id
        itself when the table has none."""
        record = self.get(food)
        if record is None or not state:
            return food
        state = _STATES.get(state, state)
        if state == record.state and state != "raw":
            return food
        base = self._food(record.parent) if record.parent else record
        if base.state == state and state != "raw":
            return base.id
        if state == "raw":
            # A tin or a dried form is no raw food however fresh; a cooked or frozen record goes back to its plain one.
            return base.id if base.state == "raw" and record.state != "raw" else food
        forms = _COOKED_FORMS if state == "cooked" else (state,)
        found = (self._variants.get(f"{owner} {form}") for owner in (record.id, base.id) for form in forms)
        return next((variant for variant in found if variant is not None), food)

    def named(self, name: str) -> str | None:
        """The id of the food whose whole name ``name`` is, wherever it is said; names of a shopping list left out."""
        words = tokens(name)
        return self._named(name, words) if words else None

    def match(self, words: str) -> NameMatch | None:
        """The food that ``words`` name: the longest known name whose other words leave the food what it is."""
        record = self._records.get(words.strip().lower())
        if record is not None:
            start = len(words) - len(words.lstrip())
            return NameMatch(start, start + len(words.strip()), record)
        phrase = tokens(words)
        best: tuple[int, int, str] | None = None
        for begin, end, food in self._spans(words, phrase):
            start = begin - (begin > 0 and self._says_again(phrase[begin - 1].word, phrase[end - 1].word, food))
            # The longest name; among equals the first.
            if (best is None or end - start > best[1] - best[0]) and self._natural(words, phrase, start, end, food):
                best = (start, end, food)
        if best is None:
            return None
        start, end, food = best
        kind = self._says_kind(food)
        while end < len(phrase) and phrase[end].word in kind and _together(words, phrase[end - 1 : end + 1]):
            end += 1  # "mild cheddar cheese"
        return NameMatch(phrase[start].start, phrase[end - 1].end, food)

    def _says_again(self, before: str, last: str, food: str) -> bool:
        """Whether the word before a name is part of another of its names: "white basmati rice", which is white rice,
        or says of what grows that it tastes as it should: "sweet eating apples"."""
        if before == "sweet" and self._data["foods"][food].get("group") in GROWN:
            return True
        return self._names.get(f"{before} {last}") == food

    def _says_kind(self, food: str) -> frozenset[str]:
        return SAYS_KIND.get(self._data["foods"][food].get("group", ""), SAID_AFTER)

    def _spans(self, text: str, phrase: Sequence[Token]) -> Iterator[tuple[int, int, str]]:
        for start in range(len(phrase)):
            for length in range(min(self._longest.get(phrase[start].word, 0), len(phrase) - start), 0, -1):
                words = phrase[start : start + length]
                food = self._named(text, words) or self._named_on_a_line(text, words)
                if food is not None:
                    yield start, start + length, food

    def _named(self, text: str, words: Sequence[Token]) -> str | None:
        if len(words) == 1:
            exact = self._as_written.get(text[words[0].start : words[0].end].lower())
            if exact is not None:
                return exact
        food = self._names.get(" ".join(token.word for token in words))
        return food if food is not None and _together(text, words) else None

    def _named_on_a_line(self, text: str, words: Sequence[Token]) -> str | None:
        food = self._bought.get(" ".join(token.word for token in words))
        return food if food is not None and _together(text, words) else None

    def _natural(self, text: str, phrase: Sequence[Token], start: int, end: int, food: str) -> bool:
        """Whether the words around a name leave it that food: quality and cutting before it, parts after it."""
        cells = self._data["foods"][food]
        before_it = BEFORE | ORIGINS if cells.get("group") in GROWN and cells.get("state") != "prepared" else BEFORE
        whose = cells.get("group") in MADE_BY_MANY and text[phrase[start].start].islower()
        if any(
            (
                token.word not in before_it
                and token.word[-1] != "%"
                and not _joins(phrase, at, ORIGINS & before_it)
                and not (whose and self._says_whose(text, token, at))
            )
            or token.word in CHANGES
            for at, token in enumerate(phrase[:start])
        ):
            return False
        kind = self._says_kind(food) | (FINGERS if cells.get("group") in IN_FINGERS else frozenset())
        for at, (before, token) in enumerate(zip(phrase[end - 1 :], phrase[end:], strict=False), end):
            if token.word == "of":
                return at + 1 < len(phrase) and phrase[at + 1].word in LEFT_OPEN
            if token.word in STOP or any(mark in ",;(:" for mark in text[before.end : token.start]):
                return True
            if "/" in text[before.end : token.start] and " " in text[before.end : token.start]:
                return True  # "4 small bananas / 1 large one", "hing/ asafoetida"
            if token.word in NOT_OF_FRUIT and cells.get("group") == "fruit":
                return False
            if token.word not in AFTER and token.word not in kind and token.word[-1] != "%":
                return False
        return True

    def _says_whose(self, text: str, token: Token, at: int) -> bool:
        """Whether a word before a food's name is a maker, a place or an owner, and no food itself: "Heinz ketchup",
        "from my uncle's hives"."""
        word = text[token.start : token.end]
        named = word[0].isupper() or word.endswith(("'s", "’s")) or (at == 0 and token.word == "from")
        return named and token.word not in self._names

    def find(self, text: str) -> Sequence[NameMatch]:
        """Every food name in running text, left to right, longest first, not overlapping. Words that are often
        no food ("squash between finger and thumb", "to date") count only where their neighbours allow it."""
        known = self._found.get(text)
        return known if known is not None else self._found.keep(text, self._look_for(text))

    def _look_for(self, text: str) -> Sequence[NameMatch]:
        words = tokens(text)
        found: list[NameMatch] = []
        at = 0
        while at < len(words):
            longest = min(self._longest.get(words[at].word, 0), len(words) - at)
            for length in range(longest, 0, -1):
                food = self._named(text, words[at : at + length])
                if food is not None and _is_food(words, at, length):
                    found.append(NameMatch(words[at].start, words[at + length - 1].end, food))
                    at += length - 1
                    break
            at += 1
        return found

    def nearest(self, words: str, most: int = 3) -> Sequence[str]:
        """Names that ``words`` may have meant, best first; none when nothing is near."""
        asked = " ".join(key(words))
        near = self._near.get(asked)
        if near is None:
            near = self._near.keep(asked, self._like(asked) if asked else ())
        # Beside a clear slip of the pen ("parsnpi") what is only faintly like it would be a strange thing to ask about.
        return tuple(name for score, name in near[:most] if score <= near[0][0] + 0.12 or near[0][0] > -0.85)

    def _like(self, asked: str) -> Sequence[tuple[float, str]]:
        """Foods by how like ``asked`` a name of theirs is, the likest first, with how unlike it is."""
        from difflib import SequenceMatcher

        parts, letters = set(asked.split()), tuple(Counter(asked).items())
        scores: dict[str, float] = {}
        matcher = SequenceMatcher(autojunk=False)
        matcher.set_seq2(asked)
        for name, food in self._names.items():
            shared = 0.3 * len(parts.intersection(name.split()))
            if not shared and abs(len(name) - len(asked)) > 4:
                continue
            best = max(scores.get(food, 0.0), 0.65)
            if 2 * _in_common(letters, name) / (len(name) + len(asked)) + shared < best:
                continue  # no ratio is higher than that of the letters in common
            matcher.set_seq1(name)
            score = matcher.ratio() + shared
            if score >= best:
                scores[food] = score
        return sorted((-score, self._food(food).name) for food, score in scores.items() if not self._is_cooked(food))

    def _is_cooked(self, food: str) -> bool:
        cells = self._data["foods"][food]
        return bool(cells.get("parent")) and cells.get("state") == "cooked"


def _in_common(letters: Sequence[tuple[str, int]], name: str) -> int:
    """How many of ``letters``, each with how often, a name has too."""
    found = 0
    for letter, times in letters:
        there = name.count(letter)
        found += there if there < times else times
    return found


def _joins(phrase: Sequence[Token], at: int, words: frozenset[str]) -> bool:
    """Whether an "and" stands between two of ``words``: "red and yellow tomatoes"."""
    inside = phrase[at].word == "and" and 0 < at < len(phrase) - 1
    return inside and phrase[at - 1].word in words and phrase[at + 1].word in words


def _together(text: str, words: Sequence[Token]) -> bool:
    """Whether only spaces and hyphens stand between the words of a name."""
    return all(not text[a.end : b.start].strip(" \t\r\n-‑–'’‘“”\"") for a, b in itertools.pairwise(words))


def _is_food(words: Sequence[Token], at: int, length: int) -> bool:
    if length > 1 or words[at].word not in DOUBTFUL:
        return True
    before = words[at - 1].word if at else ""
    after = words[at + 1].word if at + 1 < len(words) else ""
    return before in A_THING or (before not in NOT_AFTER and after not in NOT_BEFORE)
