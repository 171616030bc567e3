"""The food table: records by id, and the food that words name (never a guess: allergens hang on it)."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping, Sequence
from difflib import SequenceMatcher

from spoonproof.foods.values import Values
from spoonproof.foods.words import (
    A_THING,
    AFTER,
    BEFORE,
    CHANGES,
    DOUBTFUL,
    NOT_AFTER,
    NOT_BEFORE,
    STOP,
    Token,
    key,
    tokens,
)
from spoonproof.model.food import Food, Hardness, NameMatch, NutrientValue, Portion
from spoonproof.model.table import Row

# What a state word means where the table has several cooked records of one food: the first that exists.
_COOKED_FORMS = ("boiled", "baked", "steamed", "fried", "poached", "scrambled", "boiled-in-skin", "omelette")
_STATES = {"tinned": "canned", "raw": "raw", "fresh": "raw"}


class FoodTable:
    """All foods. Names are looked up by their plain words (``words.key``); the longest name wins."""

    def __init__(self, foods: Iterable[Food], forms: Mapping[str, str] | None = None) -> None:
        """``forms``: for the ids that are a form of another food, the form's word ("boiled", "peeled")."""
        self._foods = {food.id: food for food in foods}
        self._forms = dict(forms or {})
        self._names: dict[tuple[str, ...], str] = {}
        self._first: dict[str, int] = {}
        self._records: dict[str, str] = {}
        self._as_written: dict[str, str] = {}
        for food in self._foods.values():
            if food.record:
                self._records.setdefault(food.record, food.id)
            for name in (food.name, *food.names):
                if name.startswith("="):  # only in this very form: "peppers" are no pepper
                    self._as_written.setdefault(name[1:], food.id)
                else:
                    self._add(key(name), food.id)
        for food_id in self._foods:
            self._add(key(food_id.replace("-", " ")), food_id)
        self._variants: dict[tuple[str, str], str] = {}
        for food in self._foods.values():
            if food.parent:
                self._variants.setdefault((food.parent, self._forms.get(food.id, food.state)), food.id)
                if food.state != "cooked":
                    self._variants.setdefault((food.parent, food.state), food.id)

    def _add(self, name: tuple[str, ...], food: str) -> None:
        if name and name not in self._names:
            self._names[name] = food
            self._first[name[0]] = max(self._first.get(name[0], 0), len(name))

    @classmethod
    def from_rows(
        cls,
        foods: Sequence[Row],
        values: Sequence[Row] = (),
        portions: Sequence[Row] = (),
        more: Sequence[Row] = (),
    ) -> FoodTable:
        """The table from the rows of foods.csv, food_values.csv, food_portions.csv and food_values_more.csv (figures
        of nutrients that a food's own record lacks, from another table: one a row, with its source).

        Raises ValueError with file and line when a cell is no number or a parent is no food of the table.
        """
        amounts = {row.text("food"): row.cells for row in values}
        others: dict[str, list[Row]] = {}
        for row in more:
            others.setdefault(row.text("food"), []).append(row)
        sizes: dict[str, list[Portion]] = {}
        for row in portions:
            grams = row.number("grams")
            if grams is None or not grams > 0:
                raise ValueError(f"{row.file}:{row.line}: grams of a portion should be above 0")
            portion = Portion(row.text("unit"), row.text("size"), grams, row.text("source"))
            sizes.setdefault(row.text("food"), []).append(portion)
        made = [_food(row, amounts.get(i := row.text("id"), {}), sizes, others.get(i, ())) for row in foods]
        known = {food.id for food in made}
        for row, food in zip(foods, made, strict=True):
            if food.parent and food.parent not in known:
                raise ValueError(f"{row.file}:{row.line}: the parent {food.parent!r} is not in the table")
        return cls(made, {row.text("id"): form for row in foods if (form := row.text("form"))})

    def __iter__(self) -> Iterator[Food]:
        return iter(self._foods.values())

    def __len__(self) -> int:
        return len(self._foods)

    def __contains__(self, food: object) -> bool:
        return food in self._foods

    def names(self) -> Iterator[tuple[str, str]]:
        """Every name with the id of the food it names, plain foods first; no name twice."""
        said: set[tuple[str, ...]] = set()
        for food in sorted(self._foods.values(), key=lambda food: bool(food.parent)):
            for name in (food.name, *food.names):
                words = key(name)
                if not name.startswith("=") and words not in said and self._names.get(words) == food.id:
                    said.add(words)
                    yield name, food.id

    def get(self, food: str) -> Food | None:
        """The record of a food id, or of a published record number ("usda:11124")."""
        return self._foods.get(food) or self._foods.get(self._records.get(food.lower(), ""))

    def variant(self, food: str, state: str) -> str:
        """The id of the same food in another state or form ("canned", "cooked", "boiled", "peeled"); the id
        itself when the table has none."""
        record = self._foods.get(food)
        if record is None or not state:
            return food
        state = _STATES.get(state, state)
        if state == record.state and state != "raw":
            return food
        base = record.parent or food
        if self._foods[base].state == state and state != "raw":
            return base
        if state == "raw":
            # A tin or a dried form is no raw food however fresh; a cooked or frozen record goes back to its plain one.
            return base if self._foods[base].state == "raw" and self._forms.get(food) != "peeled" else food
        if state == "cooked":
            for form in _COOKED_FORMS:
                if (base, form) in self._variants:
                    return self._variants[base, form]
            return food
        return self._variants.get((base, state), food)

    def match(self, words: str) -> NameMatch | None:
        """The food that ``words`` name: the longest known name whose other words leave the food what it is."""
        if words.strip().lower() in self._records:
            start = len(words) - len(words.lstrip())
            return NameMatch(start, start + len(words.strip()), self._records[words.strip().lower()])
        phrase = tokens(words)
        best: tuple[int, int, str] | None = None
        for start, end, food in self._spans(words, phrase):
            # The longest name; among equals the first.
            if (best is None or end - start > best[1] - best[0]) and self._natural(words, phrase, start, end):
                best = (start, end, food)
        if best is None:
            return None
        return NameMatch(phrase[best[0]].start, phrase[best[1] - 1].end, best[2])

    def _spans(self, text: str, phrase: Sequence[Token]) -> Iterator[tuple[int, int, str]]:
        for start in range(len(phrase)):
            for length in range(min(self._first.get(phrase[start].word, 0), len(phrase) - start), 0, -1):
                food = self._named(text, phrase[start : start + length])
                if food is not None:
                    yield start, start + length, food

    def _named(self, text: str, words: Sequence[Token]) -> str | None:
        if len(words) == 1:
            exact = self._as_written.get(text[words[0].start : words[0].end].lower())
            if exact is not None:
                return exact
        food = self._names.get(tuple(token.word for token in words))
        return food if food is not None and _together(text, words) else None

    def _natural(self, text: str, phrase: Sequence[Token], start: int, end: int) -> bool:
        """Whether the words around a name leave it that food: quality and cutting before it, parts after it."""
        if any(token.word not in BEFORE or token.word in CHANGES for token in phrase[:start]):
            return False
        for before, token in zip(phrase[end - 1 :], phrase[end:], strict=False):
            if token.word in STOP or any(mark in ",;(:" for mark in text[before.end : token.start]):
                return True
            if token.word not in AFTER:
                return False
        return True

    def find(self, text: str) -> Sequence[NameMatch]:
        """Every food name in running text, left to right, longest first, not overlapping. Words that are often
        no food ("squash between finger and thumb", "to date") count only where their neighbours allow it."""
        words = tokens(text)
        found: list[NameMatch] = []
        at = 0
        while at < len(words):
            longest = min(self._first.get(words[at].word, 0), len(words) - at)
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
        if not asked:
            return ()
        parts = set(asked.split())
        scored: list[tuple[float, str]] = []
        matcher = SequenceMatcher(autojunk=False)
        matcher.set_seq2(asked)
        for food in self._foods.values():
            if food.parent and food.state == "cooked":
                continue
            best = 0.0
            for name in (food.name, *food.names):
                if name.startswith("="):
                    continue
                plain_name = " ".join(key(name))
                shared = len(parts & set(plain_name.split()))
                if not shared and abs(len(plain_name) - len(asked)) > 4:
                    continue
                matcher.set_seq1(plain_name)
                if matcher.real_quick_ratio() + 0.3 * shared <= best:
                    continue
                best = max(best, matcher.ratio() + 0.3 * shared)
            if best >= 0.65:
                scored.append((-best, food.name))
        return tuple(name for _, name in sorted(scored)[:most])


def _together(text: str, words: Sequence[Token]) -> bool:
    """Whether only spaces and hyphens stand between the words of a name."""
    return all(not text[a.end : b.start].strip(" \t\r\n-‑–'’") for a, b in itertools.pairwise(words))


def _is_food(words: Sequence[Token], at: int, length: int) -> bool:
    if length > 1 or words[at].word not in DOUBTFUL:
        return True
    before = words[at - 1].word if at else ""
    after = words[at + 1].word if at + 1 < len(words) else ""
    return before in A_THING or (before not in NOT_AFTER and after not in NOT_BEFORE)


def _values(cells: Mapping[str, str], more: Sequence[Row]) -> Mapping[str, NutrientValue]:
    own = {nutrient: cell for nutrient, cell in cells.items() if nutrient != "food"}
    sources: dict[str, str] = {}
    for row in more:
        nutrient = row.text("nutrient")
        if not own.get(nutrient):
            own[nutrient] = row.text("value")
            sources[nutrient] = row.text("source")
    return Values(own, sources) if own else {}


def _food(row: Row, cells: Mapping[str, str], portions: Mapping[str, Sequence[Portion]], more: Sequence[Row]) -> Food:
    group = row.text("group")
    own = tuple(portions.get(row.text("id"), ()))
    units = {portion.unit for portion in own}
    # What a handful or a slice of this kind of food weighs, where the food itself has no figure.
    shared = tuple(p for p in portions.get(f"group:{group}", ()) if p.unit not in units)
    hardness: Hardness = row.text("hardness") or "none"  # type: ignore[assignment]
    refuse = row.number("refuse_pct") or 0.0
    if not 0 <= refuse < 100:
        raise ValueError(f"{row.file}:{row.line}: refuse_pct should be from 0 to below 100")
    return Food(
        id=row.text("id"),
        record=row.text("record"),
        name=row.text("name"),
        names=row.items("names"),
        group=group,
        state=row.text("state") or "raw",
        scientific=row.text("scientific"),
        source=row.text("source"),
        per_100g=_values(cells, more),
        portions=own + shared,
        refuse_pct=refuse,
        density=row.number("density"),
        hardness=hardness,
        allergens=frozenset(row.items("allergens")),
        traits=frozenset(row.items("traits")),
        retention=row.text("retention"),
        softens_as=row.text("softens_as"),
        parent=row.text("parent"),
        refuse=row.items("refuse"),
        note=row.text("note"),
    )
