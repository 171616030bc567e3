"""Allergens of a dish: present, hidden in a food bought ready, or said by a label's "may contain"; by market."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Literal, cast

from spoonproof.feeding.bowl import in_baby_bowl, nested
from spoonproof.feeding.kinds import parts
from spoonproof.feeding.tables import FeedingTables
from spoonproof.feeding.words import keys as folded
from spoonproof.model.finding import SourceRef
from spoonproof.model.food import Food
from spoonproof.model.kitchen import Foods
from spoonproof.model.recipe import FoodLine, Recipe
from spoonproof.model.record import dataclass, replace
from spoonproof.model.treatment import Treatment

How = Literal["present", "hidden", "choice", "may-contain"]
_ORDER: tuple[How, ...] = ("present", "hidden", "choice", "may-contain")


@dataclass(frozen=True, slots=True)
class AllergenFound:
    """One allergen brought by one line. ``how``: present; hidden (in a food bought ready); choice (only an ``or:``
    choice brings it); may-contain (the label words the author gave, or one that some makers use and some do not, as
    soya in bread). ``baby`` is False where only the family's bowl has it."""

    allergen: str
    how: How
    food: str
    line: int
    baby: bool = True
    recipe: str = ""  # title of the recipe used as a food that brings it
    named: tuple[str, ...] = ()  # the cereals or nuts that the law wants named ("wheat", "almonds")


@dataclass(frozen=True, slots=True)
class Label:
    """What a market wants named: the allergen key, the word for it there, and the source."""

    market: str
    allergen: str
    word: str
    source: SourceRef


def allergens(
    recipe: Recipe,
    treatments: Sequence[Treatment],
    foods: Foods,
    tables: FeedingTables,
    others: Mapping[str, Recipe] | None = None,
) -> list[AllergenFound]:
    """Every allergen of the dish, by line in the order of the file; the family's bowl too, marked ``baby=False``."""
    hidden = _Hidden(tables)
    found: dict[tuple[str, str, int, str], AllergenFound] = {}
    for part in parts(recipe.foods):
        baby = in_baby_bowl(part.at, recipe, treatments)
        pairs = [(part.line, "")] + [(one.part.line, one.recipe.title.value) for one in nested(part.line, others or {})]
        for line, title in pairs:
            for key, how in _of_line(line, foods, hidden):
                kind: How = "choice" if part.choice >= 0 and how in ("present", "hidden") else how
                one = AllergenFound(key, kind, line.name, part.at, baby, title, _by_name(key, line, foods))
                found.setdefault((key, line.name, part.at, kind), one)
    return sorted(found.values(), key=lambda one: (one.line, _ORDER.index(one.how), one.allergen, one.food))


def labels(tables: FeedingTables, market: str | Sequence[str]) -> list[Label]:
    """The allergens that a market (EU, GB, US, Codex) asks to be named, in its own order.

    Of several markets the first gives the words; what only a further one asks for comes after, in its words.
    """
    markets = (market,) if isinstance(market, str) else tuple(market)
    if markets not in tables.labels:
        tables.labels[markets] = _labels(tables, markets)
    return list(cast("list[Label]", tables.labels[markets]))


def _labels(tables: FeedingTables, markets: Sequence[str]) -> list[Label]:
    found: dict[str, Label] = {}
    for one in markets:
        for row in tables.rows.get("allergens", ()):
            if row.text("market") == one:
                found.setdefault(
                    row.text("allergen"), Label(one, row.text("allergen"), row.text("label"), tables.source(row))
                )
    return list(found.values())


def named_in(found: Iterable[AllergenFound], tables: FeedingTables, market: str | Sequence[str]) -> list[Label]:
    """What the page and the script must name in these markets, in their order; "may contain" left apart."""
    named: dict[str, set[str]] = {}
    for one in found:
        if one.how != "may-contain":
            named.setdefault(one.allergen, set()).update(one.named)
    if "wheat" in named.get("gluten", ()) and "gluten" in {label.allergen for label in labels(tables, market)}:
        named.pop("wheat", None)  # "gluten (wheat)" has said it
    return [
        replace(label, word=_in_full(label, named[label.allergen]))
        for label in labels(tables, market)
        if label.allergen in named
    ]


# The cereals and nuts that Annex II (1 and 8) of the EU's regulation lists, by the words of a food that bring them.
_LISTED = {
    "gluten": {
        "wheat": "wheat spelt durum semolina couscous bulgur freekeh farro emmer khorasan kamut seitan",
        "rye": "rye pumpernickel",
        "barley": "barley malt",
        "oats": "oat porridge muesli granola",
    },
    "nuts": {
        "almonds": "almond marzipan frangipane", "hazelnuts": "hazelnut", "walnuts": "walnut", "cashews": "cashew",
        "pecans": "pecan", "Brazil nuts": "brazil", "pistachios": "pistachio", "macadamias": "macadamia",
    },
}  # fmt: skip
_SHORT = {"cereals containing gluten": "gluten"}


def _by_name(allergen: str, line: FoodLine, foods: Foods) -> tuple[str, ...]:
    """Which of the listed cereals or nuts the line brings, as far as its words and its record say."""
    listed = _LISTED.get(allergen)
    if listed is None:
        return ()
    food = foods.get(line.food) if line.food else None
    here = folded(f"{line.name} {food.name if food else ''}")
    wheat = food is not None and "wheat" in food.allergens
    return tuple(name for name, words in listed.items() if here & set(words.split()) or (name == "wheat" and wheat))


def _in_full(label: Label, named: Iterable[str]) -> str:
    """ "gluten (wheat, oats)", as the law has the cereal and the nut named; the plain word where it is not known."""
    word = _SHORT.get(label.word, label.word)
    order = [name for name in _LISTED.get(label.allergen, ()) if name in set(named)]
    return f"{word} ({', '.join(order)})" if order else word


def of_text(text: str, tables: FeedingTables) -> frozenset[str]:
    """The allergens that food words in running text stand for ("may contain traces of nuts")."""
    return _Hidden(tables).of(text)


class _Hidden:
    """The table of foods that bring an allergen, by their names."""

    def __init__(self, tables: FeedingTables) -> None:
        self._rows = tables.by_id("allergen_labels")
        self._phrases = tables.phrases_of("allergen_labels")

    def of(self, text: str) -> frozenset[str]:
        return frozenset(a for hit in self._phrases.find(text) for a in self._rows[hit.value].items("allergens"))

    def by_maker(self, food: str) -> tuple[str, ...]:
        """The allergens that some makers' ``food`` (an id) holds and others' does not."""
        row = self._rows.get(food)
        return tuple(row.items("by_maker")) if row is not None else ()

    def by_name(self, text: str, whole: bool = False) -> list[tuple[str, bool]]:
        """(allergen, hidden) of the names in ``text``; with ``whole`` of a name that is all of it."""
        return [
            (allergen, self._rows[hit.value].text("hidden") == "yes")
            for hit in self._phrases.find(text)
            if not whole or not (text[: hit.start] + text[hit.end :]).strip()
            for allergen in self._rows[hit.value].items("allergens")
        ]


_OBVIOUS_GROUPS = frozenset({"fish", "shellfish", "egg", "eggs", "nuts", "nut", "milk", "cheese", "dairy"})

_FREE = re.compile(
    r"\b(gluten|wheat|dairy|milk|egg|nut|soya?|peanut|sesame|fish)[- ]free\b|\b(vegan|plant[- ]based)\b", re.I
)
_FREE_OF = {
    "gluten": ("gluten", "wheat"), "wheat": ("wheat",), "dairy": ("milk",), "milk": ("milk",), "egg": ("egg",),
    "nut": ("nuts", "peanut"), "soy": ("soya",), "soya": ("soya",), "peanut": ("peanut",), "sesame": ("sesame",),
    "fish": ("fish",), "vegan": ("milk", "egg", "fish"),
}  # fmt: skip


def _said_free(text: str) -> set[str]:
    """Allergens that the line says the food is free of ("gluten-free pasta", "vegan mayonnaise")."""
    return {key for m in _FREE.finditer(text) for key in _FREE_OF[m.group(1).lower() if m.group(1) else "vegan"]}


def _of_line(line: FoodLine, foods: Foods, hidden: _Hidden) -> list[tuple[str, How]]:
    found: dict[str, How] = {}
    food: Food | None = foods.get(line.food) if line.food else None
    named = hidden.by_name(line.name)
    by_words = {allergen for allergen, _ in named}
    if food is not None:
        makers = hidden.by_maker(food.id)
        for key in food.allergens:
            if key in makers and key not in line.name.lower():
                found[key] = "may-contain"
                continue
            plain = key in line.name.lower() or food.group in _OBVIOUS_GROUPS or key not in by_words
            found[key] = (
                "present" if plain else next(("hidden" if h else "present" for a, h in named if a == key), "present")
            )
        if "wheat" in food.allergens:
            found.setdefault("gluten", found["wheat"])
    if food is None:
        # No record: the table of names speaks ("gluten-free" takes a name away).
        for allergen, is_hidden in named:
            found.setdefault(allergen, "hidden" if is_hidden else "present")
    elif not food.allergens:
        # A record that brings none: only a name of the table that is the whole name ("millet flour" is no "flour").
        for allergen, is_hidden in hidden.by_name(line.name, whole=True):
            found.setdefault(allergen, "hidden" if is_hidden else "present")
    for key in _said_free(line.text):
        found.pop(key, None)
    for word in line.label:
        for allergen in hidden.of(word):
            found.setdefault(allergen, "may-contain")
    return sorted(found.items())
